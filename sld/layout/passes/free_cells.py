"""Cells outside the tree and their data tracks: next to each other, so that a line takes no way to the edge of a lane.

Before: lanes, cabling, stacks. After: tracks that serve such cells alone lie on their right; where there are others,
these cells stand as far to the right as the first of them lets them, or below those that end at them.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from math import inf

from sld.layout.passes.cabling import Cabling, Drop
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
    origin: list[float], free: Mapping[int, int], lanes: Lanes, cabling: Cabling, stacks: Sequence[Stack],
    tracks_mm: Sequence[Sequence[float]],
) -> None:  # fmt: skip
    """Move cells outside the tree to the tracks of their lane: below those that end at them, on the left of others.

    They have rows of their own, and their labels are on their left. Of two that are joined from edge to edge the lower
    one stands straight below the upper one where it can. origin: the x of each node's symbol, changed here. free: the
    row of each of these cells.
    """
    limits: dict[int, float] = {}
    for place, row in free.items():
        tracks = tracks_mm[lanes.of[place]]
        if tracks:
            beside = tracks[0] - RUNS_APART_MM - stacks[place].right_mm
            ends = _ends_mm(place, row, lanes, cabling, tracks)
            limits[place] = beside if ends is None else max(beside, _below(place, cabling, ends))
            wanted = limits[place] if ends else beside
            origin[place] += max(down_to_grid_mm(wanted - origin[place]), 0.0)
    for run in cabling.runs if free else ():
        if run.straight:
            one, other = run.drops
            aside = _pin_mm(origin, cabling, one) - _pin_mm(origin, cabling, other)
            if aside < 0 or origin[other.node] + aside <= limits.get(other.node, -inf):
                origin[other.node] += aside


def _ends_mm(
    place: int, row: int, lanes: Lanes, cabling: Cabling, tracks_mm: Sequence[float]
) -> dict[int, float] | None:
    """Return the tracks that come down to a cell and end there, by its terminals; None where others pass it."""
    ends: dict[int, float] = {}
    for run in cabling.runs:
        if run.lane != lanes.of[place] or run.straight or run.drops[0].level[0] > row:
            continue
        last = run.drops[-1]
        if run.foot >= 0 or (last.node != place and last.level[0] >= row):
            return None
        if last.node == place:
            if not cabling.ports[place][last.port].top:
                return None
            ends[last.port] = tracks_mm[run.track]
    return ends


def _below(place: int, cabling: Cabling, ends_mm: Mapping[int, float]) -> float:
    """Return how far to the right a cell may stand: no terminal beyond its track, no resistor on that of another."""
    ports = cabling.ports[place]
    own = [track - ports[port].x_mm for port, track in ends_mm.items()]
    foreign = [track - RUNS_APART_MM - ports[port].right_mm
               for port in ends_mm for other, track in ends_mm.items()
               if ports[other].strip < ports[port].strip]  # fmt: skip
    return min([*own, *foreign], default=inf)


def _pin_mm(origin: Sequence[float], cabling: Cabling, drop: Drop) -> float:
    return origin[drop.node] + cabling.ports[drop.node][drop.port].x_mm
