"""The cover: what the pack is for, and its contents."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from sld.documents.cell import Cell, computed, given
from sld.documents.contents import Contents, Entry
from sld.documents.document import Document
from sld.documents.section import Column, Form, Section, Table
from sld.documents.text_document import text_document
from sld.finding import Finding
from sld.model.system import System
from sld.words import NOTHING, Phrase, Sayable, phrase, sequence, verbatim

__all__ = ["cover"]

_COLUMNS = (
    Column(phrase("Document"), 1.0),
    Column(phrase("Number")),
    Column(phrase("Rev.")),
    Column(phrase("Date of issue")),
    Column(phrase("Page"), right=True),
    Column(phrase("Pages"), right=True),
)


def cover(systems: Sequence[System], found: Sequence[Finding], purpose: Phrase, contents: Contents) -> Document:
    """Return the cover of a pack. systems: behind each supply point. purpose: what the pack is for."""
    description = phrase("{purpose}: the documents of one installation, all made of one description of it.",
                         purpose=purpose)  # fmt: skip
    table = Table("contents", phrase("Contents"), _COLUMNS, tuple(map(_row, contents.entries)))
    sections: list[Section] = [_installation(systems, purpose), table]
    return text_document(systems[0], found, ("cover", phrase("Cover and contents"), 0), description, sections)


def _installation(systems: Sequence[System], purpose: Phrase) -> Form:
    """Return what the pack is for, and what tells one installation from another on a desk."""
    project, supplies = systems[0].project, [system.supply for system in systems]
    installer = project.installer.company if project.installer else NOTHING
    return Form(
        "installation",
        phrase("Installation"),
        (
            (phrase("Purpose"), given(purpose)),
            (phrase("Installation"), given(project.title)),
            (phrase("Address of the site"), given(project.address or NOTHING)),
            (phrase("Customer"), given(project.customer or NOTHING)),
            (phrase("Installer"), given(installer)),
            (phrase("Network operator"), given(_each(supply.operator for supply in supplies))),
            (phrase("Number of the supply point"), given(_each(supply.supply_point for supply in supplies))),
        ),
    )


def _each(texts: Iterable[str | None]) -> Sayable:
    """Return what is given, each once."""
    return sequence(dict.fromkeys(text for text in texts if text))


def _row(entry: Entry) -> tuple[Cell, ...]:
    title = entry.document.title
    return (
        given(title.document_type),
        given(title.identification_number),
        given(title.revision_index),
        given(title.date_of_issue),
        computed(verbatim(str(entry.first_page))),
        computed(verbatim(str(entry.pages_count))),
    )
