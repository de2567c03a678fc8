"""Which module frames are bonded by one conductor at the left edge.

Before: the tree, the forms of all symbols. After: it is known which cells are bonded so, and room is left for the
conductor; `spine.py` draws it.
"""

from __future__ import annotations

from collections.abc import Sequence

from sld.frozen import dataclass
from sld.layout.diagram.diagram import EarthBar
from sld.layout.diagram.line import Line, Role
from sld.layout.passes.shapes import Form
from sld.layout.passes.tree import Tree
from sld.symbols.stroke import MODULE_MM

__all__ = ["SPINE_MM", "Bonding", "bonding_of"]

SPINE_MM = 1 * MODULE_MM
"""Where the conductor is from the left edge; lanes begin one module further."""


@dataclass(frozen=True, slots=True)
class Bonding:
    """nodes: the places of the cells that are bonded, from the top down. line: what is said of the conductor."""

    nodes: tuple[int, ...] = ()
    line: Line | None = None


def bonding_of(tree: Tree, forms: Sequence[Form], bar: EarthBar | None) -> Bonding:
    """Return which cells are bonded by one conductor: those at the end of a row that name the same one.

    bar: the earth bar where it is on the same sheet; then the conductor is one of its terminals.
    """
    said = [
        (place, node.cell.earth)
        for place, node in enumerate(tree.nodes)
        if node.cell.earth
        and node.cell.earth.role is Role.DESIGNATION
        and not (node.children or node.free or forms[place].hangs)
    ]
    if not said or any(line != said[0][1] for _, line in said):
        return Bonding()
    if bar is not None and not any(tap.lines and tap.lines[0].said == said[0][1].said for tap in bar.taps):
        return Bonding()
    return Bonding(tuple(place for place, _ in said), said[0][1])
