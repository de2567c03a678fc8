"""A cable as the formulas of the code take it: material, temperature ratings, factors for ambient and number."""

from __future__ import annotations

from dataclasses import replace

from sld.model.conductors import phases
from sld.model.device import Cable
from sld.model.kinds.ac import AC_CABLE
from sld.model.system import System
from sld.quantity import Rating
from sld.ratings import ac_cable
from sld.ratings.nec import ampacity
from sld.ratings.nec.conductor_size import Demand, Run, capacity, device_allowed, smallest_size
from sld.ratings.symbol import Symbol
from sld.steps.cable_conditions import cables_together_count, warmest_c
from sld.steps.cable_design import conductor_material
from sld.steps.ledger import Ledger
from sld.tables.table import NoRow
from sld.wire_size import SIZES, area_mm2, name_of, size_of

__all__ = ["NO_FACTOR", "around", "keep_ampacity", "run_of"]

NO_FACTOR = "its ampacity as laid is not known"

_INDOOR_C = 30.0
_BEHIND_MODULES_C = 70.0
_WAY = "conductors in raceway, cable or earth, not in free air"


def _temperature_c(cable: Cable) -> tuple[float, tuple[str, ...]]:
    """Return the temperature rating of the insulation, and what was assumed for it. [°C]"""
    if cable.type.temperature_rating_c is not None:
        return cable.type.temperature_rating_c, ()
    if cable.type.insulation == "PVC":
        return 60.0, ("PVC insulation for 60 °C, none stated",)
    return 90.0, (f"{cable.type.insulation} insulation for 90 °C, none stated",)


def _ambient_c(system: System, cable: Cable) -> tuple[float, tuple[str, ...]]:
    given = cable.given
    if given.ambient_temperature_c is not None:
        return given.ambient_temperature_c, ()
    if cable.dc:
        return _BEHIND_MODULES_C, (f"{_BEHIND_MODULES_C:.0f} °C around DC cables",)
    said: list[str] = []
    found = warmest_c(system, cable, said)
    if found is not None:
        return found, tuple(said)
    return _INDOOR_C, (f"{_INDOOR_C:.0f} °C air around AC cables",)


def _together(cable: Cable) -> tuple[int, str]:
    """Return how many cables lie together, and what was assumed where the spec does not say."""
    given, ac_given = cable.given, cable.given_as(AC_CABLE)
    if ac_given is not None:
        count = cables_together_count(ac_given)
        return count, "AC cables not grouped with other circuits" if count == 1 else ""
    if given.grouped_circuits is not None:
        return given.grouped_circuits, ""
    alone = "DC cables not bunched with other circuits"
    return cable.count, f"{cable.count} strings bunched on one way, and with no others" if cable.count > 1 else alone


def _conductors_count(system: System, cable: Cable, cables_count: int) -> int:
    """Return how many current-carrying conductors lie together.

    A neutral that carries the difference of its lines alone is not counted (310.15(E)); the circuits of a group are
    taken to be alike.
    """
    return cables_count * (3 if not cable.dc and phases(system, cable.owner) == 3 else 2)


def run_of(system: System, ledger: Ledger, cable: Cable, circuit_a: float) -> tuple[Run | None, tuple[str, ...]]:
    """Return a cable but for its size, None where a table has no factor, and what was assumed.

    circuit_a: the current by which the column of the terminals is chosen. [A]
    """
    given, ac_given = cable.given, cable.given_as(AC_CABLE)
    temperature_c, rated = _temperature_c(cable)
    ambient_c, warm = _ambient_c(system, cable)
    cables_count, grouped = _together(cable)
    count = _conductors_count(system, cable, cables_count)
    said = [*rated, *warm, _WAY, *([grouped] if grouped else [])]
    try:
        factors = [ampacity.ambient_factor(ambient_c, temperature_c), ampacity.adjustment_factor(count)]
    except NoRow:
        why = f"no correction factor for {ambient_c:g} °C with insulation for {temperature_c:g} °C"
        ledger.unanswered(cable.key, Symbol.IZ, why)
        return None, tuple(said)
    if ac_given is not None and ac_given.capacity_factor is not None:
        reason = ac_given.capacity_factor_reason or "no reason given"
        factors.append(ac_cable.declared_factor(Symbol.C_DECLARED, ac_given.capacity_factor, reason))
    terminal = ampacity.terminal_temperature(circuit_a, given.terminal_temperature_c)
    parallel = ac_given.parallel if ac_given is not None else 1
    service = cable.owner == system.main_board().key and system.supply.split_phase
    dwelling = service and system.site.building == "dwelling"
    return Run(conductor_material(cable), temperature_c, terminal, tuple(factors), parallel, dwelling), tuple(said)


def around(section_mm2: float) -> str:
    """Write the sizes around a section that is none: `; nearest sizes 10 AWG, 8 AWG`, empty beyond the largest."""
    areas = [area_mm2(size) for size in SIZES]
    near = [each for each in areas if each < section_mm2][-1:] + [each for each in areas if each > section_mm2][:1]
    return f"; nearest sizes {', '.join(name_of(each) for each in near)};"


def keep_ampacity(ledger: Ledger, cable: Cable, run: Run, said: tuple[str, ...], demand: Demand | None) -> str:
    """Keep what follows from the size of a cable: Iz, I,terminal, the largest device; return the size, if it is one."""
    section = ledger.get(cable.key, Symbol.S)
    if section is None:
        return ""
    size = size_of(section.value)
    why = f"no ampacity is tabulated for {name_of(section.value) or f'{section.value:g} mm²'} {run.material}"
    if not size:
        why += around(section.value)
    why += f" with {run.temperature_c:g} °C insulation and {run.terminal.value:g} °C terminals"
    try:
        carries, terminal = capacity(run, size)
    except NoRow:
        ledger.unanswered(cable.key, Symbol.IZ, why)
        return ""
    limit = Rating(Symbol.I_TERMINAL, run.parallel_count * terminal.value, "A", "table value of the terminals' column",
                   terminal.given, "NEC 2023 110.14(C) (from memory)", terminal.table_row)  # fmt: skip
    ledger.add(cable.key, carries.assuming(*run.terminal.assumptions, *said), limit)
    ledger.add(cable.key, device_allowed(run, size, carries.value))
    if demand is not None:
        needed = smallest_size(run, demand)
        if needed is not None:
            ledger.add(cable.key, replace(needed, symbol=Symbol.S_CURRENT))
    return size
