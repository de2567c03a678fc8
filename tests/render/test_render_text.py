"""The text form: every stroke once, in order, rounded alike."""

from __future__ import annotations

from dataclasses import replace

from drawn_sheets import PLAIN, sheet

from sld.render import text
from sld.sheet.sheet import Group, Sheet
from sld.symbols.stroke import Polyline, Text


def test_a_line_for_each_stroke_in_order() -> None:
    page = sheet()
    lines = [line for line in text(page).splitlines() if line.startswith("  ") and not line.startswith("  title")]
    assert len(lines) == sum(len(group.strokes) for group in page.groups)
    assert [line for line in lines if line.startswith("  text")] == [
        line for written in PLAIN for line in lines if line.endswith(repr(written))
    ]


def test_lengths_have_two_decimals_and_no_minus_zero() -> None:
    line = Polyline(((-0.001, 1.005), (2.0, 3.14159)))
    page = Sheet(10.0, 10.0, 1, "t", "", "en", (Group("a", "label", (line,)),))
    assert "line 0.00," in text(page)
    assert " 2.00,3.14 w=0.25" in text(page)


def test_a_change_shows_as_one_line() -> None:
    page = sheet()
    *others, last = page.groups
    changed = replace(last, strokes=(*last.strokes[:-1], Text((31.0, 200.0), "changed")))
    before, after = text(page).splitlines(), text(replace(page, groups=(*others, changed))).splitlines()
    assert sum(a != b for a, b in zip(before, after, strict=True)) == 1
