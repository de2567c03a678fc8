"""What a fault heats: the adiabatic equation and its factor k."""

from __future__ import annotations

from math import sqrt

from sld.citation import cited
from sld.quantity import Given, Rating
from sld.ratings.domain import require_positive
from sld.ratings.symbol import Symbol
from sld.tables.table import NoRow, table
from sld.words import phrase, verbatim
from sld.words.cell import of_cell

__all__ = [
    "adiabatic_section",
    "k_factor",
    "section_for_energy",
    "withstand_energy",
]

_CLAUSE = cited("IEC 60364-4-43:2008 434.5.2", "IEC 60364-5-54:2011 543.1.2")
_SHORTEST_S, _LONGEST_S = 0.1, 5.0
_PVC_STEP_MM2 = 300.0


def k_factor(use: str, insulation: str, material: str, section_mm2: float) -> Rating:
    """Return the tabulated k in A·√s/mm² for a conductor. Mind the row: a core in a cable and a separate one differ.

    use and insulation: as in `sld/tables/k_factor.csv`; material: Cu, Al, steel or lead. Raises NoRow for a combination
    that is not tabulated, ValueError for a section of zero or less.
    Source: IEC 60364-4-43:2008 Table 43A; IEC 60364-5-54:2011 Tables A.54.2 to A.54.6.
    """
    require_positive(section_mm2=section_mm2)
    sizes = ("any", "above_300" if section_mm2 > _PVC_STEP_MM2 else "up_to_300")
    rows = table("k_factor").where(use=use, insulation=insulation, material=material)
    for row in rows:
        if row["section_range"] in sizes:
            given = (
                Given(phrase("use"), of_cell(use)),
                Given(phrase("insulation"), of_cell(insulation)),
                Given("S", section_mm2, "mm²", verbatim(material)),
            )
            return Rating(Symbol.K, row.number("k"), "A·√s/mm²", phrase("table value"), given, _CLAUSE, row.reference)
    raise NoRow(f"no factor k for {material}, {use}, {insulation}")


def _require_adiabatic(time_s: float) -> None:
    if not _SHORTEST_S <= time_s <= _LONGEST_S:
        raise ValueError(
            f"the adiabatic equation holds from 0.1 s to 5 s, not for {time_s} s; use the maker's I²t below"
        )


def adiabatic_section(i_a: float, time_s: float, k_a_sqrt_s_per_mm2: float) -> Rating:
    """Return the smallest section in mm² that takes `i_a` A for `time_s` s: √(I² · t) / k, k in A·√s/mm².

    Raises ValueError for an input outside its range, and for a time outside 0.1 s to 5 s.
    Source: IEC 60364-4-43:2008 434.5.2; IEC 60364-5-54:2011 543.1.2.
    """
    require_positive(i_a=i_a, k_a_sqrt_s_per_mm2=k_a_sqrt_s_per_mm2)
    _require_adiabatic(time_s)
    given = (Given("I", i_a, "A"), Given("t", time_s, "s"), Given("k", k_a_sqrt_s_per_mm2, "A·√s/mm²"))
    return Rating(Symbol.S_MIN, i_a * sqrt(time_s) / k_a_sqrt_s_per_mm2, "mm²", "√(I² · t) / k", given, _CLAUSE)


def section_for_energy(let_through_a2s: float, k_a_sqrt_s_per_mm2: float) -> Rating:
    """Return the smallest section in mm² for the I²t in A²s that a current-limiting device lets through (below 0.1 s).

    Raises ValueError for an input of zero or less. Source: IEC 60364-4-43:2008 434.5.2.
    """
    require_positive(let_through_a2s=let_through_a2s, k_a_sqrt_s_per_mm2=k_a_sqrt_s_per_mm2)
    given = (Given("I²t", let_through_a2s, "A²s"), Given("k", k_a_sqrt_s_per_mm2, "A·√s/mm²"))
    return Rating(Symbol.S_MIN, sqrt(let_through_a2s) / k_a_sqrt_s_per_mm2, "mm²", "√(I²t) / k", given, _CLAUSE)


def withstand_energy(section_mm2: float, k_a_sqrt_s_per_mm2: float) -> Rating:
    """Return the energy k² · S² in A²s that a conductor withstands. Raises ValueError for an input of zero or less.

    Source: IEC 60364-4-43:2008 434.5.2.
    """
    require_positive(section_mm2=section_mm2, k_a_sqrt_s_per_mm2=k_a_sqrt_s_per_mm2)
    given = (Given("k", k_a_sqrt_s_per_mm2, "A·√s/mm²"), Given("S", section_mm2, "mm²"))
    return Rating(Symbol.K2S2, (k_a_sqrt_s_per_mm2 * section_mm2) ** 2, "A²s", "k² · S²", given, _CLAUSE)
