"""Where a diagram stands on a paper, which paper it needs, and what is left there for tables and notes."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from functools import partial
from itertools import pairwise

from sld.documents.title import TitleBlock
from sld.frozen import dataclass, replace
from sld.layout import Wanted
from sld.layout.boundary import high_boundaries
from sld.layout.plan import Plan
from sld.sheet.flow import columns_of
from sld.sheet.hollow import hollow
from sld.sheet.paper import (
    LADDER,
    LEFT_MARGIN_MM,
    MARGIN_MM,
    PAPERS,
    Paper,
    extended,
    frame_box,
    from_size_up,
    lying,
    upright,
)
from sld.sheet.title_block import WIDTH_MM, title_block_height_mm, title_strip_height_mm
from sld.symbols.stroke import Box, box_between
from sld.symbols.typeface import text_box
from sld.words import Phrase, Value, phrase

__all__ = [
    "CLEAR_MM",
    "INSET_MM",
    "Placement",
    "best_plan",
    "choose",
    "diagram_size",
    "fits",
    "is_short",
    "larger_papers",
    "largest_of",
    "paper_of",
    "placements_lying",
    "placements_on",
    "room_mm",
    "with_hollow",
]

INSET_MM = 7.0
"""Distance of the content from the frame: more than the centring marks reach in."""

CLEAR_MM = 2.5
"""Distance of listings and diagram from the title block and from each other."""

USEFUL_HEIGHT_MM = 25.0
USEFUL_WIDTH_MM = 75.0

HOLLOW_WIDTH_MM, HOLLOW_HEIGHT_MM = 75.0, 30.0
"""Within a diagram less room is not worth filling."""

FAR_TOO_LARGE_FACTOR = 1.5
"""Narrower label lines change the proportions of a diagram, not much its area."""


@dataclass(frozen=True, slots=True)
class Placement:
    """A sheet settled: its paper, where the plan's upper left corner goes, and the columns left for listings.

    middle_mm: how far down that corner is where no listings follow.
    """

    paper: Paper
    x_mm: float
    y_mm: float
    columns: tuple[Box, ...]
    middle_mm: float


def _content(plan: Plan) -> Iterator[Box]:
    """Yield the boxes of all that the plan shows."""
    for cell in plan.cells:
        yield from cell.boxes()
    for wire in plan.wires:
        for start, end in pairwise(wire.points):
            yield box_between(start, end).grown(0.25)
    for frame in plan.frames:
        yield from (frame.box, text_box(frame.caption))
    yield from (flag.box for flag in plan.flags)
    yield from map(text_box, plan.texts)


def _useful(*boxes: Box) -> tuple[Box, ...]:
    """Return the columns of those boxes that are large enough to be worth filling."""
    found: list[Box] = []
    for box in boxes:
        if box.height_mm >= USEFUL_HEIGHT_MM and box.width_mm >= USEFUL_WIDTH_MM:
            found += columns_of(box)
    return tuple(found)


def _roomiest(boxes: Sequence[Box], within: Box) -> Box:
    """Return the largest empty rectangle in the lower right corner of a box; further right it may reach higher."""
    found = within
    best_mm2 = -1.0
    top_mm = within.top_mm
    ends = sorted(((box.right_mm + CLEAR_MM, box.bottom_mm + CLEAR_MM) for box in boxes), reverse=True)
    starts = {within.left_mm, *(box.right_mm + CLEAR_MM for box in boxes if box.right_mm > within.left_mm)}
    passed = 0
    for start in sorted(starts, reverse=True):
        while passed < len(ends) and ends[passed][0] > start:
            top_mm = max(top_mm, ends[passed][1])
            passed += 1
        room = Box(start, top_mm, within.right_mm, within.bottom_mm)
        if room.width_mm < USEFUL_WIDTH_MM or room.height_mm < USEFUL_HEIGHT_MM:
            continue
        if room.width_mm * room.height_mm >= best_mm2:  # of equals the one that begins furthest left
            found, best_mm2 = room, room.width_mm * room.height_mm
    return found if best_mm2 > 0 else Box(within.left_mm, within.bottom_mm, within.right_mm, within.bottom_mm)


def _gaps(boxes: Sequence[Box], within: Box) -> Iterator[Box]:
    """Yield the wide strips of a box at whose foot nothing stands, the one on the right first."""
    right_mm, strip_mm = within.right_mm, within.bottom_mm - USEFUL_HEIGHT_MM - CLEAR_MM
    low = [box for box in boxes if strip_mm < box.bottom_mm and box.top_mm < within.bottom_mm + CLEAR_MM]
    edges = [(box.right_mm + CLEAR_MM, box.left_mm - CLEAR_MM) for box in low]
    for left_mm, further_mm in (*sorted(edges, reverse=True), (within.left_mm, within.left_mm)):
        left_mm = max(left_mm, within.left_mm)
        if right_mm - left_mm >= USEFUL_WIDTH_MM:
            yield within._replace(left_mm=left_mm, right_mm=right_mm)
        right_mm = min(right_mm, further_mm)


def _raised(column: Box, boxes: Sequence[Box], top_mm: float) -> Box:
    """Return a column that begins right below what is above it."""
    above = [box.bottom_mm + CLEAR_MM for box in boxes
             if box.left_mm < column.right_mm + CLEAR_MM and box.right_mm > column.left_mm - CLEAR_MM]  # fmt: skip
    return Box(column.left_mm, max([top_mm, *above]), column.right_mm, column.bottom_mm)


def _has_room(paper: Paper, width_mm: float, height_mm: float) -> bool:
    """Return whether a paper is large enough for a plan of a size, whatever else stands on it."""
    inner = frame_box(paper).grown(-INSET_MM)
    return width_mm <= inner.width_mm + 1e-6 and height_mm <= inner.height_mm + 1e-6


_Way = Callable[[], Placement]
"""A way to stand on a paper, the columns beside it not yet measured."""


def _ways(plan: Plan, boxes: Sequence[Box], paper: Paper, title_height_mm: float) -> list[_Way]:
    """Return the ways the plan can stand on a paper, the preferred one first; none where it does not fit.

    It stands centred, or centred left of the title block, with listings below it; or at the left, with listings beside
    it. It may reach down beside the title block as long as nothing that it shows comes near it.
    """
    if not _has_room(paper, plan.width_mm, plan.height_mm):
        return []
    frame = frame_box(paper)
    inner = frame.grown(-INSET_MM)
    left, top = frame.right_mm - WIDTH_MM, frame.bottom_mm - title_height_mm
    keep_out = Box(left - CLEAR_MM, top - CLEAR_MM, frame.right_mm, frame.bottom_mm)
    below_mm, x0 = inner.top_mm + plan.height_mm + CLEAR_MM, inner.left_mm
    right_mm = x0 + plan.width_mm

    def clear(x_mm: float, y_mm: float) -> bool:
        near = [  # first by single numbers: most boxes are far from the title block
            box for box in boxes if box.right_mm + x_mm > keep_out.left_mm and box.bottom_mm + y_mm > keep_out.top_mm
        ]
        return not any(box.moved(x_mm, y_mm).meets(keep_out) for box in near)

    def below(x_mm: float) -> tuple[Box, ...]:
        moved = [box.moved(x_mm, inner.top_mm) for box in (*boxes, *high_boundaries(plan))]
        *others, last = columns_of(inner)
        if others and others[-1].right_mm <= keep_out.left_mm:  # as wide as those of further sheets
            beside_title = [each._replace(top_mm=below_mm) for each in others]
        else:
            beside_title = [Box(x0, below_mm, keep_out.left_mm, inner.bottom_mm)]
            last = Box(max(x0, left), inner.top_mm, inner.right_mm, inner.bottom_mm)
        last = last._replace(bottom_mm=keep_out.top_mm)
        gaps = (([box for box in moved if box.left_mm < gap.right_mm], gap) for gap in _gaps(moved, last))
        rooms = (_roomiest(near, gap) for near, gap in gaps)
        over_title = max(rooms, key=_area_mm2, default=last._replace(top_mm=last.bottom_mm))
        return (*(_raised(column, moved, inner.top_mm) for column in _useful(*beside_title)), *_useful(over_title))

    def beside(_: float) -> tuple[Box, ...]:
        return _useful(
            Box(right_mm + 2 * CLEAR_MM, inner.top_mm, inner.right_mm, keep_out.top_mm),
            Box(x0, below_mm, min(right_mm, keep_out.left_mm), inner.bottom_mm),
        )

    def standing(x_mm: float, columns: Callable[[float], tuple[Box, ...]]) -> Placement:
        rooms_mm = (inner.height_mm, keep_out.top_mm - inner.top_mm)
        lower = (max(inner.top_mm, inner.top_mm + (room_mm - plan.height_mm) / 2) for room_mm in rooms_mm)
        middle_mm = next((y_mm for y_mm in lower if clear(x_mm, y_mm)), inner.top_mm)
        return Placement(paper, x_mm, inner.top_mm, columns(x_mm), middle_mm)

    middle, left_of_title = (
        max(x0, x0 + (room - plan.width_mm) / 2) for room in (inner.width_mm, keep_out.left_mm - x0)
    )
    ways = ((middle, below), (left_of_title, below), (x0, beside))
    return [partial(standing, *way) for way in ways if clear(way[0], inner.top_mm)]


def choose(plan: Plan, asked: str, title_height_mm: float) -> tuple[list[Placement], Phrase]:
    """Return the placements on the smallest paper from the asked size up that holds the plan, and a note why."""
    _, ways, note = _chosen(plan, asked, title_height_mm)
    return [way() for way in ways], note


def placements_on(plan: Plan, paper: Paper, title_height_mm: float) -> list[Placement]:
    """Return the placements on one paper, none where the plan does not fit it."""
    return [way() for way in _ways(plan, list(_content(plan)), paper, title_height_mm)]


def with_hollow(placement: Placement, plan: Plan, title_height_mm: float) -> Placement:
    """Return a placement with one column more, in the largest room that the diagram leaves within itself."""
    frame = frame_box(placement.paper)
    title = Box(frame.right_mm - WIDTH_MM, frame.bottom_mm - title_height_mm, frame.right_mm, frame.bottom_mm)
    shown = (box.moved(placement.x_mm, placement.y_mm) for box in (*_content(plan), *high_boundaries(plan)))
    taken = [box.grown(CLEAR_MM) for box in (*shown, *placement.columns, title)]
    found = hollow(taken, frame.grown(-INSET_MM), HOLLOW_WIDTH_MM, HOLLOW_HEIGHT_MM)
    return replace(placement, columns=(*placement.columns, found)) if found else placement


def placements_lying(plan: Plan, asked: str, title_height_mm: float) -> list[Placement]:
    """Return the placements on the lying sheet of the asked size, else as `choose` does: sheets of a set lie alike."""
    return placements_on(plan, lying(PAPERS[asked]), title_height_mm) or choose(plan, asked, title_height_mm)[0]


def larger_papers(paper: Paper, largest: Paper) -> tuple[Paper, ...]:
    """Return the papers of the sizes above that of one paper, up to the largest that may be taken."""
    if paper.size not in LADDER:  # a lengthened one
        return ()
    sizes = LADDER[LADDER.index(paper.size) + 1 : LADDER.index(largest.name) + 1]
    return tuple(each for each in from_size_up(paper.size) if each.size in sizes)


def _chosen(plan: Plan, asked: str, title_height_mm: float) -> tuple[Paper, list[_Way], Phrase]:
    """Return the smallest paper from the asked size up that holds the plan, the ways to stand there, and a note why."""
    boxes = list(_content(plan))
    need = diagram_size(plan)
    for paper in from_size_up(asked):
        ways = _ways(plan, boxes, paper, title_height_mm)
        if ways:
            return paper, ways, _reason(paper, asked, need)
    margin_x, margin_y = LEFT_MARGIN_MM + MARGIN_MM + 2 * INSET_MM, 2 * MARGIN_MM + 2 * INSET_MM
    paper = extended(plan.width_mm + margin_x, plan.height_mm + margin_y + title_height_mm + CLEAR_MM)
    ways = _ways(plan, boxes, paper, title_height_mm)
    if not ways:  # cannot be: the paper was made to hold both
        raise RuntimeError(f"{need} does not fit {paper.name}")
    why = phrase(
        "{paper} mm instead of {asked}: {need} fits no standard size, so A0 was lengthened",
        paper=paper.name,
        asked=asked,
        need=need,
    )
    return paper, ways, why


def diagram_size(plan: Plan) -> Phrase:
    """Return the words for a diagram of its size."""
    return phrase("the diagram of {width} × {height} mm", width=round(plan.width_mm), height=round(plan.height_mm))


def _reason(paper: Paper, asked: str, need: Phrase) -> Phrase:
    """Return why a paper was taken. need: what the diagram needs."""
    values: dict[str, Value] = {"paper": paper.name, "asked": asked, "need": need}
    if paper == PAPERS[asked]:
        return phrase("{paper} as asked: {need} fits", paper=paper.name, need=need)
    if paper == upright(PAPERS[asked]):
        return phrase(
            "{paper} instead of lying: {need} and the title block fit no lying sheet of the size asked",
            paper=paper.name,
            need=need,
        )
    if paper == lying(PAPERS[asked]):
        return phrase(
            "{paper} instead of upright: {need} and the title block fit no upright sheet of the size asked",
            paper=paper.name,
            need=need,
        )
    return phrase("{paper} instead of {asked}: {need} and the title block do not fit a smaller size", **values)


def best_plan(
    plans: Callable[[Wanted], Iterable[Plan]], title_block: TitleBlock, paper: str = "A3", largest: Paper | None = None
) -> Plan:
    """Return the first of several plans that fits the smallest paper from the asked size up.

    plans: yields them; it may leave out those that are not wanted at the size they have at least. No further plan is
    asked for once one fits the asked size as it lies, or the first one takes far more room than the largest paper has.
    Raises ValueError where there is no plan.
    """
    height_mm = title_block_height_mm(title_block)
    asked, papers = PAPERS[paper], from_size_up(paper)
    best: tuple[float, Plan] | None = None

    def wanted(width_mm: float, height_mm: float) -> bool:
        """Return whether a plan of at least that size may yet fit the asked paper, or a smaller one than the best."""
        return best is None or any(
            _has_room(each, width_mm, height_mm) for each in papers if each == asked or _area_mm2(each) < best[0]
        )

    for plan in plans(wanted):
        taken, _, _ = _chosen(plan, paper, height_mm)
        if taken == asked:
            return plan
        is_first = best is None
        if best is None or _area_mm2(taken) < best[0]:
            best = (_area_mm2(taken), plan)
        if is_first and largest and plan.width_mm * plan.height_mm > FAR_TOO_LARGE_FACTOR * _area_mm2(largest):
            break
    if best is None:
        raise ValueError("there is no plan")
    return best[1]


def _area_mm2(of: Paper | Box) -> float:
    return of.width_mm * of.height_mm


def paper_of(plan: Plan, title_block: TitleBlock, paper: str = "A3") -> tuple[Paper, Phrase]:
    """Return the paper that `compose` takes for sheet 1, and why. paper: the size asked for."""
    taken, _, note = _chosen(plan, paper, title_block_height_mm(title_block))
    return taken, note


def fits(plan: Plan, title_block: TitleBlock, paper: str) -> bool:
    """Return whether a plan fits a lying sheet of a size after the first, clear of its title strip."""
    sheet = lying(PAPERS[paper])
    if not _has_room(sheet, plan.width_mm, plan.height_mm):
        return False
    return bool(_ways(plan, list(_content(plan)), sheet, title_strip_height_mm(title_block)))


def is_short(plan: Plan, title_block: TitleBlock, paper: str, share: float) -> bool:
    """Return whether a plan fits the first lying sheet and takes at most a share of its height."""
    height_mm = title_block_height_mm(title_block)
    leaves = plan.height_mm <= room_mm(paper)[1] * share
    return leaves and bool(_ways(plan, list(_content(plan)), lying(PAPERS[paper]), height_mm))


def room_mm(paper: str) -> tuple[float, float]:
    """Return the width and height that a sheet has for a diagram at most."""
    inner = frame_box(lying(PAPERS[paper])).grown(-INSET_MM)
    return inner.width_mm, inner.height_mm


def largest_of(largest: str | None, paper: str) -> Paper:
    """Return the largest sheet that the whole diagram may take: the size asked for or a larger one.

    Unless said otherwise A2: its letters of 2.5 mm can still be read when it is printed on A3, at 1.8 mm.
    """
    return PAPERS[max(largest or "A2", paper, key=LADDER.index)]
