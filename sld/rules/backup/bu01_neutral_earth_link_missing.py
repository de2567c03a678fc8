"""Neutral-earth link missing without the network.

What it checks
    Whether neutral and protective earth are linked where a backup output or a second source feeds a part of the
    installation.

Why
    The link of the public network is away with it: without one of its own no RCD trips and no fault current flows to
    earth, so that a metal case stays live.

How
    No neutral_earth_link at the backup output of the inverter or the switch, and no neutral_earthed generator. Where
    the switch leaves the neutral of the network joined, a non-compliance: its earth can be away with the network.
    Under NEC 690 only where the neutral is separated: one that stays joined is bonded at the service. On a supply
    without neutral a point of the source is to be earthed instead, unless it is an IT system.

Remedy
    A link that closes while the network is separated, and only then.

Clause
    BS 7671:2018 551.4.3.2.1, an independent means of earthing, as a public guide quotes it
    (https://v2lworkshop.co.uk/safety/island-mode-earthing-neutral-switching);
    IEC 60364-5-55:2011 551.4.3 (from memory). NEC 250.30, 702.11, earlier 702.10, as
    https://ecmweb.com/print/code-basics/installation-and-operation-optional-standby-systems tells of them.

Not covered
    Islands that are meant to be an IT system with an insulation monitoring device.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.island import islands
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule(
    "BU01",
    "neutral-earth link missing without the network",
    Severity.DANGER,
    "IEC 60364-5-55 551.4.3; BS 7671 551.4.3.2",
)
def neutral_earth_link_missing(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for island in islands(system):
        of_the_service = system.follows_nec and island.separated is not True
        as_before = not system.supply.has_neutral and system.earthing_at(island.switch.key) == "IT"
        if not island.linked and not of_the_service and not as_before:
            joined = island.separated is False
            yield Breach(
                phrase(
                    "{switch} relies on the earth of the network's neutral while the network is away",
                    switch=named(island.switch),
                )
                if joined
                else phrase(
                    "{switch} leaves the neutral without earth while the network is away", switch=named(island.switch)
                )
                if system.supply.has_neutral
                else phrase(
                    "{switch} leaves its source without an earthed point while the network is away",
                    switch=named(island.switch),
                ),
                phrase(
                    "give `neutral_earth_link` where the link is built in, `neutral_earthed` at a generator; or add a "
                    "link that closes while the network is separated, and only then"
                ),
                island.at,
                island.switch.key,
                on_key=True,
                severity=Severity.NON_COMPLIANCE if joined else Severity.DANGER,
            )
