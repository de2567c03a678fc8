"""Listings dealt out so that they take the fewest sheets, among several ways to do so."""

from __future__ import annotations

from collections.abc import Sequence

from sld.sheet.flow import TOGETHER_MM, Dealt, Manner, Remembered, flow
from sld.sheet.listings.flag import FINDINGS
from sld.sheet.listings.laid import Listing
from sld.sheet.placement import Placement
from sld.symbols.stroke import Box
from sld.words import Language

__all__ = ["fewest_sheets", "lists_findings"]

MANY_COUNT = 20
"""Among more sheets than this no time is spent on saving one."""

SHORT_MM = 55.0
"""A listing of at most this height is never parted unless it begins a column: eight rows of the summary."""

_READ_FIRST = frozenset(
    {"cautions", "findings", "accepted", "sheet_index", "differences", "review", "summary", "notes"}
)
"""Sections that stay in their order before the others."""


def fewest_sheets(
    placements: Sequence[Placement],
    listings: Sequence[Listing],
    columns: Sequence[Box],
    between: Sequence[Sequence[Box]],
    language: Language,
) -> tuple[Placement, tuple[tuple[Dealt, ...], ...]]:
    """Return the placement with the fewest sheets and its flow; among these, one with the findings on the first sheet.

    placements: of the diagram on the first sheet. columns: of a further sheet. between: what is left of the sheets with
    parts of the diagram, which come before those.
    Listings of some length are parted in more places, and their order is given up, only where that saves a sheet.
    """
    remembered = [Remembered(listing) for listing in listings]
    tallest = _tallest_first(remembered, columns[0].width_mm)
    found: list[tuple[Placement, tuple[tuple[Dealt, ...], ...]]] = []
    for ordered, together_mm, fill in (
        (remembered, TOGETHER_MM, False), (remembered, SHORT_MM, False), (remembered, SHORT_MM, True),
        (tallest, TOGETHER_MM, True),
    ):  # fmt: skip
        for placement in placements:
            manner = Manner(language, True, together_mm, fill)
            sheets = flow(ordered, placement.columns, columns, manner, between)
            found.append((placement, sheets))
            tables_count = len(sheets) - 1 - len(between)
            if tables_count == 0 or tables_count > MANY_COUNT:
                return found[0] if tables_count else found[-1]
    # the first of equals, thus the preferred one
    return min(found, key=lambda way: (len(way[1]), _elsewhere_count(way[1])))


def _elsewhere_count(sheets: Sequence[Sequence[Dealt]]) -> int:
    """Return how many listings that are read first are on other sheets than the first, and the findings before all."""
    elsewhere = {each.section for tables in sheets[1:] for each in tables if _is_read_first(each.section)}
    return len(elsewhere) + len(_READ_FIRST) * (FINDINGS in elsewhere)


def _is_read_first(name: str) -> bool:
    """Return whether a section is; those of a further supply point have its number behind their names."""
    return name.partition("-")[0] in _READ_FIRST


def _tallest_first(listings: Sequence[Remembered], width_mm: float) -> list[Remembered]:
    """Return listings with those that are looked up, not read first, by their height: so they leave least room."""

    def height_mm(listing: Remembered) -> float:
        return sum(piece.height_mm for row in listing.laid(width_mm).rows for piece in row)

    read_first = [each for each in listings if _is_read_first(each.name)]
    others = [each for each in listings if not _is_read_first(each.name)]
    return [*read_first, *sorted(others, key=height_mm, reverse=True)]


def lists_findings(tables: Sequence[Dealt]) -> bool:
    """Return whether the list of findings begins, or goes on, among the tables of a sheet."""
    return any(each.section == FINDINGS for each in tables)
