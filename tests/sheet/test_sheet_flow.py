"""Listings in columns: nothing lost, nothing beyond its column, headings repeated."""

from __future__ import annotations

import re
from collections.abc import Sequence

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sld.documents.section import FlagForm
from sld.sheet.flow import TOGETHER_MM, Manner, columns_of
from sld.sheet.flow import flow as dealt
from sld.sheet.ink import ink_box
from sld.sheet.lint import lint
from sld.sheet.listings import Column, FlagList, FlagRow, Legend, LegendEntry, Table, TextList, flag_strokes
from sld.sheet.listings.flag import revision_strokes
from sld.sheet.listings.laid import PADDING_MM, Listing, lines_height_mm, lines_strokes
from sld.sheet.listings.table import GAP_MM, column_widths_mm
from sld.sheet.paper import PAPERS, frame_box
from sld.sheet.sheet import Group, Sheet
from sld.symbols.stroke import Box, Circle, Polyline, Text
from sld.symbols.typeface import text_box, text_width_mm

PAGE = columns_of(frame_box(PAPERS["A3"]).grown(-7.0))
WORDS = st.text(st.sampled_from("abcdefg MW-/²"), max_size=60)
CELLS = st.lists(st.tuples(WORDS, WORDS, WORDS), max_size=30)


def table(rows: list[tuple[str, ...]]) -> Table:
    columns = (Column("Device"), Column("Rating", 1.0), Column("Value", None, "right"))
    return Table("listing", "Schedule", columns, tuple(rows))


def flow(
    listings: Sequence[Listing], first: Sequence[Box], further: Sequence[Box], together_mm: float = TOGETHER_MM
) -> tuple[tuple[Group, ...], ...]:
    sheets = dealt(listings, first, further, Manner(together_mm=together_mm))
    return tuple(tuple(each.inked() for each in sheet) for sheet in sheets)


def written(groups: tuple[tuple[Group, ...], ...]) -> list[str]:
    return [s.text for sheet in groups for group in sheet for s in group.strokes if isinstance(s, Text)]


def overhang(groups: tuple[tuple[Group, ...], ...], first: tuple[Box, ...], further: tuple[Box, ...]) -> list[str]:
    """Return the keys of groups with ink outside every column of their sheet."""
    outside = []
    for number, sheet in enumerate(groups):
        columns = further if number else first
        for group in sheet:
            box = ink_box(group.strokes[0])
            for stroke in group.strokes[1:]:
                box = box.joined(ink_box(stroke))
            if not any(c.grown(0.5).joined(box) == c.grown(0.5) for c in columns):
                outside.append(group.key)
    return outside


@settings(max_examples=40, deadline=None)
@given(CELLS, st.floats(40.0, 110.0))
def test_every_row_is_there_once_and_in_its_column(rows: list[tuple[str, ...]], top_mm: float) -> None:
    first = (Box(27.0, 277.0 - top_mm, 220.0, 280.0),)
    groups = flow(
        [table(rows), TextList("listing", "Notes", tuple(row[0] for row in rows), numbered=True)], first, PAGE
    )
    assert overhang(groups, first, PAGE) == []
    wanted = "".join(sorted("".join("".join(cell.split()) for row in rows for cell in row)))
    strokes = [s for group in groups for g in group if g.title == "Schedule" for s in g.strokes]
    beside = ("Device", "Rating", "Value", "continued on sheet 2", "continued on sheet 3")
    cells = [s.text for s in strokes if isinstance(s, Text) and s.height_mm == 2.5 and s.text not in beside]
    assert "".join(sorted("".join("".join(cells).split()))) == wanted


@settings(max_examples=25, deadline=None)
@given(CELLS)
def test_no_text_of_a_table_touches_another_or_a_rule(rows: list[tuple[str, ...]]) -> None:
    for groups in flow([table(rows)], (), PAGE):
        assert lint(Sheet(420.0, 297.0, 1, "", "", "en", groups)) == []


def test_a_part_after_the_first_repeats_title_and_headings() -> None:
    groups = flow([table([(f"D{n}", "x", str(n)) for n in range(150)])], (), PAGE)
    words = written(groups)
    assert words.count("Schedule") == 1
    assert words.count("Schedule (continued)") == words.count("Device") - 1 >= 2
    assert [word for word in words if word.startswith("D") and word[1:].isdigit()] == [f"D{n}" for n in range(150)]


def test_a_part_that_goes_on_elsewhere_says_on_which_sheet() -> None:
    groups = flow([table([(f"D{n}", "x", str(n)) for n in range(400)])], (), PAGE)
    assert len(groups) >= 4
    for number, sheet in enumerate(groups[1:-1], start=2):
        told = [word for word in written((sheet,)) if word.startswith("continued on")]
        assert told == [f"continued on sheet {number + 1}"]
    assert not [word for word in written(groups[-1:]) if word.startswith("continued on")]
    assert overhang(groups, (), PAGE) == []


def test_a_row_longer_than_a_page_goes_on_over_several_columns() -> None:
    groups = flow([table([("D1", "word " * 3000, "1")])], (), PAGE)
    assert sum(line.split().count("word") for line in written(groups)) == 3000
    assert overhang(groups, (), PAGE) == []


def test_short_blocks_are_not_parted_and_empty_ones_are_left_out() -> None:
    first = (Box(27.0, 240.0, 200.0, 262.0),)
    notes = TextList("listing", "Notes", ("one", "two", "three", "four"))
    groups = flow([TextList("listing", "Filler", ("a", "b")), table([]), notes], first, PAGE)
    assert [group.title for group in groups[0]] == ["Filler"]
    assert [group.title for group in groups[1]] == ["Notes"]


@given(st.floats(30.0, 190.0), CELLS)
def test_columns_of_a_table_fill_at_most_the_width(width_mm: float, rows: list[tuple[str, ...]]) -> None:
    widths = column_widths_mm(table(rows).columns, tuple(rows), width_mm)
    assert sum(widths) + GAP_MM * 2 <= width_mm + 1e-6
    assert all(width > 0 for width in widths)


def test_numbers_of_a_right_aligned_column_end_on_one_line() -> None:
    listing = table([("a", "b", value) for value in ("1 m", "25 m", "1000 m")])
    ends = {round(ink_box(s).right_mm, 3) for row in listing.laid(150.0).rows for piece in row for s in piece.strokes
            if isinstance(s, Text) and s.text.endswith(" m")}  # fmt: skip
    assert len(ends) == 1


def test_flags_and_legend_stand_clear() -> None:
    entry = LegendEntry((Circle((0.0, 0.0), 2.5),), Box(-2.5, -2.5, 2.5, 2.5), "A circle that stands for a long thing")
    numbers = (0, 1, 9, 10, 66, 100, 888)
    listings: list[Listing] = [
        FlagList("listing", "Findings", tuple(FlagRow(n, ("what is wrong " * 12, "what to do")) for n in numbers)),
        Legend("listing", "Legend", (entry,) * 7),
    ]
    groups = flow(listings, (), PAGE)
    assert len(groups) == 2
    assert lint(Sheet(420.0, 297.0, 1, "", "", "en", groups[1])) == []
    assert {"1", "10", "888"} <= set(written(groups))
    assert "0" not in written(groups)


def test_flags_tell_how_bad_it_is_by_their_outline() -> None:
    """Advice is round, what was accepted square; a danger has the outline of a non-compliance in a heavy line."""
    outlines = {
        form: flag_strokes(1, Box(0.0, 0.0, 5.0, 5.0), form)[0] for form in FlagForm if form is not FlagForm.REVISED
    }
    assert isinstance(outlines[FlagForm.ADVICE], Circle)
    corners = {form: len(each.points) for form, each in outlines.items() if isinstance(each, Polyline)}
    assert corners == {FlagForm.DANGER: 8, FlagForm.NON_COMPLIANCE: 8, FlagForm.ACCEPTED: 4}
    assert outlines[FlagForm.DANGER].width_mm >= 2 * outlines[FlagForm.NON_COMPLIANCE].width_mm


@pytest.mark.parametrize("number", [*range(1, 30), 40, 66, 88, 99, 100, 400, 888, 999])
@pytest.mark.parametrize("form", FlagForm)
def test_the_number_of_a_flag_touches_no_side_of_its_outline(number: int, form: FlagForm) -> None:
    strokes = flag_strokes(number, Box(100.0, 100.0, 105.0, 105.0), form)
    assert lint(Sheet(420.0, 297.0, 1, "", "", "en", (Group("flag", "flag", strokes),))) == []


@pytest.mark.parametrize("text", ["1", "12", "A", "B"])
def test_a_flag_fills_its_box_and_stays_in_it(text: str) -> None:
    """Line widths included; a figure in the middle of its flag, an index with its foot on that of its triangle."""
    box = Box(100.0, 100.0, 105.0, 105.0)
    outline, said = flag_strokes(int(text), box) if text.isdigit() else revision_strokes(text, box)
    assert isinstance(said, Text)
    around, inside = ink_box(outline).grown(0.125), text_box(said)
    middle_mm = (inside.left_mm + inside.right_mm) / 2, (inside.top_mm + inside.bottom_mm) / 2
    if text.isdigit():
        assert around == pytest.approx(box)
        assert middle_mm == pytest.approx((102.5, 102.5), abs=0.2)
    else:
        assert (around.left_mm, around.top_mm, around.bottom_mm) == pytest.approx((100.0, 100.0, 105.0))
        assert inside.bottom_mm == pytest.approx(104.875)
        assert around.right_mm < inside.left_mm < inside.right_mm <= 105.0


@pytest.mark.parametrize("count", [1, 2, 5])
@pytest.mark.parametrize("height_mm", [2.5, 3.5])
def test_lines_stand_in_the_middle_of_their_row(count: int, height_mm: float) -> None:
    drawn = lines_strokes(["Lg"] * count, 0.0, 50.0, height_mm=height_mm)
    boxes = [text_box(text) for text in drawn if isinstance(text, Text)]
    assert len(boxes) == count
    assert boxes[0].top_mm == pytest.approx(lines_height_mm(count, height_mm) - boxes[-1].bottom_mm)
    assert boxes[0].top_mm == pytest.approx(PADDING_MM)


@settings(max_examples=30, deadline=None)
@given(st.integers(1, 40), st.floats(60.0, 250.0), st.floats(20.0, 90.0))
def test_each_entry_of_a_legend_is_there_once(count: int, width_mm: float, height_mm: float) -> None:
    box = Box(0.0, 0.0, 5.0, 5.0)
    listing = Legend(
        "listing", "Legend", tuple(LegendEntry((Circle((2.5, 2.5), 2.5),), box, f"N{n}") for n in range(count))
    )
    first = (Box(27.0, 17.0, 27.0 + width_mm, 17.0 + height_mm),)
    words = [word for word in written(flow([listing], first, PAGE, together_mm=0.0)) if word.startswith("N")]
    assert words == [f"N{n}" for n in range(count)]


@pytest.mark.parametrize("value", ["0.207 %", "17.4 / 40.5 A", "H1Z2Z2-K 2 × 4 mm², 1.5 kV DC"])
def test_no_quantity_is_torn_at_the_least_width(value: str) -> None:
    """A number and its unit stand on one line: ISO 80000-1:2009 7.1.4 sets them apart by a space, and no more."""
    listing = table([("-TB1…5-WD2, -TB1…5-WD3", "-TB1…5-XD1, -TB1…5-XD2 – -TB1…5-GC1", value)])
    laid = listing.laid(listing.least_width_mm)
    lines = [s.text for row in laid.rows for piece in row for s in piece.strokes if isinstance(s, Text)]
    for quantity in re.findall(r"[0-9.]+ (?:%|A|mm²|kV)", value):
        assert any(quantity in line for line in lines), lines


def test_a_legend_is_never_torn() -> None:
    entry = LegendEntry((Circle((0.0, 0.0), 2.5),), Box(-2.5, -2.5, 2.5, 2.5), "A circle")
    first = (Box(27.0, 232.0, 200.0, 262.0),)
    legend = Legend("listing", "Legend", (entry,) * 40)
    for together_mm in (80.0, 0.0):
        groups = flow([legend], first, PAGE, together_mm)
        assert [len(sheet) for sheet in groups] == [0, 1]


def test_short_paragraphs_stand_in_two_columns_that_read_down() -> None:
    notes = TextList("listing", "Notes", tuple(f"note {n}" for n in range(1, 8)), numbered=True)
    (group,) = flow([notes], (), PAGE)[1]
    texts = [stroke for stroke in group.strokes if isinstance(stroke, Text) and stroke.text.startswith("note")]
    assert [text.text for text in sorted(texts, key=lambda each: each.at)] == [f"note {n}" for n in range(1, 8)]
    assert len({text.at[0] for text in texts}) == 2
    assert lint(Sheet(420.0, 297.0, 1, "", "", "en", (group,))) == []


def test_a_column_gets_the_width_that_makes_the_table_least_tall() -> None:
    """Designations that can be broken leave the room to long ratings."""
    names, ratings = ", ".join(f"-TB{n}-QB1" for n in range(1, 13)), "18 kW, DC up to 1100 V, " * 3
    rows = [(names, ratings, "new"), *((f"-TB{n}", ratings, "new") for n in range(13, 25))]
    _, second, _ = column_widths_mm(table(rows).columns, tuple(rows), 180.0)
    assert second > text_width_mm(ratings.strip())
