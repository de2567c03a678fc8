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
    "cleared_energy",
    "k_factor",
    "section_for_energy",
    "withstand_energy",
]

_CLAUSE = cited("IEC 60364-4-43:2008 434.5.2", "IEC 60364-5-54:2011 543.1.2")
_LONGEST_S = 5.0
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


def cleared_energy(i_a: float, time_s: float) -> Rating:
    """Return the energy I² · t in A²s of a current of `i_a` A that is switched off after `time_s` s.

    Below 0.1 s the time is that of the maker, and the direct component of the current is not counted. Raises ValueError
    for an input of zero or less, and above 5 s, when heat flows off meanwhile. Source: IEC 60364-4-43:2008 434.5.2.
    """
    require_positive(i_a=i_a, time_s=time_s)
    if time_s > _LONGEST_S:
        raise ValueError(f"the adiabatic equation holds up to 5 s, not for {time_s} s")
    given = (Given("I", i_a, "A"), Given("t", time_s, "s"))
    return Rating(Symbol.I2T, i_a**2 * time_s, "A²s", "I² · t", given, _CLAUSE)


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
