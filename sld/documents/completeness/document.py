"""The list of what is asked for: each with its answer and the page that has it, or a blank."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence

from sld.documents.cell import NOT_GIVEN, Cell, State, by_ratings, computed, given
from sld.documents.completeness.asked import ASKED, ASKERS, Asked
from sld.documents.contents import Contents, Entry
from sld.documents.document import Document, OfTheDiagram
from sld.documents.section import Column, Form, Paragraphs, Section, Table
from sld.documents.text_document import text_document
from sld.finding import Finding
from sld.frozen import replace
from sld.model.system import System
from sld.words import Sayable, counted, phrase, sequence, verbatim

__all__ = ["completeness"]

_COLUMNS = (
    Column(phrase("Asked for"), 1.2),
    Column(phrase("Mostly by"), 0.8),
    Column(phrase("Answer"), 1.2),
    Column(phrase("Page"), right=True),
)

_FEW_COUNT = 3
"""So many different answers are all printed; of more it is said how many are given."""


def completeness(system: System, found: Sequence[Finding], askers: Collection[str], contents: Contents) -> Document:
    """Return what is asked for and where the documents of a pack answer it.

    What has no place in the installation, such as a battery where there is none, is left out. askers: keys of `ASKERS`;
    what none of them asks for is left out too.
    """
    rows = [row for asked in ASKED if {*asked.by} & {*askers} and (row := _row(asked, contents))]
    blank = sum(row[2].state is State.BLANK for row in rows)
    table = Table("asked_for", phrase("What is asked for"), _COLUMNS, tuple(rows))
    description = phrase(
        "What network operators, permit offices and inspection bodies ask for, and the page that answers it. No list "
        "holds everywhere: what is asked for here goes by the local forms."
    )
    named = ("completeness", phrase("Completeness"), 11)
    return text_document(system, found, named, description, [_count(len(rows), blank), table])


def _count(all_count: int, blank_count: int) -> Paragraphs:
    text = counted(
        "Of {all} things that are asked for, {count} is not answered by the spec; it is blank below.",
        "Of {all} things that are asked for, {count} are not answered by the spec; they are blank below.",
        blank_count,
        all=all_count,
    )
    return Paragraphs("count", phrase("What is missing"), (text,))


def _row(asked: Asked, contents: Contents) -> tuple[Cell, ...] | None:
    """Return the row of a thing that is asked for, None where the pack has no place for it."""
    entries = {each.document.name: each for each in contents.entries}
    by = given(sequence([ASKERS[each] for each in asked.by]))
    if asked.document:
        entry = entries.get(asked.document)
        if entry is None:
            return None
        page = entry.sections.get(asked.section, entry.first_page)
        return given(asked.what), by, given(entry.document.title.document_type), _page(page)
    places = [(entry, section, cell) for entry in entries.values() for section, cell in _answers(entry, asked.answers)]
    if not places:
        return None
    entry, first, _ = next((place for place in places if place[2].state is not State.BLANK), places[0])
    page = entry.sections.get(first.name, entry.first_page)
    return given(asked.what), by, _answer([cell for _, _, cell in places], asked.is_long), _page(page)


def _page(number: int) -> Cell:
    return computed(verbatim(str(number)))


def _answers(entry: Entry, question: str) -> Iterator[tuple[Section, Cell]]:
    """Yield the cells of a document that answer a question, each with its section."""
    for section in entry.document.sections:
        if not isinstance(section, OfTheDiagram):
            for cell in _cells(section):
                if cell.answers == question:
                    yield section, cell


def _cells(section: Section) -> Iterator[Cell]:
    if isinstance(section, Table):
        yield from (cell for row in section.rows for cell in row)
    elif isinstance(section, Form):
        yield from (cell for _, cell in section.fields)


def _answer(cells: Sequence[Cell], is_long: bool) -> Cell:
    """Return what the cells say: their text where it is one and no long one, else how many of them are filled."""
    filled = [cell for cell in cells if cell.state is not State.BLANK]
    if not filled:
        return NOT_GIVEN
    texts: list[Sayable] = list(dict.fromkeys(cell.text for cell in filled))
    if len(filled) == len(cells) and len(texts) == 1 and not is_long:
        return replace(filled[0], answers="")
    if len(filled) == len(cells) and len(texts) <= _FEW_COUNT and not is_long:
        return by_ratings(sequence(texts, "; "), *(rating for cell in filled for rating in cell.ratings))
    return computed(phrase("{filled} of {all} given", filled=len(filled), all=len(cells)))
