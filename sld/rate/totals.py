"""Sums for the whole system: modules, powers, the highest voltage, the current at the supply point."""

from __future__ import annotations

from sld.model.device import InputTerminal, InverterUnit, StringGroup
from sld.model.system import System
from sld.quantity import Given, Rating
from sld.rate.ac_cables import rise_limit_percent
from sld.rate.ledger import Ledger, specified
from sld.ratings import array, insulation

__all__ = ["totals"]

_DEFINITION = "definition (sum)"


def totals(system: System, ledger: Ledger) -> None:
    """Rate the whole system, and the ratio of array to inverter power of every inverter."""
    groups = list(system.of(StringGroup))
    units = list(system.of(InverterUnit))
    modules = sum(group.given.count * group.given.modules_in_series for group in groups)
    ledger.add("", Rating("N", modules, "", "Σ strings · modules in series", (), _DEFINITION))
    ledger.add("", Rating("Nstrings", sum(group.given.count for group in groups), "", "Σ strings", (), _DEFINITION))
    ledger.add("", _power("Pdc", groups, ledger))
    by_unit = tuple(Given(unit.designation, unit.type.rated_power_w, "W") for unit in units)
    ledger.add("", Rating("Pac", sum(unit.type.rated_power_w for unit in units), "W", "Σ Pr", by_unit, _DEFINITION))
    by_apparent = tuple(
        Given(unit.designation, unit.type.apparent_power_max_va or unit.type.rated_power_w, "VA") for unit in units
    )
    ledger.add(
        "", Rating("Sac", sum(float(item.value) for item in by_apparent), "VA", "Σ Smax", by_apparent, _DEFINITION)
    )
    for unit in units:
        own = [group for group in groups if group.owner == unit.key]
        power = _power("Pdc", own, ledger)
        ledger.add(unit.key, power, array.dc_ac_ratio(power.value, unit.type.rated_power_w))
    _highest(system, ledger)
    root_children = system.children.get(system.root, ())
    for key in root_children:
        export = ledger.get(key, "Iexport")
        if export is not None:
            ledger.add("", export, symbol="Iexport")
    limit = rise_limit_percent(system)
    if limit is not None:
        ledger.add("", specified("Δu,limit", limit, "%"))


def _power(symbol: str, groups: list[StringGroup], ledger: Ledger) -> Rating:
    given = tuple(
        Given(f"{group.designation}", group.given.count * (ledger.value(group.key, "Pstring") or 0.0), "W")
        for group in groups
    )
    return Rating(symbol, sum(float(item.value) for item in given), "W", "Σ strings · N · Pmax", given, _DEFINITION)


def _highest(system: System, ledger: Ledger) -> None:
    """Keep the highest array voltage and rise, and the insulation test that belongs to the highest voltage."""
    voltages = [rating for terminal in system.of(InputTerminal) if (rating := ledger.get(terminal.key, "Uoc,max"))]
    if voltages:
        ledger.add("", max(voltages, key=lambda rating: rating.value))
    rises = [rating for unit in system.of(InverterUnit) if (rating := ledger.get(unit.key, "Δu,ac"))]
    if rises:
        ledger.add("", max(rises, key=lambda rating: rating.value), symbol="Δu,ac")
    stc_v = [g.given.modules_in_series * g.type.open_circuit_voltage_v for g in system.of(StringGroup)]
    highest_v = max(stc_v, default=0.0)
    if highest_v > 0:
        ledger.attempt("", "Utest", lambda: insulation.voltage_at_test(highest_v), "no test voltage")
        ledger.attempt("", "Riso,min", lambda: insulation.resistance_min_at_test(highest_v), "no least resistance")
