"""MPP voltage below the range of the inverter.

What it checks
    The MPP voltage of each string with the hottest cells, less the drop along its cables, against the lower end of the
    inverter's MPP range.

Why
    Below the range the inverter cannot follow the maximum power point: energy is lost on hot days, or the inverter
    stops.

How
    Umpp,inv = Umpp,min - ΣΔU < mpp_voltage_min of the inverter type.

Remedy
    More modules in series (Nmin of the string), or an inverter that tracks lower.

Clause
    Data sheet of the inverter; IEC 62548:2016 7.2 (from memory).

Not covered
    Ageing of the modules.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import StringGroup
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import below, two
from sld.rules.naming import named
from sld.rules.nearest import more_modules
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("DC04", "MPP voltage below the range of the inverter", Severity.ADVICE, "data of the inverter; IEC 62548-1")
def mpp_voltage_below_range(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for group in system.of(StringGroup):
        unit = system.inverter_of(group)
        voltage, hot = ratings.get(group.key, Symbol.UMPP_INV), ratings[group.key, Symbol.UMPP_MIN]
        if voltage is None or not below(voltage.value, unit.type.mpp_voltage_min_v):
            continue
        falls, limit = two(voltage.value, unit.type.mpp_voltage_min_v, "V")
        also = ((("types", "inverters", unit.type_name, "mpp_voltage_min"), phrase("lower end of the MPP range")),)
        yield Breach(
            phrase(
                "{group} falls to {hot} at the MPP when hot, {falls} at the inverter, below the {limit} from "
                "which it tracks",
                group=named(group),
                hot=hot,
                falls=falls,
                limit=limit,
            ),
            more_modules(ratings, group),
            (*group.at, "modules_in_series"),
            group.key,
            also,
            (voltage,),
        )
