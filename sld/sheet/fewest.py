"""Listings dealt out so that they take the fewest sheets, among several ways to do so."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from itertools import islice

from sld.sheet.first_sheet import lacking, most_needed_first, stem
from sld.sheet.flow import TOGETHER_MM, Dealt, Manner, Remembered, flow, remembered
from sld.sheet.listings.laid import Listing
from sld.sheet.packed import packed
from sld.sheet.placement import Placement
from sld.symbols.stroke import Box
from sld.words import Language

__all__ = ["Way", "fewest_sheets"]

MANY_COUNT = 20
"""Among more sheets than this no time is spent on saving one."""

SHORT_MM = 55.0
"""A listing of at most this height is never parted unless it begins a column: eight rows of the summary."""

_DENSEST_FACTOR = 0.85
"""In other columns the same listings take at least so much of the area (over `specs/` 0.94 to 1.06 of the mean)."""

_READ_FIRST = frozenset(
    {"cautions", "findings", "accepted", "sheet_index", "differences", "review", "summary", "notes"}
)
"""Sections that stay in their order before the others."""


Way = tuple[Placement, tuple[tuple[Dealt, ...], ...]]
"""A placement of the diagram on sheet 1, and what is dealt out on each sheet."""


def fewest_sheets(
    placements: Sequence[Placement],
    listings: Sequence[Listing],
    columns: Sequence[Box],
    between: Sequence[Sequence[Box]],
    language: Language,
) -> Way:
    """Return the placement and its flow that have on the first sheet what belongs there, and the fewest sheets.

    placements: of the diagram on the first sheet. columns: of a further sheet. between: what is left of the sheets with
    parts of the diagram, which come before those.
    Listings of some length are parted in more places, and their order is given up, only where that saves a sheet or
    brings what belongs there on the first one; at last they are put wherever they fit whole.
    """
    kept = list(map(remembered, listings))

    def tried(orders: Iterable[tuple[list[Remembered], float, bool]]) -> Iterator[Way]:
        for ordered, together_mm, fill in orders:
            for placement in placements:
                manner = Manner(language, True, together_mm, fill)
                yield placement, flow(ordered, placement.columns, columns, manner, between)

    def packings(pages_count: int) -> Iterator[Way]:
        for placement in placements:
            sheets = [placement.columns, *between, *([columns] * pages_count)]
            if (made := packed(kept, sheets, columns, Manner(language, fill=True))) is not None:
                yield placement, made

    def preferred_first() -> Iterator[tuple[list[Remembered], float, bool]]:
        yield from ((kept, TOGETHER_MM, False), (kept, SHORT_MM, False), (kept, SHORT_MM, True))
        yield _tallest_first(kept, columns[0].width_mm), TOGETHER_MM, True

    def lacks(way: Way) -> tuple[int, ...]:
        return lacking(kept, way[1])

    def best() -> Way:  # the first of equals, thus the preferred one
        return min(found, key=lambda way: (lacks(way), len(way[1]), _elsewhere_count(way[1])))

    found: list[Way] = []
    for way in tried(preferred_first()):
        found.append(way)
        tables_count = len(way[1]) - 1 - len(between)
        if not any(lacks(way)) and (
            tables_count == 0 or (not _elsewhere_count(way[1]) and _saves_none(way, placements, columns, between))
        ):
            return best()
        if tables_count > MANY_COUNT:
            break
    if all(any(lacks(way)) for way in found):
        manners = ((TOGETHER_MM, False), (SHORT_MM, True)) if tables_count <= MANY_COUNT else ((TOGETHER_MM, False),)
        found += tried([(order, *manner) for order in most_needed_first(kept) for manner in manners])
    pages_count = len(best()[1]) - 1 - len(between)
    if pages_count <= MANY_COUNT:
        counts = [pages_count - 1] if pages_count else []
        counts += [pages_count] if any(lacks(best())) else []
        found += islice((way for count in counts for way in packings(count)), 1)
    return best()


def _saves_none(
    way: Way, placements: Sequence[Placement], columns: Sequence[Box], between: Sequence[Sequence[Box]]
) -> bool:
    """Return whether no other way takes fewer sheets: one sheet less has too little room for what is dealt out."""
    pages_count = len(way[1]) - 1 - len(between)
    beside_mm2 = max(_area_mm2(each.columns) for each in placements) + sum(map(_area_mm2, between))
    taken_mm2 = sum(each.area_mm2 for sheet in way[1] for each in sheet)
    return _DENSEST_FACTOR * taken_mm2 > beside_mm2 + (pages_count - 1) * _area_mm2(columns)


def _area_mm2(boxes: Sequence[Box]) -> float:
    return sum(box.width_mm * box.height_mm for box in boxes)


def _elsewhere_count(sheets: Sequence[Sequence[Dealt]]) -> int:
    """Return how many listings that are read first are on other sheets than the first."""
    return len({each.section for tables in sheets[1:] for each in tables if _is_read_first(each.section)})


def _is_read_first(name: str) -> bool:
    """Return whether a section stays in its order before the others."""
    return stem(name) in _READ_FIRST


def _tallest_first(listings: Sequence[Remembered], width_mm: float) -> list[Remembered]:
    """Return listings with those that are looked up, not read first, by their height: so they leave least room."""

    def height_mm(listing: Remembered) -> float:
        return sum(piece.height_mm for row in listing.laid(width_mm).rows for piece in row)

    read_first = [each for each in listings if _is_read_first(each.name)]
    others = [each for each in listings if not _is_read_first(each.name)]
    return [*read_first, *sorted(others, key=height_mm, reverse=True)]
