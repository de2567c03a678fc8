"""Two devices that may poll on a chain.

What it checks
    Whether more than one logger or energy manager is on a chain.

Why
    Two masters talk at the same time and destroy each other's messages.

How
    More than one logger or energy manager on the chain, besides the master that is named.

Remedy
    One of them on a chain of its own, or set to listen.

Clause
    Modbus over serial line.

Not covered
    Loggers that are set to listen; accept the finding with that reason.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.units import ENERGY_MANAGER, LOGGER
from sld.model.system import System
from sld.steps.ledger import Ratings
from sld.words import listing, phrase


@rule("DB12", "two devices that may poll on a chain", Severity.ADVICE, "Modbus over serial line", once=True)
def two_masters(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for chain in system.chains:
        pollers = [
            node
            for node in chain.nodes
            if node.device == chain.master or system.devices[node.device].kind in (LOGGER, ENERGY_MANAGER)
        ]
        if len(pollers) > 1:
            names = listing(system.devices[node.device].designation for node in pollers)
            yield Breach(
                phrase(
                    "data chain {chain} has {count} devices that may poll: {names}",
                    chain=chain.designation,
                    count=len(pollers),
                    names=names,
                ),
                phrase("put all but one on a chain of their own, or set them to listen"),
                (*chain.at, "devices"),
                chain.key,
            )
