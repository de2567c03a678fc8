"""The conductors of the power tree and to earth.

Before: placed cells. After: every cell is connected with its parent: straight where it has a terminal of its own there,
else by a trunk in the channel. No more than three conductors meet in a point, and each such point has a dot: children
above the parent's axis and children below it join it by trunks one module apart.
"""

from __future__ import annotations

from collections.abc import Sequence

from sld.layout.diagram.diagram import LineKind
from sld.layout.passes.columns import Columns, has_trunk
from sld.layout.passes.lanes import Lanes
from sld.layout.passes.tree import Tree
from sld.layout.plan import PlacedCell, Wire
from sld.symbols.stroke import Point

__all__ = ["earth_wires_of", "power_wires_of"]

_JOINT = ("", "")


def power_wires_of(
    tree: Tree, lanes: Lanes, columns: Columns, cells: Sequence[PlacedCell]
) -> tuple[tuple[Wire, ...], tuple[Point, ...]]:  # fmt: skip
    """Return the wires of the tree and the dots on them."""
    wires: list[Wire] = []
    dots: list[Point] = []
    pins = [dict(cell.pins) for cell in cells]
    for place, node in enumerate(tree.nodes):
        if has_trunk(tree, place):
            x_above, x_below = columns.channels[lanes.of[place] + 1].trunks_mm
            _trunk(tree, place, pins, x_above, x_below, wires, dots)
            continue
        for number, child in enumerate(node.children, start=1):
            terminal = f"feed{number}" if node.spans else "feed"
            below = tree.nodes[child].cell
            wires.append(
                Wire(
                    below.kind,
                    (pins[child]["supply"], pins[place][terminal]),
                    ((below.key, "supply"), (node.cell.key, terminal)),
                    f"{node.cell.key}:{terminal}",
                )
            )
    return tuple(wires), tuple(dots)


def _trunk(
    tree: Tree, place: int, pins: Sequence[dict[str, Point]], x_above: float, x_below: float,
    wires: list[Wire], dots: list[Point],
) -> None:  # fmt: skip
    """Join the children of one node. The middle child lies on the node's axis."""
    node = tree.nodes[place]
    net = f"{node.cell.key}:feed"
    axis = pins[place]["feed"]
    middle = node.children[(len(node.children) - 1) // 2]
    straight = tree.nodes[middle].cell
    at = node.children.index(middle)
    above, below = node.children[:at], node.children[at + 1 :][::-1]
    last, end = pins[middle]["supply"], (straight.key, "supply")
    for x, branch in ((x_above, above), (x_below, below)):
        if not branch:
            continue
        joint = (x, axis[1])
        _branch(tree, branch, pins, joint, net, wires, dots)
        wires.append(Wire(straight.kind, (last, joint), (end, _JOINT), net))
        dots.append(joint)
        last, end = joint, _JOINT
    wires.append(Wire(straight.kind, (last, axis), (end, (node.cell.key, "feed")), net))


def _branch(
    tree: Tree, children: Sequence[int], pins: Sequence[dict[str, Point]], joint: Point, net: str,
    wires: list[Wire], dots: list[Point],
) -> None:  # fmt: skip
    """Lead the children on one side of the axis, the outermost first, to the joint on the axis."""
    x = joint[0]
    for number, child in enumerate(children):
        cell = tree.nodes[child].cell
        start = pins[child]["supply"]
        corner = (x, start[1])
        onward = (x, pins[children[number + 1]]["supply"][1]) if number + 1 < len(children) else joint
        if number == 0:
            wires.append(Wire(cell.kind, (start, corner, onward), ((cell.key, "supply"), _JOINT), net))
            continue
        wires.append(Wire(cell.kind, (start, corner), ((cell.key, "supply"), _JOINT), net))
        wires.append(Wire(cell.kind, (corner, onward), (_JOINT, _JOINT), net))
        dots.append(corner)


def earth_wires_of(cells: Sequence[PlacedCell], earths: Sequence[PlacedCell]) -> tuple[Wire, ...]:
    """Return the conductors from cells to the symbols for earth below them."""
    by_key = {cell.key: cell for cell in cells}
    wires = []
    for earth in earths:
        key = earth.key.removesuffix("/earth")
        pins = dict(earth.pins)
        hook = "earth" if "earth" in pins else "feed"
        ends = ((key, "earth"), (earth.key, hook))
        wires.append(Wire(LineKind.EARTH, (dict(by_key[key].pins)["earth"], pins[hook]), ends, f"{key}:earth"))
    return tuple(wires)
