"""The notices that the country asks for at the site: as a table, and as labels at print size.

The wording is that of the standard: it is named by clause and edition and not given here.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from sld.documents.cell import EMPTY, Cell, State, by_ratings, computed, designated, given
from sld.documents.document import Document
from sld.documents.notices.places import data, devices_at, where
from sld.documents.procedure.laid_down import laid_down
from sld.documents.section import Column, Section, Table
from sld.documents.text_document import text_document
from sld.finding import Finding
from sld.grid.decide import met
from sld.grid.notices import AskedNotice, Site
from sld.layout.diagram.flags import Flag
from sld.model.system import System
from sld.steps import Ratings
from sld.steps.notified import facts
from sld.words import phrase, sequence, verbatim

__all__ = ["notices"]

_PART = 15
"""Stands behind the number of the drawing."""


def notices(system: System, ratings: Ratings, found: Sequence[Finding], flags: Sequence[Flag]) -> Document:
    """Return the notices of a system. found, flags: as of the drawing; the title counts them."""
    sections: list[Section] = [_table(system, ratings), _labels(system, ratings)]
    description = phrase(
        "The notices that the rules of the country ask for: where, with which data. Their wording is that of the "
        "clause named, which is to be taken from the standard itself."
    )
    return text_document(system, found, ("notices", phrase("Notices at the site"), _PART), description, sections)


def _asked(system: System, ratings: Ratings) -> Iterator[AskedNotice]:
    """Yield the notices whose conditions hold and whose places there are."""
    known = facts(system, ratings)
    for each in system.grid_rules.notices:
        if met(each, known) and any(where(system, site) for site in each.at):
            yield each


def _text(asked: AskedNotice) -> Cell:
    return laid_down(asked, phrase("text after {clause}", clause=asked.cited))


def _data(system: System, ratings: Ratings, asked: AskedNotice) -> Cell:
    cells = [data(system, ratings, each) for each in asked.data]
    if not cells:
        return EMPTY
    if all(cell.state is State.BLANK for cell in cells):
        return cells[0]
    behind = [rating for cell in cells for rating in cell.ratings]
    said = sequence([cell.text for cell in cells], "; ")
    return by_ratings(said, *behind) if behind else computed(said)


def _table(system: System, ratings: Ratings) -> Table:
    columns = (
        Column(phrase("Notice"), 1.2),
        Column(phrase("Text"), below=True),
        Column(phrase("At"), 1.4),
        Column(phrase("Data"), 1.3),
        Column(phrase("Standing"), 0.6),
        Column(phrase("Fixed")),
    )
    rows = [
        (
            laid_down(asked, asked.notice.phrase),
            _text(asked),
            given(sequence([place for site in asked.at for place in where(system, site)], "; ")),
            _data(system, ratings, asked),
            laid_down(asked, asked.standing.phrase),
            Cell(verbatim("□"), State.BLANK),
        )
        for asked in _asked(system, ratings)
    ]
    return Table("notices", phrase("Notices"), columns, tuple(rows))


def _labels(system: System, ratings: Ratings) -> Table:
    """Return a label for each notice and device that it stands at, with its data, in the order of the devices."""
    columns = (
        Column(phrase("Notice"), 1.0),
        Column(phrase("Data"), 1.0),
        Column(phrase("Label at")),
        Column(phrase("Text"), 1.0),
    )
    found: dict[str, list[AskedNotice]] = {}
    for asked in _asked(system, ratings):
        for site in asked.at:
            for name in devices_at(system, site) if site is not Site.ENTRANCE else ():
                listed = found.setdefault(name, [])
                if asked not in listed:
                    listed.append(asked)
    rows = [
        (laid_down(asked, asked.notice.phrase), _data(system, ratings, asked), designated(name), _text(asked))
        for name, listed in sorted(found.items())
        for asked in listed
    ]
    title = phrase("Labels by device, at print size")
    return Table("notice_labels", title, columns, tuple(rows), placards=True)
