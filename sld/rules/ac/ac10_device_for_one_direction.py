"""Protective device for one direction of power.

What it checks
    Circuit-breakers, RCBOs and RCDs through which an inverter or the converter of a battery can feed back.

Why
    Fed from the load side, the electronics of a device made for one direction can burn out while it opens, and it
    protects no more.

How
    Danger where `bidirectional: false` says that line and load are marked. With profile BS 7671 non-compliance for an
    RCBO, whose electronics are concerned, and advice for a circuit-breaker or RCD, where nothing is declared.

Remedy
    A device that its maker declares for both directions.

Clause
    BS 7671:2018+A3:2024 530.3.201: described in https://professional-electrician.com/technical/
    unravelling-the-mysteries-of-unidirectional-and-bidirectional-protective-devices/ and, on what to do where nothing
    is declared, https://electricalsafetyfirst.org.uk/blog/bs7671-wrag-guidance

Not covered
    Which way round a device is connected; vehicles that feed back through a charging point.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.ac import RCBO
from sld.model.kinds.role import DIRECTED
from sld.model.system import System
from sld.rules.naming import named
from sld.rules.ways import feeds_back
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("AC10", "protective device for one direction of power", Severity.DANGER, "BS 7671 530.3.201")
def device_for_one_direction(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for device, given in system.given_as(DIRECTED):
        if given.bidirectional or not feeds_back(system, device):
            continue
        at, remedy = (*device.at, "bidirectional"), phrase("use a bidirectional device, declared so by its maker")
        if given.bidirectional is False:
            yield Breach(
                phrase(
                    "{device} is for one direction of power, and generation feeds back through it", device=named(device)
                ),
                remedy,
                at,
                device.key,
            )
        elif system.profile == "BS 7671":
            yield Breach(
                phrase(
                    "{device} is not declared for both directions of power, and generation feeds back through it",
                    device=named(device),
                ),
                phrase("{remedy}, and say `bidirectional: true`", remedy=remedy),
                at,
                device.key,
                severity=Severity.NON_COMPLIANCE if device.kind is RCBO else Severity.ADVICE,
            )
