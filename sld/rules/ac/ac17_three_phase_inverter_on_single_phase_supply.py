"""Three-phase inverter on a single-phase supply.

What it checks
    The number of phases of each inverter against that of the supply.

Why
    The inverter cannot run, and connected by force it puts an unforeseen voltage on its conductors.

How
    Three phases at the inverter, one at the supply.

Remedy
    A single-phase inverter, or a three-phase supply.

Clause
    Data sheet of the inverter.

Not covered
    Inverters that can be set to one phase; give their type for that.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import InverterUnit
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("AC17", "three-phase inverter on a single-phase supply", Severity.DANGER, "data of the inverter")
def three_phase_inverter_on_single_phase_supply(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    if system.supply.phases == 3:
        return
    for unit in system.of(InverterUnit):
        if unit.type.phases == 3:
            yield Breach(
                phrase("{unit} has 3 phases, and the supply has 1", unit=named(unit)),
                phrase("use a single-phase inverter, or a three-phase supply"),
                (*unit.at, "type"),
                unit.key,
                ((("supply", "phases"), phrase("phases of the supply")),),
            )
