"""Sums for the whole system: modules, powers, the highest voltage, the current at the supply point."""

from __future__ import annotations

from sld.citation import cited
from sld.model.device import BatteryUnit, InputTerminal, InverterUnit, StringGroup
from sld.model.planned import is_planned, without_planned
from sld.model.system import System
from sld.quantity import Given, Rating
from sld.ratings import array
from sld.ratings.specified import specified
from sld.ratings.symbol import POWER_BY_STATUS, Symbol
from sld.steps.ac_cables import rise_limit_percent
from sld.steps.inputs import strings_count
from sld.steps.ledger import Ledger
from sld.steps.line_sums import lines_counted, lines_fed
from sld.tables.profiles import profile
from sld.words import NOTHING, phrase
from sld.words.cell import of_cell

__all__ = ["totals"]

_DEFINITION = cited(phrase("definition"), remark=phrase("sum"))


def totals(system: System, ledger: Ledger) -> None:
    """Rate the whole system, and the ratio of array to inverter power of every inverter.

    What is only planned (status future) counts apart: the power of the system is that of the rest, if there is a rest.
    """
    groups, units = list(system.every(StringGroup)), list(system.every(InverterUnit))
    _by_status(system, ledger, groups, units)
    _sums(
        ledger,
        without_planned(system, groups),
        without_planned(system, units),
        [each for each in system.of(BatteryUnit) if not is_planned(system, each)],
    )
    owned: dict[str, list[StringGroup]] = {}
    for group in system.of(StringGroup):
        owned.setdefault(group.owner, []).append(group)
    for unit in system.of(InverterUnit):
        power = _power(Symbol.PDC, owned.get(unit.key, []), ledger)
        ledger.add(unit.key, power, array.dc_ac_ratio(power.value, unit.type.rated_power_w))
    _highest(system, ledger)
    if system.supply.phases == 3:
        ledger.add("", _difference_of_lines(system, without_planned(system, units)))
    limit = rise_limit_percent(system)
    if limit is not None:
        ledger.add("", specified(Symbol.DU_LIMIT, limit, "%") if _states_rise(system) else _target(system, limit))


def _states_rise(system: System) -> bool:
    return system.supply.voltage_rise_limit_percent is not None


def _target(system: System, limit_percent: float) -> Rating:
    """Return the target of the rule profile for the voltage rise, which the spec does not state. [%]"""
    target = profile(system.profile).ac_rise_limit_percent
    return Rating(
        Symbol.DU_LIMIT,
        limit_percent,
        "%",
        phrase("target of profile {profile}", profile=of_cell(system.profile)),
        (),
        target.cited,
    )


def _status(system: System, group: StringGroup) -> str:
    """Return the status of strings; those of a future inverter are future themselves."""
    return "future" if is_planned(system, group) else group.status


def _by_status(system: System, ledger: Ledger, groups: list[StringGroup], units: list[InverterUnit]) -> None:
    """Keep the powers of what exists, is new and is planned apart, where there is more than one of these."""
    if len({*(_status(system, group) for group in groups), *(unit.status for unit in units)}) < 2:
        return
    for status, (dc_symbol, ac_symbol) in POWER_BY_STATUS.items():
        strings = [group for group in groups if _status(system, group) == status]
        inverters = [unit for unit in units if unit.status == status]
        if strings:
            ledger.add("", _power(dc_symbol, strings, ledger))
        if inverters:
            ledger.add("", _rated(ac_symbol, inverters))


def _rated(symbol: Symbol, units: list[InverterUnit]) -> Rating:
    given = tuple(Given(unit.designation, unit.type.rated_power_w, "W") for unit in units)
    return Rating(symbol, sum(unit.type.rated_power_w for unit in units), "W", "Σ Pr", given, _DEFINITION)


def _sums(ledger: Ledger, groups: list[StringGroup], units: list[InverterUnit], batteries: list[BatteryUnit]) -> None:
    """Keep the sums over strings and inverters; a battery with its own converter feeds in too."""
    modules = sum(group.given.count * group.given.modules_in_series for group in groups)
    ledger.add("", Rating(Symbol.N, modules, "", phrase("Σ strings · modules in series"), (), _DEFINITION))
    ledger.add("", Rating(Symbol.NSTRINGS, strings_count(groups), "", phrase("Σ strings"), (), _DEFINITION))
    ledger.add("", _power(Symbol.PDC, groups, ledger))
    ledger.add("", _rated(Symbol.PAC, units))
    by_apparent = (
        *(Given(unit.designation, unit.apparent_power_va, "VA") for unit in units),
        *(
            Given(battery.designation, battery.given.converter_power_va, "VA")
            for battery in batteries
            if battery.given.converter_power_va is not None
        ),
    )
    ledger.add(
        "", Rating(Symbol.SAC, sum(item.number for item in by_apparent), "VA", "Σ Smax", by_apparent, _DEFINITION)
    )


def _difference_of_lines(system: System, units: list[InverterUnit]) -> Rating | None:
    """Return how much apparent power the most loaded line has above the least, of single-phase inverters. [VA]"""
    lines = {"L1": 0.0, "L2": 0.0, "L3": 0.0}
    single = [unit for unit in units if unit.type.phases == 1]
    for unit in single:
        fed = lines_counted(system, unit)  # one line, or the two that it works between
        for line in fed:
            lines[line] += unit.apparent_power_va / len(fed)
    if not single:
        return None
    given = tuple(Given(f"S({line})", power_va, "VA") for line, power_va in lines.items())
    assumed = (
        (phrase("single-phase inverters without a given line all on L1"),)
        if any(lines_fed(system, unit) is None for unit in single)
        else ()
    )
    value = max(lines.values()) - min(lines.values())
    return Rating(
        Symbol.DS_LINE, value, "VA", phrase("greatest S − least S of a line"), given, _DEFINITION, NOTHING, assumed
    )


def _power(symbol: Symbol, groups: list[StringGroup], ledger: Ledger) -> Rating:
    given = tuple(
        Given(f"{group.designation}", group.given.count * ledger[group.key, Symbol.PSTRING].value, "W")
        for group in groups
    )
    return Rating(symbol, sum(item.number for item in given), "W", phrase("Σ strings · N · Pmax"), given, _DEFINITION)


def _highest(system: System, ledger: Ledger) -> None:
    """Keep the highest array voltage and rise."""
    voltages = [ledger[terminal.key, Symbol.UOC_MAX] for terminal in without_planned(system, system.of(InputTerminal))]
    if voltages:
        ledger.add("", max(voltages, key=lambda rating: rating.value))
    rises = [rating for unit in system.of(InverterUnit) if (rating := ledger.get(unit.key, Symbol.DU_AC))]
    if rises:
        ledger.add("", max(rises, key=lambda rating: rating.value), symbol=Symbol.DU_AC)
