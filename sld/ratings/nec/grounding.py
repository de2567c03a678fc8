"""Equipment grounding conductors, grounding electrode conductors and bonding jumpers. Sections in mm²."""

from __future__ import annotations

from sld.citation import Citation, cited, from_memory
from sld.quantity import Given, Rating
from sld.ratings.domain import require_positive
from sld.ratings.symbol import Symbol
from sld.tables.table import NoRow, table
from sld.wire_size import SIZES, area_mm2
from sld.words import phrase, verbatim

__all__ = ["bonding_jumper", "equipment_grounding", "grounding_electrode", "increased"]

_ELECTRODE_LIMITS = {
    "rod": (phrase("rod"), "6", phrase("table value, to a rod electrode at most 6 AWG")),
    "mesh": (phrase("mesh"), "6", phrase("table value, to a mesh electrode at most 6 AWG")),
    "foundation": (phrase("foundation"), "4", phrase("table value, to a foundation electrode at most 4 AWG")),
    "ring": (phrase("ring"), "2", phrase("table value, to a ring electrode at most 2 AWG")),
}
"""Kind of electrode, size in copper that need never be exceeded to it, formula. A ring has at least 2 AWG itself."""

_LARGEST_TABLED = {"Cu": 1100, "Al": 1750}


def equipment_grounding(device_a: float, material: str = "Cu") -> Rating:
    """Return the least equipment grounding conductor by the rating in A of the overcurrent device ahead. [mm²]

    Raises NoRow above 4000 A, ValueError for a device of zero or less. Source: NEC 2023 Table 250.122; 690.45 for PV
    circuits, with an assumed device where there is none.
    """
    require_positive(device_a=device_a)
    row = table("nec_equipment_grounding").at_least("device_a", device_a)
    given = (Given("In", device_a, "A"), Given(phrase("size"), row[material], "", verbatim(material)))
    clause = cited("NEC 2023 250.122(A)")
    return Rating(Symbol.SPE_MIN, area_mm2(row[material]), "mm²", phrase("table value"), given, clause, row.reference)


def increased(least: Rating, section_mm2: float, needed_mm2: float) -> Rating:
    """Return an equipment grounding conductor increased as its circuit's conductors are, to the next size up. [mm²]

    section_mm2: the conductors as laid; needed_mm2: what their current asks for. Never above the conductors
    themselves (250.122(A)). Source: NEC 2023 250.122(B).
    """
    if section_mm2 <= needed_mm2:
        return least
    wanted_mm2 = min(least.value * section_mm2 / needed_mm2, section_mm2)
    sizes = [area for area in map(area_mm2, SIZES) if area >= wanted_mm2 * (1 - 1e-6)]
    value = min(sizes[0], section_mm2) if sizes else section_mm2
    given = (*least.given, Given("S", section_mm2, "mm²", phrase("as laid")), Given("S,current", needed_mm2, "mm²"))
    formula = phrase("SPE by the table · S / S,current, at most S")
    return Rating(Symbol.SPE_MIN, value, "mm²", formula, given, cited("NEC 2023 250.122(A), (B)"), least.table_row)


def _by_service(material: str, section_mm2: float) -> tuple[str, Citation]:
    """Return the size of Table 250.66 in copper for a service conductor, and how the row is cited."""
    for row in table("nec_grounding_electrode").where(material=material):
        limit_mm2 = area_mm2(row["up_to"])
        if section_mm2 <= limit_mm2 * 1.001:
            return row["Cu"], row.reference
    raise NoRow(f"no grounding electrode conductor for a service conductor of {section_mm2:g} mm²")


def grounding_electrode(material: str, service_mm2: float, electrode: str) -> Rating:
    """Return the least grounding electrode conductor in copper by the largest service conductor. [mm²]

    material, service_mm2: of the service conductor, parallel ones added; electrode: rod, mesh, foundation or ring,
    empty where it is not known, which limits nothing.
    Raises NoRow for a conductor beyond the table, ValueError for a section of zero or less.
    Source: NEC 2023 Table 250.66 and 250.66(A), (B), (C).
    """
    require_positive(service_mm2=service_mm2)
    size, reference = _by_service(material, service_mm2)
    unlimited = (verbatim(electrode) if electrode else phrase("kind not stated"), size, phrase("table value"))
    kind, limit, limited = _ELECTRODE_LIMITS.get(electrode, unlimited)
    given = (Given(phrase("S service"), service_mm2, "mm²", verbatim(material)), Given(phrase("electrode"), kind))
    value, formula = area_mm2(size), phrase("table value")
    if area_mm2(limit) < value:
        value, formula = area_mm2(limit), limited
    return Rating(Symbol.SE, value, "mm²", formula, given, cited("NEC 2023 250.66"), reference)


def bonding_jumper(material: str, service_mm2: float) -> Rating:
    """Return the least supply-side bonding jumper, or bonding conductor of water pipe and steel, in copper. [mm²]

    As Table 250.66; beyond 1100 kcmil of copper or 1750 kcmil of aluminium one eighth of the service conductors' area.
    Raises ValueError for a section of zero or less. Source: NEC 2023 Table 250.102(C)(1), 250.104(A)(1), (C).
    """
    require_positive(service_mm2=service_mm2)
    given = (Given(phrase("S service"), service_mm2, "mm²", verbatim(material)),)
    clause = from_memory("NEC 2023 250.102(C)(1), 250.104")
    if service_mm2 > area_mm2(str(_LARGEST_TABLED[material])):
        return Rating(Symbol.SB, service_mm2 / 8, "mm²", phrase("S service / 8"), given, clause)
    size, reference = _by_service(material, service_mm2)
    return Rating(Symbol.SB, area_mm2(size), "mm²", phrase("table value"), given, clause, reference)
