"""The schedules of the drawing as documents of their own: equipment, cables, strings."""

from __future__ import annotations

from collections.abc import Sequence

from sld.documents.document import Document
from sld.documents.drawing.equipment import equipment
from sld.documents.drawing.from_memory import from_memory
from sld.documents.drawing.schedules import cables, earthing, strings
from sld.documents.drawing.wiring import wiring
from sld.documents.schedules.labels import labels
from sld.documents.schedules.string_plan import string_plan
from sld.documents.section import Section
from sld.documents.text_document import text_document
from sld.finding import Finding
from sld.layout.diagram.flags import Flag
from sld.model.system import System
from sld.steps import Ratings
from sld.words import phrase

__all__ = ["cable_schedule", "equipment_schedule", "label_schedule", "string_plan_document", "string_schedule"]


def equipment_schedule(system: System, ratings: Ratings, found: Sequence[Finding], flags: Sequence[Flag]) -> Document:
    """Return every device with make, ratings, place and status."""
    description = phrase("Every device with its make and model, ratings, place and status.")
    sections: list[Section] = [equipment(system, ratings), from_memory(ratings, system.drawing.reader, flags)]
    return text_document(system, found, ("equipment", phrase("Equipment schedule"), 2), description, sections)


def cable_schedule(system: System, ratings: Ratings, found: Sequence[Finding], flags: Sequence[Flag]) -> Document:
    """Return every cable and earthing conductor, and the terminals that they go to."""
    description = phrase("Every cable with its ends, conductors, length and way; earthing conductors; terminals.")
    sections: list[Section] = [
        cables(system, ratings),
        earthing(system, ratings),
        wiring(system),
        from_memory(ratings, system.drawing.reader, flags),
    ]
    return text_document(system, found, ("cables", phrase("Cable schedule"), 3), description, sections)


def string_schedule(system: System, ratings: Ratings, found: Sequence[Finding], flags: Sequence[Flag]) -> Document:
    """Return the strings with their voltages and currents."""
    description = phrase("The strings with their modules, voltages and currents.")
    sections: list[Section] = [strings(system, ratings), from_memory(ratings, system.drawing.reader, flags)]
    return text_document(system, found, ("strings", phrase("String schedule"), 4), description, sections)


def string_plan_document(system: System, ratings: Ratings, found: Sequence[Finding], flags: Sequence[Flag]) -> Document:
    """Return which string is on which input, and where its modules are."""
    description = phrase(
        "Which string is on which input, schematically; where the modules lie on the roof or in the field is in the "
        "plan of the site, which is another document."
    )
    sections: list[Section] = [string_plan(system)]
    return text_document(system, found, ("string_plan", phrase("String plan"), 5), description, sections)


def label_schedule(system: System, ratings: Ratings, found: Sequence[Finding], flags: Sequence[Flag]) -> Document:
    """Return which designation is to be on which device and cable."""
    description = phrase("The designation to be on each device and cable, and where it is.")
    sections = labels(system)
    return text_document(system, found, ("labels", phrase("Label schedule"), 6), description, sections)
