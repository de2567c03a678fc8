"""Findings with their remedies, accepted deviations with reason, role and date, assumptions, values from memory."""

from __future__ import annotations

from collections.abc import Sequence

from sld.documents.document import Document
from sld.documents.drawing.findings import accepted, assumptions, findings, taken
from sld.documents.drawing.from_memory import from_memory
from sld.documents.section import Paragraphs, Section, is_empty
from sld.documents.text_document import text_document
from sld.finding import Finding
from sld.layout.diagram.flags import Flag
from sld.model.system import System
from sld.steps import Ratings
from sld.words import phrase

__all__ = ["findings_document"]


def findings_document(system: System, ratings: Ratings, found: Sequence[Finding], flags: Sequence[Flag]) -> Document:
    """Return what is wrong or open, and what was accepted and assumed. The numbers are those of the diagram's flags."""
    listed = findings(system, flags)
    sections: list[Section] = [
        _nothing() if is_empty(listed) else listed,
        accepted(system, flags),
        assumptions(system),
        taken(ratings),
        from_memory(ratings, system.drawing.reader, flags),
    ]
    description = phrase(
        "What was found, accepted and assumed; the numbers are those of the flags in the single-line diagram."
    )
    return text_document(
        system, found, ("findings", phrase("Findings and accepted deviations"), 7), description, sections
    )


def _nothing() -> Paragraphs:
    """Return what is said where no finding is open."""
    text = phrase("None is open. What no rule of this program asks about remains to be judged by the reader.")
    return Paragraphs("findings", phrase("Findings"), (text,))
