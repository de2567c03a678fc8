"""Settings: what the protection and the inverters are to be set to for the network, with blanks to be read back."""

from __future__ import annotations

from collections.abc import Sequence

from sld.documents.document import Document
from sld.documents.section import Section
from sld.documents.settings.interface import export, interface, reactive
from sld.documents.settings.values import chosen, read_back, values
from sld.documents.text_document import text_document
from sld.finding import Finding
from sld.layout.diagram.flags import Flag
from sld.model.system import System
from sld.steps import Ratings
from sld.words import phrase

__all__ = ["settings"]

_PART = 13
"""Stands behind the number of the drawing."""


def settings(system: System, ratings: Ratings, found: Sequence[Finding], flags: Sequence[Flag]) -> Document:
    """Return the settings of a system. found, flags: as of the drawing; the title counts them."""
    sections: list[Section] = [
        chosen(system, ratings),
        values(system, ratings),
        interface(system, ratings),
        export(system, ratings),
        reactive(system, ratings),
        read_back(system),
    ]
    description = phrase(
        "What is to be set for the network, with lines for what is read back. A value that is not confirmed is only "
        "expected: confirm it with the network operator before it is set."
    )
    return text_document(system, found, ("settings", phrase("Settings"), _PART), description, sections)
