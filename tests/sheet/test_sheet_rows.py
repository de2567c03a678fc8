"""What a reader of the rows finds in its place: the supply's data in one box, a number before each assumption.

The rules are our own.
"""

from __future__ import annotations

from pathlib import Path

import pytest
from example_specs import SAMPLED, document

from sld.sheet.sheet import Sheet
from sld.symbols.stroke import Text
from sld.symbols.typeface import text_box


@pytest.mark.parametrize("path", SAMPLED)
def test_what_is_said_of_the_supply_stands_in_one_box(path: Path) -> None:
    """All lines of the network and none of another cell; the board beside it has the fault level that follows."""
    for standing in document(path, "drawing").diagrams:
        boxed = [cell for cell in standing.plan.cells if cell.boxed]
        assert [cell.symbol for cell in boxed] == [c.symbol for c in standing.plan.cells if c.symbol == "network"]
        for cell in boxed:
            inside = {each.key for each in standing.plan.cells for text in each.labels
                      if cell.boxed and cell.boxed.meets(text_box(text))}  # fmt: skip
            assert inside == {cell.key}
            for left, top, right, bottom in (text_box(text) for text in cell.labels):
                assert cell.boxed.left_mm + 0.4 < left < right < cell.boxed.right_mm - 0.4
                assert cell.boxed.top_mm + 0.4 < top < bottom < cell.boxed.bottom_mm - 0.4


def numbers(sheet: Sheet, section: str) -> list[str]:
    """The numbers that stand alone in a section of a sheet, from the top left."""
    groups = (group for group in sheet.groups if group.section == section)
    texts = (stroke for group in groups for stroke in group.strokes if isinstance(stroke, Text))
    return [text.text for text in texts if text.text.rstrip(".").isdigit() and text.text.endswith(".")]


@pytest.mark.parametrize("path", SAMPLED)
def test_assumptions_can_be_counted_through(path: Path) -> None:
    found = [number for sheet in document(path, "drawing").sheets for number in numbers(sheet, "assumptions")]
    assert found == [f"{number}." for number in range(1, len(found) + 1)]
    assert len(found) > 5
