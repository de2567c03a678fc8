"""Smallest sections of protective and earthing conductors."""

from __future__ import annotations

from sld.citation import cited, clause_from_memory, from_memory, in_table
from sld.quantity import Given, Origin, Rating
from sld.ratings.domain import require_not_negative, require_positive
from sld.ratings.symbol import Symbol
from sld.tables.table import NoRow, next_at_least, series, table
from sld.words import phrase
from sld.words.cell import of_cell

__all__ = [
    "armour_equivalent",
    "armour_resistance_ohm_per_km",
    "buried_earthing_conductor",
    "combined_conductor_minimum",
    "earthing_conductor_as_nzs",
    "high_leakage_minimum",
    "laid_beside_minimum",
    "protective_conductor_section",
    "standard_section",
    "table_section",
]

_PART_54 = "IEC 60364-5-54:2011"
_HIGH_LEAKAGE_MA = 10.0
_LAY, _STEEL_OHM_MM2_PER_KM = 1.1, 138.0
_COMBINED_MM2 = {"Cu": 10.0, "Al": 16.0}
_HIGH_LEAKAGE_MM2 = {"Cu": 10.0, "Al": 16.0}


def standard_section(needed: Rating) -> Rating | None:
    """Return the next standard section up in mm², None above the largest. Never the nearest: 47.5 mm² becomes 50 mm².

    Raises ValueError for a section of zero or less. Source: IEC 60228 nominal sections.
    """
    require_positive(needed_mm2=needed.value)
    value = next_at_least(series("section_mm2"), needed.value)
    if value is None:
        return None
    given = (needed.by_formula(),)
    formula = phrase("next standard section ≥ {symbol}", symbol=needed.symbol)
    return Rating(
        Symbol.S,
        value,
        "mm²",
        formula,
        given,
        needed.clause,
        needed.table_row,
        needed.assumptions,
        origin=Origin.CHOSEN,
    )


def table_section(line_section_mm2: float) -> Rating:
    """Return the protective conductor in mm² by the table, before rounding up to a standard section.

    Same material as the line conductor: S up to 16 mm², 16 mm² up to 35 mm², half of S above.
    Raises ValueError for a section of zero or less. Source: IEC 60364-5-54:2011 Table 54.2; BS 7671:2018 Table 54.7.
    """
    require_positive(line_section_mm2=line_section_mm2)
    for row in table("protective_conductor"):
        if not row.has("line_up_to_mm2") or line_section_mm2 <= row.number("line_up_to_mm2"):
            break
    value = row.number("factor") * line_section_mm2 + row.number("fixed_mm2")
    given = (Given("S", line_section_mm2, "mm²", phrase("line conductor")),)
    clause = cited(in_table(_PART_54, "54.2"), in_table("BS 7671:2018", "54.7"))
    return Rating(Symbol.SPE_TABLE, value, "mm²", phrase("S, 16 mm² or S/2"), given, clause, row.reference)


def protective_conductor_section(line_section_mm2: float) -> Rating | None:
    """Return the standard section in mm² of a protective conductor by the table, None above 600 mm² of line conductor.

    Raises ValueError for a section of zero or less. Source: IEC 60364-5-54:2011 Table 54.2.
    """
    return standard_section(table_section(line_section_mm2))


def earthing_conductor_as_nzs(active_mm2: float, material: str) -> Rating | None:
    """Return the least copper earthing conductor in mm² of a circuit in Australia or New Zealand, None beyond 630.

    material: of the active conductor, "Cu" or "Al". Raises ValueError for a section of zero or less.
    Source: AS/NZS 3000 Table 5.1.
    """
    require_positive(active_mm2=active_mm2)
    column = "for_copper_mm2" if material == "Cu" else "for_aluminium_mm2"
    for row in table("protective_conductor_as_nzs"):
        if row.number("active_mm2") >= active_mm2 and row.has(column):
            given = (Given("S", active_mm2, "mm²", phrase("line conductor")), Given(phrase("material"), material))
            clause = cited(in_table("AS/NZS 3000:2018", "5.1"))
            return Rating(
                Symbol.SPE_TABLE, row.number(column), "mm²", phrase("table value"), given, clause, row.reference
            )
    return None


def armour_equivalent(armour_mm2: float, k_lines: float, k_armour: float) -> Rating:
    """Return the section in mm² of the lines' material that an armour stands for as protective conductor: SA · k2 / k1.

    k_lines, k_armour: factors k in A·√s/mm². Raises ValueError for an input of zero or less.
    Source: BS 7671:2018 543.1.4 and Table 54.7 with its column for another material; worked in
    https://ru.scribd.com/document/383258516/
    """
    require_positive(armour_mm2=armour_mm2, k_lines=k_lines, k_armour=k_armour)
    given = (
        Given("SA", armour_mm2, "mm²", phrase("steel wires of the armour")),
        Given("k1", k_lines, "A·√s/mm²", phrase("line conductor")),
        Given("k2", k_armour, "A·√s/mm²", phrase("armour")),
    )
    clause = cited("BS 7671:2018 543.1.4", in_table(_PART_54, "54.2"))
    return Rating(Symbol.SPE, armour_mm2 * k_armour / k_lines, "mm²", "SA · k2 / k1", given, clause)


def armour_resistance_ohm_per_km(armour_mm2: float) -> float:
    """Return the resistance of an armour of steel wires at 20 °C in Ω/km: 1.1 · ρ / S.

    Raises ValueError for a section of zero or less. Source: resistivity of steel of IEC 60364-5-54:2011 Table A.54.1,
    0.138 Ω·mm²/m, to which its K of 78 belongs; 10 % for the lay of the wires (from memory).
    """
    require_positive(armour_mm2=armour_mm2)
    return _LAY * _STEEL_OHM_MM2_PER_KM / armour_mm2


def laid_beside_minimum(protected: bool) -> Rating:
    """Return the least section in mm² of a copper protective conductor that is no core of a cable, for its strength.

    protected: from mechanical damage. Source: IEC 60364-5-54:2011 543.1.3, 2.5 mm² or 4 mm²; in words at
    https://18theditionmock.com/temario/earthing-protective-conductors-and-bonding-part-5-chapter-54/
    """
    state = phrase("protected mechanically") if protected else phrase("not protected mechanically")
    given = (Given(phrase("protection"), state),)
    formula = phrase("2.5 mm² Cu protected, 4 mm² Cu not protected")
    value = 2.5 if protected else 4.0
    return Rating(Symbol.SPE_MIN, value, "mm²", formula, given, cited(f"{_PART_54} 543.1.3"))


def high_leakage_minimum(leakage_ma: float, material: str = "Cu") -> Rating | None:
    """Return the least section in mm² of the protective conductor of equipment that leaks more than 10 mA, else None.

    10 mm² copper or 16 mm² aluminium; two separate protective conductors are the other way. Raises NoRow for another
    material, ValueError for a negative current. Source: IEC 60364-5-54:2011 543.7 (from memory).
    """
    require_not_negative(leakage_ma=leakage_ma)
    if material not in _HIGH_LEAKAGE_MM2:
        raise NoRow(f"no section for a protective conductor of {material}")
    if leakage_ma <= _HIGH_LEAKAGE_MA:
        return None
    given = (Given("Ileak", leakage_ma, "mA"), Given(phrase("material"), material))
    clause = from_memory(f"{_PART_54} 543.7")
    formula = phrase("10 mm² Cu or 16 mm² Al above 10 mA")
    return Rating(Symbol.SPE_LEAK, _HIGH_LEAKAGE_MM2[material], "mm²", formula, given, clause)


def combined_conductor_minimum(material: str) -> Rating:
    """Return the least section in mm² of a combined neutral and protective conductor (PEN), for its strength.

    10 mm² copper or 16 mm² aluminium. Raises NoRow for another material. Source: IEC 60364-5-54:2011 543.4.1 (clause
    from memory); the values in print: Electrical Safety of Low-Voltage Systems, 11.6,
    https://digilib.universitaspertamina.ac.id/ebook/Electrical%20Safety%20of%20Low-Voltage%20Systems/files/basic-html/page214.html
    """
    if material not in _COMBINED_MM2:
        raise NoRow(f"no section for a combined conductor of {material}")
    given = (Given(phrase("material"), material),)
    formula = phrase("10 mm² Cu or 16 mm² Al")
    clause = clause_from_memory(f"{_PART_54} 543.4.1")
    return Rating(Symbol.SPEN_MIN, _COMBINED_MM2[material], "mm²", formula, given, clause)


def buried_earthing_conductor(protection: str, material: str = "copper") -> Rating:
    """Return the least section in mm² of a buried earthing conductor of copper or steel.

    protection: "corrosion_only" (no mechanical protection) or "none". Raises NoRow for anything else.
    Source: IEC 60364-5-54:2011 Table 54.1.
    """
    row = table("earthing_conductor_buried").pick(protection=protection)
    words = phrase("copper") if material == "copper" else phrase("steel")
    given = (Given(phrase("protection"), of_cell(protection)), Given(phrase("material"), words))
    value = row.number(f"{material}_mm2")
    return Rating(
        Symbol.SE_BURIED, value, "mm²", phrase("table value"), given, cited(in_table(_PART_54, "54.1")), row.reference
    )
