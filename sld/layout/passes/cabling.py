"""The data cables, before any measure is known: which terminal, which vertical track, which track at the foot.

Before: tree, rows, lanes, the forms of all symbols. After: each chain is one line with a branch to each of its devices:
each device has a terminal of its own for each chain, whose branch leaves it in a strip of its own above or below the
body and to the right; in the channel on the right of each lane that has devices of the chain there is a track for it,
and a track at the foot of the diagram where it has devices in several lanes. Chains that would lie on one another have
different tracks, as in the left-edge algorithm of Hashimoto and Stevens (1971), the shorter one nearest to the devices.

The order of the devices in a chain is told by its schedule; a bus is a line that its devices are on.
"""

from __future__ import annotations

from bisect import bisect_left, insort
from collections.abc import Container, Mapping, Sequence

from sld.frozen import dataclass, replace
from sld.layout.diagram.diagram import BusChain
from sld.layout.passes.grid import Shape
from sld.layout.passes.lanes import Lanes
from sld.layout.passes.ports import Port, Use, ports_of
from sld.layout.passes.rows import Rows
from sld.layout.passes.tree import Tree

__all__ = ["Cabling", "Drop", "Run", "cabling_of"]

_Level = tuple[int, int]
_Span = tuple[_Level, _Level, int]
"""From, to, and the number of the run."""


@dataclass(frozen=True, slots=True)
class Drop:
    """The branch of a chain to a device. port: its number among those of the node."""

    node: int
    port: int
    level: _Level
    terminated: bool


@dataclass(frozen=True, slots=True)
class Run:
    """What one lane has of a chain. drops: from the top down. track: in its channel. foot: that at the foot, or -1.

    straight: from the lower edge of one device to the upper one of the next below it, without a track.
    over: it goes on above all rows, not at the foot.
    """

    chain: str
    lane: int
    drops: tuple[Drop, ...]
    track: int
    foot: int
    straight: bool = False
    over: bool = False


@dataclass(frozen=True, slots=True)
class Cabling:
    """runs: by chain, then from the left. ports: those of each node. tracks_count: vertical tracks in the channel
    on the right of each lane. foot_count: tracks at the foot.
    named: of a chain with a device outside the tree, whose branch has its name, the node and the port.
    near: lanes whose tracks serve cells outside the tree alone, and lie next to these.
    """

    runs: tuple[Run, ...]
    ports: tuple[tuple[Port, ...], ...]
    tracks_count: tuple[int, ...]
    foot_count: int
    named: Mapping[str, tuple[int, int]]
    near: frozenset[int] = frozenset()


def cabling_of(
    tree: Tree, rows: Rows, lanes: Lanes, shapes: Sequence[Shape], chains: Sequence[BusChain],
    outside: Container[str] = (),
) -> Cabling:  # fmt: skip
    """Return terminals and tracks of all chains. outside: devices that are drawn on the right of all lanes.

    Raises ValueError where a chain names a device that is not drawn.
    """
    on: list[tuple[str, dict[int, bool]]] = []
    beyond: set[str] = set()
    for chain in chains:
        devices: dict[int, bool] = {}
        for step in chain.steps:
            if step.key in outside:
                beyond.add(chain.key)
                continue
            if step.key not in tree.index:
                raise ValueError(f"data chain {chain.key!r} names {step.key!r}, which is not in the diagram")
            place = tree.index[step.key]
            devices[place] = devices.get(place, False) or step.terminated
        if len(devices) > 1 or any(devices.values()) or (devices and chain.key in beyond):
            on.append((chain.key, devices))
    at_side = [node.free and tree.has_few_free for node in tree.nodes]
    numbered: list[dict[int, int]] = [{} for _ in on]
    ports: list[tuple[Port, ...]] = [()] * len(tree.nodes)
    over = _over(on, tree, rows, beyond)
    for place, uses in _at_devices(on, rows, lanes, beyond, over).items():
        ports[place], order = ports_of(shapes[place], uses, at_side=at_side[place])
        for use, number in zip(uses, order, strict=True):
            numbered[use.chain][place] = number
    runs = []
    for (key, devices), numbers in zip(on, numbered, strict=True):
        by_lane: dict[int, list[Drop]] = {}
        for place, terminated in devices.items():
            level = _level(ports[place][numbers[place]], place, rows)
            by_lane.setdefault(lanes.of[place], []).append(Drop(place, numbers[place], level, terminated))
        for lane in sorted(by_lane, reverse=True):
            drops = tuple(sorted(by_lane[lane], key=lambda drop: drop.level))
            alone = len(by_lane) == 1 and key not in beyond
            straight = alone and all(at_side[drop.node] for drop in drops) and _is_straight(drops, ports)
            runs.append(Run(key, lane, drops, -1, -1 if alone else 0, straight, key == over))
    named = {
        run.chain: (drop.node, drop.port)
        for run in reversed(runs) for drop in reversed(run.drops)
        if at_side[drop.node] and ports[drop.node][drop.port].top
    }  # fmt: skip
    far = {run.lane for run in runs if run.foot >= 0 or not all(at_side[drop.node] for drop in run.drops)}
    near = frozenset(run.lane for run in runs) - far
    return replace(_tracked(runs, tuple(ports), rows, lanes, beyond), named=named, near=near)


def _over(on: Sequence[tuple[str, Mapping[int, bool]]], tree: Tree, rows: Rows, beyond: Container[str]) -> str:
    """Return the first chain that is shorter above all rows: from one device, below no other's, to some beyond them."""
    for key, devices in on:
        (place, *others) = devices
        if key in beyond and not others and not tree.nodes[place].free and rows.first[place] == 0:
            return key
    return ""


def _at_devices(
    on: Sequence[tuple[str, Mapping[int, bool]]], rows: Rows, lanes: Lanes, beyond: Container[str], over: str
) -> dict[int, list[Use]]:  # fmt: skip
    """Return the chains at each node in the order from above in which their branches do not cross.

    First those that go on upwards, the shortest one first, which has the track nearest to the devices; then those that
    go on downwards, the shortest one last.
    """
    found: dict[int, list[tuple[int, int, Use]]] = {}
    for chain, (key, devices) in enumerate(on):
        of_lane: dict[int, list[int]] = {}
        for place in devices:
            of_lane.setdefault(lanes.of[place], []).append(rows.axis[place])
        goes_on = len(of_lane) > 1 or key in beyond
        for place, terminated in devices.items():
            levels = of_lane[lanes.of[place]]
            up = rows.axis[place] - (-1 if key == over else min(levels))
            down = (rows.count if goes_on and key != over else max(levels)) - rows.axis[place]
            side = (down > 0) - (up > 0)
            use = Use(chain, terminated, side > 0, key == over)
            found.setdefault(place, []).append((side, up - down if side else 0, use))
    return {place: [use for _, _, use in sorted(ways, key=lambda way: way[:2])] for place, ways in found.items()}


def _is_straight(drops: Sequence[Drop], ports: Sequence[tuple[Port, ...]]) -> bool:
    """Return whether two devices one below the other may be joined from edge to edge."""
    if len(drops) != 2 or any(drop.terminated for drop in drops) or drops[1].level[0] - drops[0].level[0] != 1:
        return False
    upper, lower = (ports[drop.node][drop.port] for drop in drops)
    return not upper.top and lower.top


def _tracked(
    runs: Sequence[Run], ports: tuple[tuple[Port, ...], ...], rows: Rows, lanes: Lanes, beyond: Container[str]
) -> Cabling:
    """Return the runs on their tracks. beyond: chains that go on on the right of all lanes."""
    track = [0] * len(runs)
    tracks_count: list[int] = []
    for lane in range(lanes.count):
        spans: list[_Span] = []
        for number, run in enumerate(runs):
            if run.lane == lane and not run.straight:
                end = run.drops[-1].level if run.foot < 0 or run.over else (rows.count, 0)
                spans.append(((-1, 0) if run.over else run.drops[0].level, end, number))
        chosen, count = _shortest_first(spans)
        tracks_count.append(count)
        for number, at in chosen:
            track[number] = at
    ends: dict[str, list[_Level]] = {}
    for number, run in enumerate(runs):
        if run.foot >= 0 and not run.over:
            ends.setdefault(run.chain, [(1, 0)] if run.chain in beyond else []).append((-run.lane, track[number]))
    keys = list(ends)
    chosen, foot_count = _shortest_first([(min(ends[key]), max(ends[key]), n) for n, key in enumerate(keys)])
    foot = {keys[number]: at for number, at in chosen}
    placed = tuple(
        replace(run, track=at, foot=0 if run.over else foot.get(run.chain, -1))
        for run, at in zip(runs, track, strict=True)
    )
    return Cabling(placed, ports, tuple(tracks_count), foot_count, {})


def _level(port: Port, node: int, rows: Rows) -> _Level:
    """Return where a port's strip lies, so that levels compare like heights on the page."""
    return (rows.axis[node], -port.strip if port.top else port.strip)


def _shortest_first(spans: Sequence[_Span]) -> tuple[list[tuple[int, int]], int]:
    """Give each span the first track on which it touches no other. Return numbers with tracks, and how many tracks."""
    taken: list[list[tuple[_Level, _Level]]] = []
    chosen = []
    for low, high, number in sorted(spans, key=lambda span: (span[1][0] - span[0][0], span[1][1] - span[0][1], span)):
        track = 0
        while track < len(taken) and _touches(taken[track], low, high):
            track += 1
        if track == len(taken):
            taken.append([])
        insort(taken[track], (low, high))
        chosen.append((number, track))
    return chosen, len(taken)


def _touches(taken: Sequence[tuple[_Level, _Level]], low: _Level, high: _Level) -> bool:
    """Return whether the span touches one of these, which are apart from each other and sorted.

    In one row the end of one dashed line above the beginning of another would be read as a gap between dashes.
    """
    after = bisect_left(taken, (low, low))
    return (after > 0 and taken[after - 1][1][0] >= low[0]) or (after < len(taken) and taken[after][0][0] <= high[0])
