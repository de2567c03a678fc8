"""What a network operator is told: the quantities that the grid rules of a country are about."""

from __future__ import annotations

from sld.grid.decide import Facts
from sld.grid.quantity import Quantity
from sld.model.conductors import phases, voltage_v
from sld.model.device import BatteryUnit, InverterUnit
from sld.model.planned import feeding, without_planned
from sld.model.system import System
from sld.quantity import Given
from sld.ratings import notified as formulas
from sld.ratings.symbol import Symbol
from sld.steps.ledger import Ledger, Ratings
from sld.steps.line_sums import by_line, lines_counted, works_between_lines

__all__ = ["SYMBOLS", "facts", "notified"]

SYMBOLS: dict[Quantity, Symbol] = {
    Quantity.LINE_CURRENT: Symbol.ILINE,
    Quantity.LINE_POWER: Symbol.SLINE,
    Quantity.APPARENT_POWER: Symbol.SAC,
    Quantity.ACTIVE_POWER: Symbol.PSOURCES,
    Quantity.ARRAY_POWER: Symbol.PDC,
    Quantity.EXPORT_POWER: Symbol.PFEED,
    Quantity.LINE_EXPORT: Symbol.PFEED_LINE,
    Quantity.SINGLE_PHASE_POWER: Symbol.S1_MAX,
    Quantity.SINGLE_PHASE_SUM: Symbol.S1_SUM,
    Quantity.LINE_DIFFERENCE: Symbol.DS_LINE,
}
"""The rating of the whole system that each quantity is."""

_EQUAL = 1e-9
"""Lines that differ by less, as a share of the most loaded, are loaded alike."""

_Unit = InverterUnit | BatteryUnit


def facts(system: System, ratings: Ratings) -> Facts:
    """Return what the grid rules ask about a system: existing and new, without what is only planned."""
    found = {quantity: ratings.get("", symbol) for quantity, symbol in SYMBOLS.items()}
    return Facts(system.supply.phases, {quantity: each.value for quantity, each in found.items() if each is not None})


def notified(system: System, ledger: Ledger) -> None:
    """Rate the most loaded line, the power fed in and the single-phase units; what is only planned is left out."""
    units = without_planned(system, feeding(system))
    apparent_va = {unit.key: _apparent_va(unit) for unit in units}
    three = [unit for unit in units if phases(system, unit.key) == 3]
    others = [unit for unit in units if phases(system, unit.key) != 3]
    to_neutral_v = _line_v(system)
    if any(works_between_lines(system, unit) for unit in others):
        currents = {unit.key: _current_a(system, unit, apparent_va[unit.key]) for unit in units}
        current = formulas.line_current_between(by_line(system, units, currents))
    else:
        one_line = max(by_line(system, others, apparent_va).values()) if others else 0.0
        current = formulas.line_current(sum(apparent_va[unit.key] for unit in three), one_line, to_neutral_v)
    ledger.add("", current, formulas.line_power(current, to_neutral_v))
    _fed_in(system, ledger, units)
    single = tuple(Given(unit.designation, apparent_va[unit.key], "VA") for unit in others)
    if single:
        ledger.add("", formulas.largest_single_phase(single), formulas.single_phase_sum(single))


def _apparent_va(unit: _Unit) -> float:
    """Return the highest apparent power of a unit; of a battery whose converter says none, nothing. [VA]"""
    return unit.apparent_power_va if isinstance(unit, InverterUnit) else unit.given.converter_power_va or 0.0


def _line_v(system: System) -> float:
    """Return the voltage of one line: to neutral, and with split phase that between its two lines. [V]"""
    return system.voltage_v if system.supply.phases == 1 else system.voltage_to_earth_v


def _current_a(system: System, unit: _Unit, apparent_va: float) -> float:
    if phases(system, unit.key) == 3:
        return apparent_va / (3 * system.voltage_to_earth_v)
    return apparent_va / voltage_v(system, unit.key)


def _rated_w(unit: _Unit) -> float:
    """Return the rated power of a unit; of a battery its converter's apparent power, as all of it may be fed in. [W]"""
    return unit.type.rated_power_w if isinstance(unit, InverterUnit) else _apparent_va(unit)


def _fed_in(system: System, ledger: Ledger, units: list[_Unit]) -> None:
    """Keep the rated power of all sources, and what is fed in: in all, and into one line."""
    limit_w = system.supply.export_limit_w
    rated = formulas.rated_power(tuple(Given(unit.designation, _rated_w(unit), "W") for unit in units))
    ledger.add("", rated, formulas.fed_in(rated.value, limit_w))
    if limit_w is not None:
        ledger.add("", formulas.limit_current(limit_w, system.supply.phases, _line_v(system)))
    lines = dict.fromkeys(("L1", "L2", "L3"), 0.0)
    for unit in units:
        fed = lines_counted(system, unit) if system.supply.phases == 3 else ("L1",)
        for line in fed:
            lines[line] += _rated_w(unit) / len(fed)
    alike = max(lines.values()) - min(lines.values()) < _EQUAL * max(lines.values())
    ledger.add("", formulas.fed_into_a_line(max(lines.values()), limit_w, 3 if alike else 1))
