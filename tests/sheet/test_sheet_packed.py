"""Listings put whole where they fit: cases worked by hand, heights from the listings themselves."""

from __future__ import annotations

import pytest

from sld.sheet.flow import BETWEEN_MM, Manner, Remembered
from sld.sheet.listings.laid import title_piece
from sld.sheet.listings.table import Column, Table
from sld.sheet.packed import packed
from sld.symbols.stroke import Box
from sld.words import ENGLISH

WIDE_MM = 185.0


def table(name: str, rows_count: int) -> Remembered:
    return Remembered(Table(name, name, (Column("Name"), Column("Value")), (("a", "b"),) * rows_count))


def high_mm(listing: Remembered) -> float:
    laid = listing.laid(WIDE_MM)
    rows_mm = sum(piece.height_mm for row in laid.rows for piece in row)
    return title_piece(listing.title, False, WIDE_MM, ENGLISH).height_mm + laid.head.height_mm + rows_mm


def column(height_mm: float, left_mm: float = 0.0) -> Box:
    return Box(left_mm, 0.0, left_mm + WIDE_MM, height_mm)


def names(made: tuple[tuple[object, ...], ...] | None) -> list[list[str]] | None:
    return made and [[each.section for each in sheet] for sheet in made]  # type: ignore[attr-defined,return-value]


A, B, C = table("a", 4), table("b", 6), table("c", 9)
SUMMARY = table("summary", 5)


@pytest.mark.parametrize(
    ("rooms", "expected"),
    [
        (
            [[high_mm(C)], [high_mm(A) + high_mm(B) + BETWEEN_MM]],
            [["c"], ["a", "b"]],
        ),  # both are full
        ([[high_mm(C)], [high_mm(A) + high_mm(B) + BETWEEN_MM - 0.1]], None),
        ([[high_mm(B), high_mm(A)], [high_mm(C)]], [["b", "a"], ["c"]]),
        ([[high_mm(A) + high_mm(B) + high_mm(C) + 2 * BETWEEN_MM]], [["a", "b", "c"]]),  # in their order
    ],
)
def test_listings_stand_whole_in_whatever_order_they_fit(
    rooms: list[list[float]], expected: list[list[str]] | None
) -> None:
    sheets = [[column(height_mm, 200.0 * n) for n, height_mm in enumerate(each)] for each in rooms]
    assert names(packed([A, B, C], sheets, [column(260.0)], Manner(ENGLISH))) == expected


@pytest.mark.parametrize(("first_mm", "expected"), [(high_mm(SUMMARY), [["summary"], ["a"]]), (20.0, None)])
def test_what_belongs_on_the_first_sheet_stands_there(first_mm: float, expected: list[list[str]] | None) -> None:
    sheets = [[column(first_mm)], [column(260.0)]]
    assert names(packed([A, SUMMARY], sheets, [column(260.0)], Manner(ENGLISH))) == expected


def test_a_long_table_goes_on_in_what_the_others_leave() -> None:
    long = table("long", 60)
    sheets = [[column(100.0)], [column(260.0), column(260.0, 200.0)]]
    made = packed([long, A, B, C], sheets, [column(260.0)], Manner(ENGLISH, fill=True))
    assert made is not None
    assert len(made) == 2
    assert max(each.end_count for sheet in made for each in sheet if each.section == "long") == 60
    assert sorted(each.section for sheet in made for each in sheet if each.section != "long") == ["a", "b", "c"]
