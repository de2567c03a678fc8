"""Sections of a document as listings: this is where their words are chosen."""

from __future__ import annotations

from collections.abc import Sequence

from sld.documents.document import Document
from sld.documents.section import FlaggedList, Form, Paragraphs, Section
from sld.documents.section import Table as TableSection
from sld.rows import Rows, rows
from sld.sheet.listings.flag import FlagList, FlagRow
from sld.sheet.listings.laid import Listing
from sld.sheet.listings.placards import Placards
from sld.sheet.listings.table import Column, Table
from sld.sheet.listings.text import TextList
from sld.sheet.sheet import About
from sld.symbols.catalogue import symbol
from sld.words import Language
from sld.words.plain import plain

__all__ = ["about", "listing", "plain"]


def listing(section: Section, language: Language) -> Listing:
    """Return a section in the words of a language."""
    say = language.say
    title = say(section.title)
    match section:
        case TableSection(placards=True):
            return Placards(section.name, title, rows(section, language).cells)
        case TableSection():
            return _table(section, title, rows(section, language))
        case Form():
            return Table(section.name, title, (Column("", 1.0), Column("", 1.0)), rows(section, language).cells)
        case FlaggedList():
            marked = tuple(
                FlagRow(row.number, tuple(plain(say(each), language) for each in row.paragraphs), row.form)
                for row in section.rows
            )
            return FlagList(section.name, title, marked)
        case Paragraphs():
            drawn = symbol(section.sign) if section.sign else None
            sign = (drawn.strokes, drawn.box) if drawn else None
            texts = tuple(plain(say(each), language) for each in section.paragraphs)
            return TextList(section.name, title, texts, section.numbered, sign=sign)


def _table(section: TableSection, title: str, told: Rows) -> Table:
    """Return a table on paper, its columns that stand below others put there."""
    places: list[list[int]] = []
    for place, column in enumerate(section.columns):
        if column.below:
            places[-1].append(place)
        else:
            places.append([place])
    heads = [section.columns[column[0]] for column in places]
    columns = tuple(
        Column(
            " / ".join(told.headings[place] for place in column), head.share_factor, "right" if head.right else "left"
        )
        for column, head in zip(places, heads, strict=True)
    )
    cells = tuple(tuple(_stacked(row, c) for c in places) for row in told.cells)
    return Table(section.name, title, columns, cells, abreast=section.abreast)


def _stacked(texts: Sequence[str], places: Sequence[int]) -> str:
    """Return the texts of some places, each on a line of its own; empty ones are left out."""
    return "\n".join(texts[place] for place in places if texts[place])


def about(document: Document) -> About:
    """Return what the files of a document say about it."""
    told = document.metadata
    return About(told.author, tuple(document.language.say(word) for word in told.keywords), told.date)
