"""The documents of a pack bound together, the cover with their pages first, and the files that are made of them."""

from __future__ import annotations

from collections.abc import Mapping

from sld.documents.contents import Contents, Entry
from sld.documents.document import Document
from sld.frozen import dataclass
from sld.model.system import System
from sld.readers import PURPOSES
from sld.rows import Rows, csv
from sld.sheet.bound import Bound, bound, section_pages
from sld.sheet.compose import Composition
from sld.words import sequence

__all__ = ["Made", "Pack", "contents", "csv_files", "packed", "tables"]


@dataclass(frozen=True, slots=True)
class Made:
    """A document and its pages."""

    document: Document
    composition: Composition


@dataclass(frozen=True, slots=True)
class Pack:
    """A pack ready to be written. purpose: as the command line has it. tables: by document and their own name."""

    purpose: str
    bound: Bound
    contents: Contents
    tables: Mapping[str, Rows]


def contents(made: Mapping[str, Made], before_count: int) -> Contents:
    """Return where the documents stand. before_count: pages that come before them."""
    entries = []
    page = before_count + 1
    for each in made.values():
        pages = each.composition.sheets
        entries.append(Entry(each.document, page, len(pages), section_pages(each.composition, page)))
        page += len(pages)
    return Contents(tuple(entries))


def tables(made: Mapping[str, Made]) -> dict[str, Rows]:
    """Return the tables of all documents by the names of document and table, once where both have one name."""
    return {
        table.name if table.name == name else f"{name}-{table.name}": table
        for name, each in made.items()
        for table in each.composition.tables
    }


def packed(system: System, purpose: str, made: Mapping[str, Made], where: Contents) -> Pack:
    """Return the documents bound together, in their order. made: the cover too. where: what stands on which page."""
    say = system.language.say
    titled = {say(each.document.title.document_type): each.composition for each in made.values()}
    title = say(sequence([system.project.title, PURPOSES[purpose].title]))
    return Pack(purpose, bound(titled, system.language, title), where, tables(made))


def csv_files(found: Mapping[str, Rows], stem: str) -> dict[str, bytes]:
    """Return a CSV for each table, by the name of its file."""
    return {f"{stem}-{name}.csv": csv(table) for name, table in found.items()}
