"""Sections of a document as listings: this is where their words are chosen."""

from __future__ import annotations

from collections.abc import Sequence

from sld.documents.cell import EMPTY, NOT_GIVEN, Cell, Designations
from sld.documents.document import Document
from sld.documents.section import FlaggedList, Form, Paragraphs, Section
from sld.documents.section import Table as TableSection
from sld.frozen import replace
from sld.rows import rows
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

_SAYING_NOTHING = (EMPTY, NOT_GIVEN)


def listing(section: Section, language: Language) -> Listing:
    """Return a section in the words of a language."""
    title = language.say(section.title)
    match section:
        case TableSection(placards=True):
            return Placards(section.name, title, rows(section, language).cells)
        case TableSection():
            return _table(section, title, language)
        case Form():
            return Table(section.name, title, (Column("", 1.0), Column("", 1.0)), _fields(section, language))
        case FlaggedList():
            marked = tuple(
                FlagRow(row.number, tuple(plain(language.typeset(each), language) for each in row.paragraphs), row.form)
                for row in section.rows
            )
            return FlagList(section.name, title, marked)
        case Paragraphs():
            drawn = symbol(section.sign) if section.sign else None
            sign = (drawn.strokes, drawn.box) if drawn else None
            texts = tuple(plain(language.typeset(each), language) for each in section.paragraphs)
            return TextList(section.name, title, texts, section.numbered, sign=sign, dense=section.dense)


def _fields(section: Form, language: Language) -> tuple[tuple[str, str], ...]:
    """Return captions and values of a form."""
    return tuple((language.typeset(caption), language.typeset(value)) for caption, value in section.fields)


def _table(section: TableSection, title: str, language: Language) -> Table:
    """Return a table on paper: some columns below or behind the one before them, some that say nothing left out."""
    section = _shortened(section)
    places: list[list[int]] = []
    for place, column in enumerate(section.columns):
        if (column.below or column.behind) and places:
            places[-1].append(place)
        elif not section.sparse or _says_something(section, place):
            places.append([place])
    heads = [section.columns[together[0]] for together in places]
    columns = tuple(
        Column(_heading(section, together, language), head.share_factor, "right" if head.right else "left")
        for together, head in zip(places, heads, strict=True)
    )
    cells = tuple(tuple(_cell(section, row, together, language) for together in places) for row in section.rows)
    return Table(section.name, title, columns, cells, abreast=section.abreast)


def _shortened(section: TableSection) -> TableSection:
    """Return a table with the short designations in the columns in which all have such."""
    for place, column in enumerate(section.columns):
        if column.short is None:
            continue
        names = [row[place].text for row in section.rows]
        short = [Designations(text.short, text.rest) for text in names if isinstance(text, Designations) and text.short]
        if short and len(short) == len(section.rows):
            columns = (*section.columns[:place], replace(column, heading=column.short), *section.columns[place + 1 :])
            rows = tuple(
                (*row[:place], replace(row[place], text=text), *row[place + 1 :])
                for row, text in zip(section.rows, short, strict=True)
            )
            section = replace(section, columns=columns, rows=rows)
    return section


def _says_something(section: TableSection, place: int) -> bool:
    """Return whether a column has a cell that says something, or others that share its place on paper."""
    following = section.columns[place + 1 : place + 2]
    shared = any(column.below or column.behind for column in following)
    return shared or any(row[place] not in _SAYING_NOTHING for row in section.rows)


def _heading(section: TableSection, places: Sequence[int], language: Language) -> str:
    """Return the heading of columns that share a place on paper."""
    text = ""
    for column in (section.columns[place] for place in places):
        said = language.typeset(column.on_paper or column.heading)
        text += ("; " if column.behind else " / ") + said if text else said
    return text


def _cell(section: TableSection, row: Sequence[Cell], places: Sequence[int], language: Language) -> str:
    """Return the cells of columns that share a place, below each other or, where they say something, behind."""
    lines: list[list[Cell]] = []
    for place in places:
        column, cell = section.columns[place], row[place]
        if not column.behind:
            lines.append([cell])
        elif cell not in (*_SAYING_NOTHING, column.usual) and language.say(cell):
            lines[-1] = [each for each in lines[-1] if each not in _SAYING_NOTHING] + [cell]
    texts = (", ".join(map(language.typeset, line)) for line in lines)
    return "\n".join(text for text in texts if text)


def about(document: Document) -> About:
    """Return what the files of a document say about it."""
    told = document.metadata
    return About(told.author, tuple(document.language.say(word) for word in told.keywords), told.date)
