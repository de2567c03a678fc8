"""Mounting, operation and maintenance: what makers state, and the texts of the spec."""

from __future__ import annotations

from collections.abc import Sequence

from sld.documents.cell import Cell, answer
from sld.documents.document import Document
from sld.documents.section import Column, Form, Section, Table
from sld.documents.text_document import text_document
from sld.documents.upkeep.mounting import mounting, mounting_notes, starting
from sld.finding import Finding
from sld.layout.diagram.flags import Flag
from sld.model.system import System
from sld.spec.blocks.upkeep import Upkeep, Warranty
from sld.steps import Ratings
from sld.words import Day, Phrase, Sayable, amount, phrase, sequence

__all__ = ["upkeep"]


def upkeep(system: System, ratings: Ratings, found: Sequence[Finding], flags: Sequence[Flag]) -> Document:
    """Return mounting, operation, faults, maintenance, building works and warranties; blank where nobody wrote them."""
    said = system.upkeep or Upkeep()
    sections: list[Section] = [
        _texts(said),
        _warranties(said.warranties),
        starting(system),
        mounting(system),
        mounting_notes(system),
    ]
    description = phrase("What is to be known for mounting, operation and maintenance, as far as it was given.")
    named = ("upkeep", phrase("Operation and maintenance"), 9)
    return text_document(system, found, named, description, sections)


def _texts(said: Upkeep) -> Form:
    """Return the texts of the spec by what they are about, after IEC 62446-1 4.8 (clause from memory)."""
    asked: tuple[tuple[Phrase, str, list[str]], ...] = (
        (phrase("Check of correct operation"), "upkeep.operation", said.operation),
        (phrase("In the event of a fault"), "upkeep.faults", said.faults),
        (phrase("Emergency"), "upkeep.emergency", said.emergency),
        (phrase("Maintenance and cleaning"), "upkeep.maintenance", said.maintenance),
        (phrase("Works on the building"), "upkeep.building_works", said.building_works),
    )
    fields: list[tuple[Sayable, Cell]] = [
        (caption, answer(question, sequence(texts, " ") if texts else None)) for caption, question, texts in asked
    ]
    return Form("operation", phrase("Operation and maintenance"), tuple(fields))


def _warranties(said: Sequence[Warranty]) -> Table:
    """Return the warranties, one blank row where none is given."""
    columns = (
        Column(phrase("Warranty of"), 1.0),
        Column(phrase("Given by"), 1.0),
        Column(phrase("Begins")),
        Column(phrase("Years"), right=True),
    )
    rows = tuple(_warranty(each) for each in said or (None,))
    return Table("warranties", phrase("Warranties"), columns, rows)


def _warranty(said: Warranty | None) -> tuple[Cell, ...]:
    return (
        answer("warranty", said.of if said else None),
        answer("warranty.by", said.by if said else None),
        answer("warranty.start", Day(said.start) if said and said.start else None),
        answer("warranty.years", amount(said.years) if said and said.years else None),
    )
