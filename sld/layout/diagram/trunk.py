"""The way to the supply that all rows have in common, where it may be turned down.

Before: the diagram. After: the devices of that way, which are left out of the rows, and the root of what is left.
"""

from __future__ import annotations

from sld.frozen import dataclass
from sld.layout.diagram.diagram import Cell, Diagram, Join

__all__ = ["Trunk", "trunk_of"]

_LEAST_COUNT = 3
"""Fewer devices are not turned."""


@dataclass(frozen=True, slots=True)
class Trunk:
    """cells: from the network to the one whose only child is `top`, the root of the rows."""

    cells: tuple[Cell, ...]
    top: Cell

    @property
    def keys(self) -> frozenset[str]:
        """Return the keys of its cells."""
        return frozenset(cell.key for cell in self.cells)


def trunk_of(diagram: Diagram) -> Trunk | None:
    """Return the way that all rows have in common, None where there is too little of it to be turned."""
    cells: list[Cell] = []
    cell = diagram.root
    while len(cell.children) == 1 and not (cell.aligned or cell.earth):
        cells.append(cell)
        cell = cell.children[0]
    if any(each.alike for each in cells):  # what is drawn once for many is turned where it leaves its board
        bars = [place for place, each in enumerate(cells) if each.join is Join.SPAN]
        cell = cells[bars[-1]] if bars else cell
        cells = cells[: bars[-1]] if bars else cells
    if len(cells) < _LEAST_COUNT or diagram.further:
        return None
    return Trunk(tuple(cells), cell)
