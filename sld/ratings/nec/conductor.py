"""Resistance and reactance of a conductor a kilometre, from the tables of chapter 9."""

from __future__ import annotations

from sld.citation import cited
from sld.quantity import Given, Rating
from sld.ratings.symbol import Symbol
from sld.tables.table import NoRow, Row, table
from sld.wire_size import SIZES
from sld.words import phrase, verbatim

__all__ = ["KFT_PER_KM", "reactance", "resistance"]

KFT_PER_KM = 1 / 0.3048
"""Thousands of feet in a kilometre, by the international foot of 0.3048 m."""

_ALPHA_75_PER_K = {"Cu": 0.00323, "Al": 0.00330}
"""Temperature coefficients of Table 8 note 2, at 75 °C. [1/K]"""


def resistance(material: str, size: str, temperature_c: float = 75.0) -> Rating:
    """Return the resistance in ohm/km of a stranded conductor: R75 · [1 + α · (θ − 75 °C)].

    material: "Cu" or "Al"; size: 14 to 1000. Raises NoRow for a size that the table lacks.
    Source: NEC 2023 Chapter 9 Table 8 and its note 2 (stranded, uncoated).
    """
    row = table("nec_resistance").pick(size=size)
    r_75 = row.number(f"{material}_ohm_per_kft") * KFT_PER_KM
    alpha = _ALPHA_75_PER_K[material]
    given = (
        Given("R75", r_75, "Ω/km", verbatim(f"{material} {size}")),
        Given("α", alpha, "1/K"),
        Given("θ", temperature_c, "°C"),
    )
    value = r_75 * (1 + alpha * (temperature_c - 75))
    clause = cited(phrase("{standard} Chapter 9 Table 8, note 2", standard="NEC 2023"))
    return Rating(Symbol.R, value, "Ω/km", "R75 · [1 + α · (θ − 75 °C)]", given, clause, row.reference)


def reactance(size: str) -> Rating:
    """Return the reactance in ohm/km at 60 Hz in steel conduit, the larger column; the next smaller size where a size
    is not tabulated. Raises NoRow for a text that is no size. Source: NEC 2023 Chapter 9 Table 9."""
    row = _row(size)
    given = (Given(phrase("size"), size),)
    value = row.number("x_ohm_per_kft") * KFT_PER_KM
    return Rating(
        Symbol.X,
        value,
        "Ω/km",
        phrase("table value, steel conduit"),
        given,
        cited(phrase("{standard} Chapter 9 Table 9", standard="NEC 2023")),
        row.reference,
    )


def _row(size: str) -> Row:
    smaller = SIZES[: SIZES.index(size) + 1] if size in SIZES else ()
    for each in reversed(smaller):
        found = table("nec_reactance").where(size=each)
        if found:
            return found[0]
    raise NoRow(f"no reactance for a conductor of size {size}")
