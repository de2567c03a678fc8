"""The drawing: the diagram with cautions, findings, summary, legend and schedules, as its reader needs them."""

from __future__ import annotations

from collections.abc import Sequence

from sld.documents.document import Document, OfTheDiagram
from sld.documents.drawing.data_bus import data_bus
from sld.documents.drawing.equipment import equipment
from sld.documents.drawing.findings import accepted, assumptions, findings, taken
from sld.documents.drawing.from_memory import from_memory
from sld.documents.drawing.hover import description, hover_texts
from sld.documents.drawing.insulation_test import insulation_test
from sld.documents.drawing.measures import measures
from sld.documents.drawing.notes import basis, cautions
from sld.documents.drawing.review import review
from sld.documents.drawing.schedules import cables, earthing, strings
from sld.documents.drawing.sheet_index import indexed
from sld.documents.drawing.summary import summary
from sld.documents.drawing.wiring import wiring
from sld.documents.section import Section, is_empty
from sld.documents.title import metadata, title
from sld.finding import Finding
from sld.layout.diagram.flags import Flag
from sld.model.system import System
from sld.readers import READERS
from sld.steps import Ratings

__all__ = ["drawing"]


def drawing(system: System, ratings: Ratings, found: Sequence[Finding], flags: Sequence[Flag]) -> Document:
    """Return the drawing of a system for its reader. found: all findings. flags: those that the diagram carries."""
    sections: tuple[Section | OfTheDiagram, ...] = (
        summary(system, ratings),
        review(system, ratings),
        cautions(system),
        findings(system, flags),
        accepted(system, flags),
        OfTheDiagram.SHEET_INDEX,
        OfTheDiagram.DIFFERENCES,
        OfTheDiagram.LEGEND,
        basis(system),
        from_memory(ratings, system.drawing.reader, flags),
        insulation_test(system, ratings),
        assumptions(system),
        taken(ratings),
        strings(system, ratings),
        cables(system, ratings),
        equipment(system, ratings),
        wiring(system),
        earthing(system, ratings),
        data_bus(system, ratings),
    )
    left_out = READERS[system.drawing.reader].sections
    return Document(
        name="drawing",
        title=title(system, found),
        sections=tuple(
            each
            for each in sections
            if isinstance(each, OfTheDiagram) or (each.name not in left_out and not is_empty(each))
        ),
        language=system.language,
        metadata=metadata(system),
        description=description(system, ratings),
        paper=system.drawing.paper,
        largest_paper=system.drawing.largest_paper,
        colour=system.drawing.colour,
        hover=hover_texts(system, ratings, flags),
        indexed=indexed(system),
        measured=measures(system, ratings),
        designations={key: device.designation for key, device in system.devices.items()},
    )
