"""Data cable not shielded.

What it checks
    The cable type of each chain.

Why
    Beside cables of inverters an unshielded pair picks up their switching, and messages are lost.

How
    The cable type is given and not shielded.

Remedy
    A shielded twisted pair.

Clause
    Common practice, no source.

Not covered
    Chains whose cable is no type of the spec.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.system import System
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("DB17", "data cable not shielded", Severity.ADVICE, "common practice, no source", once=True)
def data_cable_not_shielded(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for chain in system.chains:
        if chain.shielded is False:
            yield Breach(
                phrase("data chain {chain} has a cable without a shield", chain=chain.designation),
                phrase("use a shielded twisted pair"),
                (*chain.at, "cable"),
                chain.key,
                ((("types", "cables", chain.given.cable or "", "shielded"), phrase("cable type")),),
            )
