"""The sheets of a project: the diagram, what belongs to it in the room left on sheet 1, and the rest on further sheets.

A diagram on several sheets stands on sheets 2, 3 and so on; on sheet 1 there is the overview of them.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import field
from functools import partial

from sld.documents.section import FlagForm
from sld.documents.title import TitleBlock
from sld.frozen import dataclass, replace
from sld.layout.boundary import with_boundary
from sld.layout.parts.reference import filled, written
from sld.layout.plan import Plan
from sld.rows import Rows
from sld.sheet.fewest import Way, fewest_sheets
from sld.sheet.first_sheet import lacking, saying_where
from sld.sheet.flow import BETWEEN_MM, CONTINUED_MM, Dealt, Remembered, remembered
from sld.sheet.framed import framed, page_columns
from sld.sheet.lettering import fitted
from sld.sheet.listings.laid import Listing
from sld.sheet.paper import LADDER, PAPERS, Paper, frame_box, zone
from sld.sheet.place import SymbolSource, place
from sld.sheet.placement import CLEAR_MM, INSET_MM, Placement, choose, placements_lying, placements_on, with_hollow
from sld.sheet.pointer import pointer
from sld.sheet.sheet import NOTHING_TOLD, About, Group, Sheet
from sld.sheet.title_block import WIDTH_MM, title_block_height_mm, title_strip_height_mm
from sld.symbols.stroke import Box, Text
from sld.symbols.typeface import descent_mm, printable
from sld.words import Said, Sayable

__all__ = ["Composition", "Drawn", "Part", "Standing", "Unseen", "compose"]

HEADING_MM = 3.5
HEADING_BASELINE_MM = 5.5
"""Below the frame: between it and the diagram, which begins INSET_MM below it."""


@dataclass(frozen=True, slots=True)
class Part:
    """A part of the diagram on a sheet of its own. title: what it shows."""

    plan: Plan
    title: Said


@dataclass(frozen=True, slots=True)
class Drawn:
    """The diagram on sheet 1, or the overview of it with its parts on sheets of their own.

    references: by the key of a cell the keys of the cells whose places its labels name. note: why another paper
    than asked was taken, or several, None if not. forms: of the flags, by their numbers. paper: of sheet 1, where there
    is a note; the smallest that holds the plan where it is None.
    """

    plan: Plan
    parts: tuple[Part, ...] = ()
    references: Mapping[str, Sequence[str]] = field(default_factory=dict)
    note: Sayable | None = None
    forms: Mapping[int, FlagForm] = field(default_factory=dict)
    paper: Paper | None = None

    @property
    def plans(self) -> tuple[Plan, ...]:
        """Return all plans."""
        return (self.plan, *(part.plan for part in self.parts))


@dataclass(frozen=True, slots=True)
class Unseen:
    """What is said and not drawn: of a device where a pointer rests on it, by its key; of the diagram in sentences."""

    texts: Mapping[str, str] = field(default_factory=dict)
    description: str = ""


NOTHING_UNSEEN = Unseen()


@dataclass(frozen=True, slots=True)
class Standing:
    """A plan on its sheet: which one, of which paper, and where the plan's upper left corner is."""

    sheet_number: int
    paper: Paper
    plan: Plan
    x_mm: float
    y_mm: float

    def zone(self, x_mm: float, y_mm: float) -> str:
        """Return the grid reference of a point of the plan."""
        return zone(self.paper, x_mm + self.x_mm, y_mm + self.y_mm)


@dataclass(frozen=True, slots=True)
class Composition:
    """The sheets; the paper of sheet 1 and why it was taken; the grid reference of each device ("1/B4"); metadata.

    diagrams: the sheets that show the system itself, not those with an overview of it or with tables. tables: those on
    the sheets, as rows.
    """

    sheets: tuple[Sheet, ...]
    paper: str
    note: Sayable
    zones: Mapping[str, str]
    about: About = NOTHING_TOLD
    diagrams: tuple[Standing, ...] = ()
    tables: tuple[Rows, ...] = ()


def _referring(standings: Sequence[Standing], references: Mapping[str, Sequence[str]]) -> list[Standing]:
    """Return the plans with their references written. references: by cell, the keys of the cells that it refers to.

    What is on the same sheet is not referred to, except by the marks at the two ends of a line that goes on elsewhere.
    """
    places: dict[str, tuple[int, str]] = {}
    for standing in standings:
        for cell in standing.plan.cells:
            place = (standing.sheet_number, standing.zone(*cell.at))
            places |= dict.fromkeys((cell.key, *cell.alike), place)
    found = []
    for standing in standings:
        texts = {}
        for cell in standing.plan.cells:
            targets = (places.get(key) for key in references.get(cell.key, ()))
            always = cell.symbol.startswith("continued")
            texts[cell.key] = [
                written(*place) if place and (always or place[0] != standing.sheet_number) else "" for place in targets
            ]
        known = {key: of for key, of in texts.items() if of}
        found.append(replace(standing, plan=filled(standing.plan, known)))
    return found


def _heading(title: str, number: int, paper: Paper) -> Group:
    """Return the line above a part of the diagram that says what it shows."""
    frame = frame_box(paper)
    (line, *_) = fitted(printable(title), frame.width_mm / 2 - 2 * INSET_MM, HEADING_MM, 1)
    at = (frame.left_mm + INSET_MM, frame.top_mm + HEADING_BASELINE_MM)
    return Group(f"heading-{number}", "label", (Text(at, line, HEADING_MM),))


def _under_heading(at: Placement) -> Placement:
    """Return where a part stands with its columns as far below the line that says what it shows as sections are."""
    top_mm = frame_box(at.paper).top_mm + HEADING_BASELINE_MM + descent_mm(HEADING_MM) + BETWEEN_MM
    return replace(at, columns=tuple(each._replace(top_mm=max(each.top_mm, top_mm)) for each in at.columns))


def _standings(plans: Sequence[Plan], placed: Sequence[Placement], dealt: Sequence[Sequence[Dealt]]) -> list[Standing]:
    """Return the plans on their sheets, a part that has its sheet for itself in the middle of that."""
    return [
        Standing(n, at.paper, plan, at.x_mm, at.y_mm if n == 1 or tables else at.middle_mm)
        for n, (plan, at, tables) in enumerate(zip(plans, placed, dealt, strict=False), 1)
    ]


def _dealt_boxes(tables: Sequence[Dealt], columns: Sequence[Box]) -> tuple[Box, ...]:
    """Return the room that tables take in their columns, with the words below that say where they go on."""
    found = []
    for each in tables:
        x, y = each.at
        right = max((box.right_mm for box in columns if box.left_mm <= x + 0.01 and x < box.right_mm), default=x)
        found.append(Box(x, y, right, y + sum(piece.height_mm for piece in each.pieces) + CONTINUED_MM))
    return tuple(found)


def _bounded(standing: Standing, corner_mm: float, tables: Sequence[Box]) -> Standing:
    """Return a plan on its sheet, with its boundary of ownership as long as the tables and the title block let it be.

    corner_mm: the height of the title block.
    """
    frame = frame_box(standing.paper)
    title = Box(frame.right_mm - WIDTH_MM, frame.bottom_mm - corner_mm, frame.right_mm, frame.bottom_mm)
    taken = [box.moved(-standing.x_mm, -standing.y_mm) for box in (*tables, title.grown(CLEAR_MM / 2))]
    return replace(standing, plan=with_boundary(standing.plan, taken))


@dataclass(frozen=True, slots=True)
class _Arranged:
    """What stands where. note: why the paper of sheet 1 was taken. further: the paper of sheets without a diagram."""

    title_block: TitleBlock
    note: Sayable
    further: Paper
    way: tuple[Placement, tuple[tuple[Dealt, ...], ...]]


def _arranged(
    drawn: Drawn, block: TitleBlock, listings: Sequence[Listing], paper: str, between: Sequence[Sequence[Box]]
) -> _Arranged:
    """Return the listings dealt out, once more where the title block grows by saying where the findings are listed."""
    kept, told = list(map(remembered, listings)), block
    while True:
        height_mm = title_block_height_mm(told)
        placements, note = _placements(drawn, paper, height_mm)
        found: list[_Arranged] = []
        for further in _further_papers(placements[0].paper, paper):
            if not found or _may_save(len(found[0].way[1]), 1 + len(between)):
                columns = page_columns(further, title_strip_height_mm(block))
                dealt = partial(fewest_sheets, listings=kept, columns=columns, between=between, language=block.language)
                way = _with_fewer(dealt(placements), dealt, drawn.plan, height_mm, kept)
                found.append(_Arranged(saying_where(block, way[1]), note, further, way))
        best = found[-1] if len(found[-1].way[1]) <= _SAVING_FACTOR * len(found[0].way[1]) else found[0]
        told = best.title_block
        if title_block_height_mm(told) <= height_mm:
            return best


def _with_fewer(
    way: Way, dealt: Callable[[Sequence[Placement]], Way], plan: Plan, height_mm: float, kept: Sequence[Remembered]
) -> Way:
    """Return another way that uses the room within the diagram too, where that saves a sheet or what belongs on sheet 1
    then stands there. dealt: the best of several placements. height_mm: of the title block."""
    lacks = lacking(kept, way[1])
    if not any(lacks) and len(way[1]) <= _FEW_COUNT:
        return way
    hollowed = with_hollow(way[0], plan, height_mm)
    other = dealt([hollowed]) if hollowed != way[0] else way
    return other if (lacking(kept, other[1]), len(other[1])) < (lacks, len(way[1])) else way


_FEW_COUNT = 2
"""So many sheets are not made fewer by letting tables stand amid the diagram."""

_SAVING_FACTOR = 2 / 3
"""Sheets as large as the first one are taken where the drawing then has at most so many of them."""


def _may_save(sheets_count: int, with_diagram_count: int) -> bool:
    """Return whether larger sheets can save enough: there is one at least besides those with a diagram."""
    return sheets_count > with_diagram_count and with_diagram_count + 1 <= _SAVING_FACTOR * sheets_count


def _further_papers(first: Paper, asked: str) -> list[Paper]:
    """Return the papers that sheets without a diagram may be of: that asked for, and that of sheet 1, a size larger."""
    if first.size == asked:
        return [first]
    larger = LADDER[LADDER.index(asked) + 1 :][:1]
    return [PAPERS[asked], first] if first.size in larger else [PAPERS[asked]]


def _placements(drawn: Drawn, paper: str, title_height_mm: float) -> tuple[list[Placement], Sayable]:
    """Return the placements on the paper of sheet 1, and why that is taken."""
    if drawn.paper is None or drawn.note is None:
        return choose(drawn.plan, paper, title_height_mm)
    return placements_on(drawn.plan, drawn.paper, title_height_mm), drawn.note


def compose(
    drawn: Drawn, symbols: SymbolSource, title_block: TitleBlock, listings: Sequence[Listing],
    paper: str = "A3", unseen: Unseen = NOTHING_UNSEEN,
) -> Composition:  # fmt: skip
    """Return the sheets of a project.

    symbols: the symbol catalogue. title_block: its fields. listings: tables, notes, legend in their order; the first
    ones fill what is free on sheet 1, the rest further sheets of the asked size, upright where sheet 1 is of that size
    and upright, or as large as sheet 1 where that saves one sheet in three. paper: A4, A3, A2, A1 or A0; a sheet is
    upright or larger where its diagram needs it. Raises KeyError for another paper.
    """
    parts, title_height_mm, say = drawn.parts, title_strip_height_mm(title_block), title_block.language.say
    lying = ((part.plan, placements_lying(part.plan, paper, title_height_mm)[0]) for part in parts)
    placed = [_under_heading(with_hollow(at, plan, title_height_mm)) for plan, at in lying]
    arranged = _arranged(drawn, title_block, listings, paper, [each.columns for each in placed])
    title_block, asked, (placement, dealt) = arranged.title_block, arranged.further, arranged.way
    placed.insert(0, placement)
    corners_mm = [title_block_height_mm(title_block), *([title_height_mm] * len(parts))]
    beside = [_dealt_boxes(tables, at.columns) for tables, at in zip(dealt, placed, strict=False)]
    standings = list(map(_bounded, _standings(drawn.plans, placed, dealt), corners_mm, beside))
    standings = _referring(standings, drawn.references)
    sheets = []
    for number, tables in enumerate(dealt, 1):
        groups, told = [each.inked() for each in tables], [unseen.description] if number == 1 else []
        paper_taken = asked
        for standing in standings[number - 1 : number]:
            at, paper_taken = (standing.x_mm, standing.y_mm), standing.paper
            revision = title_block.revision_index
            groups[:0] = place(standing.plan, symbols, unseen.texts, at, drawn.forms, revision)
        for part in parts[number - 2 : number - 1] if number > 1 else ():
            told.append(say(part.title))
            heading = _heading(told[0], number, paper_taken)
            groups += [heading, *pointer(groups, heading, dealt, number, title_block.language)]
        if number > 1:
            told += [group.title for group in groups if group.section]
        sheets.append(framed(paper_taken, number, len(dealt), title_block, groups, "; ".join(dict.fromkeys(told))))
    shown = standings[1:] or standings
    zones: dict[str, str] = {}
    for each in shown:
        for cell in each.plan.cells:
            zones |= dict.fromkeys((cell.key, *cell.alike), f"{each.sheet_number}/{each.zone(*cell.at)}")
    return Composition(tuple(sheets), placement.paper.name, arranged.note, zones, diagrams=tuple(shown))
