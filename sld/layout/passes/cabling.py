"""The data cables, before any measure is known: which terminal, which vertical track, which track at the foot.

Before: tree, rows, lanes, the shapes of all symbols. After: each link between neighbours of a chain has a terminal of
its own at both devices, leaves each device in a strip of its own above or below the body and to the right, and runs
down the channel on the right of the lane: straight to the other device where both are in one lane, to a track at the
foot of the diagram otherwise. Links that would lie on one another have different tracks, as in the left-edge
algorithm of Hashimoto and Stevens (1971), but with the shorter link first and nearest to the devices, so that nested
links do not cross.
"""

from __future__ import annotations

from bisect import bisect_left, insort
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from sld.layout.diagram.diagram import BusChain
from sld.layout.passes.grid import Shape, down_to_grid_mm, earth_pin_of, pin_of, up_to_grid_mm
from sld.layout.passes.lanes import Lanes
from sld.layout.passes.rows import Rows
from sld.layout.passes.tree import Tree
from sld.symbols.stroke import MODULE_MM

__all__ = ["TERMINATION", "TERMINATION_STRIPS_COUNT", "Cabling", "Link", "Port", "cabling_of"]

TERMINATION = "data_end"
"""Name of the terminal that a terminating resistor is on."""

TERMINATION_STRIPS_COUNT = 3
"""Strips that a terminating resistor stands in: one of conductor, two of resistor."""

_Place = tuple[int, int]
_Run = tuple[_Place, _Place, tuple[int, int]]
"""From, to, and (link, end): end is -1 where the run serves both ends."""
_Ends = tuple[str, tuple[int, int], tuple[int, int]]
"""Chain, nodes and ports of a link."""


@dataclass(frozen=True, slots=True)
class Port:
    """A data terminal in use. x_mm: from the symbol's origin. top: on the upper edge. strip: which of the strips beside
    that edge, counted from the body, its cable leaves in; with a termination the last of those that it stands in.
    """

    name: str
    x_mm: float
    top: bool
    strip: int


@dataclass(frozen=True, slots=True)
class Link:
    """One data cable. nodes and ports: its two ends. tracks: the vertical track at each end (the same one twice where
    both devices share a lane). foot: the track at the foot, or -1.
    """

    chain: str
    nodes: tuple[int, int]
    ports: tuple[int, int]
    tracks: tuple[int, int]
    foot: int


@dataclass(frozen=True, slots=True)
class Cabling:
    """ports: those of each node, by the places that `Link.ports` names. tracks_count: vertical tracks in the channel on
    the right of each lane. foot_count: tracks at the foot. terminations: chain, node and port of each resistor.
    """

    links: tuple[Link, ...]
    ports: tuple[tuple[Port, ...], ...]
    tracks_count: tuple[int, ...]
    foot_count: int
    terminations: tuple[tuple[str, int, int], ...] = ()


def cabling_of(
    tree: Tree, rows: Rows, lanes: Lanes, shapes: Sequence[Shape], chains: Sequence[BusChain]
) -> Cabling:  # fmt: skip
    """Return terminals and tracks of all links. Raises ValueError where a chain names a device that is not drawn."""
    uses: list[list[str]] = [[] for _ in tree.nodes]
    ends: list[_Ends] = []
    for chain in chains:
        places = []
        for step in chain.steps:
            if step.key not in tree.index:
                raise ValueError(f"data chain {chain.key!r} names {step.key!r}, which is not in the diagram")
            places.append(tree.index[step.key])
        for a, b in pairwise(places):
            if a != b:
                uses[a].append("data_out")
                uses[b].append("data_in")
                ends.append((chain.key, (a, b), (len(uses[a]) - 1, len(uses[b]) - 1)))
    terminations = []
    for chain in chains:
        for step in chain.steps:
            if step.terminated:
                place = tree.index[step.key]
                uses[place].append(TERMINATION)
                terminations.append((chain.key, place, len(uses[place]) - 1))
    ports = tuple(_ports(shape, used) for shape, used in zip(shapes, uses, strict=True))
    tracks, tracks_count = _channel_tracks(ends, rows, lanes, ports)
    foot, foot_count = _foot_tracks(ends, lanes, tracks)
    links = tuple(
        Link(key, nodes, used, tracks[number], foot[number]) for number, (key, nodes, used) in enumerate(ends)
    )
    return Cabling(links, ports, tracks_count, foot_count, tuple(terminations))


def _ports(shape: Shape, used: Sequence[str]) -> tuple[Port, ...]:
    """Return a terminal for each use: the symbol's own first, then free grid places on the same edge, then the other.

    More links than a symbol has places share its last one; no known device needs that many.
    """
    if not used:
        return ()
    given = [pin for pin in (pin_of(shape, "data_in"), pin_of(shape, "data_out")) if pin]
    top = not given or given[0][1] < 0
    own = {name: pin[0] for name in ("data_in", "data_out") if (pin := pin_of(shape, name))}
    spare = _spare_places(shape, top, set(own.values()))
    chosen: list[tuple[str, float, bool]] = []
    numbers = {"data_in": 0, "data_out": 0, TERMINATION: 0}
    for name in used:
        numbers[name] += 1
        left_over = [own[each] for each in own if each not in used]
        if name == TERMINATION and numbers[name] <= len(left_over):
            chosen.append((_numbered(name, numbers[name]), left_over[numbers[name] - 1], top))
            continue
        if numbers[name] == 1 and name in own:
            chosen.append((name, own[name], top))
            continue
        x_mm, edge = spare.pop(0) if len(spare) > 1 else spare[0]
        chosen.append((_numbered(name, numbers[name]), x_mm, edge))
    ports = []
    for name, x_mm, edge in chosen:  # the right-most port leaves next to the body, so that the strips do not cross
        nearer = {other: _strips_count(of) for of, other, side in chosen if side == edge and other > x_mm}
        taken = 0 if name.startswith(TERMINATION) else sum(nearer.values())
        ports.append(Port(name, x_mm, edge, taken + _strips_count(name)))
    return tuple(ports)


def _numbered(name: str, number: int) -> str:
    return name if number == 1 else f"{name}{number}"


def _strips_count(name: str) -> int:
    """Return how many strips a port takes: a termination stands upright in as many as it is long."""
    return TERMINATION_STRIPS_COUNT if name.startswith(TERMINATION) else 1


def _spare_places(shape: Shape, top: bool, taken: set[float]) -> list[tuple[float, bool]]:
    """Return free grid places on the edge with the data terminals, from the middle outwards, then on the other edge."""
    left, right = up_to_grid_mm(shape.box.left_mm), down_to_grid_mm(shape.box.right_mm)
    places = [left + MODULE_MM * i for i in range(max(1, round((right - left) / MODULE_MM) + 1))]
    middle = (shape.box.left_mm + shape.box.right_mm) / 2
    places.sort(key=lambda x: (abs(x - middle), x))
    earth = earth_pin_of(shape)
    found = [(x, top) for x in places if x not in taken] + [(x, not top) for x in places]
    free = [(x, edge) for x, edge in found if edge or x != earth[0]]
    return free or found


def _level(port: Port, node: int, rows: Rows) -> _Place:
    """Return where a port's strip lies, so that levels compare like heights on the page."""
    return (rows.head[node], -port.strip) if port.top else (rows.foot[node], port.strip)


def _channel_tracks(
    ends: Sequence[_Ends], rows: Rows, lanes: Lanes, ports: Sequence[Sequence[Port]]
) -> tuple[list[tuple[int, int]], tuple[int, ...]]:  # fmt: skip
    """Return the tracks of each link at its two ends, and how many each lane's channel has."""
    runs: list[list[_Run]] = [[] for _ in range(lanes.count)]
    for number, (_, nodes, used) in enumerate(ends):
        levels = [_level(ports[node][port], node, rows) for node, port in zip(nodes, used, strict=True)]
        if lanes.of[nodes[0]] == lanes.of[nodes[1]]:
            runs[lanes.of[nodes[0]]].append((min(levels), max(levels), (number, -1)))
        else:
            for end in (0, 1):
                runs[lanes.of[nodes[end]]].append((levels[end], (rows.count, 0), (number, end)))
    tracks = [[-1, -1] for _ in ends]
    counts = []
    for lane_runs in runs:
        chosen, count = _shortest_first(lane_runs)
        counts.append(count)
        for (number, end), track in chosen:
            for place in (0, 1) if end < 0 else (end,):
                tracks[number][place] = track
    return [(a, b) for a, b in tracks], tuple(counts)


def _foot_tracks(
    ends: Sequence[_Ends], lanes: Lanes, tracks: Sequence[tuple[int, int]]
) -> tuple[list[int], int]:  # fmt: skip
    """Return the track at the foot of each link that needs one, and how many there are."""
    runs: list[_Run] = []
    for number, (_, nodes, _) in enumerate(ends):
        # From the left: lanes in falling order, and within a channel tracks in rising order.
        at = sorted((-lanes.of[node], track) for node, track in zip(nodes, tracks[number], strict=True))
        if at[0][0] != at[1][0]:
            runs.append((at[0], at[1], (number, 0)))
    chosen, count = _shortest_first(runs)
    foot = [-1] * len(ends)
    for (number, _), track in chosen:
        foot[number] = track
    return foot, count


def _shortest_first(runs: Sequence[_Run]) -> tuple[list[tuple[tuple[int, int], int]], int]:
    """Give each run the first track on which it touches no other. Return names with tracks, and how many tracks."""
    taken: list[list[tuple[_Place, _Place]]] = []
    chosen = []
    for low, high, name in sorted(runs, key=lambda run: (run[1][0] - run[0][0], run[1][1] - run[0][1], run)):
        track = 0
        while track < len(taken) and _touches(taken[track], low, high):
            track += 1
        if track == len(taken):
            taken.append([])
        insort(taken[track], (low, high))
        chosen.append((name, track))
    return chosen, len(taken)


def _touches(taken: Sequence[tuple[_Place, _Place]], low: _Place, high: _Place) -> bool:
    """Return whether the run touches one of these, which are apart from each other and sorted."""
    after = bisect_left(taken, (low, low))
    return (after > 0 and taken[after - 1][1] >= low) or (after < len(taken) and taken[after][0] <= high)
