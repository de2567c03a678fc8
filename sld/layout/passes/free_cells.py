"""Cells outside the tree and their data tracks: next to each other, so that a line takes no way to the edge of a lane.

Before: lanes, cabling, stacks. After: tracks that serve such cells alone lie on their right; where there are others,
these cells stand as far to the right as the first of them lets them.
"""

from __future__ import annotations

from collections.abc import Sequence

from sld.layout.passes.cabling import Cabling
from sld.layout.passes.grid import down_to_grid_mm, up_to_grid_mm
from sld.layout.passes.lanes import Lanes
from sld.layout.passes.stack import Stack
from sld.layout.passes.tree import Tree
from sld.symbols.stroke import MODULE_MM

__all__ = ["RUNS_APART_MM", "put_free_aside", "tracks_beside_free"]

RUNS_APART_MM = 1.75
"""Least distance of what runs in a channel from what is left of it."""


def tracks_beside_free(
    tree: Tree, lanes: Lanes, cabling: Cabling, stacks: Sequence[Stack], offsets: Sequence[float]
) -> dict[int, list[float]]:
    """Return, by lane, where from its axis the tracks lie that are next to the cells outside the tree."""
    found: dict[int, list[float]] = {}
    for lane in cabling.near:
        if cabling.tracks_count[lane]:
            edges = [stack.right_mm + offset for node, of, stack, offset in
                     zip(tree.nodes, lanes.of, stacks, offsets, strict=True) if node.free and of == lane]  # fmt: skip
            first = up_to_grid_mm(max(edges) + RUNS_APART_MM)
            found[lane] = [first + MODULE_MM * number for number in range(cabling.tracks_count[lane])]
    return found


def put_free_aside(
    origin: list[float], tree: Tree, lanes: Lanes, cabling: Cabling, stacks: Sequence[Stack],
    tracks_mm: Sequence[Sequence[float]],
) -> None:  # fmt: skip
    """Move cells outside the tree up to the first track of their lane, but none past what is straight above it.

    They have rows of their own, and their labels are on their left. origin: the x of each node's symbol, changed here.
    """
    if not tree.has_few_free:
        return
    for place, node in enumerate(tree.nodes):
        tracks = tracks_mm[lanes.of[place]]
        if node.free and tracks:
            room = tracks[0] - RUNS_APART_MM - origin[place] - stacks[place].right_mm
            origin[place] += max(down_to_grid_mm(room), 0.0)
    for run in cabling.runs:
        if run.straight:
            upper, lower = (origin[drop.node] + cabling.ports[drop.node][drop.port].x_mm for drop in run.drops)
            origin[run.drops[1].node] -= max(lower - upper, 0.0)
