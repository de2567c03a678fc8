"""Pages of text: the order of the sections, the title block on the first page, a strip on the others."""

from __future__ import annotations

from dataclasses import replace

import pytest

from sld.documents.cell import given
from sld.documents.document import Document, OfTheDiagram
from sld.documents.section import Column, Form, Paragraphs, Section, Table
from sld.documents.title import Metadata, Revision, TitleBlock
from sld.picture.picture import Picture
from sld.sheet.ink import ink_box
from sld.sheet.lint import lint
from sld.sheet.pages import pages
from sld.sheet.paper import PAPERS, frame_box
from sld.sheet.sheet import Sheet
from sld.sheet.title_block import title_strip_strokes
from sld.symbols.stroke import Text
from sld.words import ENGLISH, language, verbatim

LONG = "a rather long title with many words, " * 5
TITLE = TitleBlock(
    "Owner", "Hall", "EFS-0001", verbatim("2026-01-31"), "Maker", verbatim("Calculation"),
    revisions=(Revision("A", "First issue", verbatim("2026-01-31")),), logo=True,
)  # fmt: skip
COLUMNS = (Column(verbatim("Head")), Column(verbatim("Below"), below=True), Column(verbatim("Wide"), 1.0))
LOGO = Picture(4, 2, b"\x00" * 24)


def table(name: str, count: int) -> Table:
    rows = tuple((given(f"{name}{n}"), given(f"u{n}"), given("word " * (n % 9))) for n in range(count))
    return Table(name, verbatim(name.upper()), COLUMNS, rows)


def document(*sections: Section | OfTheDiagram, title: TitleBlock = TITLE) -> Document:
    return Document("d", title, sections, ENGLISH, Metadata("", (), ""), verbatim("What it is."), "A4")


def words(sheet: Sheet, *keys: str) -> list[str]:
    return [s.text for g in sheet.groups if not keys or g.key in keys for s in g.strokes if isinstance(s, Text)]


def order(sheets: tuple[Sheet, ...]) -> list[str]:
    """The names of the sections in the order of their parts."""
    found = [group.section for sheet in sheets for group in sheet.groups if group.section]
    return list(dict.fromkeys(found))


@pytest.mark.parametrize("count", range(8, 28, 2))
def test_the_sections_keep_their_order_though_a_later_one_would_fit(count: int) -> None:
    """A table too short to be parted goes on to the next page; what follows it does not take the room it leaves."""
    notes = Paragraphs("notes", verbatim("Notes"), (verbatim("one"),))
    made = pages(document(table("a", count), table("b", 7), notes, table("c", 90)))
    assert order(made.sheets) == ["a", "b", "notes", "c"]
    assert len(made.sheets) > 2


@pytest.mark.parametrize("count", [0, 1, 40, 400])
@pytest.mark.parametrize("title", [TITLE, replace(TITLE, title=LONG, identification_number=LONG, revision_index=LONG)])
def test_every_page_says_which_it_is_and_no_text_touches_another(count: int, title: TitleBlock) -> None:
    made = pages(document(table("a", count), OfTheDiagram.LEGEND, title=title))
    for number, sheet in enumerate(made.sheets, 1):
        assert f"{number} of {len(made.sheets)}" in words(sheet, "title-block")
        assert lint(sheet) == []
    assert str(made.note) == f"A4: {len(made.sheets)} page{'s' if len(made.sheets) > 1 else ''}"
    printed = "".join(text for sheet in made.sheets for text in words(sheet))
    assert all(f"a{n}" in printed for n in range(count))


def test_what_stands_on_the_first_page_alone() -> None:
    first, *others = pages(document(table("a", 60)), LOGO).sheets
    assert others
    assert {"First issue", "Creator"} <= set(words(first))
    assert len(first.pictures) == 1
    assert first.description == "What it is."
    for sheet in others:
        assert not {"First issue", "Creator"} & set(words(sheet))
        fields = {"Title", "Legal owner", "Identification number", "Date of issue", "Rev.", "Sheet"}
        assert fields <= set(words(sheet, "title-block"))
        assert not sheet.pictures


def test_nothing_is_outside_the_frame_or_in_the_strip() -> None:
    frame = frame_box(PAPERS["A4"])
    for sheet in pages(document(table("a", 200))).sheets:
        feet = [ink_box(s).top_mm for g in sheet.groups if g.key == "title-block" for s in g.strokes]
        for stroke in (s for group in sheet.groups if group.section for s in group.strokes):
            box = ink_box(stroke)
            assert frame.left_mm < box.left_mm < box.right_mm < frame.right_mm
            assert frame.top_mm < box.top_mm
            assert box.bottom_mm < min(feet)


@pytest.mark.parametrize("spoken", ["en", "de"])
@pytest.mark.parametrize(("number", "count"), [(10, 23), (100, 120)])
def test_the_number_of_a_sheet_has_room_in_the_strip(number: int, count: int, spoken: str) -> None:
    title, frame = replace(TITLE, language=language(spoken)), frame_box(PAPERS["A4"])
    strokes = title_strip_strokes(title, frame, number, count)
    assert max(ink_box(each).bottom_mm for each in strokes if isinstance(each, Text)) < frame.bottom_mm
    assert sum(isinstance(each, Text) and str(number) in each.text and str(count) in each.text for each in strokes) == 1


def test_a_form_and_columns_below_others_are_rows_of_their_own() -> None:
    form = Form("f", verbatim("Form"), ((verbatim("Caption"), given("Value")),))
    made = pages(document(table("a", 1), form))
    assert [(each.name, each.headings, each.cells) for each in made.tables] == [
        ("a", ("Head", "Below", "Wide"), (("a0", "u0", "–"),)),
        ("f", (), (("Caption", "Value"),)),
    ]
    texts = words(made.sheets[0])
    assert "Head / Below" in texts
    assert texts.index("a0") + 1 == texts.index("u0")
