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

from sld.finding import Breach, Severity, rule
from sld.model.kinds.ac import METER
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("ME06", "meter at the supply for one direction", Severity.NON_COMPLIANCE, "terms of the network operator")
def supply_meter_for_one_direction(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for meter, given in system.given_as(METER):
        if given.purpose == "supply" and given.bidirectional is False:
            yield Breach(
                phrase("{meter} counts one direction, and the installation can export", meter=named(meter)),
                phrase("ask the metering operator for a bidirectional meter"),
                (*meter.at, "bidirectional"),
                meter.key,
            )
