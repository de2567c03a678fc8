"""What a reader of the rows finds in its place: the supply's data in one box, a number before each assumption.

The rules are our own.
"""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from example_specs import SAMPLED, checked, document

from sld.finding import Severity
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


def said(sheet: Sheet, section: str) -> list[str]:
    """The texts of a section of a sheet."""
    groups = (group for group in sheet.groups if group.section == section)
    return [stroke.text for group in groups for stroke in group.strokes if isinstance(stroke, Text)]


@pytest.mark.parametrize("path", SAMPLED)
def test_assumptions_are_counted_alike_everywhere(path: Path) -> None:
    """Numbers from 1 on; their places together are what the title block says, and what is told of the spec."""
    made = document(path, "drawing")
    texts = [text for sheet in made.sheets for text in said(sheet, "assumptions")]
    numbered = [text for text in texts if text.endswith(".") and text[:-1].isdigit()]
    several = [int(count) for count in re.findall(r"(\d+)\s(?:places|Stellen)", " ".join(texts))]
    assert numbered == [f"{number}." for number in range(1, len(numbered) + 1)]
    block = " ".join(t.text for g in made.sheets[0].groups if g.key == "title-block" for t in g.strokes
                     if isinstance(t, Text))  # fmt: skip
    counted = sum(map(int, re.findall(r"(\d+)\s(?:assumption|Annahme)", block)))
    assert sum(several) + len(numbered) - len(several) == counted
    assert counted == sum(each.severity is Severity.ASSUMPTION for each in checked(path).findings)
