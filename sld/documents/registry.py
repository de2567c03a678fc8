"""Every document there is: its name, what it is called, its sections, and how it is made."""

from __future__ import annotations

from collections.abc import Callable, Collection, Sequence

from sld.documents.calculation.document import calculation
from sld.documents.document import Document, OfTheDiagram
from sld.documents.drawing.document import drawing
from sld.documents.findings.document import findings_document
from sld.documents.notices.document import notices
from sld.documents.papers.document import papers
from sld.documents.particulars.document import particulars
from sld.documents.procedure.document import procedure
from sld.documents.schedules.document import (
    cable_schedule,
    equipment_schedule,
    label_schedule,
    string_plan_document,
    string_schedule,
)
from sld.documents.settings.document import settings
from sld.documents.switching.document import switching
from sld.documents.upkeep.document import upkeep
from sld.finding import Finding
from sld.frozen import dataclass, replace
from sld.layout.diagram.flags import Flag
from sld.model.system import System
from sld.readers import READERS
from sld.steps import Ratings
from sld.words import Phrase, phrase

__all__ = ["KINDS", "DocumentKind", "without_own"]

Make = Callable[[System, Ratings, Sequence[Finding], Sequence[Flag]], Document]


@dataclass(frozen=True, slots=True)
class DocumentKind:
    """A kind of document. sections: names of all that it may have, in their order. diagram: whether it has one.

    instead: sections that the drawing does not have where it is bound with this document.
    """

    name: str
    title: Phrase
    sections: tuple[str, ...]
    make: Make
    diagram: bool = False
    instead: tuple[str, ...] = ()

    @property
    def readers(self) -> tuple[str, ...]:
        """Return for whom it is made."""
        return tuple(name for name, reader in READERS.items() if self.name in reader.documents)


_EVERY = (
    DocumentKind(
        "drawing",
        phrase("Single-line diagram"),
        (
            "cautions", "findings", "sheet_index", "differences", "review", "summary", "legend", "notes", "from_memory",
            "insulation_test", "accepted", "assumptions", "taken", "strings", "cables", "equipment", "terminals",
            "earthing", "data_bus",
        ),
        drawing,
        diagram=True,
    ),
    DocumentKind(
        "calculation",
        phrase("Calculation"),
        (
            "notes", "inverters", "batteries", "generators", "loads", "boards", "main_board", "supply", "earthing",
            "data_bus", "system",
        ),
        calculation,
    ),
    DocumentKind(
        "procedure",
        phrase("Procedure with the network operator"),
        ("notes", "procedure", "grid_tasks", "grid_papers", "grid_points", "grid_limits", "grid_sources"),
        procedure,
    ),
    DocumentKind(
        "settings",
        phrase("Settings"),
        ("notes", "settings_sets", "settings_values", "interface", "export", "reactive", "settings_read"),
        settings,
    ),
    DocumentKind(
        "switching",
        phrase("Switching sheet"),
        ("notes", "switching_cautions", "source_list", "isolate_site", "stays_live", "restore", "isolate_source"),
        switching,
    ),
    DocumentKind("notices", phrase("Notices at the site"), ("notes", "notices", "notice_labels"), notices),
    DocumentKind(
        "equipment",
        phrase("Equipment schedule"),
        ("notes", "equipment", "from_memory"),
        equipment_schedule,
        instead=("equipment",),
    ),
    DocumentKind(
        "cables",
        phrase("Cable schedule"),
        ("notes", "cables", "earthing", "terminals", "from_memory"),
        cable_schedule,
        instead=("cables", "earthing", "terminals"),
    ),
    DocumentKind(
        "strings",
        phrase("String schedule"),
        ("notes", "strings", "from_memory"),
        string_schedule,
        instead=("strings",),
    ),
    DocumentKind("string_plan", phrase("String plan"), ("notes", "string_plan"), string_plan_document),
    DocumentKind("labels", phrase("Label schedule"), ("notes", "device_labels", "cable_labels"), label_schedule),
    DocumentKind(
        "findings",
        phrase("Findings and accepted deviations"),
        ("notes", "findings", "accepted", "assumptions", "taken", "from_memory"),
        findings_document,
    ),
    DocumentKind(
        "particulars",
        phrase("Particulars of the installation"),
        (
            "notes", "project", "application", "parties", "supply", "powers", "modules", "inverters", "certificates",
            "characteristics", "batteries", "backups", "feed_in_limiters", "meters",
        ),
        particulars,
    ),
    DocumentKind(
        "upkeep",
        phrase("Operation and maintenance"),
        ("notes", "operation", "warranties", "starting", "mounting", "mounting_notes"),
        upkeep,
    ),
    DocumentKind("papers", phrase("List of documents"), ("notes", "papers"), papers),
)  # fmt: skip


def without_own(document: Document, others: Collection[str]) -> Document:
    """Return a document without the sections that others, by their names, have instead when they are bound with it."""
    gone = {section for name in others for section in KINDS[name].instead} if KINDS[document.name].diagram else set()
    kept = (each for each in document.sections if isinstance(each, OfTheDiagram) or each.name not in gone)
    return replace(document, sections=tuple(kept))


KINDS: dict[str, DocumentKind] = {each.name: each for each in _EVERY}
"""By name, the word of the command line."""
