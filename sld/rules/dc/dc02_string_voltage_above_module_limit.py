"""String voltage above the system voltage of the module.

What it checks
    The open-circuit voltage Uoc,max of each string at the lowest air temperature against the highest system voltage
    of its modules.

Why
    The insulation of the modules towards frame and roof is tested for that voltage only. Above it a breakdown can
    shock and burn.

How
    Uoc,max > system_voltage_max of the module type, 1000 V where the data sheet is silent.

Remedy
    Fewer modules in series (Nmax of the string), or modules for a higher system voltage.

Clause
    IEC 61730-1 (marking of the system voltage); IEC 62548:2016 7.2 (clauses from memory).

Not covered
    Connectors and cables that are rated lower than the module; cables have a rule of their own.
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
from sld.words import amount, phrase


@rule("DC02", "string voltage above the system voltage of the module", Severity.DANGER, "IEC 61730-1; IEC 62548-1")
def string_voltage_above_module_limit(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for group in system.of(StringGroup):
        voltage = ratings[group.key, Symbol.UOC_MAX]
        if not above(voltage.value, group.type.system_voltage_max_v):
            continue
        reached, limit = two(voltage.value, group.type.system_voltage_max_v, "V")
        cold = amount(system.site.temperature_min_c, "°C")
        also = ((("types", "modules", group.type_name, "system_voltage_max"), phrase("limit of the module")),)
        yield Breach(
            phrase(
                "{group} reaches {reached} at {cold}, above the system voltage of {limit} of its modules",
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
