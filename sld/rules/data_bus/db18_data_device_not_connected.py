"""Data device on no chain and no link.

What it checks
    Whether each logger, router, energy manager and communication module is connected to something.

Why
    A device that talks to nothing is drawn beside the diagram, and the cable that it needs is missing in the schedule.

How
    The device is on no chain and at no end of a link.

Remedy
    A chain or a link with it, or no such device.

Clause
    Common practice, no source.

Not covered
    Whether the connection is of the right kind.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import DataNode
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("DB18", "data device on no chain and no link", Severity.ADVICE, "common practice, no source", once=True)
def data_device_not_connected(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    on_chains = {node.device for chain in system.chains for node in chain.nodes}
    ends = [name for link in system.links for name in (link.from_device, link.to_device)]
    on_links = {key for name in ends for key in system.names.get(name, ())}
    for device in system.of(DataNode):
        if device.key not in on_chains and device.key not in on_links:
            yield Breach(
                phrase("{device} is on no chain and at no link", device=named(device)),
                phrase("add it to a chain, or give a link from or to it"),
                device.at,
                device.key,
            )
