"""Lanes, counted from the public network on the right (0) to the strings on the left.

Before: tree, rows. After: a child's lane is left of its parent's; cells aligned by one word share a lane; a frame's
members occupy a range of lanes in which, in the frame's rows, no foreign cell stands: what feeds the frame is left of
all of it, what it feeds is right of all of it. A frame therefore holds members only. Besides, no frame
lies across the channel to the right of a lane of aligned devices that are on a data chain, unless it holds one of
them.

Each demand is a lower bound "lane(v) >= lane(u) + w"; the least lanes meeting all of them are longest paths from the
root. Demands that contradict each other form a cycle; then first the alignments in it, next its enclosures are given
up.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence

from sld.frozen import dataclass
from sld.layout.diagram.diagram import BusChain, Diagram
from sld.layout.passes.frame_members import FrameMembers, frame_members_of
from sld.layout.passes.rows import Rows
from sld.layout.passes.tree import Tree

__all__ = ["Lanes", "lanes_of"]

_Edges = list[list[tuple[int, int]]]

_FREE_ABREAST = 3
"""So many cells outside the tree stand side by side where there are many."""


@dataclass(frozen=True, slots=True)
class Lanes:
    """of: the lane of each node. count: how many lanes there are. frames: the frames that the lanes keep apart."""

    of: tuple[int, ...]
    count: int
    frames: FrameMembers


@dataclass(frozen=True, slots=True)
class _Demands:
    """variable: the variable of each node. start, end: those of each frame's right-most and left-most lane."""

    variable: list[int]
    start: list[int]
    end: list[int]
    edges: _Edges


def lanes_of(tree: Tree, rows: Rows, diagram: Diagram) -> Lanes:
    """Return the lane of every node."""
    chained = {step.key for chain in diagram.chains for step in chain.steps}
    captions = {enclosure.key: diagram.language.typeset(enclosure.caption) for enclosure in diagram.enclosures}
    loose: set[str] = set()
    apart: set[str] = set()
    while True:
        frames = frame_members_of(tree, rows, apart, captions)
        demands = _demands(tree, frames, loose)
        _keep_channels_free(tree, demands, chained, loose)
        lane, cyclic = _longest_paths(demands.edges)
        if not cyclic:
            break
        inside = [node for place, node in enumerate(tree.nodes) if demands.variable[place] in cyclic]
        words = {node.cell.aligned for node in inside if node.cell.aligned} - loose
        if words:
            loose |= words
        else:
            apart |= {
                name
                for name, start, end in zip(frames.enclosure, demands.start, demands.end, strict=True)
                if start in cyclic or end in cyclic
            }
    of = [lane[demands.variable[place]] for place in range(len(tree.nodes))]
    resting = _lane_for_free_cells(tree, of, diagram.chains)
    free, few_free = [place for place, node in enumerate(tree.nodes) if node.free], tree.has_few_free
    for number, place in enumerate(free):
        # side by side towards the network, so that many take little more height than a few
        of[place] = resting if few_free else max(resting - number % _FREE_ABREAST, 0)
    return Lanes(tuple(of), max(of) + 1, frames)


def _demands(tree: Tree, frames: FrameMembers, loose: Iterable[str]) -> _Demands:
    """Return the lower bounds from the tree, the alignments and the frames."""
    loose = set(loose)
    variable: list[int] = []
    by_word: dict[str, int] = {}
    count = 0
    for node in tree.nodes:
        word = "" if node.free or node.cell.aligned in loose else node.cell.aligned
        if word and word in by_word:
            variable.append(by_word[word])
            continue
        if word:
            by_word[word] = count
        variable.append(count)
        count += 1
    start = list(range(count, count + len(frames.enclosure)))
    end = list(range(count + len(start), count + 2 * len(start)))
    edges: _Edges = [[] for _ in range(count + 2 * len(start))]
    for place, node in enumerate(tree.nodes):
        if node.free:
            continue
        frame = frames.of[place]
        if frame >= 0:
            edges[start[frame]].append((variable[place], 0))
            edges[variable[place]].append((end[frame], 0))
        if node.parent < 0:
            continue
        above = frames.of[node.parent]
        if frame >= 0 and above == frame:
            edges[variable[node.parent]].append((variable[place], 1))
        else:
            source = end[above] if above >= 0 else variable[node.parent]
            edges[source].append((start[frame] if frame >= 0 else variable[place], 1))
    return _Demands(variable, start, end, edges)


def _keep_channels_free(tree: Tree, demands: _Demands, chained: set[str], loose: set[str]) -> None:
    """Put frames that aligned data devices do not feed to the right of them. This cannot close a cycle."""
    aligned: dict[int, set[int]] = {}
    for place, node in enumerate(tree.nodes):
        if node.cell.aligned and node.cell.aligned not in loose and not node.free:
            aligned.setdefault(demands.variable[place], set()).add(place)
    for variable, places in aligned.items():
        if not any(tree.nodes[place].cell.key in chained for place in places):
            continue
        reached = _reachable(demands.edges, variable)
        for end in demands.end:
            if end not in reached:  # it is where the frame begins, or a member of it, is
                demands.edges[end].append((variable, 1))


def _reachable(edges: _Edges, source: int) -> set[int]:
    """Return the variables that depend on `source`."""
    found = {source}
    waiting = [source]
    while waiting:
        for target, _ in edges[waiting.pop()]:
            if target not in found:
                found.add(target)
                waiting.append(target)
    return found


def _longest_paths(edges: _Edges) -> tuple[list[int], set[int]]:
    """Return the least values that meet all bounds, and the variables on or between cycles (none where it succeeds)."""
    value = [0] * len(edges)
    entering = [0] * len(edges)
    for targets in edges:
        for target, _ in targets:
            entering[target] += 1
    waiting = [place for place, count in enumerate(entering) if count == 0]
    done = 0
    while waiting:
        place = waiting.pop()
        done += 1
        for target, weight in edges[place]:
            value[target] = max(value[target], value[place] + weight)
            entering[target] -= 1
            if entering[target] == 0:
                waiting.append(target)
    if done == len(edges):
        return value, set()
    stuck = {place for place, count in enumerate(entering) if count > 0}
    while True:  # what merely comes after a cycle is not to blame
        kept = {place for place in stuck if any(target in stuck for target, _ in edges[place])}
        if len(kept) == len(stuck):
            return value, stuck
        stuck = kept


def _lane_for_free_cells(tree: Tree, lane: list[int], chains: Sequence[BusChain]) -> int:
    """Return the lane of most devices that free cells have data lines to; the inverters' among equals, and without any.

    Where there are no inverters either it is the lane of the first chained device, without any the middle one.
    """
    served: Counter[int] = Counter()
    for chain in chains:
        places = [tree.index[step.key] for step in chain.steps if step.key in tree.index]
        if any(tree.nodes[place].free for place in places):
            served.update(lane[place] for place in places if not tree.nodes[place].free)
    inverters = {lane[place] for place, node in enumerate(tree.nodes) if node.cell.aligned == "inverter"}
    if served:
        return min(served, key=lambda of: (-served[of], of not in inverters, of))
    chained = {step.key for chain in chains for step in chain.steps}
    fixed = [(node, lane[place]) for place, node in enumerate(tree.nodes) if not node.free]
    for wanted in ("inverter", None):
        for node, number in fixed:
            if node.cell.aligned == wanted or (wanted is None and node.cell.key in chained):
                return number
    return max(number for _, number in fixed) // 2
