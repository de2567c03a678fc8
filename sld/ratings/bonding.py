"""Smallest sections of main bonding conductors and of the bonding of array frames."""

from __future__ import annotations

from sld.citation import cited, from_memory, in_annex, in_table
from sld.quantity import Given, Rating
from sld.ratings.domain import require_positive
from sld.ratings.symbol import Symbol
from sld.tables.table import NoRow, next_at_least, series, table
from sld.words import phrase

__all__ = ["bonding_as_nzs", "copper_equivalent", "frame_bonding", "main_bonding", "main_bonding_pme"]

_LEAST_MM2, _MOST_MM2 = 6.0, 25.0
_FRAME_MM2 = {("Cu", False): 6.0, ("Cu", True): 16.0, ("Al", True): 50.0}


def main_bonding(largest_protective_mm2: float) -> Rating:
    """Return the main bonding conductor in mm² copper: half of the largest protective conductor.

    At least 6, at most 25; the half is rounded up to a standard section. Raises ValueError at zero or less.
    Source: IEC 60364-5-54:2011 544.1; BS 7671:2018 544.1.1.
    """
    require_positive(largest_protective_mm2=largest_protective_mm2)
    clause = cited("IEC 60364-5-54:2011 544.1", "BS 7671:2018 544.1.1")
    given = (Given("SPE,largest", largest_protective_mm2, "mm²"),)
    sections = [section_mm2 for section_mm2 in series("section_mm2") if _LEAST_MM2 <= section_mm2 <= _MOST_MM2]
    value = next_at_least(sections, largest_protective_mm2 / 2) or _MOST_MM2
    formula = phrase("SPE,largest / 2, next size up, from 6 mm² to 25 mm²")
    return Rating(Symbol.SB, value, "mm²", formula, given, clause)


def bonding_as_nzs(clause: str) -> Rating:
    """Return the equipotential bonding conductor in mm² copper in Australia and New Zealand: 4 mm².

    clause: AS/NZS 3000:2018 5.6.3.2 for conductive parts, AS/NZS 5033:2021 4.6 for the frames; all from memory.
    """
    return Rating(Symbol.SB, 4.0, "mm²", phrase("at least 4 mm² Cu"), (), from_memory(clause))


def main_bonding_pme(neutral_mm2: float) -> Rating:
    """Return the main bonding conductor in mm² copper where the supply neutral is earthed at many points.

    neutral_mm2: copper-equivalent section of the supply neutral. Raises ValueError for a section of zero or less.
    Source: BS 7671:2018 Table 54.8.
    """
    require_positive(neutral_mm2=neutral_mm2)
    for row in table("main_bonding_pme"):
        if not row.has("neutral_up_to_mm2") or neutral_mm2 <= row.number("neutral_up_to_mm2"):
            break
    given = (Given("SN", neutral_mm2, "mm²", phrase("supply neutral")),)
    return Rating(
        Symbol.SB,
        row.number("bonding_mm2"),
        "mm²",
        phrase("table value"),
        given,
        cited(in_table("BS 7671:2018", "54.8")),
        row.reference,
    )


def copper_equivalent(section_mm2: float, material: str) -> Rating:
    """Return the copper section in mm² that conducts as well as the neutral of a supply: S · ρCu / ρ.

    material: "Cu" or "Al". Raises NoRow for another, ValueError for a section of zero or less.
    Source: resistivities of IEC 60364-5-52:2009 Annex G, whose ratio is 0.625 for aluminium.
    """
    require_positive(section_mm2=section_mm2)
    copper, other = (
        table("conductor_material").pick(material=each).number("rho_hot_ohm_mm2_per_m") for each in ("Cu", material)
    )
    given = (Given("S", section_mm2, "mm²"), Given("ρCu", copper, "Ω·mm²/m"), Given("ρ", other, "Ω·mm²/m"))
    clause = cited(in_annex("IEC 60364-5-52:2009", "G"))
    return Rating(Symbol.S_NEUTRAL, section_mm2 * copper / other, "mm²", "S · ρCu / ρ", given, clause)


def frame_bonding(bonded_to_lightning_protection: bool, material: str = "Cu") -> Rating:
    """Return the bonding conductor in mm² of an array frame.

    6 mm² Cu; 16 mm² Cu or 50 mm² Al where it can carry lightning current.
    bonded_to_lightning_protection: the separation distance is not kept, so that the frame is part of the lightning
    protection. Raises NoRow for a material without a value (aluminium for functional bonding).
    Source: EN 62305-3 Supplement 5 (6 mm² and 16 mm² seen in handbooks; aluminium from memory).
    """
    value = _FRAME_MM2.get((material, bonded_to_lightning_protection))
    if value is None:
        raise NoRow(f"no section for frame bonding in {material}")
    state = phrase("part of the lightning protection") if bonded_to_lightning_protection else phrase("functional")
    given = (Given(phrase("frame"), state), Given(phrase("material"), material))
    formula = phrase("6 mm² Cu; 16 mm² Cu or 50 mm² Al with lightning current")
    return Rating(
        Symbol.SB_FRAME,
        value,
        "mm²",
        formula,
        given,
        cited(phrase("{standard} Supplement {number}", standard="EN 62305-3", number="5")),
    )
