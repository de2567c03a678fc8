"""How the data lines of a plan run: their crossings, and their way against the direct one.

The way is the longest of all data lines: between the two of its devices that are farthest apart, along the line, in
level and upright steps. The direct way is measured in the same steps and goes round upright busbars: a line across one
is read as a connection, so that no drawing could take it. Nothing else is gone round: conductors may be crossed.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from sld.layout.diagram.diagram import LineKind
from sld.layout.plan import Plan, Wire
from sld.symbols.stroke import Box, Point


@dataclass(frozen=True)
class DataLines:
    """crossings: for each inverter. way: against the direct one round busbars, bare: against that through them."""

    crossings: float
    way: float
    bare: float


def data_lines(plan: Plan) -> DataLines:
    """Measure the data lines of a plan."""
    count = max(1, sum(cell.symbol.startswith(("inverter", "microinverter")) for cell in plan.cells))
    bars = [cell.box for cell in plan.cells if cell.symbol == "busbar" and cell.box.height_mm > cell.box.width_mm]
    lines: dict[str, list[Wire]] = {}
    for wire in plan.wires:
        if wire.kind is LineKind.DATA:
            lines.setdefault(wire.net, []).append(wire)
    found = [_detour(wires, bars) for wires in lines.values()]
    way, bare = max((way for way, _ in found), default=0.0), max((bare for _, bare in found), default=0.0)
    return DataLines(plan.crossings_count / count, way, bare)


def direct_mm(one: Point, other: Point, bars: Sequence[Box] = ()) -> float:
    """Return the shortest way between two points in level and upright steps that crosses none of the upright bars."""
    (left, y), (right, end) = sorted((one, other))
    between = sorted((bar for bar in bars if left < bar.left_mm < right), key=lambda bar: bar.left_mm)
    costs = {y: 0.0}
    for bar in between:
        passing = {each for at in costs for each in (at, end, bar.top_mm, bar.bottom_mm)
                   if not bar.top_mm < each < bar.bottom_mm}  # fmt: skip
        costs = {to: min(cost + abs(to - at) for at, cost in costs.items()) for to in passing}
    return right - left + min(cost + abs(end - at) for at, cost in costs.items())


def _detour(wires: Sequence[Wire], bars: Sequence[Box]) -> tuple[float, float]:
    near: dict[Point, list[Point]] = {}
    for wire in wires:
        for one, other in pairwise(wire.points):
            near.setdefault(one, []).append(other)
            near.setdefault(other, []).append(one)
    ends = [point for wire in wires for point, end in zip((wire.points[0], wire.points[-1]), wire.ends, strict=True)
            if end[1].startswith("data")]  # fmt: skip
    first, last = max(((a, b) for a in ends for b in ends), key=lambda pair: direct_mm(*pair))
    way, waiting = {first: 0.0}, [first]
    for here in waiting:
        for there in near[here]:
            if there not in way:
                way[there] = way[here] + direct_mm(here, there)
                waiting.append(there)
    return way[last] / max(direct_mm(first, last, bars), 1.0), way[last] / max(direct_mm(first, last), 1.0)
