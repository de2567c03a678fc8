"""Where everything is from top to bottom.

Before: rows, lanes, stacks, columns. After: the axes of the rows lie on the grid; in every lane the contents of its
rows (cells, wires passing through, frames) follow each other at least one module apart; each frame has room for its
caption at its upper edge. A row moves up as far as the lanes it occupies let it, so that tall labels in one lane do
not push rows apart that have nothing there.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from sld.layout.passes.columns import Columns, has_trunk
from sld.layout.passes.grid import CLEARANCE_MM, up_to_grid_mm
from sld.layout.passes.lanes import Lanes
from sld.layout.passes.rows import Rows
from sld.layout.passes.shapes import LEAST_ROW_PITCH_MM
from sld.layout.passes.stack import Stack, line_pitch_mm
from sld.layout.passes.tree import Tree

__all__ = ["CAPTION_MARGIN_MM", "FrameRows", "Heights", "heights_of"]

CAPTION_MARGIN_MM = 1.0
"""Distance of a caption from the upper edge of its frame, and from what is below it."""


@dataclass(frozen=True, slots=True)
class FrameRows:
    """The rows a frame goes from and to, and how far it reaches beyond their axes."""

    head: int
    foot: int
    above_mm: float
    below_mm: float


@dataclass(frozen=True, slots=True)
class Heights:
    """axis_mm: the y of each row. foot_mm: the lower edge of all rows."""

    axis_mm: tuple[float, ...]
    frames: tuple[FrameRows, ...]
    foot_mm: float


def heights_of(tree: Tree, rows: Rows, lanes: Lanes, stacks: Sequence[Stack], columns: Columns) -> Heights:
    """Return the y of every row."""
    frames = tuple(
        _frame_rows(tree, rows, lanes, stacks, members, len(columns.captions[frame]))
        for frame, members in enumerate(lanes.frames.members)
    )
    contents = _contents(tree, rows, lanes, stacks, frames)
    lower_edge = [-CLEARANCE_MM] * lanes.count
    axis: list[float] = []
    for row in contents:
        least = axis[-1] + LEAST_ROW_PITCH_MM if axis else 0.0
        for right, left, above, _ in row:
            least = max(least, max(lower_edge[right : left + 1]) + CLEARANCE_MM + above)
        y = up_to_grid_mm(least)
        for right, left, _, below in row:
            for lane in range(right, left + 1):
                lower_edge[lane] = max(lower_edge[lane], y + below)
        axis.append(y)
    return Heights(tuple(axis), frames, max(lower_edge))


def _contents(
    tree: Tree, rows: Rows, lanes: Lanes, stacks: Sequence[Stack], frames: Sequence[FrameRows]
) -> list[list[tuple[int, int, float, float]]]:  # fmt: skip
    """Return for each row what it holds: from lane, to lane, how far above and below the axis."""
    contents: list[list[tuple[int, int, float, float]]] = [[] for _ in range(rows.count)]
    for place, (node, stack, lane) in enumerate(zip(tree.nodes, stacks, lanes.of, strict=True)):
        contents[rows.head[place]].append((lane, lane, stack.above_mm, 0.0))
        contents[rows.foot[place]].append((lane, lane, 0.0, stack.below_mm))
        if node.parent >= 0 and lanes.of[node.parent] + 1 < lane:
            contents[rows.axis[place]].append((lanes.of[node.parent] + 1, lane - 1, 0.0, 0.0))
    for frame, members in zip(frames, lanes.frames.members, strict=True):
        right, left = min(lanes.of[m] for m in members), max(lanes.of[m] for m in members)
        contents[frame.head].append((right, left, frame.above_mm, 0.0))
        contents[frame.foot].append((right, left, 0.0, frame.below_mm))
    return contents


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
    above = max((stacks[m].above_mm for m in members if rows.head[m] == head), default=0.0)
    below = max((stacks[m].below_mm for m in members if rows.foot[m] == foot), default=0.0)
    room = caption_count * line_pitch_mm() + 2 * CAPTION_MARGIN_MM
    return FrameRows(head, foot, max(above, CLEARANCE_MM) + max(room, CLEARANCE_MM), max(below, 0.0) + CLEARANCE_MM)
