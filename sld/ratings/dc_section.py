"""A DC cable by what it is made of and how it is laid: its capacity, its resistance, the smallest section that fits.

A solar cable in free air follows EN 50618, any other, and a solar cable in conduit, duct or ground, IEC 60364-5-52 for
two loaded conductors.
"""

from __future__ import annotations

from sld.citation import cited
from sld.frozen import dataclass, replace
from sld.quantity import Given, Origin, Rating
from sld.ratings import ac_cable, conductor, dc_cable
from sld.ratings.passed_over import nearest, too_small
from sld.ratings.symbol import Symbol
from sld.tables.table import NoRow, series
from sld.words import Sayable, phrase

__all__ = ["ByMethod", "Drop", "FreeAir", "capacity", "hot_resistance", "no_capacity", "smallest_section"]

_LIMIT_C = {"PVC": 70.0, "XLPE": 90.0}
_SOLAR_LOSSES_C = 90.0
"""At which the drop of a solar cable is worked out: 120 °C is a bound, not what the MPP current reaches."""


@dataclass(frozen=True, slots=True)
class FreeAir:
    """A solar cable to EN 50618 in free air; see `dc_cable.corrected_capacity`. factors: further ones, declared."""

    arrangement: str
    t_ambient_c: float
    circuits_count: int = 1
    t_conductor_max_c: float = dc_cable.SOLAR_CONDUCTOR_C
    factors: tuple[Rating, ...] = ()

    @property
    def t_loaded_c(self) -> float:
        """Return the temperature that the resistance is taken at. [°C]"""
        return min(self.t_conductor_max_c, _SOLAR_LOSSES_C)


@dataclass(frozen=True, slots=True)
class ByMethod:
    """A cable laid by a method of IEC 60364-5-52.

    material: Cu or Al; insulation: PVC or XLPE; conductor_class of IEC 60228; factors for what surrounds it; solar: its
    conductor is of tinned wires.
    """

    material: str
    insulation: str
    method: str
    t_ambient_c: float
    factors: tuple[Rating, ...] = ()
    conductor_class: int = 2
    solar: bool = False

    @property
    def t_conductor_max_c(self) -> float:
        """Return the temperature that the table loads the conductor to. [°C]"""
        return _LIMIT_C[self.insulation]

    @property
    def t_loaded_c(self) -> float:
        """Return the temperature that the resistance is taken at. [°C]"""
        return self.t_conductor_max_c


@dataclass(frozen=True, slots=True)
class Drop:
    """A limit on the voltage drop over a one-way length, at the MPP current, in percent of the MPP voltage at STC."""

    length_m: float
    impp_a: float
    umpp_v: float
    limit_percent: float


def no_capacity(laid: FreeAir | ByMethod) -> Rating | None:
    """Return a capacity Iz of 0 A where the surroundings are as hot as the conductor may be, else None.

    What is as warm as the conductor takes no heat from it. Source: IEC 60364-5-52:2009 523.1, no conductor above the
    temperature limit of its insulation; heat balance.
    """
    if laid.t_ambient_c < laid.t_conductor_max_c:
        return None
    given = (Given("Ta", laid.t_ambient_c, "°C"), Given("θmax", laid.t_conductor_max_c, "°C"))
    return Rating(Symbol.IZ, 0.0, "A", phrase("0 with Ta ≥ θmax"), given, cited("IEC 60364-5-52:2009 523.1"))


def capacity(laid: FreeAir | ByMethod, section_mm2: float) -> Rating:
    """Return the capacity Iz in A of a section in mm² as laid. Raises NoRow where the tables have no answer.

    Source: EN 50618:2014 Tables A.3 and A.4; IEC 60364-5-52:2009 Annex B, two loaded conductors.
    """
    if (nothing := no_capacity(laid)) is not None:
        return nothing
    if isinstance(laid, FreeAir):
        found = dc_cable.corrected_capacity(
            section_mm2, laid.arrangement, laid.t_ambient_c, laid.circuits_count, laid.t_conductor_max_c
        )
        for factor in laid.factors:
            formula, inputs = f"{found.formula}·{factor.symbol}", (*found.given, factor.as_input(factor.clause))
            found = replace(found, value=found.value * factor.value, formula=formula, given=inputs)
        return found
    method = "F2" if laid.method == "F" else laid.method
    tabulated = ac_cable.tabulated_capacity(laid.material, laid.insulation, 2, method, section_mm2)
    return ac_cable.corrected_capacity(tabulated, laid.factors)


def hot_resistance(laid: FreeAir | ByMethod, section_mm2: float) -> Rating:
    """Return the resistance in ohm/km of a section in mm² with the conductor hot. Raises NoRow.

    Source: IEC 60228:2004 Tables 2 and 3; temperature coefficient IEC 60287.
    """
    if isinstance(laid, FreeAir) or laid.solar:
        return dc_cable.resistance(dc_cable.tinned_resistance_20(section_mm2).value, laid.t_loaded_c)
    return conductor.resistance(laid.material, section_mm2, laid.t_loaded_c, laid.conductor_class)


def smallest_section(
    laid: FreeAir | ByMethod, current_min_a: float, drop: Drop, section_from_mm2: float = 4.0
) -> Rating | None:
    """Return the smallest standard section in mm² that carries the current and keeps the drop, or None.

    Iz >= current_min_a and the drop with the conductor hot not above its limit. Sections below section_from_mm2 (4 mm²
    by common practice, for strength and connectors) are left out. Tolerance 0. Raises NoRow where the tables hold no
    section of such a cable.
    """
    tabulated_count, passed_over = 0, list[Sayable]()
    for section_mm2 in series("section_mm2"):
        if section_mm2 < section_from_mm2:
            continue
        try:
            carried, r = capacity(laid, section_mm2), hot_resistance(laid, section_mm2)
        except NoRow:
            continue
        tabulated_count += 1
        fall = dc_cable.voltage_drop(drop.length_m, drop.impp_a, r.value)
        percent = dc_cable.voltage_drop_percent(fall.value, drop.umpp_v)
        if carried.value >= current_min_a and percent.value <= drop.limit_percent:
            chosen = _chosen(laid, section_mm2, current_min_a, drop, carried, percent)
            return replace(chosen, passed_over=nearest(passed_over))
        carries = carried.value >= current_min_a
        passed_over.append(too_small(section_mm2, *((percent, "Δu,max") if carries else (carried, "Iz,min"))))
    if not tabulated_count:
        raise NoRow(f"no section is tabulated for {laid}")
    return None


def _chosen(
    laid: FreeAir | ByMethod, section_mm2: float, current_min_a: float, drop: Drop, carried: Rating, percent: Rating
) -> Rating:
    given = (
        Given("Iz,min", current_min_a, "A"),
        Given("Iz", carried.value, "A"),
        Given("Δu,max", drop.limit_percent, "%"),
        Given("Δu", percent.value, "%"),
        Given("θ", laid.t_loaded_c, "°C", phrase("conductor temperature")),
    )
    formula = phrase("smallest section with Iz >= Iz,min and Δu <= Δu,max")
    clause, row = carried.clause, carried.table_row
    return Rating(Symbol.S, section_mm2, "mm²", formula, given, clause, row, origin=Origin.CHOSEN)
