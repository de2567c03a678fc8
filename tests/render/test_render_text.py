"""The text form: every stroke once, in order, rounded alike."""

from __future__ import annotations

from dataclasses import replace

from drawn_sheets import PLAIN, sheet

from sld.render import text
from sld.sheet.sheet import Group, Sheet
from sld.symbols.stroke import Arc, Circle, Dash, Fill, Polyline, Text


def test_a_line_for_each_stroke_in_order() -> None:
    page = sheet()
    lines = [line for line in text(page).splitlines() if line.startswith("  ") and not line.startswith("  title")]
    assert len(lines) == sum(len(group.strokes) for group in page.groups)
    assert [line for line in lines if line.startswith("  text")] == [
        line for written in PLAIN for line in lines if line.endswith(repr(written))
    ]


def test_each_line_says_what_it_is_of() -> None:
    strokes = (
        Polyline(((1.0, 2.0), (3.0, 4.0)), 0.5, Dash.DOTTED, role="earth"),
        Polyline(((1.0, 2.0), (3.0, 4.0), (1.0, 4.0)), closed=True, fill=Fill.PAPER),
        Circle((5.0, 6.0), 0.6, 0.35, fill=Fill.INK),
        Arc((7.0, 8.0), 2.0, 1.0, 0.0, 90.0, 0.5),
    )
    group = Group("-F1", "symbol", strokes, "-F1 fuse", "existing")
    assert text(Sheet(420.0, 297.0, 2, "House", "", "de", (group,))).splitlines() == [
        "sheet 2 420.00 x 297.00 de 'House'",
        "group symbol -F1 existing",
        "  title '-F1 fuse'",
        "  line 1.00,2.00 3.00,4.00 w=0.50 dotted earth",
        f"  area 1.00,2.00 3.00,4.00 1.00,4.00 w=0.25 fill={Fill.PAPER.value}",
        f"  circle 5.00,6.00 r=0.60 w=0.35 fill={Fill.INK.value}",
        "  arc 7.00,8.00 r=2.00,1.00 0..90 w=0.50",
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
