"""Leads of surge protection too long.

What it checks
    The connecting leads of each surge protective device, in all.

Why
    Every metre of lead adds about 1 kV to what the equipment sees.

How
    Advice above 0.5 m, non-compliance above 1 m.

Remedy
    Leads of at most 0.5 m in all, or the conductor looped through the device.

Clause
    IEC 60364-5-53:2019 534.4.8 (number from memory); IEC 61643-32 for the DC side (from memory).

Not covered
    Devices whose lead length is not given.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.role import SURGE_PROTECTION
from sld.model.system import System
from sld.rules.compare import above, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import amount, phrase

_ADVISED_M = 0.5
_MOST_M = 1.0


@rule("SU12", "leads of surge protection too long", Severity.NON_COMPLIANCE, "IEC 60364-5-53 534.4.8")
def surge_protection_leads_too_long(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for device, given in system.given_as(SURGE_PROTECTION):
        length_m = given.lead_length_m
        if length_m is None or not above(length_m, _ADVISED_M):
            continue
        at = (*device.at, "lead_length")
        remedy = phrase("keep the leads to {advised_m} in all", advised_m=amount(_ADVISED_M, "m"))
        if above(length_m, _MOST_M):
            has, most = two(length_m, _MOST_M, "m")
            yield Breach(
                phrase("{device} has leads of {has}, above {most}", device=named(device), has=has, most=most),
                remedy,
                at,
                device.key,
            )
        else:
            has, most = two(length_m, _ADVISED_M, "m")
            yield Breach(
                phrase(
                    "{device} has leads of {has}, above the advised {most}", device=named(device), has=has, most=most
                ),
                remedy,
                at,
                device.key,
                severity=Severity.ADVICE,
            )
