"""ISO 5457:1999 + A1:2010 as a published summary gives it (cadsetterout.com, grid reference); margins from memory."""

from __future__ import annotations

import pytest

from sld.sheet.ink import ink_box
from sld.sheet.lint import lint
from sld.sheet.paper import (
    LETTERS,
    PAPERS,
    Paper,
    extended,
    frame_box,
    frame_strokes,
    from_size_up,
    upright,
    zone,
)
from sld.sheet.sheet import Group, Sheet
from sld.symbols.glyph import glyph_box
from sld.symbols.stroke import Box, Polyline, Text

# field counts along the long and the short side; ISO 5457:1999 + A1:2010, grid reference table
FIELDS = [("A0", 24, 16), ("A1", 16, 12), ("A2", 12, 8), ("A3", 8, 6), ("A4", 6, 4)]

# trimmed sizes, ISO 216 (short side, long side)
TRIMMED = [("A0", 841, 1189), ("A1", 594, 841), ("A2", 420, 594), ("A3", 297, 420), ("A4", 210, 297)]

# drawing space inside the frame (short, long); margins 20 / 10 mm from memory of ISO 5457
SPACE = [("A0", 821, 1159), ("A1", 574, 811), ("A2", 400, 564), ("A3", 277, 390), ("A4", 180, 277)]


@pytest.mark.parametrize(("name", "long", "short"), FIELDS)
def test_number_of_fields(name: str, long: int, short: int) -> None:
    paper = PAPERS[name]
    assert sorted((paper.columns_count, paper.rows_count)) == [short, long]


@pytest.mark.parametrize(("name", "short_mm", "long_mm"), TRIMMED)
def test_trimmed_size(name: str, short_mm: float, long_mm: float) -> None:
    paper = PAPERS[name]
    assert sorted((paper.width_mm, paper.height_mm)) == [short_mm, long_mm]
    assert (paper.width_mm > paper.height_mm) == (name != "A4"), "only A4 stands upright (from memory)"


@pytest.mark.parametrize(("name", "short_mm", "long_mm"), SPACE)
def test_drawing_space(name: str, short_mm: float, long_mm: float) -> None:
    frame = frame_box(PAPERS[name])
    assert sorted((frame.width_mm, frame.height_mm)) == [short_mm, long_mm]
    assert frame.left_mm == 20.0


def test_letters_leave_out_i_and_o() -> None:
    assert "I" not in LETTERS
    assert "O" not in LETTERS
    assert len(LETTERS) == 24


# the fields are 50 mm, counted outwards from the centring marks; what is left over goes to the corner fields:
# first boundary of A3 at x = 60.0 and y = 48.5, of A1 at 70.5 and 47.0 (arithmetic from that rule)
@pytest.mark.parametrize(
    ("name", "x_mm", "y_mm", "expected"),
    [
        ("A3", 59.9, 48.4, "A1"),
        ("A3", 60.1, 48.6, "B2"),
        ("A3", 209.9, 148.4, "C4"),
        ("A3", 210.1, 148.6, "D5"),
        ("A3", 0.0, 0.0, "A1"),
        ("A3", 420.0, 297.0, "F8"),
        ("A2", 46.9, 59.9, "A1"),
        ("A2", 47.1, 60.1, "B2"),
        ("A1", 70.4, 46.9, "A1"),
        ("A1", 70.6, 47.1, "B2"),
        ("A0", 44.6, 70.4, "A2"),
        ("A0", 1188.0, 840.0, "R24"),
        ("A4", 54.9, 48.4, "A1"),
        ("A4", 209.0, 296.0, "F4"),
    ],
)
def test_zone(name: str, x_mm: float, y_mm: float, expected: str) -> None:
    assert zone(PAPERS[name], x_mm, y_mm) == expected


EVERY = [*from_size_up("A4"), extended(1200, 5000), extended(5000, 300)]


@pytest.mark.parametrize("paper", EVERY, ids=lambda paper: paper.name)
def test_frame_and_marks_are_on_the_paper_and_clear_of_its_drawing_space(paper: Paper) -> None:
    sheet, frame = Box(0, 0, paper.width_mm, paper.height_mm), frame_box(paper)
    strokes = frame_strokes(paper)
    for stroke in strokes:
        assert ink_box(stroke).joined(sheet) == sheet
        if isinstance(stroke, Text):
            assert not (glyph_box(stroke) or ink_box(stroke)).meets(frame)
    group = Group("border", "frame", strokes)
    assert lint(Sheet(paper.width_mm, paper.height_mm, 1, "", "", "en", (group,))) == []
    sides = 4 if paper.all_sides else 2
    texts = [stroke.text for stroke in strokes if isinstance(stroke, Text)]
    assert len(texts) == sides // 2 * (paper.columns_count + paper.rows_count)


@pytest.mark.parametrize("paper", EVERY, ids=lambda paper: paper.name)
def test_centring_marks_lie_on_the_axes_of_the_trimmed_sheet(paper: Paper) -> None:
    marks = [s for s in frame_strokes(paper) if isinstance(s, Polyline) and s.width_mm == 0.7 and not s.closed]
    assert len(marks) == 4
    for mark in marks:
        (x1, y1), (x2, y2) = mark.points
        assert (x1 == x2 == paper.width_mm / 2) or (y1 == y2 == paper.height_mm / 2)


def test_centring_marks_run_through_the_frame() -> None:
    """ISO 5457 (from memory): from the edge of the grid, 5 mm outside the frame, to 5 mm inside it.

    A3: frame from 20 mm and 10 mm to 410 mm and 287 mm; A4: the title block is in the way at the foot.
    """
    marks = {
        paper.name: {
            stroke.points
            for stroke in frame_strokes(paper)
            if isinstance(stroke, Polyline) and stroke.width_mm == 0.7 and not stroke.closed
        }
        for paper in (PAPERS["A3"], PAPERS["A4"])
    }
    assert marks["A3"] == {
        ((210.0, 5.0), (210.0, 15.0)), ((210.0, 292.0), (210.0, 282.0)),
        ((15.0, 148.5), (25.0, 148.5)), ((415.0, 148.5), (405.0, 148.5)),
    }  # fmt: skip
    assert ((105.0, 292.0), (105.0, 287.0)) in marks["A4"]


@pytest.mark.parametrize(
    ("need", "expected"),
    [
        ((1189, 841), (1189, 841)),
        ((1190, 841), (1289, 841)),
        ((842, 1100), (941, 1189)),
        ((400, 2000), (841, 2089)),
        ((900, 2000), (941, 2089)),
        ((1100, 900), (1189, 941)),
    ],
)
def test_a_lengthened_sheet_grows_by_two_fields(need: tuple[float, float], expected: tuple[float, float]) -> None:
    paper = extended(*need)
    assert (paper.width_mm, paper.height_mm) == expected


@pytest.mark.parametrize(
    ("asked", "expected"),
    [
        ("A4", ["A4", "A4 lying", "A3", "A3 upright", "A2", "A2 upright", "A1", "A1 upright", "A0", "A0 upright"]),
        ("A1", ["A1", "A1 upright", "A0", "A0 upright"]),
    ],
)
def test_papers_from_a_size_up(asked: str, expected: list[str]) -> None:
    papers = from_size_up(asked)
    assert [paper.name for paper in papers] == expected
    areas = [paper.width_mm * paper.height_mm for paper in papers]
    assert areas == sorted(areas)


def test_no_such_paper() -> None:
    with pytest.raises(KeyError, match="A9"):
        from_size_up("A9")


# the 50 mm fields are counted from the centring marks on either side: an upright A3 has 6 columns and 8 rows
@pytest.mark.parametrize(
    ("x_mm", "y_mm", "expected"), [(48.4, 59.9, "A1"), (48.6, 60.1, "B2"), (296.0, 419.0, "H6"), (148.6, 210.1, "E4")]
)
def test_zones_of_an_upright_sheet(x_mm: float, y_mm: float, expected: str) -> None:
    assert zone(upright(PAPERS["A3"]), x_mm, y_mm) == expected


def test_rows_beyond_z_get_double_letters() -> None:
    tall = Paper("long", 1189.0, 1641.0)
    assert zone(tall, 600, 1.0).startswith("A1")
    names = [zone(tall, 1.0, 20.5 + 25 + 50 * n)[:-1] for n in range(tall.rows_count - 1)]
    assert len(set(names)) == len(names)
    assert "AA" in names
