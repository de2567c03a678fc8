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
from dataclasses import dataclass, replace

from sld.layout.diagram.diagram import BusChain
from sld.layout.passes.grid import Shape, down_to_grid_mm, earth_pin_of, pin_of, up_to_grid_mm
from sld.layout.passes.lanes import Lanes
from sld.layout.passes.rows import Rows
from sld.layout.passes.tree import Tree
from sld.symbols.stroke import MODULE_MM

__all__ = ["Cabling", "Drop", "Port", "Run", "cabling_of"]

TERMINATION_MM = 3 * MODULE_MM
"""What a terminating resistor takes beside a track."""

_Level = tuple[int, int]
_Span = tuple[_Level, _Level, int]
"""From, to, and the number of the run."""


@dataclass(frozen=True, slots=True)
class Port:
    """A data terminal in use. x_mm: from the symbol's origin. top: on the upper edge. strip: which of the strips beside
    that edge, counted from the body, its branch leaves in.
    """

    name: str
    x_mm: float
    top: bool
    strip: int


@dataclass(frozen=True, slots=True)
class Drop:
    """The branch of a chain to a device. port: its number among those of the node."""

    node: int
    port: int
    level: _Level
    terminated: bool


@dataclass(frozen=True, slots=True)
class Run:
    """What one lane has of a chain. drops: from the top down. track: in its channel. foot: that at the foot, or -1."""

    chain: str
    lane: int
    drops: tuple[Drop, ...]
    track: int
    foot: int


@dataclass(frozen=True, slots=True)
class Cabling:
    """runs: by chain, then from the left. ports: those of each node. tracks_mm: how wide each vertical track is, in the
    channel on the right of each lane. foot_count: tracks at the foot.
    named: of a chain with a device outside the tree, whose branch has its name, the node and the port.
    """

    runs: tuple[Run, ...]
    ports: tuple[tuple[Port, ...], ...]
    tracks_mm: tuple[tuple[float, ...], ...]
    foot_count: int
    named: Mapping[str, tuple[int, int]]


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
    uses: list[list[bool]] = [[] for _ in tree.nodes]
    numbered: list[tuple[str, dict[int, int]]] = []
    for key, devices in on:
        numbered.append((key, {place: len(uses[place]) for place in devices}))
        for place in devices:
            uses[place].append(devices[place])
    few_free = tree.has_few_free
    at_side = [node.free and few_free for node in tree.nodes]
    ports = tuple(_ports(shape, used, named) for shape, used, named in zip(shapes, uses, at_side, strict=True))
    runs = []
    for (key, devices), (_, numbers) in zip(on, numbered, strict=True):
        by_lane: dict[int, list[Drop]] = {}
        for place, terminated in devices.items():
            level = _level(ports[place][numbers[place]], place, rows)
            by_lane.setdefault(lanes.of[place], []).append(Drop(place, numbers[place], level, terminated))
        for lane in sorted(by_lane, reverse=True):
            drops = tuple(sorted(by_lane[lane], key=lambda drop: drop.level))
            runs.append(Run(key, lane, drops, -1, 0 if len(by_lane) > 1 or key in beyond else -1))
    named = {
        run.chain: (drop.node, drop.port)
        for run in reversed(runs) for drop in reversed(run.drops)
        if at_side[drop.node] and ports[drop.node][drop.port].top
    }  # fmt: skip
    return replace(_tracked(runs, ports, rows, lanes, beyond), named=named)


def _tracked(
    runs: Sequence[Run], ports: tuple[tuple[Port, ...], ...], rows: Rows, lanes: Lanes, beyond: Container[str]
) -> Cabling:
    """Return the runs on their tracks. beyond: chains that go on on the right of all lanes."""
    track = [0] * len(runs)
    tracks_mm: list[tuple[float, ...]] = []
    for lane in range(lanes.count):
        spans: list[_Span] = []
        for number, run in enumerate(runs):
            if run.lane == lane:
                end = run.drops[-1].level if run.foot < 0 else (rows.count, 0)
                spans.append((run.drops[0].level, end, number))
        chosen, count = _shortest_first(spans)
        wide = [0.0] * count
        for number, at in chosen:
            track[number] = at
            if any(drop.terminated for drop in runs[number].drops):
                wide[at] = TERMINATION_MM
        tracks_mm.append(tuple(wide))
    ends: dict[str, list[_Level]] = {}
    for number, run in enumerate(runs):
        if run.foot >= 0:
            ends.setdefault(run.chain, [(1, 0)] if run.chain in beyond else []).append((-run.lane, track[number]))
    keys = list(ends)
    chosen, foot_count = _shortest_first([(min(ends[key]), max(ends[key]), n) for n, key in enumerate(keys)])
    foot = {keys[number]: at for number, at in chosen}
    placed = tuple(
        Run(run.chain, run.lane, run.drops, at, foot.get(run.chain, -1)) for run, at in zip(runs, track, strict=True)
    )
    return Cabling(placed, ports, tuple(tracks_mm), foot_count, {})


def _ports(shape: Shape, terminated: Sequence[bool], named: bool) -> tuple[Port, ...]:
    """Return a terminal for each use: the symbol's own first, then free grid places on the same edge, then the other.

    A resistor has the strip between the branch and the body. named: names of chains stand at the branches. More chains
    than a symbol has places share its last one; no known device needs that many.
    """
    count = len(terminated)
    if not count:
        return ()
    own = [pin for name in ("data", "data2") if (pin := pin_of(shape, name))]
    top = not own or own[0][1] < 0
    chosen = [(x, top) for x, _ in own[:count]]
    spare = _spare_places(shape, top, {x for x, _ in own})
    while len(chosen) < count:
        chosen.append(spare.pop(0) if len(spare) > 1 else spare[0])
    ports = []
    for number, (x_mm, edge) in enumerate(chosen):  # the right-most one leaves next to the body: strips do not cross
        within = [with_resistor for (other, side), with_resistor in zip(chosen, terminated, strict=True)
                  if side == edge and other > x_mm]  # fmt: skip
        strip = len(within) + sum(within) + 1 + terminated[number]
        strip = 2 * strip - 1 if named else strip
        ports.append(Port("data" if number == 0 else f"data{number + 1}", x_mm, edge, strip))
    return tuple(ports)


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
