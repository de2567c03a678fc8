"""Large single-phase inverter on a three-phase supply.

What it checks
    The apparent power of single-phase inverters on a three-phase supply.

Why
    Network operators limit the unbalance between the lines; limits differ by country.

How
    The limit and its sign are those of the grid rules of the `country` (page of grid rules); where none is given, 4.6
    kVA, from which on several countries ask for three phases.

Remedy
    A three-phase inverter, or several on different lines.

Clause
    As the entry of the country cites it; where none is given VDE-AR-N 4105:2018-11 (from memory).

Not covered
    The sum of several single-phase inverters on one line.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.grid.quantity import Quantity, holds
from sld.model.device import InverterUnit
from sld.model.system import System
from sld.rules.compare import two
from sld.rules.grid_limit import imbalance
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("AC18", "large single-phase inverter on a three-phase supply", Severity.ADVICE, "grid rules of the country")
def single_phase_inverter_large(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    if system.supply.phases == 1:
        return
    for limit in imbalance(system, Quantity.SINGLE_PHASE_POWER):
        for unit in system.of(InverterUnit):
            power_va = unit.apparent_power_va
            if unit.type.phases != 1 or not holds(power_va, limit.sign, limit.value):
                continue
            has, most = two(power_va, limit.value, "VA")
            yield Breach(
                phrase(
                    "{unit} feeds {has} into one line; {sign} {most} asks for three phases ({rule})",
                    unit=named(unit),
                    has=has,
                    sign=limit.sign.printed,
                    most=most,
                    rule=limit.rule,
                ),
                phrase("use a three-phase inverter, or ask the network operator"),
                (*unit.at, "type"),
                unit.key,
            )
