"""A document without a diagram -> sheets: pages of text, the title block on the first, a strip on the others."""

from __future__ import annotations

from sld.documents.document import Document, OfTheDiagram
from sld.documents.section import Form, Table
from sld.documents.title import TitleBlock
from sld.frozen import replace
from sld.picture.picture import Picture
from sld.rows import rows
from sld.sheet.compose import Composition
from sld.sheet.finish import finished
from sld.sheet.flow import Manner, flow
from sld.sheet.framed import framed, page_room
from sld.sheet.paper import PAPERS, upright
from sld.sheet.sheet import Sheet
from sld.sheet.title_block import (
    title_block_height_mm,
    title_strip_height_mm,
)
from sld.sheet.worded import about, listing
from sld.words import counted, phrase

__all__ = ["pages"]


def pages(document: Document, logo: Picture | None = None) -> Composition:
    """Return a document on upright sheets of its paper, its sections one after the other over their whole width.

    Sections that tell of a diagram are passed over, as there is none.
    """
    titles, paper, language = document.title, upright(PAPERS[document.paper]), document.language
    sections = [each for each in document.sections if not isinstance(each, OfTheDiagram)]
    first, further = (page_room(paper, height_mm) for height_mm in _heights_mm(titles))
    listings = [listing(each, language) for each in sections]
    flowed = flow(listings, (first,), (further,), Manner(language, beside_diagram=False))
    inked = [[each.inked() for each in dealt] for dealt in flowed]
    sheets = tuple(
        framed(paper, number, len(inked), titles, groups, "; ".join(dict.fromkeys(group.title for group in groups)))
        for number, groups in enumerate(inked, 1)
    )
    tables = tuple(rows(each, language) for each in sections if isinstance(each, Table | Form))
    note = phrase("{paper}: {pages}", paper=paper.name, pages=counted("{count} page", "{count} pages", len(sheets)))
    made = Composition(_described(sheets, language.say(document.description)), paper.name, note, {}, tables=tables)
    with_logo, without = (finished(made, titles, document.colour, each, about(document)) for each in (logo, None))
    return replace(with_logo, sheets=(*with_logo.sheets[:1], *without.sheets[1:]))  # the strip has no field for a logo


def _heights_mm(titles: TitleBlock) -> tuple[float, float]:
    """Return the heights of what stands at the foot of the first page and of the others."""
    return title_block_height_mm(titles), title_strip_height_mm(titles)


def _described(sheets: tuple[Sheet, ...], description: str) -> tuple[Sheet, ...]:
    """Return the sheets with the description of the document on the first one."""
    first, *others = sheets
    return (replace(first, description=description), *others)
