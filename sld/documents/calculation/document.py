"""The calculation: every rating of a system by circuit, in the order of the energy, for those who check it."""

from __future__ import annotations

from collections.abc import Sequence

from sld.documents.calculation.circuits import circuits
from sld.documents.calculation.notes import notes
from sld.documents.calculation.table import table
from sld.documents.document import Document
from sld.documents.section import Section, is_empty
from sld.documents.title import metadata, title
from sld.finding import Finding
from sld.layout.diagram.flags import Flag
from sld.model.system import System
from sld.steps import Ratings
from sld.words import phrase

__all__ = ["calculation"]


def calculation(system: System, ratings: Ratings, found: Sequence[Finding], flags: Sequence[Flag]) -> Document:
    """Return the calculation of a system. found, flags: as of the drawing; the title block counts them."""
    sections: list[Section] = [notes(system), *(table(each, ratings) for each in circuits(system))]
    return Document(
        name="calculation",
        title=title(system, found, phrase("Calculation"), 1),
        sections=tuple(each for each in sections if not is_empty(each)),
        language=system.language,
        metadata=metadata(system),
        description=phrase("Every rating with its formula, the numbers put in, its source and what governed it."),
        paper="A4",
        colour=system.drawing.colour,
    )
