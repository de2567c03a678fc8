"""A document without a diagram -> sheets: pages of text, the title block on the first, a strip on the others."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from sld.documents.document import Document, OfTheDiagram
from sld.documents.section import Form, Table
from sld.documents.title import TitleBlock
from sld.picture.picture import Picture
from sld.rows import rows
from sld.sheet.compose import Composition
from sld.sheet.finish import finished
from sld.sheet.flow import Manner, flow
from sld.sheet.paper import PAPERS, Paper, frame_box, frame_strokes, upright
from sld.sheet.placement import CLEAR_MM, INSET_MM
from sld.sheet.sheet import Group, Sheet
from sld.sheet.title_block import (
    title_block_height_mm,
    title_block_strokes,
    title_strip_height_mm,
    title_strip_strokes,
)
from sld.sheet.worded import about, listing
from sld.symbols.stroke import Box
from sld.symbols.typeface import printable
from sld.words import counted, phrase, sequence

__all__ = ["pages"]


def pages(document: Document, logo: Picture | None = None) -> Composition:
    """Return a document on upright sheets of its paper, its sections one after the other over their whole width.

    Sections that tell of a diagram are passed over, as there is none.
    """
    titles, paper, language = document.title, upright(PAPERS[document.paper]), document.language
    sections = [each for each in document.sections if not isinstance(each, OfTheDiagram)]
    first, further = (_page(paper, height_mm) for height_mm in _heights_mm(titles))
    listings = [listing(each, language) for each in sections]
    flowed = flow(listings, (first,), (further,), Manner(language, between_count=None))
    inked = [[each.inked() for each in dealt] for dealt in flowed]
    sheets = tuple(_sheet(paper, number, len(inked), titles, groups) for number, groups in enumerate(inked, 1))
    tables = tuple(rows(each, language) for each in sections if isinstance(each, Table | Form))
    note = phrase("{paper}: {pages}", paper=paper.name, pages=counted("{count} page", "{count} pages", len(sheets)))
    made = Composition(_described(sheets, language.say(document.description)), paper.name, note, {}, tables=tables)
    with_logo, without = (finished(made, titles, document.colour, each, about(document)) for each in (logo, None))
    return replace(with_logo, sheets=(*with_logo.sheets[:1], *without.sheets[1:]))  # the strip has no field for a logo


def _heights_mm(titles: TitleBlock) -> tuple[float, float]:
    """Return the heights of what stands at the foot of the first page and of the others."""
    return title_block_height_mm(titles), title_strip_height_mm(titles)


def _page(paper: Paper, foot_mm: float) -> Box:
    frame = frame_box(paper)
    return frame.grown(-INSET_MM)._replace(bottom_mm=frame.bottom_mm - foot_mm - CLEAR_MM)


def _sheet(paper: Paper, number: int, count: int, titles: TitleBlock, groups: Sequence[Group]) -> Sheet:
    """Return a page with its frame and what stands at its foot."""
    frame, say = frame_box(paper), titles.language.say
    foot = (
        title_block_strokes(titles, frame, number, count, paper.name)
        if number == 1
        else title_strip_strokes(titles, frame, number, count)
    )
    of_several = [phrase("sheet {number} of {count}", number=number, count=count)] if count > 1 else []
    name = say(sequence([titles.title, titles.document_type, *of_several]))
    description = "; ".join(dict.fromkeys(group.title for group in groups))
    return Sheet(
        paper.width_mm, paper.height_mm, number, printable(name), description, titles.language.code,
        (Group("border", "frame", frame_strokes(paper)), *groups,
         Group("title-block", "table", foot, say(phrase("Title block")))),
    )  # fmt: skip


def _described(sheets: tuple[Sheet, ...], description: str) -> tuple[Sheet, ...]:
    """Return the sheets with the description of the document on the first one."""
    first, *others = sheets
    return (replace(first, description=description), *others)
