"""A cable as the formulas of the code take it: material, temperature ratings, factors for ambient and number."""

from __future__ import annotations

from sld.citation import from_memory
from sld.frozen import replace
from sld.model.conductors import phases
from sld.model.device import Cable
from sld.model.kinds.ac import AC_CABLE
from sld.model.kinds.dc import DC_CABLE
from sld.model.system import System
from sld.quantity import Rating
from sld.ratings.nec import ampacity
from sld.ratings.nec.conductor_size import Demand, Run, capacity, device_allowed, smallest_size
from sld.ratings.symbol import Symbol
from sld.spec.blocks.battery_circuit import BatteryCable
from sld.spec.blocks.cable import AcCable, DcCable
from sld.steps.cable_conditions import cables_together_count, declared, warmest_c
from sld.steps.cable_design import conductor_material
from sld.steps.ledger import Ledger
from sld.tables.table import NoRow
from sld.wire_size import SIZES, area_mm2, name_of, size_of
from sld.words import Phrase, Sayable, Sequence, amount, phrase, sequence

__all__ = ["NO_FACTOR", "at_battery", "keep_ampacity", "run_of"]

NO_FACTOR = phrase("its ampacity as laid is not known")

_INDOOR_C = 30.0
_BEHIND_MODULES_C = 70.0
_CLEAR_OF_A_ROOF_M, _ON_A_ROOF_C = 0.023, 33.0
"""NEC 2017 310.15(B)(3)(c), 2023 310.15(B)(2): within 23 mm of a roof in the sun the air counts as 33 °C warmer
(https://www.electricalcodeacademy.net/post/understanding-section-310-15-b-3-c)."""
_WAY = phrase("conductors in raceway, cable or earth, not in free air")


def _given(cable: Cable) -> AcCable | DcCable:
    """Return what the spec says of a cable that is at no battery."""
    given = cable.given_as(AC_CABLE) or cable.given_as(DC_CABLE)
    assert given is not None, f"{cable.key} is at a battery"
    return given


def _temperature_c(cable: Cable) -> tuple[float, tuple[Sayable, ...]]:
    """Return the temperature rating of the insulation, and what was assumed for it. [°C]"""
    if cable.type.temperature_rating_c is not None:
        return cable.type.temperature_rating_c, ()
    if cable.type.insulation == "PVC":
        return 60.0, (phrase("PVC insulation for 60 °C, none stated"),)
    return 90.0, (phrase("{insulation} insulation for 90 °C, none stated", insulation=cable.type.insulation),)


def _ambient_c(system: System, cable: Cable) -> tuple[float, tuple[Sayable, ...]]:
    """Return the temperature around a cable, with what a sunlit roof adds to that of the air. [°C]"""
    given, warmer = _given(cable), 0.0
    sunlit: tuple[Sayable, ...] = ()
    if given.roof_clearance_m is not None and given.roof_clearance_m < _CLEAR_OF_A_ROOF_M:
        warmer = _ON_A_ROOF_C
        sunlit = (phrase("{warmer} added within 23 mm of a sunlit roof", warmer=amount(warmer, "°C")),)
    if given.ambient_temperature_c is not None:
        return given.ambient_temperature_c + warmer, sunlit
    if cable.dc and given.method in ("D1", "D2"):  # the table holds for earth of 30 °C (310.16)
        return _INDOOR_C, (phrase("{ambient} of the ground around DC cables", ambient=amount(_INDOOR_C, "°C")),)
    if cable.dc:  # a value behind modules, on a roof already
        return _BEHIND_MODULES_C, (phrase("{ambient} around DC cables", ambient=amount(_BEHIND_MODULES_C, "°C")),)
    said: list[Sayable] = []
    found = warmest_c(system, cable, said)
    if found is not None:
        return found + warmer, (*said, *sunlit)
    ambient = phrase("{ambient} air around AC cables", ambient=amount(_INDOOR_C, "°C"))
    return _INDOOR_C + warmer, (ambient, *sunlit)


def _together(cable: Cable) -> tuple[int, Phrase | None]:
    """Return how many cables lie together, and what was assumed where the spec does not say."""
    given, ac_given = _given(cable), cable.given_as(AC_CABLE)
    if ac_given is not None:
        count = cables_together_count(ac_given)
        return count, phrase("AC cables not grouped with other circuits") if count == 1 else None
    if given.grouped_circuits is not None:
        return given.grouped_circuits, None
    alone = phrase("DC cables not bunched with other circuits")
    return cable.count, phrase(
        "{count} strings bunched on one way, and with no others", count=cable.count
    ) if cable.count > 1 else alone


def _conductors_count(system: System, cable: Cable, cables_count: int) -> int:
    """Return how many current-carrying conductors lie together.

    A neutral that carries the difference of its lines alone is not counted (310.15(E)); the circuits of a group are
    taken to be alike.
    """
    return cables_count * (3 if not cable.dc and phases(system, cable.owner) == 3 else 2)


def run_of(system: System, ledger: Ledger, cable: Cable, circuit_a: float) -> tuple[Run | None, tuple[Sayable, ...]]:
    """Return a cable but for its size, None where a table has no factor, and what was assumed.

    circuit_a: the current by which the column of the terminals is chosen. [A]
    """
    given, ac_given = _given(cable), cable.given_as(AC_CABLE)
    temperature_c, rated = _temperature_c(cable)
    ambient_c, warm = _ambient_c(system, cable)
    cables_count, grouped = _together(cable)
    count = _conductors_count(system, cable, cables_count)
    said: list[Sayable] = [*rated, *warm, _WAY, *([grouped] if grouped else [])]
    try:
        factors = [ampacity.ambient_factor(ambient_c, temperature_c), ampacity.adjustment_factor(count)]
    except NoRow:
        why = phrase(
            "no correction factor for {ambient} with insulation for {temperature}",
            ambient=amount(ambient_c, "°C", 6),
            temperature=amount(temperature_c, "°C", 6),
        )
        ledger.unanswered(cable.key, Symbol.IZ, why)
        return None, tuple(said)
    factors += declared(given)
    terminal = ampacity.terminal_temperature(circuit_a, given.terminal_temperature_c)
    parallel = ac_given.parallel if ac_given is not None else 1
    service = cable.owner == system.main_board().key and system.supply.split_phase
    dwelling = service and system.site.building == "dwelling"
    return Run(conductor_material(cable), temperature_c, terminal, tuple(factors), parallel, dwelling), tuple(said)


def at_battery(cable: Cable, given: BatteryCable, circuit_a: float) -> tuple[Run | None, tuple[Sayable, ...]]:
    """Return a cable of a battery but for its size, None where a table has no factor, and what was assumed.

    circuit_a: the current by which the column of the terminals is chosen. [A]
    """
    temperature_c, rated = _temperature_c(cable)
    said: list[Sayable] = [*rated, _WAY]
    ambient_c = given.ambient_temperature_c
    if ambient_c is None:
        ambient_c = _INDOOR_C
        said.append(phrase("{ambient} around battery cables", ambient=amount(_INDOOR_C, "°C")))
    try:
        conductors_count = 2 * given.grouped_circuits * given.parallel
        factors = (ampacity.ambient_factor(ambient_c, temperature_c), ampacity.adjustment_factor(conductors_count))
    except NoRow:
        return None, tuple(said)
    terminal = ampacity.terminal_temperature(circuit_a)
    return Run(conductor_material(cable), temperature_c, terminal, factors, given.parallel), tuple(said)


def _around(section_mm2: float) -> Sequence:
    """Return the names of the sizes around a section that is none."""
    areas = [area_mm2(size) for size in SIZES]
    near = [each for each in areas if each < section_mm2][-1:] + [each for each in areas if each > section_mm2][:1]
    return sequence(name_of(each) for each in near)


def keep_ampacity(ledger: Ledger, cable: Cable, run: Run, said: tuple[Sayable, ...], demand: Demand | None) -> str:
    """Keep what follows from the size of a cable: Iz, I,terminal, the largest device; return the size, if it is one."""
    section = ledger.get(cable.key, Symbol.S)
    if section is None:
        return ""
    size = size_of(section.value)
    why = phrase(
        "no ampacity is tabulated for {size} {material} with {insulation} insulation and {terminal} terminals",
        size=name_of(section.value) or amount(section.value, "mm²", 6),
        material=run.material,
        insulation=amount(run.temperature_c, "°C", 6),
        terminal=amount(run.terminal.value, "°C", 6),
    )
    if not size:
        why = phrase("{what}; nearest sizes {sizes}", what=why, sizes=_around(section.value))
    try:
        carries, terminal = capacity(run, size)
    except NoRow:
        ledger.unanswered(cable.key, Symbol.IZ, why)
        return ""
    formula, clause = phrase("table value of the terminals' column"), from_memory("NEC 2023 110.14(C)")
    limit_a = run.parallel_count * terminal.value
    limit = Rating(Symbol.I_TERMINAL, limit_a, "A", formula, terminal.given, clause, terminal.table_row)
    ledger.add(cable.key, carries.assuming(*run.terminal.assumptions, *said), limit)
    ledger.add(cable.key, device_allowed(run, size, carries.value))
    if demand is not None:
        needed = smallest_size(run, demand)
        if needed is not None:
            ledger.add(cable.key, replace(needed, symbol=Symbol.S_CURRENT))
    return size
