"""An AC cable as the formulas take it: material, insulation, method, standard sections."""

from __future__ import annotations

from sld.model.conductors import phases
from sld.model.device import Cable
from sld.model.system import System
from sld.quantity import Rating
from sld.ratings import ac_cable, conductor
from sld.ratings.cable_section import CableDesign
from sld.spec.blocks.circuit import AcCable
from sld.tables.table import NoRow, series
from sld.words import Phrase, amount, phrase, sequence

__all__ = [
    "conductor_class",
    "conductor_material",
    "design",
    "hot_c",
    "insulation",
    "k_insulation",
    "next_section",
    "with_nearest",
]

_OPERATING_C = {"PVC": 70.0, "XLPE": 90.0}


def conductor_material(cable: Cable) -> str:
    """Return the material as the tables name it."""
    return "Cu" if cable.type.conductor == "copper" else "Al"


def insulation(cable: Cable) -> str:
    """Return the insulation as the tables name it; a solar cable used for AC counts as cross-linked."""
    return "PVC" if cable.type.insulation == "PVC" else "XLPE"


def k_insulation(cable: Cable) -> str:
    """Return the insulation as the table of the factor k names it."""
    return "PVC70" if insulation(cable) == "PVC" else "XLPE_EPR90"


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


def with_nearest(what: Phrase, section_mm2: float) -> Phrase:
    """Add the standard sections around one that is not standard: `...; nearest sections 6, 10 mm²`."""
    standard = series("section_mm2")
    smaller = [each for each in standard if each < section_mm2][-1:]
    larger = [each for each in standard if each > section_mm2][:1]
    if section_mm2 in standard:
        return what
    near = sequence(amount(each, digits=6) for each in (*smaller, *larger))
    return phrase("{what}; nearest sections {near} mm²", what=what, near=near)


def next_section(system: System, cable: Cable, given: AcCable, above_mm2: float) -> float | None:
    """Return the next standard section above one that is tabulated for a cable as laid, None above the last. [mm²]"""
    plan = design(system, cable, given, ())
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
