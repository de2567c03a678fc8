"""The title block: ISO 7200:2004 (mandatory fields and 180 mm width as published summaries give them)."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import pytest

from sld.documents.title import Revision, TitleBlock
from sld.picture.picture import Picture
from sld.sheet.finish import fitted_picture
from sld.sheet.ink import ink_box
from sld.sheet.lint import lint
from sld.sheet.paper import PAPERS, frame_box
from sld.sheet.sheet import Group, Sheet
from sld.sheet.title_block import logo_box, title_block_height_mm, title_block_strokes, title_strip_strokes
from sld.symbols.stroke import Box, Polyline, Text

BLOCK = TitleBlock("Owner", "Title", "EFS-0001", "2026-01-31", "Maker", approval_person="Checker")
A3 = frame_box(PAPERS["A3"])
FIRST = Revision("A", "first issue", "2026-01-01", "DO", "SE")
LONG = "a rather long value with many words that no field of a title block can hold, " * 4
WORD = "Donaudampfschifffahrtselektrizitätenhauptbetriebswerkbauunterbeamtengesellschaft" * 4

# ISO 7200:2004, mandatory data fields
MANDATORY = ["Legal owner", "Identification number", "Date of issue", "Sheet", "Title", "Creator", "Approval person",
             "Document type"]  # fmt: skip

FIELDS = ["legal_owner", "title", "identification_number", "creator", "supplementary_title", "site", "customer",
          "rule_profile", "findings", "status", "date_of_issue"]  # fmt: skip


def texts(block: TitleBlock, **options: bool) -> list[Text]:
    return [s for s in title_block_strokes(block, A3, 1, 3, "A3", **options) if isinstance(s, Text)]


def sheet_of(block: TitleBlock) -> Sheet:
    group = Group("title-block", "table", title_block_strokes(block, A3, 1, 3, "A3"))
    return Sheet(420.0, 297.0, 1, "", "", "en", (group,))


@pytest.mark.parametrize("caption", MANDATORY)
def test_mandatory_field(caption: str) -> None:
    assert caption in [text.text for text in texts(BLOCK)]


def test_it_is_180_mm_wide_in_the_lower_right_corner() -> None:
    boxes = [ink_box(stroke) for stroke in title_block_strokes(BLOCK, A3, 1, 3, "A3")]
    assert min(box.left_mm for box in boxes) == pytest.approx(A3.right_mm - 180.0)
    assert min(box.top_mm for box in boxes) == pytest.approx(A3.bottom_mm - title_block_height_mm(BLOCK))
    assert max(box.bottom_mm for box in boxes) <= A3.bottom_mm


def test_letter_heights_are_of_the_series_of_iso_3098() -> None:
    heights = {text.text: text.height_mm for text in texts(BLOCK)}
    assert heights["Title"] in (1.8, 3.5)
    assert [heights[word] for word in ("Creator", "Maker", "EFS-0001")] == [1.8, 2.5, 5.0]


@pytest.mark.parametrize("field", FIELDS)
@pytest.mark.parametrize("value", [LONG, WORD])
def test_a_long_value_stays_in_its_field_and_shows_that_it_was_cut(field: str, value: str) -> None:
    block = replace(BLOCK, **{field: value})
    assert lint(sheet_of(block)) == []
    assert any(text.text.endswith("…") for text in texts(block))
    assert max(ink_box(text).right_mm for text in texts(block)) <= A3.right_mm


def test_a_long_number_is_written_smaller_before_it_is_cut() -> None:
    number = "EFS-2026-0147-NORTH-SHED"
    found = next(text for text in texts(replace(BLOCK, identification_number=number)) if text.text == number)
    assert found.height_mm == 3.5


def test_a_long_title_wraps_and_is_written_smaller_before_it_is_cut() -> None:
    two, three, four = "word " * 12, "word " * 20, "some longer word " * 9
    for title, height in (("Title of it", 3.5), (two, 3.5), (three, 2.5), (four, 2.5)):
        found = [text for text in texts(replace(BLOCK, title=title)) if text.height_mm == height]
        assert " ".join(title.split()) in " ".join(text.text for text in found)
        assert not [text for text in texts(replace(BLOCK, title=title)) if text.text.endswith("…")]


@pytest.mark.parametrize(("words", "cut"), [(4, False), (5, True)])
def test_a_field_takes_four_lines(words: int, cut: bool) -> None:
    """Each word takes a line of its own."""
    lines = [text.text for text in texts(replace(BLOCK, status=" ".join(["provisional"] * words)))]
    assert sum(line.startswith("prov") for line in lines) == 4
    assert any(line.endswith("…") for line in lines) == cut


ROWS = [
    ["Legal owner", "Creator", "Approval person", "Document type", "Status"],
    ["Title", "Supplementary title", "Identification number"],
    ["Site", "Customer", "Rule profile", "Findings"],
    ["Rev.", "Change", "Date of issue", "Drawn", "Checked", "Language", "Paper size", "Sheet"],
]
"""Where who knows one sheet looks for a field on the next one, from the left, from the top."""


def test_fields_stand_in_one_order() -> None:
    captions = [text for text in texts(replace(BLOCK, title="A title")) if text.height_mm == 1.8]
    heights = sorted({text.at[1] for text in captions})
    rows = [sorted((text for text in captions if text.at[1] == y), key=lambda text: text.at[0]) for y in heights]
    assert [[text.text for text in row] for row in rows] == ROWS


INSET_MM = 1.2
NARROW = "i" * 400
"""Of the narrowest letters, 0.8 mm, a field takes as many as it has room for: so one sees where it ends."""


@pytest.mark.parametrize("logo", [False, True])
@pytest.mark.parametrize("field", ["status", "identification_number", "findings"])
def test_the_last_field_of_a_row_ends_at_the_frame(field: str, logo: bool) -> None:
    found = max(ink_box(text).right_mm for text in texts(replace(BLOCK, **{field: NARROW}, logo=logo)))
    assert A3.right_mm - INSET_MM - 0.9 < found <= A3.right_mm - INSET_MM


def test_the_last_column_of_the_earlier_revisions_ends_at_the_frame() -> None:
    block = replace(BLOCK, revisions=(replace(FIRST, checked=NARROW), FIRST))
    found = max(ink_box(text).right_mm for text in texts(block))
    assert A3.right_mm - INSET_MM - 0.9 < found <= A3.right_mm - INSET_MM


def test_the_paper_is_told_before_the_sheet() -> None:
    """The field of the sheet is 22 mm wide on sheet 1; on a further one it has room for 199 of 199, 19.7 mm."""
    first = [text for text in title_block_strokes(BLOCK, A3, 1, 3, NARROW) if isinstance(text, Text)]
    further = [text for text in title_strip_strokes(replace(BLOCK, revision_index=NARROW), A3, 2, 3)
               if isinstance(text, Text)]  # fmt: skip
    for found, end_mm in ((first, 22.0), (further, 19.7)):
        right = max(ink_box(text).right_mm for text in found if text.text.startswith("iii"))
        assert A3.right_mm - end_mm - INSET_MM - 0.9 < right <= A3.right_mm - end_mm - INSET_MM


STRIP = [("Title", "A barn, Schedules"), ("Legal owner", "Owner"), ("Identification number", "EFS-0001"),
         ("Date of issue", "2026-01-31"), ("Rev.", "C"), ("Sheet", "2 of 3")]  # fmt: skip
"""On a further sheet, from the left: what it is a sheet of, whose, and which."""


def test_fields_of_a_further_sheet() -> None:
    block = replace(BLOCK, title="A barn", document_type="Schedules", revision_index="C")
    found = sorted((text.at, text.text) for text in title_strip_strokes(block, A3, 2, 3) if isinstance(text, Text))
    told = [text for _, text in found]
    assert list(zip(told[::2], told[1::2], strict=True)) == STRIP


@pytest.mark.parametrize("field", ["title", "legal_owner", "identification_number"])
def test_a_strip_takes_two_lines(field: str) -> None:
    """Each word takes a line of its own, the third does not stand."""
    block = replace(BLOCK, **{field: " ".join(["Lowmereworksoff"] * 4)})
    found = [text for text in title_strip_strokes(block, A3, 2, 3) if isinstance(text, Text)]
    assert sum(text.text.startswith("Lowmere") for text in found) == 2
    assert max(text.at[1] for text in found) < A3.bottom_mm


def test_a_change_takes_six_lines_and_a_title_five() -> None:
    revision = replace(FIRST, change=" ".join(["Lowmereworksofficer"] * 8))
    title = " ".join(["Lowmereworksofficerdrawingroomforplansandpapers"] * 8)
    change, named = replace(BLOCK, revisions=(revision,)), replace(BLOCK, title=title)
    assert [sum(text.text.startswith("Low") for text in texts(block)) for block in (change, named)] == [6, 5]


def test_newest_revision_is_at_the_foot_the_earlier_ones_on_top_and_the_oldest_are_counted() -> None:
    rows = tuple(Revision(index, f"change {index}", "2026-01-01") for index in "ABCDEFGH")
    shown = texts(replace(BLOCK, revisions=rows))
    y = {text.text: text.at[1] for text in shown}
    assert y["change G"] < y["change F"] < y["change D"] < y["Title"] < y["change H"]
    assert [text.text for text in shown].count("change H") == 1
    assert "change C" not in y
    assert "3 earlier revisions not listed here" in y  # A to C; with D to G and the newest all eight are told
    assert lint(sheet_of(replace(BLOCK, revisions=rows))) == []


@pytest.mark.parametrize(("earlier", "shown", "counted"), [(4, 4, ""), (5, 5, ""), (6, 4, "2"), (9, 4, "5")])
def test_at_most_five_lines_of_earlier_revisions(earlier: int, shown: int, counted: str) -> None:
    rows = tuple(Revision(str(number), f"change {number}", "2026-01-01") for number in range(earlier + 1))
    found = [text.text for text in texts(replace(BLOCK, revisions=rows))]
    assert sum(text.startswith("change") for text in found) == shown + 1  # and the newest
    assert [text.split()[0] for text in found if "not listed here" in text] == [counted] * bool(counted)


def test_a_longer_change_of_an_earlier_revision_is_cut_in_its_column() -> None:
    """A column of 86 mm; the third line does not stand, and no letter in the column of dates beside it."""
    block = replace(BLOCK, revisions=(replace(FIRST, change=NARROW), FIRST))
    found = [text for text in texts(block) if text.text.startswith("iii")]
    assert len(found) == 2
    room = A3.right_mm - 180.0 + 14.0 + INSET_MM, A3.right_mm - 180.0 + 100.0 - INSET_MM
    assert {round(text.at[0], 2) for text in found} == {round(room[0], 2)}
    assert room[1] - 0.9 < max(ink_box(text).right_mm for text in found) <= room[1]


def test_a_long_change_of_an_earlier_revision_takes_two_lines() -> None:
    rows = tuple(Revision(index, "a change that is told in words at length " * 2, "2026-01-01") for index in "ABC")
    block = replace(BLOCK, revisions=rows)
    heights = [text.at[1] for text in texts(block) if "a change" in text.text or "at length" in text.text]
    assert len(heights) >= 4
    assert lint(sheet_of(block)) == []
    levels = sorted({text.at[1] for text in texts(block) if text.height_mm == 2.5})
    assert min(after - before for before, after in pairwise(levels[:5])) > 3.5  # or letters would touch
    lines = {y for stroke in title_block_strokes(block, A3, 1, 3, "A3") if isinstance(stroke, Polyline)
             for _, y in stroke.points if len({height for _, height in stroke.points}) == 1}  # fmt: skip
    assert len([y for y in lines if levels[1] < y < levels[2]]) == 1  # a row ends below its second line


@pytest.mark.parametrize("further", [False, True])
def test_a_line_stands_between_each_two_fields(further: bool) -> None:
    """Of a row of fields, and of the earlier revisions, upright; around all of it a thicker one."""
    block = replace(BLOCK, revisions=(FIRST, FIRST))
    strokes = title_strip_strokes(block, A3, 2, 3) if further else title_block_strokes(block, A3, 1, 3, "A3")
    captions = [text.at for text in strokes if isinstance(text, Text) and text.height_mm == 1.8]
    pairs = [stroke.points for stroke in strokes if isinstance(stroke, Polyline) and len(stroke.points) == 2]
    upright = [(x, sorted((y1, y2))) for (x, y1), (other, y2) in pairs if x == other]
    for row in {y for _, y in captions}:
        starts = sorted(x for x, y in captions if y == row)
        between = sorted(x for x, (top, foot) in upright if top < row < foot)
        assert [round(start - line, 2) for line, start in zip(between, starts[1:], strict=True)] == [
            INSET_MM for _ in starts[1:]
        ]
    level = {y1 for (_, y1), (_, y2) in pairs if y1 == y2}
    assert len(level) == (0 if further else 5)  # below the earlier revision, its heading, and three of four rows
    assert max(level, default=0.0) < min(A3.bottom_mm, max(y for _, y in captions))
    (around,) = (stroke for stroke in strokes if isinstance(stroke, Polyline) and stroke.width_mm == 0.7)
    (left, foot), (corner, top), (right, _) = around.points
    assert (left, foot, corner, right) == (A3.right_mm - 180.0, A3.bottom_mm, left, A3.right_mm)
    assert top < min(y for _, y in captions) - 1.8


def test_earlier_revisions_can_be_left_out() -> None:
    block = replace(BLOCK, revisions=(FIRST, Revision("B", "second issue", "2026-01-31")))
    assert "first issue" not in [text.text for text in texts(block, revisions=False)]
    assert "second issue" in [text.text for text in texts(block, revisions=False)]
    assert title_block_height_mm(block) > title_block_height_mm(block, revisions=False)


def test_a_single_revision_takes_no_row_more_than_none() -> None:
    one = replace(BLOCK, revisions=(FIRST,), revision_index="A")
    assert title_block_height_mm(one) == title_block_height_mm(BLOCK)
    # its own date too, which is not that of issue
    told = [text.text for text in texts(one)]
    assert [told.count(each) for each in ("A", "first issue", "2026-01-01", "DO", "SE", "2026-01-31")] == [1] * 6


@pytest.mark.parametrize("field", ["change", "drawn", "checked"])
@pytest.mark.parametrize("value", [LONG, WORD])
def test_a_long_value_of_the_newest_revision_stays_in_its_field(field: str, value: str) -> None:
    block = replace(BLOCK, revisions=(replace(FIRST, **{field: value}),), revision_index="ABCD")
    assert lint(sheet_of(block)) == []
    assert "ABCD" in [text.text for text in texts(block)]


def test_a_field_gives_what_it_can_spare_to_one_beside_it() -> None:
    site = "The long barn at the lower ford, 3 Ford Lane, Merren"  # 52 letters; its field takes about 27
    assert site in [text.text for text in texts(replace(BLOCK, site=site, customer="C", findings="none"))]


def test_it_fits_the_drawing_space_of_an_upright_a4() -> None:
    frame = frame_box(PAPERS["A4"])
    assert Box(frame.right_mm - 180.0, 0, frame.right_mm, 1).left_mm == frame.left_mm


LOGO = Picture(2, 1, bytes(6))


def ink(block: TitleBlock) -> list[Box]:
    """The boxes of the texts and of the single lines of a title block."""
    boxes = [ink_box(text) for text in texts(block)]
    for stroke in title_block_strokes(block, A3, 1, 3, "A3"):
        if isinstance(stroke, Polyline):
            boxes += [ink_box(Polyline(pair)).grown(stroke.width_mm / 2) for pair in pairwise(stroke.points)]
    return boxes


@pytest.mark.parametrize("aspect_factor", [0.2, 3.0, 25.0])
def test_a_logo_stands_in_its_field_whole_and_in_proportion(aspect_factor: float) -> None:
    block = replace(BLOCK, logo=True, site="a site", customer="a customer")
    field = logo_box(block, A3)
    assert field.meets(Box(A3.right_mm - 180.0, A3.bottom_mm - title_block_height_mm(block), A3.right_mm, A3.bottom_mm))
    assert not [box for box in ink(block) if box.meets(field.grown(-0.5))]
    picture = replace(LOGO, columns_count=round(100 * aspect_factor), rows_count=100)
    box = fitted_picture(field.grown(-1.5), picture.aspect_factor)
    assert box.width_mm / box.height_mm == pytest.approx(aspect_factor)
    assert field.left_mm < box.left_mm < box.right_mm < field.right_mm
    assert field.top_mm < box.top_mm < box.bottom_mm < field.bottom_mm


@pytest.mark.parametrize("changes", [{"logo": True}, {"stamp_box": True}, {"logo": True, "stamp_box": True}])
@pytest.mark.parametrize("value", ["short", LONG])
def test_fields_keep_apart_beside_a_logo_and_below_a_stamp_box(changes: dict[str, bool], value: str) -> None:
    assert lint(sheet_of(replace(BLOCK, site=value, customer=value, **changes))) == []


def test_the_box_for_a_stamp_is_empty_and_large_enough() -> None:
    """Stamps are up to about 70 × 35 mm (common practice, no source)."""
    block = replace(BLOCK, stamp_box=True, revisions=(Revision("A", "First issue", "2026-01-31"),))
    top = A3.bottom_mm - title_block_height_mm(block)
    box = Box(A3.right_mm - 180.0, top, A3.right_mm - 90.0, top + 40.0)
    clear = Box(box.left_mm + 1.0, box.top_mm + 4.0, box.right_mm - 1.0, box.bottom_mm - 0.5)
    assert clear.width_mm >= 70.0
    assert clear.height_mm >= 35.0
    assert not [box for box in ink(block) if box.meets(clear)]
    assert "Reviewer's stamp" in [text.text for text in texts(block)]
    assert "Reviewer's stamp" not in [text.text for text in texts(block, revisions=False)]
