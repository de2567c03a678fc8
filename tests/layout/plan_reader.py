"""Reads a Plan back: who is connected with whom, from the geometry of wires, dots and terminals alone.

The ends and nets written in the wires are not looked at. Lines that cross without a dot are not connected; a line that
ends on another is connected by the dot there; a line that ends on a terminal is connected with it: with a `feed`
terminal where it comes from the left, with `supply` where it comes from the right (both lie in one point in a busbar).
"""

from __future__ import annotations

from collections import defaultdict
from itertools import pairwise

from sld.layout.diagram.diagram import Cell, Diagram, Join
from sld.layout.plan import Plan
from sld.symbols.stroke import Point

Terminal = tuple[str, str]


def read_nets(plan: Plan) -> set[frozenset[Terminal]]:
    at: dict[Point, list[Terminal]] = defaultdict(list)
    for cell in plan.cells:
        for name, point in cell.pins:
            at[point].append((cell.key, name))
    above: dict[object, object] = {}

    def root(item: object) -> object:
        while above.setdefault(item, item) != item:
            item = above[item]
        return item

    for i, wire in enumerate(plan.wires):
        for end, onward in ((wire.points[0], wire.points[1]), (wire.points[-1], wire.points[-2])):
            terminals = [t for t in at[end] if _faces(t[1], end, onward)]
            targets: list[object] = list(terminals) or [("point", end)]
            for target in targets:
                above[root(("wire", i))] = root(target)
        for point in plan.dots:
            if any(_on(point, a, b) for a, b in pairwise(wire.points)):
                above[root(("wire", i))] = root(("point", point))
    nets: dict[object, set[Terminal]] = defaultdict(set)
    for terminals in list(at.values()):
        for terminal in terminals:
            if terminal in above:
                nets[root(terminal)].add(terminal)
    return {frozenset(net) for net in nets.values()}


def _faces(name: str, end: Point, onward: Point) -> bool:
    if name == "supply":
        return onward[0] > end[0] or onward[1] > end[1]
    if name.startswith("feed") and name != "feed":
        return onward[0] < end[0] or onward[1] < end[1]
    return True


def _on(point: Point, a: Point, b: Point) -> bool:
    return min(a[0], b[0]) <= point[0] <= max(a[0], b[0]) and min(a[1], b[1]) <= point[1] <= max(a[1], b[1])


def through_boundaries(nets: set[frozenset[Terminal]]) -> set[frozenset[Terminal]]:
    """A boundary between two owners is no device: what is on its two sides is connected."""
    found = set(nets)
    for key in {key for net in nets for key, _ in net if key.endswith("/ownership_boundary")}:
        sides = {net for net in found if any(each == key for each, _ in net)}
        assert len(sides) == 2, f"{key} has {len(sides)} sides that anything is connected with"
        found -= sides
        found.add(frozenset(terminal for net in sides for terminal in net if terminal[0] != key))
    return found


def power_nets(diagram: Diagram) -> set[frozenset[Terminal]]:
    """What the tree says."""
    nets: set[frozenset[Terminal]] = set()
    waiting: list[Cell] = list(diagram.trees)
    while waiting:
        cell = waiting.pop()
        waiting.extend(cell.children)
        if cell.join is Join.SPAN:
            for number, child in enumerate(cell.children, start=1):
                nets.add(frozenset({(cell.key, f"feed{number}"), (child.key, "supply")}))
        elif cell.children:
            nets.add(frozenset({(cell.key, "feed"), *((child.key, "supply") for child in cell.children)}))
    return nets


def chained(diagram: Diagram) -> list[frozenset[str]]:
    """The devices of each chain that is drawn."""
    devices = [frozenset(step.key for step in chain.steps) for chain in diagram.chains]
    return sorted((keys for keys in devices if len(keys) > 1), key=sorted)
