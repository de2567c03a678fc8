"""Residual current monitor of the inverter does not fit.

What it checks
    The residual current at which an inverter without separation disconnects, against the largest allowed, and the
    leakage of its array against that current.

Why
    A monitor set too high does not see a person. One that sees the leakage of a wet array trips without a fault.

How
    residual_current_monitor > IΔ,monitor (300 mA up to 30 kVA, 10 mA/kVA above) is a non-compliance. Ileak,array, that
    of a dry array, above what the inverter disconnects at is advice.

Remedy
    A lower setting; a smaller array on each inverter, or an inverter with separation.

Clause
    IEC 62109-2:2011 4.8.3 (numbers from memory); the leakage is common practice, no source.

Not covered
    The sudden steps of 30, 60 and 150 mA, which only a test of the inverter shows.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import InverterUnit
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import above, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("EA11", "residual current monitor of the inverter does not fit", Severity.NON_COMPLIANCE, "IEC 62109-2 4.8.3")
def residual_current_monitor(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for unit in system.of(InverterUnit):
        most, given = ratings.get(unit.key, Symbol.IDN_MONITOR), ratings.get(unit.key, Symbol.IDN_INVERTER)
        leakage = ratings.get(unit.key, Symbol.ILEAK_ARRAY)
        if most is None or leakage is None:
            continue
        at = ("types", "inverters", unit.type_name, "residual_current_monitor")
        if given is not None and above(given.value, most.value):
            has, allowed = two(given.value, most.value, "mA")
            yield Breach(
                phrase(
                    "{unit} disconnects at {has} of residual current, above {allowed}",
                    unit=named(unit),
                    has=has,
                    allowed=allowed,
                ),
                phrase("set it to at most {allowed}", allowed=allowed),
                at,
                unit.key,
                (),
                (given, most),
            )
        trips = given or most
        if above(leakage.value, trips.value):
            leaks, limit = two(leakage.value, trips.value, "mA")
            yield Breach(
                phrase(
                    "{unit} has an array that leaks {leaks} when dry, above the {limit} at which it disconnects",
                    unit=named(unit),
                    leaks=leaks,
                    limit=limit,
                ),
                phrase("connect less array to the inverter, or use one with galvanic separation"),
                unit.at,
                unit.key,
                (),
                (leakage, trips),
                severity=Severity.ADVICE,
            )
