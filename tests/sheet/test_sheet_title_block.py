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
from sld.sheet.title_block import logo_box, title_block_height_mm, title_block_strokes
from sld.symbols.stroke import Box, Polyline, Text

BLOCK = TitleBlock("Owner", "Title", "EFS-0001", "2026-01-31", "Maker", approval_person="Checker")
A3 = frame_box(PAPERS["A3"])
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
    two, three = "word " * 12, "some longer word " * 9
    for title, height in (("Title of it", 3.5), (two, 3.5), (three, 2.5)):
        found = [text for text in texts(replace(BLOCK, title=title)) if text.height_mm == height]
        assert " ".join(title.split()) in " ".join(text.text for text in found)
        assert not [text for text in texts(replace(BLOCK, title=title)) if text.text.endswith("…")]


def test_newest_revision_is_at_the_foot_the_earlier_ones_on_top_and_the_oldest_are_counted() -> None:
    rows = tuple(Revision(index, f"change {index}", "2026-01-01") for index in "ABCDEFGH")
    shown = texts(replace(BLOCK, revisions=rows))
    y = {text.text: text.at[1] for text in shown}
    assert y["change G"] < y["change F"] < y["change D"] < y["Title"] < y["change H"]
    assert [text.text for text in shown].count("change H") == 1
    assert "change A" not in y
    assert "3 earlier revisions not listed here" in y
    assert lint(sheet_of(replace(BLOCK, revisions=rows))) == []


FIRST = Revision("A", "first issue", "2026-01-01", "DO", "SE")


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
