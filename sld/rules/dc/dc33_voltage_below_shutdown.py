"""MPP voltage below the shutdown voltage.

What it checks
    The lowest MPP voltage of each string at the inverter, less the drop along the cables, against the voltage at which
    the inverter stops.

Why
    On hot days, with the most sun, the inverter switches off and on.

How
    Umpp,inv < shutdown_voltage of the inverter type, where the data sheet states it.

Remedy
    More modules in series (Nmin of the string), or an inverter that runs lower.

Clause
    Data sheet of the inverter; IEC 62548:2016 7.2 (from memory).

Not covered
    Ageing of the modules, about 0.5 % a year (common practice, no source).
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


@rule("DC33", "MPP voltage below the shutdown voltage", Severity.NON_COMPLIANCE, "data of the inverter; IEC 62548-1")
def voltage_below_shutdown(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for group in system.of(StringGroup):
        unit = system.inverter_of(group)
        voltage, limit_v = ratings.get(group.key, Symbol.UMPP_INV), unit.type.shutdown_voltage_v
        if voltage is None or limit_v is None or not below(voltage.value, limit_v):
            continue
        falls, limit = two(voltage.value, limit_v, "V")
        yield Breach(
            phrase(
                "{group} gives {falls} to the inverter when hot, below the {limit} at which it stops",
                group=named(group),
                falls=falls,
                limit=limit,
            ),
            more_modules(ratings, group),
            (*group.at, "modules_in_series"),
            group.key,
            ((("types", "inverters", unit.type_name, "shutdown_voltage"), phrase("shutdown voltage of the inverter")),),
            (voltage,),
        )
