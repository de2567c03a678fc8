"""Resistance and reactance of a conductor a kilometre."""

from __future__ import annotations

from sld.citation import cited, in_annex
from sld.quantity import Given, Origin, Rating
from sld.ratings.domain import require_not_negative, require_positive
from sld.ratings.symbol import Symbol
from sld.tables.table import table
from sld.words import amount, phrase
from sld.words.cell import of_cell

__all__ = ["loaded_temperature", "reactance", "resistance"]


def resistance(
    material: str, section_mm2: float, temperature_c: float, conductor_class: int = 2, tinned: bool = False
) -> Rating:
    """Return the resistance a kilometre in ohm/km at a conductor temperature: R20 · [1 + α · (θ − 20 °C)].

    material: "Cu" or "Al"; conductor_class: 2 stranded, 5 flexible. State the temperature: 70 °C is PVC at full load,
    90 °C XLPE at full load, 20 °C understates the change of voltage by 20 to 28 %.
    Raises NoRow where IEC 60228 has no such conductor, ValueError at or below absolute zero or for a section <= 0.
    Source: IEC 60228:2004 Tables 1 to 3; temperature coefficient IEC 60287.
    """
    require_positive(section_mm2=section_mm2, absolute_temperature_k=temperature_c + 273.15)
    column = f"{material}_class{conductor_class}" + ("_tinned" if tinned else "")
    row = table("conductor_resistance").pick(section_mm2=section_mm2)
    r_20 = row.number(column)
    alpha = table("conductor_material").pick(material=material).number("alpha_20_per_k")
    value = r_20 * (1 + alpha * (temperature_c - 20))
    given = (
        Given(
            "R20",
            r_20,
            "Ω/km",
            phrase(
                "{material} class {conductor_class} {section}",
                material=material,
                conductor_class=conductor_class,
                section=amount(section_mm2, "mm²", 6),
            ),
        ),
        Given("α", alpha, "1/K"),
        Given("θ", temperature_c, "°C", phrase("conductor temperature")),
    )
    clause = cited("IEC 60228:2004", phrase("temperature coefficient IEC 60287"))
    return Rating(Symbol.R, value, "Ω/km", "R20 · [1 + α · (θ − 20 °C)]", given, clause, row.reference)


def reactance(arrangement: str = "default") -> Rating:
    """Return the reactance a kilometre in ohm/km for an arrangement (default, trefoil, flat_single_core).

    Raises NoRow for another. Source: IEC 60364-5-52:2009 Annex G for the default; the others are common practice.
    """
    row = table("reactance").pick(arrangement=arrangement)
    value = row.number("x_ohm_per_km")
    clause = (
        cited(in_annex("IEC 60364-5-52:2009", "G")) if arrangement == "default" else cited(phrase("common practice"))
    )
    note = phrase("cable reactance not declared, {value} taken", value=amount(value, "Ω/km", 6))
    given = (Given(phrase("arrangement"), of_cell(arrangement)),)
    return Rating(
        Symbol.X, value, "Ω/km", phrase("table value"), given, clause, row.reference, (note,), origin=Origin.ASSUMED
    )


def loaded_temperature(hot_c: float, reference_c: float, i_a: float, tabulated_a: float, factor: float) -> Rating:
    """Return the temperature θ of a conductor in °C under its real current: tp − (C² − I²/It²) · (tp − θ0).

    hot_c: tp, at the full tabulated current; reference_c: θ0, of the surroundings in the table (30 °C air, 20 °C
    ground); tabulated_a: It, of all cables in parallel; factor: C, the product of the correction factors. Raises
    ValueError for a negative current, or a table value or factor of zero or less.
    Source: BS 7671:2018 Appendix 4 6.1, as
    http://www.theiet.org/forums/forum/messageview.cfm?catid=205&threadid=47433 prints it.
    """
    require_not_negative(i_a=i_a)
    require_positive(tabulated_a=tabulated_a, factor=factor)
    value = hot_c - (factor**2 - (i_a / tabulated_a) ** 2) * (hot_c - reference_c)
    given = (
        Given("tp", hot_c, "°C"),
        Given("θ0", reference_c, "°C"),
        Given("I", i_a, "A"),
        Given("It", tabulated_a, "A"),
        Given("C", factor),
    )
    clause = cited(phrase("{standard} Appendix {number}", standard="BS 7671:2018", number="4 6.1"))
    return Rating(Symbol.THETA_LOAD, value, "°C", "tp − (C² − I²/It²) · (tp − θ0)", given, clause)
