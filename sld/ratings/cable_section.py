"""The smallest standard section that meets the demands of current and of voltage."""

from __future__ import annotations

from math import prod

from sld.citation import clauses_from_memory
from sld.frozen import dataclass, replace
from sld.quantity import Given, Origin, Rating
from sld.ratings.ac_cable import corrected_capacity, tabulated_capacity
from sld.ratings.conductor import loaded_temperature, resistance
from sld.ratings.domain import require_positive
from sld.ratings.passed_over import nearest, too_small
from sld.ratings.symbol import Symbol
from sld.ratings.voltage_change import change_percent, voltage_rise
from sld.tables.table import NoRow, series
from sld.words import Sayable, phrase

__all__ = ["CableDesign", "VoltageDemand", "smallest_section", "temperature_at"]

_AIR_C, _GROUND_C = 30.0, 20.0
"""Surroundings for which the capacities are tabulated: IEC 60364-5-52:2009 B.52.1."""


@dataclass(frozen=True, slots=True)
class CableDesign:
    """Everything about a cable but its section. `factors` are the correction factors, as ratings."""

    material: str
    insulation: str
    loaded_conductors_count: int
    method: str
    factors: tuple[Rating, ...] = ()
    parallel_count: int = 1
    conductor_class: int = 2


@dataclass(frozen=True, slots=True)
class VoltageDemand:
    """A limit on the change of voltage at the current `i_a`, in percent of `u_v` (line to neutral for one phase).

    conductor_temperature_c: at full load. load_a: of the most loaded line, by which the conductor is less warm.
    """

    phase_count: int
    i_a: float
    length_m: float
    u_v: float
    limit_percent: float
    conductor_temperature_c: float
    x_ohm_per_km: float = 0.0
    cos_phi: float = 1.0
    reactive: str = "supplied"
    load_a: float | None = None


def _capacity(design: CableDesign, section_mm2: float) -> Rating:
    tabulated = tabulated_capacity(
        design.material, design.insulation, design.loaded_conductors_count, design.method, section_mm2
    )
    return corrected_capacity(tabulated, design.factors, design.parallel_count)


def temperature_at(design: CableDesign, section_mm2: float, hot_c: float, load_a: float) -> Rating:
    """Return the temperature of a conductor at a current through all its cables, in °C. Raises NoRow."""
    tabulated = tabulated_capacity(
        design.material, design.insulation, design.loaded_conductors_count, design.method, section_mm2
    )
    reference_c = _GROUND_C if design.method in ("D1", "D2") else _AIR_C
    factor = prod(each.value for each in design.factors)
    return loaded_temperature(hot_c, reference_c, load_a, design.parallel_count * tabulated.value, factor)


def _temperature_c(design: CableDesign, section_mm2: float, demand: VoltageDemand) -> float:
    if demand.load_a is None:
        return demand.conductor_temperature_c
    return temperature_at(design, section_mm2, demand.conductor_temperature_c, demand.load_a).value


def _change(design: CableDesign, section_mm2: float, demand: VoltageDemand) -> Rating:
    temperature_c = _temperature_c(design, section_mm2, demand)
    r = resistance(design.material, section_mm2, temperature_c, design.conductor_class)
    shared_a = demand.i_a / design.parallel_count
    rise = voltage_rise(
        demand.phase_count,
        shared_a,
        demand.length_m,
        r.value,
        demand.x_ohm_per_km,
        demand.cos_phi,
        demand.reactive,
    )
    return change_percent(rise, demand.u_v)


def smallest_section(
    design: CableDesign,
    capacity_needed_a: float,
    voltage: VoltageDemand | None = None,
    at_least_mm2: float = 0.0,
) -> Rating | None:
    """Return the smallest standard section S in mm² with Iz >= `capacity_needed_a` and the change within its limit.

    Both limits hold at equality. Sections that a table does not hold are passed over. None where no standard section is
    enough. Raises NoRow where no section at all is tabulated, ValueError for a current of zero or less.
    Source: IEC 60364-4-43:2008 433.1, IEC 60364-5-52:2009 523.
    """
    require_positive(capacity_needed_a=capacity_needed_a)
    tabulated_count, passed_over = 0, list[Sayable]()
    for section_mm2 in series("section_mm2"):
        try:
            capacity = _capacity(design, section_mm2)
            change = None if voltage is None else _change(design, section_mm2, voltage)
        except NoRow:
            continue
        tabulated_count += 1
        if section_mm2 < at_least_mm2:
            continue
        if capacity.value < capacity_needed_a:
            passed_over.append(too_small(section_mm2, capacity, "I,needed"))
            continue
        if voltage is not None and change is not None and change.value > voltage.limit_percent:
            passed_over.append(too_small(section_mm2, change, "Δu,limit"))
            continue
        warm_c = None if voltage is None else _temperature_c(design, section_mm2, voltage)
        chosen = _chosen(section_mm2, capacity_needed_a, capacity, change, voltage, warm_c)
        return replace(chosen, passed_over=nearest(passed_over))
    if not tabulated_count:
        raise NoRow(f"no section is tabulated for {design.material}, {design.insulation}, method {design.method}")
    return None


def _chosen(
    section_mm2: float,
    needed_a: float,
    capacity: Rating,
    change: Rating | None,
    voltage: VoltageDemand | None,
    warm_c: float | None,
) -> Rating:
    given = [Given("I,needed", needed_a, "A"), Given("Iz", capacity.value, "A", capacity.table_row)]
    if change is not None and voltage is not None and warm_c is not None:
        given += [Given("Δu", change.value, "%"), Given("Δu,limit", voltage.limit_percent, "%")]
        given.append(Given("θ", warm_c, "°C", phrase("conductor temperature")))
        formula = phrase("smallest S with Iz ≥ I,needed and Δu ≤ Δu,limit")
    else:
        formula = phrase("smallest S with Iz ≥ I,needed")
    clause = clauses_from_memory("IEC 60364-4-43:2008 433.1", "IEC 60364-5-52:2009 523")
    return Rating(
        Symbol.S,
        section_mm2,
        "mm²",
        formula,
        tuple(given),
        clause,
        capacity.table_row,
        capacity.assumptions,
        origin=Origin.CHOSEN,
    )
