"""MPP voltage above the range of the inverter.

What it checks
    The MPP voltage Umpp,max of each string at the lowest air temperature against the upper end of the inverter's
    MPP range.

Why
    Above the range the inverter leaves the maximum power point and gives less power on cold, bright days. It takes
    no harm from it.

How
    Umpp,max > mpp_voltage_max of the inverter type.

Remedy
    Fewer modules in series, or an inverter that tracks higher.

Clause
    Data sheet of the inverter.

Not covered
    Warm cells in sun, which bring the voltage back into the range most of the time.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import StringGroup
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import above, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("DC05", "MPP voltage above the range of the inverter", Severity.ADVICE, "data of the inverter")
def mpp_voltage_above_range(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for group in system.of(StringGroup):
        unit = system.inverter_of(group)
        voltage = ratings[group.key, Symbol.UMPP_MAX]
        if not above(voltage.value, unit.type.mpp_voltage_max_v):
            continue
        reached, limit = two(voltage.value, unit.type.mpp_voltage_max_v, "V")
        also = ((("types", "inverters", unit.type_name, "mpp_voltage_max"), phrase("upper end of the MPP range")),)
        yield Breach(
            phrase(
                "{group} reaches {reached} at the MPP when cold, above the {limit} up to which the inverter tracks",
                group=named(group),
                reached=reached,
                limit=limit,
            ),
            phrase("use fewer modules in series, so that Umpp,max is at most {limit}", limit=limit),
            (*group.at, "modules_in_series"),
            group.key,
            also,
            (voltage,),
        )
