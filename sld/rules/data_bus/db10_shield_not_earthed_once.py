"""Shield of a data cable not earthed at one place.

What it checks
    At how many devices the shield of a chain's cable is connected to earth.

Why
    Not earthed it does not shield; earthed twice, differences between the earths drive current through it.

How
    The cable type is shielded, and shield_earthed_at does not name exactly one device.

Remedy
    Exactly one device, usually the master.

Clause
    Common practice, no source.

Not covered
    A gas-filled arrester at the other end.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.system import System
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule(
    "DB10", "shield of a data cable not earthed at one place", Severity.ADVICE, "common practice, no source", once=True
)
def shield_not_earthed_once(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for chain in system.chains:
        count = len(chain.given.shield_earthed_at)
        if chain.shielded and count != 1:
            yield Breach(
                phrase(
                    "data chain {chain} has its shield earthed at {count} devices, not at 1",
                    chain=chain.designation,
                    count=count,
                ),
                phrase("name exactly one device under `shield_earthed_at`"),
                (*chain.at, "shield_earthed_at"),
                chain.key,
            )
