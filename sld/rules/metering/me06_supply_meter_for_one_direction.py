"""Meter at the supply for one direction.

What it checks
    Whether the meter at the supply counts both directions.

Why
    Export that is not counted is not paid; older meters run backwards, which is forbidden.

How
    purpose: supply with bidirectional: false.

Remedy
    A bidirectional meter, from the metering operator.

Clause
    Terms of the network operator; national metering rules.

Not covered
    Installations that never export.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Finding, Severity, rule
from sld.model.kinds.ac import METER
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.ledger import Ratings


@rule("ME06", "meter at the supply for one direction", Severity.NON_COMPLIANCE, "terms of the network operator")
def supply_meter_for_one_direction(system: System, ratings: Ratings) -> Iterator[Finding]:
    """Yield a finding for each case; see the text at the head of this file."""
    for meter, given in system.given_as(METER):
        if given.purpose == "supply" and not given.bidirectional:
            yield Finding(
                "ME06",
                Severity.NON_COMPLIANCE,
                f"{named(meter)} counts one direction, and the installation can export",
                "ask the metering operator for a bidirectional meter",
                (*meter.at, "bidirectional"),
                meter.key,
            )
