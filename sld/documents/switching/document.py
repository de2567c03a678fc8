"""The switching sheet: isolating one source or the site, what stays live, and switching on again."""

from __future__ import annotations

from collections.abc import Sequence

from sld.documents.document import Document
from sld.documents.section import Section
from sld.documents.switching.live import cautions, restoring, source_list, stays_live
from sld.documents.switching.order import of_each_source, of_the_site
from sld.documents.text_document import text_document
from sld.finding import Finding
from sld.layout.diagram.flags import Flag
from sld.model.system import System
from sld.steps import Ratings
from sld.words import phrase

__all__ = ["switching"]

_PART = 14
"""Stands behind the number of the drawing."""


def switching(system: System, ratings: Ratings, found: Sequence[Finding], flags: Sequence[Flag]) -> Document:
    """Return the switching sheet of a system. found, flags: as of the drawing; the title counts them."""
    sections: list[Section] = [
        cautions(system),
        source_list(system),
        of_the_site(system, ratings),
        stays_live(system, ratings),
        restoring(system),
        of_each_source(system, ratings),
    ]
    description = phrase(
        "The order of isolating the site and each source, what stays live then, and switching on again. Before it is "
        "used it is to be held against what is on the wall."
    )
    return text_document(system, found, ("switching", phrase("Switching sheet"), _PART), description, sections)
