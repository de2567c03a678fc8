"""Pass 8: where everything is from top to bottom.

Before: rows, lanes, stacks, columns. After: the axes of the rows lie on the grid, the contents of neighbouring rows, the
frames around them included, are at least one module apart, and each frame has room for its caption at its upper edge.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from sld.layout.columns import Columns, has_trunk
from sld.layout.grid import CLEARANCE_MM, up_to_grid_mm
from sld.layout.lanes import Lanes
from sld.layout.rows import Rows
from sld.layout.stack import Stack, line_pitch_mm
from sld.layout.tree import Tree

__all__ = ["CAPTION_MARGIN_MM", "BlockRows", "Heights", "heights_of"]

CAPTION_MARGIN_MM = 1.0
"""Distance of a caption from the upper edge of its frame, and from what is below it."""


@dataclass(frozen=True, slots=True)
class BlockRows:
    """The rows a block's frame goes from and to, and how far it reaches beyond their axes."""

    head: int
    foot: int
    above_mm: float
    below_mm: float


@dataclass(frozen=True, slots=True)
class Heights:
    """axis_mm: the y of each row. foot_mm: the lower edge of the last row."""

    axis_mm: tuple[float, ...]
    blocks: tuple[BlockRows, ...]
    foot_mm: float


def heights_of(tree: Tree, rows: Rows, lanes: Lanes, stacks: Sequence[Stack], columns: Columns) -> Heights:
    """Return the y of every row."""
    above, below = [0.0] * rows.count, [0.0] * rows.count
    for place, stack in enumerate(stacks):
        above[rows.head[place]] = max(above[rows.head[place]], stack.above_mm)
        below[rows.foot[place]] = max(below[rows.foot[place]], stack.below_mm)
    blocks = tuple(
        _block_rows(tree, rows, lanes, stacks, members, len(columns.captions[block]))
        for block, members in enumerate(lanes.blocks.members)
    )
    for block in blocks:
        above[block.head] = max(above[block.head], block.above_mm)
        below[block.foot] = max(below[block.foot], block.below_mm)
    axis: list[float] = []
    edge = 0.0
    for up, down in zip(above, below, strict=True):
        axis.append(up_to_grid_mm(edge + up))
        edge = axis[-1] + down + CLEARANCE_MM
    return Heights(tuple(axis), blocks, edge - CLEARANCE_MM)


def _block_rows(
    tree: Tree, rows: Rows, lanes: Lanes, stacks: Sequence[Stack], members: Sequence[int], caption_count: int
) -> BlockRows:  # fmt: skip
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
    return BlockRows(head, foot, max(above, CLEARANCE_MM) + max(room, CLEARANCE_MM), max(below, 0.0) + CLEARANCE_MM)
