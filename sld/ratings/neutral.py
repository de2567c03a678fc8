"""The least section of a neutral conductor that is smaller than its line conductors."""

from __future__ import annotations

from sld.citation import cited
from sld.quantity import Given, Rating
from sld.ratings.domain import require_positive
from sld.ratings.symbol import Symbol
from sld.tables.table import NoRow
from sld.words import phrase

__all__ = ["smallest_neutral"]

_FULL_UP_TO_MM2 = {"Cu": 16.0, "Al": 25.0}


def smallest_neutral(section_mm2: float, line_count: int, material: str) -> Rating:
    """Return the least section in mm² of the neutral of a circuit: that of the lines up to 16 mm² copper or 25 mm²
    aluminium and with fewer than three lines, else 16 or 25 mm².

    Above, its current decides. Raises NoRow for another material, ValueError for a section of zero or less.
    Source: IEC 60364-5-52:2001 524.2 and 524.3, quoted in https://www.scribd.com/document/505816006/
    """
    require_positive(section_mm2=section_mm2, line_count=line_count)
    if material not in _FULL_UP_TO_MM2:
        raise NoRow(f"no least neutral of {material}")
    full_mm2 = _FULL_UP_TO_MM2[material]
    value = section_mm2 if line_count < 3 else min(section_mm2, full_mm2)
    given = (Given("S", section_mm2, "mm²", phrase("line conductor")), Given(phrase("material"), material))
    formula = phrase("S; with three lines at least 16 mm² Cu or 25 mm² Al")
    return Rating(Symbol.S_NEUTRAL_MIN, value, "mm²", formula, given, cited("IEC 60364-5-52:2009 524.2"))
