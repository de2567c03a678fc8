"""How a DC cable is laid: in free air by EN 50618, or by a method of IEC 60364-5-52 with its factors."""

from __future__ import annotations

from sld.frozen import dataclass, replace
from sld.model.device import Cable
from sld.model.system import System
from sld.quantity import Rating
from sld.ratings import ac_cable, dc_cable
from sld.ratings.dc_section import ByMethod, FreeAir
from sld.spec.blocks.circuit import DcCable
from sld.steps.cable_conditions import GROUND_C, declared, spaced_in_ground
from sld.steps.cable_design import conductor_class, conductor_material, insulation
from sld.words import Sayable, amount, phrase

__all__ = ["Laid", "bunched_count", "in_ground", "laid"]

_BEHIND_MODULES_C = 70.0
_USUAL_METHOD = "B2"
_LARGEST_BUNCH = 20
"""Circuits up to which IEC 60364-5-52 Table B.52.17 goes; more are laid in several bunches."""


@dataclass(frozen=True, slots=True)
class Laid:
    """How a cable is laid as the formulas take it; air, circuits together, and what was assumed."""

    design: FreeAir | ByMethod
    ambient_c: float
    circuits_count: int
    said: tuple[Sayable, ...]


def bunched_count(cable: Cable) -> int:
    """Return how many circuits of a DC cable are bunched where the spec does not say: all, in bunches of the limit."""
    return min(cable.count, _LARGEST_BUNCH)


def in_ground(given: DcCable) -> bool:
    """Return whether a DC cable lies in a duct in the ground, or in the ground itself."""
    return given.method in ("D1", "D2")


def laid(system: System, cable: Cable, given: DcCable) -> Laid:
    """Return how a cable is laid. Raises NoRow where the tables have no factor for what surrounds it.

    Without a word on it all strings of its entry are bunched on a hot roof.
    """
    said: list[Sayable] = []
    ambient_c = _ambient_c(system, given, said)
    circuits_count = _circuits_count(cable, given, said)
    if cable.type.insulation == "EN 50618" and given.method is None:
        highest_c = cable.type.temperature_rating_c or dc_cable.SOLAR_CONDUCTOR_C
        free = FreeAir(given.arrangement, ambient_c, circuits_count, highest_c, tuple(declared(given)))
        return Laid(free, ambient_c, circuits_count, tuple(said))
    return Laid(
        _by_method(system, cable, given, ambient_c, circuits_count, said), ambient_c, circuits_count, tuple(said)
    )


def _by_method(
    system: System, cable: Cable, given: DcCable, ambient_c: float, circuits_count: int, said: list[Sayable]
) -> ByMethod:
    method = given.method or _USUAL_METHOD
    if given.method is None:
        said.append(phrase("DC cables that are no solar cables laid by method {method}", method=method))
    made = ByMethod(
        conductor_material(cable),
        insulation(cable),
        method,
        ambient_c,
        (),
        conductor_class(cable),
        cable.type.insulation == "EN 50618",
    )
    if ambient_c >= made.t_conductor_max_c:
        return made  # it carries nothing, and no table has a factor for it
    factors: list[Rating] = [
        ac_cable.ambient_factor(ambient_c, made.insulation, "ground" if in_ground(given) else "air"),
        ac_cable.grouping_factor(_grouping(given, method), circuits_count),
    ]
    if in_ground(given):
        factors += _of_the_ground(system, given, method, said)
    return replace(made, factors=(*factors, *declared(given)))


def _grouping(given: DcCable, method: str) -> str:
    """Return the row of the grouping table: strings share a duct and touch unless a distance is given."""
    return spaced_in_ground(method, given.spacing_m) or ("D2_touching" if method == "D2" else "bunched_A_to_F")


def _of_the_ground(system: System, given: DcCable, method: str, said: list[Sayable]) -> list[Rating]:
    soil = given.soil_resistivity_k_m_per_w or system.site.soil_resistivity_k_m_per_w
    found = [] if soil is None else [ac_cable.soil_factor(soil, method)]
    if soil is None:
        said.append(phrase("soil of {resistivity} around DC cables in the ground", resistivity=amount(2.5, "K·m/W")))
    if given.depth_m is None:
        said.append(phrase("DC cables in the ground at most 0.8 m deep"))
        return found
    return [*found, ac_cable.depth_factor(given.depth_m, method)]


def _ambient_c(system: System, given: DcCable, said: list[Sayable]) -> float:
    if given.ambient_temperature_c is not None:
        return given.ambient_temperature_c
    if not in_ground(given):
        said.append(phrase("{ambient} around DC cables", ambient=amount(_BEHIND_MODULES_C, "°C")))
        return _BEHIND_MODULES_C
    if system.site.soil_temperature_c is not None:
        return system.site.soil_temperature_c
    said.append(phrase("{ambient} ground around DC cables", ambient=amount(GROUND_C, "°C")))
    return GROUND_C


def _circuits_count(cable: Cable, given: DcCable, said: list[Sayable]) -> int:
    if given.grouped_circuits is not None:
        return given.grouped_circuits
    if cable.count > _LARGEST_BUNCH:
        said.append(
            phrase("{count} strings in bunches of at most {largest}", count=cable.count, largest=_LARGEST_BUNCH)
        )
    elif cable.count > 1:
        said.append(phrase("{count} strings bunched on one way, and with no others", count=cable.count))
    else:
        said.append(phrase("DC cables not bunched with other circuits"))
    return bunched_count(cable)
