"""A document and its diagram -> sheets: everything that belongs on them, in the order it is printed."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import partial

from sld.documents.document import Document, OfTheDiagram
from sld.documents.section import FlagForm, FlaggedList, Form, Paragraphs, Section, Table
from sld.documents.title import TitleBlock
from sld.frozen import replace
from sld.layout import Drawable, Parts, Room
from sld.layout.plan import Plan
from sld.picture.picture import Picture
from sld.rows import rows
from sld.sheet.compose import Composition, Drawn, Part, Unseen, compose
from sld.sheet.differences import differences
from sld.sheet.finish import finished
from sld.sheet.first_sheet import belongs_on_it, saying_where, stands_on_it, with_longest
from sld.sheet.flow import Remembered
from sld.sheet.hovered import hover_texts
from sld.sheet.index import sheet_index
from sld.sheet.legend import legend
from sld.sheet.listings.flag import FINDINGS
from sld.sheet.listings.laid import Listing
from sld.sheet.paper import LADDER, Paper
from sld.sheet.placement import (
    best_plan,
    diagram_size,
    fits,
    is_short,
    larger_papers,
    largest_of,
    paper_of,
    placements_lying,
    placements_on,
    room_mm,
)
from sld.sheet.title_block import title_block_height_mm
from sld.sheet.worded import about, listing
from sld.symbols import catalogue
from sld.words import phrase, sequence

__all__ = ["sheets"]


def sheets(document: Document, diagram: Drawable, paper: str | None = None, logo: Picture | None = None) -> Composition:
    """Return the sheets of a document: the diagram with what fits beside it, then what does not.

    A diagram that needs a larger sheet than may be taken is drawn on several, with an overview before them. paper:
    another size than the document asks for.
    """
    say, asked = document.language.say, paper
    paper = paper or document.paper
    titles = document.title
    needed = _needed(document)
    highest = with_longest(titles) if any(each.name == FINDINGS for each in needed) else titles
    drawn = _drawn(diagram, document, highest, paper)
    if asked is None:  # who asks for a size gets it where the diagram fits
        drawn = _with_needed(drawn, diagram, needed, document, paper)
        drawn = _on_asked(drawn, diagram, needed, document, highest)
    drawn = replace(drawn, forms=_forms(document))
    sections = _sections(document, drawn)
    made = compose(
        drawn,
        catalogue.family(diagram.symbols),
        titles,
        _listings(sections, needed, document, diagram, drawn),
        paper,
        Unseen(hover_texts(document, drawn.plans), say(document.description)),
    )
    tables = tuple(rows(each, document.language) for each in sections if isinstance(each, Table | Form))
    made = replace(made, tables=tables)
    titles = saying_where(titles, [sheet.groups for sheet in made.sheets])
    return finished(made, titles, document.colour, logo, about(document))


def _sections(document: Document, drawn: Drawn) -> list[Section | OfTheDiagram]:
    """Return the sections in their order, with what the diagram as it is laid out adds to them."""
    found: list[Section | OfTheDiagram] = []
    for section in document.sections:
        if section is OfTheDiagram.SHEET_INDEX:
            parts = [(part.plan, part.title) for part in drawn.parts]
            found += [sheet_index(document.indexed, parts)] if parts else []
        elif section is OfTheDiagram.DIFFERENCES:
            table = differences(document.measured, drawn.plans)
            found += [table] if table.rows else []
        else:
            found.append(section if isinstance(section, OfTheDiagram) else _with_notes(section, drawn))
    return found


def _forms(document: Document) -> dict[int, FlagForm]:
    """Return what each flag looks like."""
    lists = [section for section in document.sections if isinstance(section, FlaggedList)]
    return {row.number: row.form for section in lists for row in section.rows if row.number}


def _needed(document: Document) -> list[Remembered]:
    """Return the sections that belong on sheet 1, in the words of the document."""
    sections = [each for each in document.sections if not isinstance(each, OfTheDiagram)]
    return [Remembered(listing(each, document.language)) for each in sections if belongs_on_it(each.name)]


def _listings(
    sections: Sequence[Section | OfTheDiagram], needed: Sequence[Listing], document: Document, diagram: Drawable,
    drawn: Drawn,
) -> list[Listing]:  # fmt: skip
    """Return the sections, and the legend, in the words of the document. needed: those that are made already."""
    made = {each.name: each for each in needed}

    def listed(section: Section | OfTheDiagram) -> Listing:
        if isinstance(section, OfTheDiagram):
            symbols = catalogue.family(diagram.symbols)
            return legend(drawn.plans, symbols, document.language, symbols.standard, drawn.forms)
        return made.get(section.name) or listing(section, document.language)

    return [listed(section) for section in sections]


_TERSE = phrase(
    "In the row of an inverter a designation begins behind that of the inverter: -QB1 beside -TB1 is -TB1-QB1. What "
    "cables carry, and where devices are, stands in the schedules."
)


def _with_notes(section: Section, drawn: Drawn) -> Section:
    """Return a section; the notes with those on short labels and on the paper, where there are such."""
    if not isinstance(section, Paragraphs) or section.name != "notes":
        return section
    terse = [_TERSE] if any(plan.terse for plan in drawn.plans) else []
    paper = [phrase("Paper: {note}.", note=drawn.note)] if drawn.note is not None else []
    return replace(section, paragraphs=(*section.paragraphs, *terse, *paper))


def _drawn(diagram: Drawable, document: Document, titles: TitleBlock, paper: str) -> Drawn:
    """Return the diagram on one sheet where it fits one that may be taken, else in parts."""
    largest = largest_of(document.largest_paper, paper)
    plan = best_plan(diagram.plans, titles, paper, largest)
    taken, note = paper_of(plan, titles, paper)
    if taken.width_mm * taken.height_mm <= largest.width_mm * largest.height_mm:
        return Drawn(plan, (), {}, note if taken.name != paper else None, paper=taken)
    shortened = diagram.shortened()
    if shortened is not None:
        return _drawn(shortened, document, titles, paper)
    need = diagram_size(plan)
    del plan  # which may be large
    made = _fewest_parts(diagram, titles, paper, largest)
    several = phrase(
        "{need} does not fit {paper}, so it is drawn on sheets 2 to {last}; at the end of a line that goes on "
        "elsewhere, /3.B4 is sheet 3, zone B4",
        need=need,
        paper=largest.name,
        last=len(made.plans) + 1,
    )
    if len(made.plans) == 1:
        several = phrase(
            "{need} and the title block do not fit {paper}, so it is drawn on sheet 2",
            need=diagram_size(made.plans[0]),
            paper=largest.name,
        )
    first, references = diagram.overview(made, lambda each, share: is_short(each, titles, paper, share))
    parts = tuple(Part(part, title) for part, title in zip(made.plans, made.titles, strict=True))
    taken = placements_lying(first, paper, title_block_height_mm(titles))[0].paper
    return Drawn(first, parts, {**made.references, **references}, several, paper=taken)


def _with_needed(
    drawn: Drawn, diagram: Drawable, needed: Sequence[Remembered], document: Document, paper: str
) -> Drawn:
    """Return the diagram on the smallest paper where what belongs on sheet 1 stands beside it.

    It stays as it is where none that may be taken is large enough.
    """
    height_mm = title_block_height_mm(document.title)
    for taken, plan in _ways(drawn, diagram, document, paper):
        if stands_on_it(needed, placements_on(plan, taken, height_mm), document.language):
            break
    else:
        return drawn
    if taken == drawn.paper:
        return drawn
    why = phrase(
        "{paper} instead of {asked}: beside the diagram, what belongs on sheet 1 (cautions, findings, accepted "
        "deviations, summary) does not fit a smaller size",
        paper=taken.name,
        asked=paper,
    )
    note = sequence([drawn.note, why], "; ") if drawn.parts and drawn.note else why
    return replace(drawn, plan=plan, paper=taken, note=note)


def _on_asked(
    drawn: Drawn, diagram: Drawable, needed: Sequence[Remembered], document: Document, titles: TitleBlock
) -> Drawn:
    """Return the diagram with branches drawn once that differ in lengths alone, where the asked paper suffices so."""
    paper = document.paper
    if drawn.parts or drawn.paper is None or drawn.paper.size == paper:
        return drawn
    shortened = diagram.shortened()
    if shortened is None:
        return drawn
    found = _drawn(shortened, document, titles, paper)
    found = _with_needed(found, shortened, needed, document, paper)
    return found if found.paper and found.paper.size == paper and not found.parts else drawn


def _ways(drawn: Drawn, diagram: Drawable, document: Document, paper: str) -> Iterator[tuple[Paper, Plan]]:
    """Yield the plan on its paper, then on each larger one that may be taken, after one with longer labels there."""
    assert drawn.paper is not None  # settled with the plan
    yield drawn.paper, drawn.plan
    for larger in larger_papers(drawn.paper, largest_of(document.largest_paper, paper)):
        for plan in (*_roomier(drawn, diagram, document, larger), drawn.plan):
            yield larger, plan


def _roomier(drawn: Drawn, diagram: Drawable, document: Document, larger: Paper) -> list[Plan]:
    """Return the plan that a larger paper has room for where it is another one: a smaller one has shorter labels."""
    if drawn.parts or not drawn.plan.terse:
        return []
    plan = best_plan(diagram.plans, document.title, larger.size, larger)
    return [plan] if paper_of(plan, document.title, larger.size)[0] == larger else []


_SAVING_FACTOR = 2 / 3
"""A larger paper is worth it where the diagram takes at most so many of the sheets that it takes on a smaller one."""


def _fewest_parts(diagram: Drawable, titles: TitleBlock, paper: str, largest: Paper) -> Parts:
    """Return the diagram in parts on the paper asked for, or on a larger one that saves many sheets."""
    sizes = LADDER[LADDER.index(paper) : LADDER.index(largest.name) + 1]
    kinds = ((partial(fits, title_block=titles, paper=size), Room(*room_mm(size))) for size in sizes)
    ways = diagram.divided(kinds)
    taken = next(ways)
    for divided in ways:
        if divided.sheets_count <= _SAVING_FACTOR * taken.sheets_count:
            taken = divided
    return taken.laid_out()
