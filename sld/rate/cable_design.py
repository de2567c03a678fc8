"""An AC cable as the formulas take it: material, insulation, method, correction factors, standard sections."""

from __future__ import annotations

from dataclasses import replace

from sld.model.conductors import phases
from sld.model.device import Busbar, Cable
from sld.model.system import System
from sld.quantity import Rating
from sld.rate.ledger import Ledger
from sld.ratings import ac_cable, conductor
from sld.ratings.cable_section import CableDesign
from sld.spec.blocks.circuit import AcCable
from sld.tables.table import NoRow, series

__all__ = [
    "around",
    "conductor_class",
    "conductor_material",
    "correction_factors",
    "design",
    "hot_c",
    "insulation",
    "next_section",
]

_GROUPING = {
    "A1": "bunched_A_to_F",
    "A2": "bunched_A_to_F",
    "B1": "bunched_A_to_F",
    "B2": "bunched_A_to_F",
    "C": "single_layer_wall_floor_unperforated_C",
    "D1": "D1_multicore_touching",
    "D2": "D2_touching",
    "E": "single_layer_perforated_tray_E_F",
    "F": "single_layer_perforated_tray_E_F",
}
_OPERATING_C = {"PVC": 70.0, "XLPE": 90.0}
_INDOOR_C = 30.0
_OUTDOOR_C = 40.0


def conductor_material(cable: Cable) -> str:
    """Return the material as the tables name it."""
    return "Cu" if cable.type.conductor == "copper" else "Al"


def insulation(cable: Cable) -> str:
    """Return the insulation as the tables name it; a solar cable used for AC counts as cross-linked."""
    return "PVC" if cable.type.insulation == "PVC" else "XLPE"


def conductor_class(cable: Cable) -> int:
    """Return the class of IEC 60228: 2 stranded, 5 flexible."""
    return 5 if cable.type.strands == "class 5" else 2


def hot_c(cable: Cable) -> float:
    """Return the conductor's temperature at full load. [°C]"""
    return _OPERATING_C[insulation(cable)]


def design(system: System, cable: Cable, given: AcCable, factors: tuple[Rating, ...]) -> CableDesign:
    """Return everything about a cable but its section, as the formulas take it."""
    loaded = 3 if phases(system, cable.owner) == 3 else 2
    method = ("F3t" if loaded == 3 else "F2") if given.method == "F" else given.method
    return CableDesign(
        conductor_material(cable),
        insulation(cable),
        loaded,
        method,
        factors,
        given.parallel,
        conductor_class(cable),
    )


def around(section_mm2: float) -> str:
    """Write the standard sections around one that is not standard: `; nearest sections 6, 10 mm²`."""
    standard = series("section_mm2")
    smaller = [each for each in standard if each < section_mm2][-1:]
    larger = [each for each in standard if each > section_mm2][:1]
    near = ", ".join(f"{each:g}" for each in (*smaller, *larger))
    return "" if section_mm2 in standard else f"; nearest sections {near} mm²"


def next_section(system: System, ledger: Ledger, cable: Cable, given: AcCable, above_mm2: float) -> float | None:
    """Return the next standard section above one that is tabulated for a cable as laid, None above the last. [mm²]"""
    factors, _ = correction_factors(system, ledger, cable, given)
    plan = design(system, cable, given, factors or ())
    for section_mm2 in series("section_mm2"):
        if section_mm2 <= above_mm2:
            continue
        try:
            ac_cable.tabulated_capacity(
                plan.material, plan.insulation, plan.loaded_conductors_count, plan.method, section_mm2
            )
            conductor.resistance(plan.material, section_mm2, hot_c(cable), plan.conductor_class)
        except NoRow:
            continue
        return section_mm2
    return None


def correction_factors(
    system: System, ledger: Ledger, cable: Cable, given: AcCable
) -> tuple[tuple[Rating, ...] | None, list[str]]:
    """Return the correction factors of a cable, None where a table has no answer, and what was assumed for them."""
    in_ground = given.method in ("D1", "D2")
    assumed: list[str] = []
    ambient_c = given.ambient_temperature_c
    if ambient_c is None and (cable.location or not in_ground):
        ambient_c = _warmest_c(system, cable, assumed)
    if ambient_c is None:
        ambient_c = 20.0 if in_ground else _INDOOR_C
        assumed.append(f"{ambient_c:.0f} °C {'ground' if in_ground else 'air'} around AC cables")
    # each of several cables in parallel is a circuit beside the others (IEC 60364-5-52:2009 523.7, from memory)
    circuits = given.grouped_circuits + given.parallel - 1
    try:
        grouping = ac_cable.grouping_factor(_GROUPING[given.method], circuits)
        factors = (
            ac_cable.ambient_factor(ambient_c, insulation(cable), "ground" if in_ground else "air"),
            _counted(grouping, given) if given.parallel > 1 else grouping,
        )
    except NoRow:
        # without its factor a table value would claim a capacity that the cable does not have
        together = f", {circuits} circuits together" if circuits > 1 else ""
        where = f"{ambient_c:g} °C {'ground' if in_ground else 'air'}{together}"
        ledger.unanswered(cable.key, "Iz", f"no correction factor for {where}, {insulation(cable)} insulation")
        return None, assumed
    if circuits == 1:
        assumed.append("AC cables not grouped with other circuits")
    return factors, assumed


def _warmest_c(system: System, cable: Cable, assumed: list[str]) -> float | None:
    """Return the warmest air where a cable is laid, None where the spec says nothing; keep what was assumed. [°C]

    The worst part of a way decides (IEC 60364-5-52:2009 523.8, from memory): without a place of its own a cable is in
    those of the boards or units that it joins.
    """
    places = [cable.location] if cable.location else _ends(system, cable)
    found: list[tuple[float, str]] = []
    for place in places:
        location = system.site.locations.get(place)
        if location is None:
            continue
        if location.ambient_temperature_c is not None:
            found.append((location.ambient_temperature_c, ""))
        elif location.outdoor:
            found.append((_OUTDOOR_C, f"{_OUTDOOR_C:.0f} °C around outdoor AC cables"))
    warmest = max(found, default=None)
    if warmest is None or (not cable.location and warmest[0] < _INDOOR_C):
        return None
    if warmest[1]:
        assumed.append(warmest[1])
    elif not cable.location:
        assumed.append(f"{warmest[0]:g} °C around AC cables, as in the warmer place they join")
    return warmest[0]


def _ends(system: System, cable: Cable) -> list[str]:
    """Return the places of the board and the unit that a cable lies between, as far as the spec says."""
    board = next((each for each in system.upstream(cable.key) if isinstance(each, Busbar)), None)
    served = system.devices.get(cable.owner)
    return [each.location for each in (board, served) if each is not None and each.location]


def _counted(grouping: Rating, given: AcCable) -> Rating:
    """Return the grouping factor with the count of circuits that it was read for, parallel cables included."""
    count = f"{given.grouped_circuits} grouped + {given.parallel} in parallel − 1"
    said = tuple(replace(each, origin=count) if each.symbol == "circuits" else each for each in grouping.given)
    text = f"{given.parallel} parallel cables count as circuits of the group"
    return replace(grouping, given=said).assuming(text)
