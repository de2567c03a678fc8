"""Meter for the feed-in limit not connected.

What it checks
    Whether each meter for the feed-in limit is on a data chain or link.

Why
    What the meter measures must reach the controller, or the limit is not kept.

How
    A meter with purpose: feed_in_limit that no chain and no link names.

Remedy
    Give the meter an `id` and name it in a chain or link.

Clause
    Common practice, no source.

Not covered
    Whether the controller understands the meter.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.ac import METER
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("ME05", "meter for the feed-in limit not connected", Severity.NON_COMPLIANCE, "terms of the network operator")
def feed_in_meter_not_connected(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    connected = {node.device for chain in system.chains for node in chain.nodes}
    for link in system.links:
        connected.update(system.names[link.from_device], system.names[link.to_device])
    for meter, given in system.given_as(METER):
        if given.purpose == "feed_in_limit" and meter.key not in connected:
            yield Breach(
                phrase("{meter} measures for the feed-in limit and is on no data chain or link", meter=named(meter)),
                phrase("give the meter an `id` and name it in a chain or a link under `data`"),
                meter.at,
                meter.key,
                ((("data",), phrase("chains and links")),),
            )
