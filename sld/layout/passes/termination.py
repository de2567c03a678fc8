"""The terminating resistors of the data buses.

Before: cabling, in which each resistor has a terminal and room in the strips; placed cells. After: one cell more for
each resistor, upright on its device's edge, and the conductor to it.
"""

from __future__ import annotations

from collections.abc import Sequence

from sld.layout.diagram.diagram import LineKind
from sld.layout.passes.cabling import TERMINATION_STRIPS_COUNT
from sld.layout.passes.grid import Catalogue
from sld.layout.passes.measured import Measured
from sld.layout.plan import PlacedCell, Wire
from sld.symbols.stroke import MODULE_MM

__all__ = ["terminations_of"]

_SYMBOL = "termination_resistor"


def terminations_of(
    measured: Measured, cells: Sequence[PlacedCell], catalogue: Catalogue
) -> tuple[tuple[PlacedCell, ...], tuple[Wire, ...]]:
    """Return the resistors and their conductors. cells: all of the tree, node i is item i.

    The key of a resistor is its device's with the name of its terminal: KEY/data_end.
    """
    found, wires = [], []
    rows, cabling, heights, stacks = measured.rows, measured.cabling, measured.heights, measured.stacks
    for chain, node, number in cabling.terminations:
        port, cell = cabling.ports[node][number], cells[node]
        x = measured.columns.origin_mm[node] + port.x_mm
        if port.top:
            far = heights.axis_mm[rows.head[node]] + stacks[node].strip_top_mm - MODULE_MM * TERMINATION_STRIPS_COUNT
            near, top = far + 2 * MODULE_MM, far
        else:
            near = top = heights.axis_mm[rows.foot[node]] + stacks[node].strip_bottom_mm + MODULE_MM
        key = f"{cell.key}/{port.name}"
        box = catalogue.symbol(_SYMBOL).box.moved(x, top)
        found.append(PlacedCell(key, _SYMBOL, cell.status, (x, top), (0.0, 0.0), box, (("feed", (x, near)),), ()))
        start = dict(cell.pins)[port.name]
        wires.append(Wire(LineKind.DATA, (start, (x, near)), ((cell.key, port.name), (key, "feed")), f"{chain}/{key}"))
    return tuple(found), tuple(wires)
