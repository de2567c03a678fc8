"""Tables of documents as rows of text, the same cells as on paper, and as CSV."""

from __future__ import annotations

import csv as csv_writer
from io import StringIO

from sld.documents.section import Form, Table
from sld.frozen import dataclass
from sld.words import Language

__all__ = ["Rows", "csv", "rows"]


@dataclass(frozen=True, slots=True)
class Rows:
    """A table in the words of a language. name: of the section. headings: none where the columns have none."""

    name: str
    headings: tuple[str, ...]
    cells: tuple[tuple[str, ...], ...]


def rows(section: Table | Form, language: Language) -> Rows:
    """Return the cells of a table, or the captions and values of a form, in the words of a language."""
    say = language.say
    match section:
        case Table():
            headings = tuple(say(column.heading) for column in section.columns)
            return Rows(section.name, headings, tuple(tuple(map(say, row)) for row in section.rows))
        case Form():
            return Rows(section.name, (), tuple((say(caption), say(cell)) for caption, cell in section.fields))


def csv(table: Rows) -> bytes:
    """Return a table as CSV after RFC 4180: commas, lines ending in CR LF, UTF-8 with a mark that spreadsheets read."""
    text = StringIO()
    writer = csv_writer.writer(text)
    if table.headings:
        writer.writerow(heading.replace("\n", " ") for heading in table.headings)  # two lines on paper
    writer.writerows(table.cells)
    return text.getvalue().encode("utf-8-sig")
