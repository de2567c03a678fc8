"""The index of the sheets with parts of the diagram, worked by hand."""

from __future__ import annotations

import pytest

from sld.documents.drawing.sheet_index import Indexed
from sld.layout.diagram.capacity import Capacity
from sld.layout.plan import PlacedCell, Plan
from sld.sheet.index import sheet_index
from sld.symbols.stroke import Box
from sld.words import ENGLISH, verbatim


@pytest.mark.parametrize(
    ("count", "names", "power", "strings"), [(2, "-TB1, -TB2", "20 kVA", "4"), (3, "-TB1…3", "30 kVA", "6")]
)
def test_inverters_drawn_once_are_named_in_their_order_and_added_up(
    count: int, names: str, power: str, strings: str
) -> None:
    """Of 10 kVA with two strings each on sheet 2, the first drawn for all."""
    keys = [f"t{n}" for n in range(1, count + 1)]
    units = {key: Indexed(f"-TB{n}", "Type T", Capacity(1, 10e3, 10e3, 2, 9e3)) for n, key in enumerate(keys, 1)}
    first, *others = keys
    cell = PlacedCell(first, "", "new", (0.0, 0.0), (0.0, 0.0), Box(0.0, 0.0, 1.0, 1.0), (), (), alike=tuple(others))
    made = sheet_index(units, [(Plan(0.0, 0.0, (cell,), (), (), (), (), ()), verbatim("field board"))])
    assert [tuple(map(ENGLISH.say, row)) for row in made.rows] == [
        ("2", "field board", str(count), power, strings),
        ("", f"{names} Type T", str(count), "10 kVA each", "2 each"),
        ("", "total", str(count), power, strings),
    ]
