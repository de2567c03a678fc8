"""The procedure with the network operator: what it has to be told, when, why, and by which rule."""

from __future__ import annotations

from collections.abc import Sequence

from sld.documents.document import Document
from sld.documents.procedure.decision import decision, limits
from sld.documents.procedure.points import points
from sld.documents.procedure.tasks import papers, tasks
from sld.documents.section import Paragraphs, Section
from sld.documents.text_document import text_document
from sld.finding import Finding
from sld.layout.diagram.flags import Flag
from sld.model.system import System
from sld.steps import Ratings
from sld.words import phrase

__all__ = ["procedure"]

_PART = 12
"""Stands behind the number of the drawing."""


def procedure(system: System, ratings: Ratings, found: Sequence[Finding], flags: Sequence[Flag]) -> Document:
    """Return the procedure with the network operator. found, flags: as of the drawing; the title counts them."""
    sections: tuple[Section, ...] = (
        decision(system, ratings),
        tasks(system, ratings),
        papers(system, ratings),
        points(system, ratings),
        limits(system, ratings),
        _sources(),
    )
    return text_document(
        system,
        found,
        ("procedure", phrase("Procedure with the network operator"), _PART),
        phrase("What the network operator is to be told, when and why."),
        sections,
    )


def _sources() -> Paragraphs:
    """Return what the standing of an entry means."""
    texts = (
        phrase(
            "Procedures, limits and forms are restated from the sources named, on the day given. The network "
            "operator's own conditions and local law are to be asked for; nothing here is filed with anybody."
        ),
        phrase(
            "Confirmed is what the operator's or authority's own text in force says, or two independent sources that "
            "restate it alike. Everything else is to be confirmed before it is relied on."
        ),
    )
    return Paragraphs("grid_sources", phrase("How far to rely on it"), texts, numbered=True)
