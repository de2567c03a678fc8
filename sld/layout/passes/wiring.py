"""The conductors of the power tree and to earth.

Before: placed cells. After: every cell is connected with its parent: straight where it has a terminal of its own there,
else by a trunk in the channel. No more than three conductors meet in a point, and each such point has a dot: children
above the parent's axis and children below it join it by trunks one module apart.
"""

from __future__ import annotations

from collections.abc import Sequence

from sld.frozen import dataclass
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
    drawn = _Drawn(tree, [dict(cell.pins) for cell in cells], [], [])
    for place in range(len(tree.nodes)):
        if has_trunk(tree, place):
            drawn.trunk(place, columns.channels[lanes.of[place] + 1].trunks_mm)
        else:
            drawn.ways(place)
    return tuple(drawn.wires), tuple(drawn.dots)


@dataclass(frozen=True, slots=True)
class _Drawn:
    """What is drawn so far. pins: the terminals of each node by name."""

    tree: Tree
    pins: Sequence[dict[str, Point]]
    wires: list[Wire]
    dots: list[Point]

    def ways(self, place: int) -> None:
        """Join the children of one node with a terminal each, or its only one."""
        node = self.tree.nodes[place]
        for number, child in enumerate(node.children, start=1):
            terminal = f"feed{number}" if node.spans else "feed"
            below = self.tree.nodes[child].cell
            self.wires.append(
                Wire(
                    below.kind,
                    (self.pins[child]["supply"], self.pins[place][terminal]),
                    ((below.key, "supply"), (node.cell.key, terminal)),
                    f"{node.cell.key}:{terminal}",
                )
            )

    def trunk(self, place: int, trunks_mm: tuple[float, float]) -> None:
        """Join the children of one node; the middle one lies on its axis. trunks_mm: x of those above and below it."""
        node = self.tree.nodes[place]
        net = f"{node.cell.key}:feed"
        axis = self.pins[place]["feed"]
        middle = node.children[(len(node.children) - 1) // 2]
        straight = self.tree.nodes[middle].cell
        at = node.children.index(middle)
        above, below = node.children[:at], node.children[at + 1 :][::-1]
        last, end = self.pins[middle]["supply"], (straight.key, "supply")
        for x, branch in zip(trunks_mm, (above, below), strict=True):
            if not branch:
                continue
            joint = (x, axis[1])
            self.branch(branch, joint, net)
            self.wires.append(Wire(straight.kind, (last, joint), (end, _JOINT), net))
            self.dots.append(joint)
            last, end = joint, _JOINT
        self.wires.append(Wire(straight.kind, (last, axis), (end, (node.cell.key, "feed")), net))

    def branch(self, children: Sequence[int], joint: Point, net: str) -> None:
        """Lead the children on one side of the axis, the outermost first, to the joint on the axis."""
        x = joint[0]
        for number, child in enumerate(children):
            cell = self.tree.nodes[child].cell
            start = self.pins[child]["supply"]
            corner = (x, start[1])
            onward = (x, self.pins[children[number + 1]]["supply"][1]) if number + 1 < len(children) else joint
            if number == 0:
                self.wires.append(Wire(cell.kind, (start, corner, onward), ((cell.key, "supply"), _JOINT), net))
                continue
            self.wires.append(Wire(cell.kind, (start, corner), ((cell.key, "supply"), _JOINT), net))
            self.wires.append(Wire(cell.kind, (corner, onward), (_JOINT, _JOINT), net))
            self.dots.append(corner)


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
