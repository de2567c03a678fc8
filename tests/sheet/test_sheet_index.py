"""The index of the sheets with parts of the diagram, worked by hand."""

from __future__ import annotations

from sld.documents.drawing.sheet_index import Indexed
from sld.layout.diagram.capacity import Capacity
from sld.layout.plan import PlacedCell, Plan
from sld.sheet.index import sheet_index
from sld.symbols.stroke import Box
from sld.words import ENGLISH, verbatim


def test_inverters_drawn_once_are_named_in_their_order_and_added_up() -> None:
    """Three of 10 kVA with two strings each on sheet 2, the first drawn for all: 30 kVA, 6 strings."""
    units = {f"t{n}": Indexed(f"-TB{n}", "Type T", Capacity(1, 10e3, 10e3, 2, 9e3)) for n in (1, 2, 3)}
    cell = PlacedCell("t1", "", "new", (0.0, 0.0), (0.0, 0.0), Box(0.0, 0.0, 1.0, 1.0), (), (), alike=("t2", "t3"))
    part = Plan(0.0, 0.0, (cell,), (), (), (), (), ())
    made = sheet_index(units, [(part, verbatim("field board"))])
    assert [tuple(map(ENGLISH.say, row)) for row in made.rows] == [
        ("2", "field board", "3", "30 kVA", "6"),
        ("", "-TB1…3 Type T", "3", "10 kVA each", "2 each"),
        ("", "total", "3", "30 kVA", "6"),
    ]
