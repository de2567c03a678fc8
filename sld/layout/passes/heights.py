"""Where everything is from top to bottom.

Before: rows, lanes, stacks, columns. After: the axes of the rows lie on the grid; what stands below each other (cells,
wires passing by, branches of data cables, frames) is apart; each frame has room for its caption at its upper edge. A
row moves up as far as what is really above it lets it, so that tall labels do not push rows apart that have nothing
there.
"""

from __future__ import annotations

from collections.abc import Sequence

from sld.frozen import dataclass
from sld.layout.passes.cabling import Cabling
from sld.layout.passes.columns import Columns, has_trunk
from sld.layout.passes.grid import CLEARANCE_MM, FRAME_MM, FRAMES_APART_MM, down_to_grid_mm, up_to_grid_mm
from sld.layout.passes.lanes import Lanes
from sld.layout.passes.rows import Rows
from sld.layout.passes.shapes import LEAST_ROW_PITCH_MM
from sld.layout.passes.skyline import Content, Skyline
from sld.layout.passes.stack import Stack, line_pitch_mm
from sld.layout.passes.tree import Tree
from sld.symbols.stroke import MODULE_MM

__all__ = ["CAPTION_MARGIN_MM", "FrameRows", "Heights", "heights_of"]

CAPTION_MARGIN_MM = 0.5
"""Distance of the line of a caption, with room for accents, from the upper edge of its frame."""

_APART_MM = 1.0
"""Least distance of what stands above each other; letters have room for accents and descenders besides."""

_FRAMES_FURTHER_MM = FRAMES_APART_MM - _APART_MM

_WIRE_MM = 0.4
_BRANCH_MM = 1.0
"""So much is about a branch of a data cable, and a resistor in line with it."""


@dataclass(frozen=True, slots=True)
class FrameRows:
    """The rows a frame goes from and to, and how far it reaches beyond their axes."""

    head: int
    foot: int
    above_mm: float
    below_mm: float


@dataclass(frozen=True, slots=True)
class Heights:
    """axis_mm: the y of each row. foot_mm: the lower edge of all rows. over_mm: the y of a track above them."""

    axis_mm: tuple[float, ...]
    frames: tuple[FrameRows, ...]
    foot_mm: float
    over_mm: float = 0.0


def heights_of(
    tree: Tree, rows: Rows, lanes: Lanes, cabling: Cabling, stacks: Sequence[Stack], columns: Columns
) -> Heights:  # fmt: skip
    """Return the y of every row."""
    frames = tuple(
        _frame_rows(tree, rows, lanes, stacks, members, len(columns.captions[frame]))
        for frame, members in enumerate(lanes.frames.members)
    )
    contents: list[list[Content]] = [[] for _ in range(rows.count)]
    _put_cells(contents, tree, rows, stacks, columns)
    _put_wires(contents, tree, rows, columns)
    _put_branches(contents, cabling, stacks, columns)
    for frame, members in zip(frames, lanes.frames.members, strict=True):
        right, left = min(lanes.of[m] for m in members), max(lanes.of[m] for m in members)
        at = (columns.frame_left_mm(left), columns.channels[right].frame_right_mm)
        contents[frame.head].append((*at, frame.above_mm + _FRAMES_FURTHER_MM, 0.0))
        contents[frame.foot].append((*at, 0.0, frame.below_mm))
    skyline, axis = Skyline(-_APART_MM), [-LEAST_ROW_PITCH_MM]
    for row in contents:
        axis.append(up_to_grid_mm(max(axis[-1] + LEAST_ROW_PITCH_MM, skyline.axis_mm(row, _APART_MM))))
        skyline.take(row, axis[-1])
    over_mm = _over_mm(cabling, columns, contents, axis[1:])
    lower_mm = max(-over_mm, 0.0)
    return Heights(tuple(mm + lower_mm for mm in axis[1:]), frames, max(skyline.edge_mm) + lower_mm, over_mm + lower_mm)


def _over_mm(
    cabling: Cabling, columns: Columns, contents: Sequence[Sequence[Content]], axis_mm: Sequence[float]
) -> float:
    """Return the y, on the grid, of a track above all that is on the right of a run that leads over the rows."""
    start = min((columns.channels[run.lane].tracks_mm[run.track] for run in cabling.runs if run.over), default=None)
    if start is None:
        return 0.0
    tops = (y - above for y, row in zip(axis_mm, contents, strict=True) for _, right, above, _ in row if right > start)
    return down_to_grid_mm(min(tops) - _APART_MM)


def _put_cells(
    contents: list[list[Content]], tree: Tree, rows: Rows, stacks: Sequence[Stack], columns: Columns
) -> None:
    """Put the contents of the cells to their rows."""
    for place, (stack, x) in enumerate(zip(stacks, columns.origin_mm, strict=True)):
        form = stack.form
        beside_mm = _WIRE_MM if tree.nodes[place].free else 0.0  # in no lane of their own: clear of what is beside them
        for row, boxes in ((stack.upper_row, stack.boxes[0]), (stack.lower_row, stack.boxes[1])):
            contents[row] += [
                (
                    x + left - beside_mm,
                    x + right + beside_mm,
                    -top if top < 0.0 else 0.0,
                    bottom if bottom > 0.0 else 0.0,
                )
                for left, top, right, bottom in boxes
            ]
        if form.strip is not None:
            left, right = x + form.strip.left_mm, x + form.strip.right_mm
            contents[rows.head[place]].append((left, right, -form.strip.top_mm, 0.0))
            contents[rows.foot[place]].append((left, right, 0.0, form.strip.bottom_mm))


def _put_branches(contents: list[list[Content]], cabling: Cabling, stacks: Sequence[Stack], columns: Columns) -> None:
    """Put the branches of data cables, up to their tracks and the resistors beside them, to their rows."""
    for run in cabling.runs:
        if run.straight:
            right = max(columns.origin_mm[drop.node] + cabling.ports[drop.node][drop.port].x_mm for drop in run.drops)
        else:
            right = columns.channels[run.lane].tracks_mm[run.track]
        for drop in run.drops:
            port, stack = cabling.ports[drop.node][drop.port], stacks[drop.node]
            left = columns.origin_mm[drop.node] + port.x_mm - _WIRE_MM  # not on the edge of what is above
            end = max(right, columns.origin_mm[drop.node] + port.right_mm + (_APART_MM if port.terminated else 0.0))
            if port.top:
                reach = MODULE_MM * port.strip - stack.strip_top_mm + _BRANCH_MM
                contents[stack.upper_row].append((left, end, reach, 0.0))
            else:
                reach = MODULE_MM * port.strip + stack.strip_bottom_mm + _BRANCH_MM
                contents[stack.lower_row].append((left, end, 0.0, reach))


def _put_wires(contents: list[list[Content]], tree: Tree, rows: Rows, columns: Columns) -> None:
    """Put the conductors from cells to their parents to their rows."""
    for place, node in enumerate(tree.nodes):
        if node.parent >= 0:
            ends = (columns.origin_mm[place], columns.origin_mm[node.parent])
            contents[rows.axis[place]].append((*ends, _WIRE_MM, _WIRE_MM))
        if columns.start_mm and not node.children and not node.free:  # may be bonded at the left edge
            contents[rows.axis[place]].append((0.0, columns.origin_mm[place], _WIRE_MM, _WIRE_MM))


def _frame_rows(
    tree: Tree, rows: Rows, lanes: Lanes, stacks: Sequence[Stack], members: Sequence[int], caption_count: int
) -> FrameRows:  # fmt: skip
    """Return the extents of one frame: its members and the trunks between them."""
    head, foot = min(rows.head[m] for m in members), max(rows.foot[m] for m in members)
    left_most = max(lanes.of[m] for m in members)
    for member in members:
        if has_trunk(tree, member) and lanes.of[member] < left_most:
            children = tree.nodes[member].children
            head, foot = min(head, rows.axis[children[0]]), max(foot, rows.axis[children[-1]])
    above = max((stacks[m].above_mm for m in members if head in (rows.head[m], stacks[m].upper_row)), default=0.0)
    below = max((stacks[m].below_mm for m in members if foot in (rows.foot[m], stacks[m].lower_row)), default=0.0)
    room = caption_count * line_pitch_mm() + CAPTION_MARGIN_MM
    return FrameRows(head, foot, max(above, CLEARANCE_MM) + max(room, FRAME_MM), max(below, 0.0) + FRAME_MM)
