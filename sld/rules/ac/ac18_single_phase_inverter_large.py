"""Large single-phase inverter on a three-phase supply.

What it checks
    The apparent power of single-phase inverters on a three-phase supply.

Why
    Network operators limit the unbalance between the lines; limits differ by country.

How
    Above 4.6 kVA, the German limit. Others: 3.68 kVA in Great Britain without further application, 5 kVA in
    Belgium, 6 kVA in France.

Remedy
    A three-phase inverter, or several on different lines.

Clause
    VDE-AR-N 4105:2018-11 (from memory); national rules differ.

Not covered
    The sum of several single-phase inverters on one line.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import InverterUnit
from sld.model.system import System
from sld.rules.compare import above, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase

_MOST_VA = 4600.0


@rule("AC18", "large single-phase inverter on a three-phase supply", Severity.ADVICE, "national; VDE-AR-N 4105")
def single_phase_inverter_large(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    if system.supply.phases == 1:
        return
    for unit in system.of(InverterUnit):
        power_va = unit.apparent_power_va
        if unit.type.phases == 1 and above(power_va, _MOST_VA):
            has, most = two(power_va, _MOST_VA, "VA")
            yield Breach(
                phrase(
                    "{unit} feeds {has} into one line, above the {most} that some countries allow",
                    unit=named(unit),
                    has=has,
                    most=most,
                ),
                phrase("use a three-phase inverter, or ask the network operator"),
                (*unit.at, "type"),
                unit.key,
            )
