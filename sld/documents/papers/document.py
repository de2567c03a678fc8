"""Data sheets, manuals, certificates and plans: what is attached, and what is missing for the types in use."""

from __future__ import annotations

from collections.abc import Sequence

from sld.documents.cell import Cell, answer, given
from sld.documents.document import Document
from sld.documents.section import Column, Table
from sld.documents.text_document import text_document
from sld.finding import Finding
from sld.layout.diagram.flags import Flag
from sld.model.device import InverterUnit, StringGroup
from sld.model.system import System
from sld.spec.blocks.paper import Paper
from sld.steps import Ratings
from sld.words import Day, phrase, phrase_in, sequence

__all__ = ["KINDS_OF_PAPER", "papers"]

KINDS_OF_PAPER = {
    "data_sheet": phrase("data sheet"),
    "manual": phrase("manual"),
    "certificate": phrase("certificate"),
    "site_plan": phrase("site plan"),
    "array_plan": phrase("array plan"),
    "calculation": phrase_in("kind of document", "calculation"),
    "test_record": phrase("test record"),
    "other": phrase_in("kind of document", "other"),
}

_COLUMNS = (
    Column(phrase("Kind")),
    Column(phrase("About"), 1.0),
    Column(phrase("Title"), 1.2),
    Column(phrase("File or reference"), 1.2),
    Column(phrase("Date")),
)


def papers(system: System, ratings: Ratings, found: Sequence[Finding], flags: Sequence[Flag]) -> Document:
    """Return the papers of the spec, and a blank row for each that is asked for and not given."""
    rows = [_row(each) for each in system.papers]
    units, modules = _types(system, InverterUnit), _types(system, StringGroup)
    asked = [("data_sheet", name) for name in (*modules, *units)] + [("manual", name) for name in units]
    asked += [(kind, "") for kind in ("site_plan", "array_plan", "test_record")]
    rows += [_missing(kind, of) for kind, of in asked if not _has(system, kind, of)]
    table = Table("papers", phrase("Attached documents"), _COLUMNS, tuple(rows))
    description = phrase(
        "Documents that belong to the installation and are not made here; their files are not looked into."
    )
    return text_document(system, found, ("papers", phrase("List of documents"), 10), description, [table])


def _types(system: System, of: type[InverterUnit | StringGroup]) -> list[str]:
    """Return the names of the types of inverters or modules in use."""
    return list(dict.fromkeys(each.type_name for each in system.of(of)))


def _has(system: System, kind: str, of: str = "") -> bool:
    return any(each.kind == kind and (not of or each.of == of) for each in system.papers)


def _row(said: Paper) -> tuple[Cell, ...]:
    where = [each for each in (said.file, said.reference) if each]
    return (
        given(KINDS_OF_PAPER[said.kind]),
        given(said.of or ""),
        answer(f"paper.{said.kind}", said.title),
        given(sequence(where)),
        given(Day(said.date) if said.date else ""),
    )


def _missing(kind: str, of: str) -> tuple[Cell, ...]:
    return (
        given(KINDS_OF_PAPER[kind]), given(of), answer(f"paper.{kind}", None), given(""), given(""),
    )  # fmt: skip
