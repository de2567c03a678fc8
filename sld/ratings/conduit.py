"""How far cables fill a conduit, and how far they may."""

from __future__ import annotations

from collections.abc import Sequence

from sld.citation import cited
from sld.quantity import Given, Rating
from sld.ratings.domain import require_positive
from sld.ratings.symbol import Symbol
from sld.words import phrase

__all__ = ["fill", "largest_fill"]

_ONE, _TWO, _MORE = 53.0, 31.0, 40.0


def fill(cables: Sequence[tuple[int, float]], inside_diameter_mm: float) -> Rating:
    """Return the share of the cross-section of a conduit that cables take, in %.

    cables: number and outside diameter in mm, of cables or single conductors. Raises ValueError for none, or a number
    or diameter of zero or less. Source: geometry, Σ d² / D².
    """
    if not cables:
        raise ValueError("a conduit is filled by one cable at least")
    for count, diameter_mm in cables:
        require_positive(count=count, diameter_mm=diameter_mm)
    require_positive(inside_diameter_mm=inside_diameter_mm)
    value = 100 * sum(count * diameter_mm**2 for count, diameter_mm in cables) / inside_diameter_mm**2
    given = tuple(
        Given(f"d{place}", diameter_mm, "mm", phrase("{count} of it", count=count))
        for place, (count, diameter_mm) in enumerate(cables, start=1)
    )
    inside = Given("D", inside_diameter_mm, "mm")
    return Rating(Symbol.FILL, value, "%", "100 · Σ d² / D²", (*given, inside), cited(phrase("definition")))


def largest_fill(count: int, by_code: bool) -> Rating:
    """Return the largest share of the cross-section of a conduit in % for a number of cables or conductors.

    53 % for one, 31 % for two, 40 % for more; a multicore cable counts as one. by_code: the National Electrical Code
    holds; elsewhere the values are common practice. Raises ValueError for none.
    Source: NEC Chapter 9 Table 1, as https://expertce.com/learn-articles/nec-chapter-9-table-1-conduit-fill prints it.
    """
    require_positive(count=count)
    value = {1: _ONE, 2: _TWO}.get(count, _MORE)
    practice = phrase("common practice: as in NEC Chapter 9 Table 1")
    clause = cited(phrase("{standard} Chapter 9 Table 1", standard="NEC 2023")) if by_code else cited(practice)
    given = (Given(phrase("cables or conductors"), count),)
    return Rating(Symbol.FILL_MAX, value, "%", phrase("table value"), given, clause)
