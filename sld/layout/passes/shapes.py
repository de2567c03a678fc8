"""The symbols of all cells, measured before the rows have their heights.

Before: the tree. After: each node has a shape whose upper edge is measured from its head row and whose lower edge from
its foot row; of a stretched symbol, what lies between the two does not matter yet.
"""

from __future__ import annotations

from dataclasses import dataclass

from sld.layout.passes.grid import Catalogue, Shape
from sld.layout.passes.tree import Tree
from sld.symbols.stroke import MODULE_MM, Box, Point

__all__ = ["LEAST_ROW_PITCH_MM", "shapes_of"]

LEAST_ROW_PITCH_MM = 2 * MODULE_MM
"""Rows are never closer: a symbol that keeps its proportions beyond this can be measured at it."""


@dataclass(frozen=True, slots=True)
class _Measured:
    """A Shape about two rows instead of one."""

    box: Box
    pins: tuple[tuple[str, Point], ...]
    hangs: bool


def shapes_of(tree: Tree, catalogue: Catalogue) -> tuple[Shape, ...]:
    """Return the shape of every node. Raises what the catalogue raises for a name it does not have."""
    shapes: list[Shape] = []
    for node in tree.nodes:
        if not node.spans:
            shapes.append(catalogue.symbol(node.cell.symbol))
            continue
        middle = (len(node.children) - 1) // 2
        feeds = tuple(LEAST_ROW_PITCH_MM * (number - middle) for number in range(len(node.children)))
        whole = catalogue.stretched(node.cell.symbol, feeds)
        box = Box(
            whole.box.left_mm, whole.box.top_mm - feeds[0], whole.box.right_mm, whole.box.bottom_mm - feeds[-1]
        )  # fmt: skip
        pins = tuple(
            (name, (x, y - feeds[0] if y <= whole.box.top_mm / 2 else y - feeds[-1])) for name, (x, y) in whole.pins
        )
        shapes.append(_Measured(box, pins, whole.hangs))
    return tuple(shapes)
