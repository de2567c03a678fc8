"""Ethernet link too long.

What it checks
    The length of each Ethernet link over copper.

Why
    Beyond 100 m the link fails or runs slow.

How
    length > 100 m.

Remedy
    A switch on the way, or fibre.

Clause
    ISO/IEC 11801-1, channel of 100 m (from memory).

Not covered
    Fibre, and links without a length.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.system import System
from sld.rules.compare import above, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase

_MOST_M = 100.0


@rule("DB15", "Ethernet link too long", Severity.NON_COMPLIANCE, "ISO/IEC 11801-1", once=True)
def ethernet_link_too_long(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for place, link in enumerate(system.links):
        if link.medium != "ethernet" or link.length_m is None or not above(link.length_m, _MOST_M):
            continue
        has, most = two(link.length_m, _MOST_M, "m")
        device = system.devices[system.names[link.from_device][0]]
        yield Breach(
            phrase(
                "{device} is linked over {has} of Ethernet cable, above {most}",
                device=named(device),
                has=has,
                most=most,
            ),
            phrase("keep the link to at most {most}, or use fibre", most=most),
            ("data", "links", place, "length"),
            device.key,
        )
