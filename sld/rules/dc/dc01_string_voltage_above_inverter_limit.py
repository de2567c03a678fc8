"""String voltage above the limit of the inverter.

What it checks
    The open-circuit voltage Uoc,max of each string at the lowest air temperature against the highest DC voltage of
    its inverter.

Why
    A cold, unloaded string has its highest voltage. Above its limit the input stage of the inverter can be
    destroyed and burn.

How
    Uoc,max > dc_voltage_max of the inverter type. Exactly at the limit nothing is said.

Remedy
    Fewer modules in series (Nmax of the string), or an inverter with a higher limit.

Clause
    IEC 62548:2016 7.2 (from memory); data sheet of the inverter.

Not covered
    The tolerance of the module's open-circuit voltage (often 3 %), and modules with their own converters.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import StringGroup
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import above, two
from sld.rules.naming import named
from sld.rules.nearest import fewer_modules
from sld.steps.ledger import Ratings
from sld.steps.optimisers import optimiser_of
from sld.words import amount, phrase


@rule("DC01", "string voltage above the limit of the inverter", Severity.DANGER, "IEC 62548-1; data of the inverter")
def string_voltage_above_inverter_limit(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for group in system.of(StringGroup):
        unit = system.inverter_of(group)
        voltage = ratings[group.key, Symbol.UOC_MAX]
        if not above(voltage.value, unit.type.dc_voltage_max_v):
            continue
        reached, limit = two(voltage.value, unit.type.dc_voltage_max_v, "V")
        cold = amount(system.site.temperature_min_c, "°C")
        also = (
            (("types", "inverters", unit.type_name, "dc_voltage_max"), phrase("limit of the inverter")),
            (("site", "temperature_min"), phrase("lowest temperature")),
        )
        yield Breach(
            phrase(
                "{group} reaches {reached} with its optimisers, above the {limit} of the inverter",
                group=named(group),
                reached=reached,
                limit=limit,
            )
            if optimiser_of(system, group)
            else phrase(
                "{group} reaches {reached} at {cold}, above the {limit} of the inverter",
                group=named(group),
                reached=reached,
                cold=cold,
                limit=limit,
            ),
            fewer_modules(ratings, group),
            (*group.at, "modules_in_series"),
            group.key,
            also,
            (voltage,),
        )
