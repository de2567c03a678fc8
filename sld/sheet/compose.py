"""The sheets of a project: the diagram on sheet 1, what belongs to it in the room left there and on further sheets."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from sld.layout.plan import Plan
from sld.sheet.blocks.laid import Block
from sld.sheet.flow import TOGETHER_MM, Remembered, columns_of, flow
from sld.sheet.ink import ink_box
from sld.sheet.paper import (
    LEFT_MARGIN_MM,
    MARGIN_MM,
    PAPERS,
    Paper,
    extended,
    frame_box,
    frame_strokes,
    from_size_up,
    upright,
    zone,
)
from sld.sheet.place import SymbolSource, place
from sld.sheet.sheet import NOTHING_TOLD, About, Group, Sheet
from sld.sheet.title_block import WIDTH_MM, TitleBlock, title_block_height_mm, title_block_strokes
from sld.symbols.stroke import Box
from sld.symbols.typeface import printable

__all__ = ["Composition", "best_plan", "compose", "paper_of"]

INSET_MM = 7.0
"""Distance of the content from the frame: more than the centring marks reach in."""

CLEAR_MM = 5.0
"""Distance of blocks and diagram from the title block and from each other."""

MANY_COUNT = 20
"""Among more sheets than this no time is spent on saving one."""

USEFUL_HEIGHT_MM = 25.0
USEFUL_WIDTH_MM = 75.0


@dataclass(frozen=True, slots=True)
class Composition:
    """The sheets; the paper of sheet 1 and why it was taken; the grid reference of each device ("1/B4"); metadata."""

    sheets: tuple[Sheet, ...]
    paper: str
    note: str
    zones: Mapping[str, str]
    about: About = NOTHING_TOLD


@dataclass(frozen=True, slots=True)
class _Setting:
    """Sheet 1 settled: its paper, where the plan's upper left corner goes, and the columns left for blocks."""

    paper: Paper
    x_mm: float
    y_mm: float
    columns: tuple[Box, ...]


def _content(plan: Plan) -> Iterator[Box]:
    """Yield the boxes of all that the plan shows."""
    for cell in plan.cells:
        yield cell.box
        yield from (ink_box(label) for label in cell.labels)
    for wire in plan.wires:
        for (x1, y1), (x2, y2) in pairwise(wire.points):
            yield Box(min(x1, x2), min(y1, y2), max(x1, x2), max(y1, y2)).grown(0.25)
    for frame in plan.frames:
        yield from (frame.box, ink_box(frame.caption))
    yield from (flag.box for flag in plan.flags)
    yield from (ink_box(text) for text in plan.texts)


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
    starts = {within.left_mm, *(box.right_mm + CLEAR_MM for box in boxes if box.right_mm > within.left_mm)}
    for start in sorted(starts):
        bottoms = [box.bottom_mm + CLEAR_MM for box in boxes if box.right_mm + CLEAR_MM > start]
        room = Box(start, max([within.top_mm, *bottoms]), within.right_mm, within.bottom_mm)
        if room.width_mm < USEFUL_WIDTH_MM or room.height_mm < USEFUL_HEIGHT_MM:
            continue
        if room.width_mm * room.height_mm > best_mm2:
            found, best_mm2 = room, room.width_mm * room.height_mm
    return found if best_mm2 > 0 else Box(within.left_mm, within.bottom_mm, within.right_mm, within.bottom_mm)


def _settings(plan: Plan, boxes: Sequence[Box], paper: Paper, title_height_mm: float) -> list[_Setting]:
    """Return the ways the plan can stand on a paper, the preferred one first; none where it does not fit.

    It stands centred, or centred left of the title block, with blocks below it; or at the left, with blocks beside
    it. It may reach down beside the title block as long as nothing that it shows comes near it.
    """
    frame = frame_box(paper)
    inner = frame.grown(-INSET_MM)
    if plan.width_mm > inner.width_mm + 1e-6 or plan.height_mm > inner.height_mm + 1e-6:
        return []
    left, top = frame.right_mm - WIDTH_MM, frame.bottom_mm - title_height_mm
    keep_out = Box(left - CLEAR_MM, top - CLEAR_MM, frame.right_mm, frame.bottom_mm)
    below_mm, x0 = inner.top_mm + plan.height_mm + CLEAR_MM, inner.left_mm
    right_mm = x0 + plan.width_mm

    def below(x_mm: float) -> tuple[Box, ...]:
        moved = [box.moved(x_mm, inner.top_mm) for box in boxes]
        over_title = Box(max(x0, left), inner.top_mm, inner.right_mm, keep_out.top_mm)
        return _useful(
            Box(x0, below_mm, keep_out.left_mm, inner.bottom_mm), _roomiest(moved, over_title),
        )  # fmt: skip

    beside = _useful(
        Box(right_mm + 2 * CLEAR_MM, inner.top_mm, inner.right_mm, keep_out.top_mm),
        Box(x0, below_mm, min(right_mm, keep_out.left_mm), inner.bottom_mm),
    )
    middle, left_of_title = (
        max(x0, x0 + (room - plan.width_mm) / 2) for room in (inner.width_mm, keep_out.left_mm - x0)
    )
    ways = (
        _Setting(paper, middle, inner.top_mm, below(middle)),
        _Setting(paper, left_of_title, inner.top_mm, below(left_of_title)),
        _Setting(paper, x0, inner.top_mm, beside),
    )
    return [way for way in ways if not any(box.moved(way.x_mm, way.y_mm).meets(keep_out) for box in boxes)]


def _choose(plan: Plan, asked: str, title_height_mm: float) -> tuple[list[_Setting], str]:
    """Return the settings on the smallest paper from the asked size up that holds the plan, and a note why."""
    boxes = list(_content(plan))
    need = f"the diagram of {plan.width_mm:.0f} × {plan.height_mm:.0f} mm"
    for paper in from_size_up(asked):
        settings = _settings(plan, boxes, paper, title_height_mm)
        if settings:
            return settings, _reason(paper, asked, need)
    margin_x, margin_y = LEFT_MARGIN_MM + MARGIN_MM + 2 * INSET_MM, 2 * MARGIN_MM + 2 * INSET_MM
    paper = extended(plan.width_mm + margin_x, plan.height_mm + margin_y + title_height_mm + CLEAR_MM)
    settings = _settings(plan, boxes, paper, title_height_mm)
    if not settings:  # cannot be: the paper was made to hold both
        raise RuntimeError(f"{need} does not fit {paper.name}")
    return settings, f"{paper.name} mm instead of {asked}: {need} fits no standard size, so A0 was lengthened"


def _reason(paper: Paper, asked: str, need: str) -> str:
    """Return why a paper was taken. need: what the diagram needs, in words."""
    if paper == PAPERS[asked]:
        return f"{paper.name} as asked: {need} fits"
    if paper == upright(PAPERS[asked]):
        return f"{paper.name} instead of lying: {need} and the title block fit no lying sheet of the size asked"
    return f"{paper.name} instead of {asked}: {need} and the title block do not fit a smaller size"


def best_plan(plans: Iterable[Plan], title_block: TitleBlock, paper: str = "A3") -> Plan:
    """Return the first of several plans that fits the smallest paper from the asked size up.

    No further plan is asked for once one fits the asked size as it lies. Raises ValueError where there is no plan.
    """
    height_mm = title_block_height_mm(title_block)
    found: list[tuple[float, int, Plan]] = []
    for plan in plans:
        taken = _choose(plan, paper, height_mm)[0][0].paper
        if taken == PAPERS[paper]:
            return plan
        found.append((taken.width_mm * taken.height_mm, len(found), plan))
    return min(found, key=lambda each: each[:2])[2]


def paper_of(plan: Plan, title_block: TitleBlock, paper: str = "A3") -> tuple[str, str]:
    """Return the name of the paper that `compose` takes for sheet 1, and why. paper: the size asked for."""
    settings, note = _choose(plan, paper, title_block_height_mm(title_block))
    return settings[0].paper.name, note


def _page_columns(paper: Paper, title_height_mm: float) -> tuple[Box, ...]:
    """Return the columns of a further sheet, those over the title block shortened."""
    frame = frame_box(paper)
    top_of_title = frame.bottom_mm - title_height_mm - CLEAR_MM
    return tuple(
        replace(box, bottom_mm=top_of_title) if box.right_mm > frame.right_mm - WIDTH_MM - CLEAR_MM else box
        for box in columns_of(frame.grown(-INSET_MM))
    )


def _sheet(
    paper: Paper, number: int, count: int, block: TitleBlock, groups: Sequence[Group], description: str
) -> Sheet:
    """Return one sheet with its frame and title block."""
    border = Group("border", "frame", frame_strokes(paper))
    corner = title_block_strokes(block, frame_box(paper), number, count, paper.name, revisions=number == 1)
    name = ", ".join(word for word in (block.title, block.document_type) if word)
    if count > 1:
        name += f", sheet {number} of {count}"
    titled = Group("title-block", "table", corner, "Title block")
    return Sheet(
        paper.width_mm, paper.height_mm, number, printable(name), description, block.language or "en",
        (border, *groups, titled),
    )  # fmt: skip


def _fewest_sheets(
    settings: Sequence[_Setting], blocks: Sequence[Block], columns: Sequence[Box]
) -> tuple[_Setting, tuple[tuple[Group, ...], ...]]:
    """Return the setting with the fewest sheets and its flow; short blocks are parted only where that saves one."""
    remembered = [Remembered(block) for block in blocks]
    found: list[tuple[_Setting, tuple[tuple[Group, ...], ...]]] = []
    for together_mm in (TOGETHER_MM, 0.0):
        for setting in settings:
            sheets = flow(remembered, setting.columns, columns, together_mm)
            found.append((setting, sheets))
            if len(sheets) == 1 or len(sheets) > MANY_COUNT:
                return found[-1] if len(sheets) == 1 else found[0]
    return min(found, key=lambda way: len(way[1]))  # the first of equals, thus the preferred one


def compose(
    plan: Plan, symbols: SymbolSource, title_block: TitleBlock, blocks: Sequence[Block], texts: Mapping[str, str],
    paper: str = "A3", description: str = "",
) -> Composition:  # fmt: skip
    """Return the sheets of a project.

    symbols: the symbol catalogue. title_block: its fields. blocks: tables, notes, legend in their order; the first
    ones fill what is free on sheet 1, the rest further sheets of the asked size, upright where sheet 1 is of that size
    and upright. texts: what a pointer resting on a device says, by its key. paper: A4, A3, A2, A1 or A0; sheet 1 is
    upright or larger where the diagram needs it. description: the diagram in a few sentences, for readers who cannot
    see it. Raises KeyError for another paper.
    """
    settings, note = _choose(plan, paper, title_block_height_mm(title_block))
    first_paper = settings[0].paper
    asked = first_paper if first_paper == upright(PAPERS[paper]) else PAPERS[paper]
    columns = _page_columns(asked, title_block_height_mm(title_block, revisions=False))
    setting, (first, *further) = _fewest_sheets(settings, blocks, columns)
    diagram = place(plan, symbols, texts, setting.x_mm, setting.y_mm)
    count = 1 + len(further)
    sheets = [_sheet(setting.paper, 1, count, title_block, (*diagram, *first), description)]
    for number, groups in enumerate(further, 2):
        titles = "; ".join(dict.fromkeys(group.title for group in groups))
        sheets.append(_sheet(asked, number, count, title_block, groups, titles))
    x, y = setting.x_mm, setting.y_mm
    zones = {
        key: "1/" + zone(setting.paper, cell.at[0] + x, cell.at[1] + y)
        for cell in plan.cells
        for key in (cell.key, *cell.alike)
    }
    return Composition(tuple(sheets), setting.paper.name, note, zones)
