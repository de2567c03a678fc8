"""Open-circuit voltage below the start voltage.

What it checks
    The open-circuit voltage Uoc,hot of each string with the hottest cells against the voltage at which its inverter
    starts.

Why
    Below its start voltage the inverter does not switch on again after a stop on a hot day.

How
    Uoc,hot < start_voltage of the inverter type, where the data sheet states one and the module a voltage
    coefficient.

Remedy
    More modules in series (Nmin of the string at least), or an inverter that starts lower.

Clause
    Data sheet of the inverter; common practice.

Not covered
    Low irradiance in the morning.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import StringGroup
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import below, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("DC06", "open-circuit voltage below the start voltage", Severity.ADVICE, "data of the inverter")
def voltage_below_start(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for group in system.of(StringGroup):
        unit = system.inverter_of(group)
        voltage, start_v = ratings.get(group.key, Symbol.UOC_HOT), unit.type.start_voltage_v
        if voltage is None or start_v is None or not below(voltage.value, start_v):
            continue
        falls, limit = two(voltage.value, start_v, "V")
        also = ((("types", "inverters", unit.type_name, "start_voltage"), phrase("start voltage")),)
        yield Breach(
            phrase(
                "{group} has {falls} open-circuit when hot, below the {limit} at which the inverter starts",
                group=named(group),
                falls=falls,
                limit=limit,
            ),
            phrase("use more modules in series, so that Uoc,hot is at least {limit}", limit=limit),
            (*group.at, "modules_in_series"),
            group.key,
            also,
            (voltage,),
        )
