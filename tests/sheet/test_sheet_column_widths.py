"""The widths of a table's columns make it about as low as any other widths would, all of them tried."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from random import Random

import pytest

from sld.sheet.lettering import wrap
from sld.sheet.listings.table import GAP_MM, Column, column_widths_mm
from sld.symbols.typeface import SLACK_MM, text_width_mm

WORDS = ["-TB1-FC1", "breaker", "18 kW", "DC up to 1100 V,", "north roof", "in", "the switch room", "H1Z2Z2-K", "new",
         "three-phase", "400 V", "Ib 26 A"]  # fmt: skip
STEPS_COUNT = 32
COLUMNS = (Column("Device", 1.0), Column("Ratings", 1.0), Column("Place", 1.0))

Rows = tuple[tuple[str, ...], ...]


def made_up(seed: int) -> Rows:
    """Rows with texts of a few words to a few lines, in each column of another length."""
    dice = Random(seed)
    most = dice.sample([2, 6, 16], 3)
    return tuple(tuple(" ".join(dice.choices(WORDS, k=dice.randint(1, count))) for count in most) for _ in range(7))


@cache
def lines_count(text: str, width_mm: float) -> int:
    return len(wrap(text, width_mm))


def lines_of(rows: Rows, widths_mm: tuple[float, ...]) -> int:
    """How many lines the rows take together, each as many as its longest text."""
    return sum(max(map(lines_count, row, widths_mm)) for row in rows)


def every_way(rows: Rows, room_mm: float) -> Iterator[tuple[float, ...]]:
    """All ways to deal out what the longest words leave of the room, in steps."""
    least = [max(text_width_mm(word) + SLACK_MM + 0.01 for text in (column.heading, *texts) for word in text.split())
             for column, texts in zip(COLUMNS, zip(*rows, strict=True), strict=True)]  # fmt: skip
    step_mm = (room_mm - sum(least)) / STEPS_COUNT
    for first in range(STEPS_COUNT + 1):
        for second in range(STEPS_COUNT + 1 - first):
            steps = first, second, STEPS_COUNT - first - second
            yield tuple(round(width + count * step_mm, 6) for width, count in zip(least, steps, strict=True))


def too_many(rows: Rows, width_mm: float) -> int:
    """How many lines the rows take more than in the best of all ways."""
    room_mm = width_mm - GAP_MM * 2
    dealt = column_widths_mm(COLUMNS, rows, width_mm)
    assert sum(dealt) <= room_mm + 1e-6
    best = min(lines_of(rows, way) for way in every_way(rows, room_mm))
    return lines_of(rows, tuple(round(width, 6) for width in dealt)) - best


def test_hardly_any_other_widths_make_a_table_lower() -> None:
    """Columns are widened one after the other, which comes to the best way but for a line in a few tables."""
    found = [too_many(made_up(seed), width_mm) for seed in range(12) for width_mm in (110.0, 150.0)]
    assert max(found) <= 1
    assert sum(found) <= 3


def test_a_table_of_many_columns_in_little_room_keeps_to_it() -> None:
    """All want the whole room: each is at its longest word before as much is taken back as is too much."""
    rows = (
        ("w aa cc", "bb w cc", "aa w w bb", "cc aa bb w w", "bb bb bb cc bb", "cc w", "bb aa bb cc", "bb w w w w",
         "w cc bb w bb", "w bb aa bb"),
        ("aa aa", "w", "w w aa", "cc cc bb", "w", "w w bb aa w", "w cc aa", "w aa aa", "aa w aa", "cc cc w w bb"),
    )  # fmt: skip
    columns = tuple(Column(name, 1.0) for name in "abcdefghij")
    room_mm = 77.5 - GAP_MM * 9
    dealt = column_widths_mm(columns, rows, 77.5)
    assert sum(dealt) == pytest.approx(room_mm)
    assert all(text_width_mm("bb") <= width for width in dealt)
