"""The particulars of an installation, for the application and for the file of whoever operates it."""

from __future__ import annotations

from collections.abc import Sequence

from sld.documents.document import Document
from sld.documents.particulars.control import backups, feed_in_limiters
from sld.documents.particulars.people import application, parties, project_form
from sld.documents.particulars.sources import batteries, certificates, characteristics, inverters, modules
from sld.documents.particulars.supply import meters, powers, supply_form
from sld.documents.section import Section
from sld.documents.text_document import text_document
from sld.finding import Finding
from sld.layout.diagram.flags import Flag
from sld.model.system import System
from sld.steps import Ratings
from sld.words import phrase

__all__ = ["particulars"]


def particulars(system: System, ratings: Ratings, found: Sequence[Finding], flags: Sequence[Flag]) -> Document:
    """Return who, where, at which supply and with which sources; what nobody gave is blank, to be filled in by hand."""
    sections: list[Section] = [
        project_form(system),
        application(system),
        parties(system),
        supply_form(system, ratings),
        powers(system, ratings),
        modules(system),
        inverters(system),
        certificates(system),
        characteristics(system),
        batteries(system),
        backups(system),
        feed_in_limiters(system),
        meters(system),
    ]
    description = phrase("Who has a part in the installation, its connection to the network, and its sources.")
    named = ("particulars", phrase("Particulars of the installation"), 8)
    return text_document(system, found, named, description, sections)
