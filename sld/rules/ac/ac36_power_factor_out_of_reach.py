"""Power factor that the inverter cannot be set to.

What it checks
    The power factor that each inverter is set to against the lowest that its type can run at.

Why
    The network operator asks for a power factor and the paperwork promises it; the inverter then stays above it, and
    the voltage at the supply point rises further than was worked out.

How
    power_factor < power_factor_min of the type.

Remedy
    A power factor within the reach of the inverter, or another type.

Clause
    Data of the maker; EN 50549-1:2019 4.7.2 asks for a range (from memory).

Not covered
    Types that do not say how far they reach. Whether the operator accepts the power factor.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import InverterUnit
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import amount, phrase


@rule("AC36", "power factor that the inverter cannot be set to", Severity.NON_COMPLIANCE, "data of the maker")
def power_factor_out_of_reach(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for unit in system.of(InverterUnit):
        least, chosen = unit.type.power_factor_min, unit.given.power_factor
        if least is not None and chosen < least:
            yield Breach(
                phrase(
                    "{unit} is set to a power factor of {chosen}, and its type reaches {least}",
                    unit=named(unit),
                    chosen=amount(chosen),
                    least=amount(least),
                ),
                phrase(
                    "set `power_factor` to {least} or above, or choose a type that reaches further", least=amount(least)
                ),
                (*unit.at, "power_factor"),
                unit.key,
                ((("types", "inverters", unit.type_name, "power_factor_min"), phrase("lowest power factor")),),
            )
