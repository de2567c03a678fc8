"""What a conductor carries: Table 310.16, the factors for ambient and number, and the temperature of its terminals."""

from __future__ import annotations

from collections.abc import Sequence
from math import prod

from sld.citation import cited, from_memory, in_table
from sld.quantity import Given, Rating
from sld.ratings.domain import require_positive
from sld.ratings.specified import specified
from sld.ratings.symbol import Symbol
from sld.tables.table import NoRow, table
from sld.words import NOTHING, amount, phrase, sequence, verbatim

__all__ = [
    "adjustment_factor",
    "ambient_factor",
    "capacity",
    "corrected",
    "tabulated",
    "terminal_temperature",
]

_COLUMNS_C = (60.0, 75.0, 90.0)
_LOW_UP_TO_A = 100.0


def _column(temperature_c: float) -> str:
    if temperature_c not in _COLUMNS_C:
        raise NoRow(f"Table 310.16 has columns for 60, 75 and 90 °C, not for {temperature_c:g} °C")
    return f"{temperature_c:.0f}"


def tabulated(material: str, size: str, temperature_c: float) -> Rating:
    """Return the ampacity It in A of a conductor with a temperature rating of 60, 75 or 90 °C.

    material: "Cu" or "Al". Raises NoRow for another temperature or size. Source: NEC 2023 Table 310.16.
    """
    row = table("nec_ampacity").pick(material=material, size=size)
    given = (Given(phrase("size"), size, "", verbatim(material)), Given(phrase("column"), temperature_c, "°C"))
    value = row.number(f"i_{_column(temperature_c)}_a")
    reference = sequence([row.reference, amount(temperature_c, "°C", 6)])
    return Rating(Symbol.IT, value, "A", phrase("table value"), given, cited(in_table("NEC 2023", "310.16")), reference)


def ambient_factor(ambient_c: float, temperature_c: float) -> Rating:
    """Return the correction factor Ca for the air around a conductor of a temperature rating, the next warmer band.

    Raises NoRow at or above the temperature that the conductor bears. Source: NEC 2023 Table 310.15(B)(1)(1), base
    30 °C; the second table of the code, base 40 °C, does not belong to Table 310.16.
    """
    row = table("nec_ambient").at_least("temperature_c", ambient_c)
    given = (Given("θ", ambient_c, "°C", phrase("ambient")), Given(phrase("column"), temperature_c, "°C"))
    value = row.number(f"f_{_column(temperature_c)}")
    return Rating(Symbol.CA, value, "", phrase("table value"), given, cited("NEC 2023 310.15(B)(1)"), row.reference)


def adjustment_factor(conductors_count: int) -> Rating:
    """Return the factor Cn for the number of current-carrying conductors together.

    Raises ValueError for none. Source: NEC 2023 Table 310.15(C)(1).
    """
    require_positive(conductors_count=conductors_count)
    row = table("nec_adjustment").at_least("conductors_count", conductors_count)
    given = (Given(phrase("conductors"), conductors_count, "", phrase("current-carrying")),)
    return Rating(
        Symbol.CN, row.number("factor"), "", phrase("table value"), given, cited("NEC 2023 310.15(C)(1)"), row.reference
    )


def terminal_temperature(current_a: float, stated_c: float | None = None) -> Rating:
    """Return the temperature in °C whose column limits a conductor at its terminals.

    As stated, else 60 °C for circuits of up to 100 A and 75 °C above; equipment that is listed and marked for 75 °C may
    use that column below 100 A too. Source: NEC 2023 110.14(C)(1) (from memory).
    """
    clause = from_memory("NEC 2023 110.14(C)(1)")
    if stated_c is not None:
        return specified(Symbol.THETA_TERMINAL, stated_c, "°C")
    value = 60.0 if current_a <= _LOW_UP_TO_A else 75.0
    given = (Given("I", current_a, "A"),)
    said = (phrase("terminals of {value}, none stated", value=amount(value, "°C")),)
    return Rating(
        Symbol.THETA_TERMINAL, value, "°C", phrase("60 °C up to 100 A, 75 °C above"), given, clause, NOTHING, said
    )


def corrected(tabulated_a: Rating, factors: Sequence[Rating], parallel_count: int = 1) -> Rating:
    """Return the ampacity in A after correction and adjustment: n · It · product of the factors.

    Raises ValueError for a count below one. Source: NEC 2023 310.15(B), (C); 310.10(G) for conductors in parallel.
    """
    require_positive(parallel_count=parallel_count)
    value = parallel_count * tabulated_a.value * prod(factor.value for factor in factors)
    given = [Given("It", tabulated_a.value, "A", tabulated_a.table_row)]
    given += [factor.as_input(factor.table_row) for factor in factors]
    symbols = [each.name for each in given]
    if parallel_count > 1:
        given.insert(0, Given("n", parallel_count, "", phrase("in parallel")))
        symbols.insert(0, "n")
    return Rating(Symbol.I_CORRECTED, value, "A", " · ".join(symbols), tuple(given), cited("NEC 2023 310.15(B), (C)"))


def capacity(corrected_a: Rating, terminal_a: Rating, parallel_count: int = 1) -> Rating:
    """Return what a conductor carries for good in A: its corrected ampacity, at most that of the terminals' column.

    terminal_a: the ampacity of one conductor by the terminals' column, without factors. Source: NEC 2023 110.14(C).
    """
    limit_a = parallel_count * terminal_a.value
    given = (
        *corrected_a.given,
        Given("I,corrected", corrected_a.value, "A"),
        Given("I,terminal", limit_a, "A", terminal_a.table_row),
    )
    value = min(corrected_a.value, limit_a)
    clause = from_memory("NEC 2023 310.15, 110.14(C)")
    notes = (*corrected_a.assumptions, *terminal_a.assumptions)
    formula = "min(I,corrected; I,terminal)"
    return Rating(Symbol.IZ, value, "A", formula, given, clause, corrected_a.table_row, notes)
