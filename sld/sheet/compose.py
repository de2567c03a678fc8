"""The sheets of a project: the diagram, what belongs to it in the room left on sheet 1, and the rest on further sheets.

A diagram on several sheets stands on sheets 2, 3 and so on; on sheet 1 there is the overview of them.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace

from sld.documents.section import FlagForm
from sld.documents.title import TitleBlock
from sld.layout.boundary import with_boundary
from sld.layout.parts.reference import filled, written
from sld.layout.plan import Plan
from sld.rows import Rows
from sld.sheet.flow import TOGETHER_MM, Dealt, Manner, Remembered, columns_of, flow
from sld.sheet.lettering import fitted
from sld.sheet.listings.flag import FINDINGS
from sld.sheet.listings.laid import Listing
from sld.sheet.paper import PAPERS, Paper, frame_box, frame_strokes, lying, upright, zone
from sld.sheet.place import SymbolSource, place
from sld.sheet.placement import CLEAR_MM, INSET_MM, Placement, choose
from sld.sheet.sheet import NOTHING_TOLD, About, Group, Sheet
from sld.sheet.title_block import (
    WIDTH_MM,
    title_block_height_mm,
    title_block_strokes,
    title_strip_height_mm,
    title_strip_strokes,
)
from sld.symbols.stroke import Box, Text
from sld.symbols.typeface import printable
from sld.words import Language, Said, Sayable, phrase, sequence

__all__ = ["Composition", "Drawn", "Part", "Standing", "Unseen", "compose"]

MANY_COUNT = 20
"""Among more sheets than this no time is spent on saving one."""

SHORT_MM = 55.0
"""A listing of at most this height is never parted unless it begins a column: eight rows of the summary."""

_READ_FIRST = frozenset({"cautions", "findings", "accepted", "sheet_index", "differences", "review", "summary"})
"""Sections that stay in their order before the others."""

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
    than asked was taken, or several, None if not. forms: of the flags, by their numbers.
    """

    plan: Plan
    parts: tuple[Part, ...] = ()
    references: Mapping[str, Sequence[str]] = field(default_factory=dict)
    note: Sayable | None = None
    forms: Mapping[int, FlagForm] = field(default_factory=dict)

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


def _page_columns(paper: Paper, title_height_mm: float) -> tuple[Box, ...]:
    """Return the columns of a further sheet, those over the title block shortened."""
    frame = frame_box(paper)
    top_of_title = frame.bottom_mm - title_height_mm - CLEAR_MM
    return tuple(
        box._replace(bottom_mm=top_of_title) if box.right_mm > frame.right_mm - WIDTH_MM - CLEAR_MM else box
        for box in columns_of(frame.grown(-INSET_MM))
    )


def _sheet(
    paper: Paper, number: int, count: int, block: TitleBlock, groups: Sequence[Group], description: str
) -> Sheet:
    """Return one sheet with its frame and title block, or the strip in its place on further ones."""
    border = Group("border", "frame", frame_strokes(paper))
    frame = frame_box(paper)
    corner = (
        title_block_strokes(block, frame, number, count, paper.name)
        if number == 1
        else title_strip_strokes(block, frame, number, count)
    )
    say = block.language.say
    of_several = [phrase("sheet {number} of {count}", number=number, count=count)] if count > 1 else []
    name = say(sequence([block.title, block.document_type, *of_several]))
    titled = Group("title-block", "table", corner, say(phrase("Title block")))
    return Sheet(
        paper.width_mm, paper.height_mm, number, printable(name), description, block.language.code,
        (border, *groups, titled),
    )  # fmt: skip


def _fewest_sheets(
    placements: Sequence[Placement],
    listings: Sequence[Listing],
    columns: Sequence[Box],
    between_count: int,
    language: Language,
) -> tuple[Placement, tuple[tuple[Dealt, ...], ...]]:
    """Return the placement with the fewest sheets and its flow; among these, one with the findings on the first sheet.

    Listings of some length are parted in more places, and their order is given up, only where that saves a sheet.
    """
    remembered = [Remembered(listing) for listing in listings]
    tallest = _tallest_first(remembered, columns[0].width_mm)
    found: list[tuple[Placement, tuple[tuple[Dealt, ...], ...]]] = []
    for ordered, together_mm, fill in (
        (remembered, TOGETHER_MM, False), (remembered, SHORT_MM, False), (remembered, SHORT_MM, True),
        (tallest, TOGETHER_MM, True),
    ):  # fmt: skip
        for placement in placements:
            manner = Manner(language, between_count, together_mm, fill)
            sheets = flow(ordered, placement.columns, columns, manner)
            found.append((placement, sheets))
            if len(sheets) == 1 or len(sheets) > MANY_COUNT:
                return found[-1] if len(sheets) == 1 else found[0]
    # the first of equals, thus the preferred one
    return min(found, key=lambda way: (len(way[1]), _lists_findings(way[1][0]) != any(map(_lists_findings, way[1]))))


def _tallest_first(listings: Sequence[Remembered], width_mm: float) -> list[Remembered]:
    """Return listings with those that are looked up, not read first, by their height: so they leave least room."""

    def height_mm(listing: Remembered) -> float:
        return sum(piece.height_mm for row in listing.laid(width_mm).rows for piece in row)

    read_first = [each for each in listings if each.name in _READ_FIRST]
    others = [each for each in listings if each.name not in _READ_FIRST]
    return [*read_first, *sorted(others, key=height_mm, reverse=True)]


def _lists_findings(tables: Sequence[Dealt]) -> bool:
    """Return whether the list of findings begins, or goes on, among the tables of a sheet."""
    return any(each.section == FINDINGS for each in tables)


def _saying_where(block: TitleBlock, sheets: Sequence[Sequence[Dealt]], between_count: int) -> TitleBlock:
    """Return the title block with the sheet on which the findings are listed, where that is not the first one."""
    place = next((place for place, tables in enumerate(sheets) if _lists_findings(tables)), 0)
    if not place:
        return block
    listed = phrase("{findings}; listed on sheet {number}", findings=block.findings, number=place + 1 + between_count)
    told = replace(block, findings=listed)
    grown = title_block_height_mm(told) != title_block_height_mm(block)
    return block if grown else told  # the room for it is settled


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


def _parts_on_paper(parts: Sequence[Part], asked: str, title_height_mm: float) -> list[Standing]:
    """Return the parts on sheets from the second on, each of the asked size unless it needs a larger one."""
    found = []
    for number, part in enumerate(parts, 2):
        placement = choose(part.plan, asked, title_height_mm)[0][0]
        found.append(Standing(number, placement.paper, part.plan, placement.x_mm, placement.y_mm))
    return found


def _dealt_boxes(tables: Sequence[Dealt], columns: Sequence[Box]) -> tuple[Box, ...]:
    """Return the room that tables take in their columns."""
    found = []
    for each in tables:
        x, y = each.at
        right = max((box.right_mm for box in columns if box.left_mm <= x + 0.01 and x < box.right_mm), default=x)
        found.append(Box(x, y, right, y + sum(piece.height_mm for piece in each.pieces)))
    return tuple(found)


def _bounded(standing: Standing, corner_mm: float, tables: Sequence[Box]) -> Standing:
    """Return a plan on its sheet, with its boundary of ownership as long as the tables and the title block let it be.

    corner_mm: the height of the title block.
    """
    frame = frame_box(standing.paper)
    title = Box(frame.right_mm - WIDTH_MM, frame.bottom_mm - corner_mm, frame.right_mm, frame.bottom_mm)
    taken = [box.moved(-standing.x_mm, -standing.y_mm) for box in (*tables, title.grown(CLEAR_MM / 2))]
    return replace(standing, plan=with_boundary(standing.plan, taken))


def compose(
    drawn: Drawn, symbols: SymbolSource, title_block: TitleBlock, listings: Sequence[Listing],
    paper: str = "A3", unseen: Unseen = NOTHING_UNSEEN,
) -> Composition:  # fmt: skip
    """Return the sheets of a project.

    symbols: the symbol catalogue. title_block: its fields. listings: tables, notes, legend in their order; the first
    ones fill what is free on sheet 1, the rest further sheets of the asked size, upright where sheet 1 is of that size
    and upright. paper: A4, A3, A2, A1 or A0; a sheet is upright or larger where its diagram needs it. Raises KeyError
    for another paper.
    """
    plan, parts = drawn.plan, drawn.parts
    placements, note = choose(plan, paper, title_block_height_mm(title_block))
    first_paper = placements[0].paper
    asked = first_paper if first_paper in (upright(PAPERS[paper]), lying(PAPERS[paper])) else PAPERS[paper]
    title_height_mm = title_strip_height_mm(title_block)
    placement, (first, *further) = _fewest_sheets(
        placements, listings, _page_columns(asked, title_height_mm), len(parts), title_block.language
    )
    title_block = _saying_where(title_block, (first, *further), len(parts))
    standings = [Standing(1, placement.paper, plan, placement.x_mm, placement.y_mm)]
    standings += _parts_on_paper(parts, paper, title_height_mm)
    corners_mm = [title_block_height_mm(title_block), *([title_height_mm] * len(parts))]
    beside = [_dealt_boxes(first, placement.columns), *([()] * len(parts))]
    standings = [_bounded(*each) for each in zip(standings, corners_mm, beside, strict=True)]
    standings = _referring(standings, drawn.references)
    count = len(standings) + len(further)
    sheets = []
    for number, standing in enumerate(standings, 1):
        groups = place(standing.plan, symbols, unseen.texts, (standing.x_mm, standing.y_mm), drawn.forms)
        if number == 1:
            inked = [each.inked() for each in first]
            sheets.append(_sheet(placement.paper, 1, count, title_block, (*groups, *inked), unseen.description))
            continue
        title = title_block.language.say(parts[number - 2].title)
        heading = _heading(title, number, standing.paper)
        sheets.append(_sheet(standing.paper, number, count, title_block, (*groups, heading), title))
    for number, dealt in enumerate(further, len(standings) + 1):
        tables = [each.inked() for each in dealt]
        titles = "; ".join(dict.fromkeys(group.title for group in tables))
        sheets.append(_sheet(asked, number, count, title_block, tables, titles))
    shown = standings[1:] or standings
    zones = {
        key: f"{each.sheet_number}/{each.zone(*cell.at)}"
        for each in shown
        for cell in each.plan.cells
        for key in (cell.key, *cell.alike)
    }
    return Composition(tuple(sheets), placement.paper.name, note, zones, diagrams=tuple(shown))
