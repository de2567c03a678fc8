"""Array power above what the inverter's maker recommends.

What it checks
    The power of the array at standard test conditions against the highest array power of the inverter's data sheet.

Why
    Above it the maker may refuse his warranty.

How
    Pdc > dc_power_max of the inverter type.

Remedy
    Fewer modules, or a larger inverter.

Clause
    Data sheet of the inverter.

Not covered
    Limits for a single input.
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


@rule("DC28", "array power above what the inverter's maker recommends", Severity.ADVICE, "data of the inverter")
def array_power_above_limit(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for unit in system.of(InverterUnit):
        power, most_w = ratings[unit.key, Symbol.PDC], unit.type.dc_power_max_w
        if most_w is None or not above(power.value, most_w):
            continue
        has, allowed = two(power.value, most_w, "W")
        yield Breach(
            phrase(
                "{unit} has an array of {has}, above the {allowed} of its data sheet",
                unit=named(unit),
                has=has,
                allowed=allowed,
            ),
            phrase("use fewer modules, for an array of at most {allowed}", allowed=allowed),
            (*unit.at, "inputs"),
            unit.key,
            ((("types", "inverters", unit.type_name, "dc_power_max"), phrase("limit of the inverter")),),
            (power,),
        )
