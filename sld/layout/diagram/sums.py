"""The sum at a branch that is drawn once for several: `4 × (3 strings, 25 kW) = 12 strings, 100 kW`."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from sld.frozen import replace
from sld.layout.diagram.capacity import in_sum
from sld.layout.diagram.diagram import Cell, Join
from sld.layout.diagram.line import Line, Role
from sld.words import amount, sequence, unbroken

__all__ = ["with_sum"]


def with_sum(cells: Sequence[Cell], count: int) -> list[Cell]:
    """Return the cells of a branch, in the order of `branch`, as one that stands for so many of it, with their sum.

    What one of them and all of them come to stands below the first cable of the way that all of the branch has in
    common, where there is room, else at the top of the branch.
    """
    one = in_sum(cell.capacity for cell in cells)
    if one is None:
        return list(cells)
    found = [replace(cell, capacity=cell.capacity * count) if cell.capacity else cell for cell in cells]
    place = next((place for place in _way(cells) if cells[place].along is not None), 0)
    each = unbroken(amount(count, "×"), sequence(["(", one.summed(), ")"], ""))
    line = Line(Role.SUM, sequence([each, unbroken("=", (one * count).summed())], " "))
    found[place] = replace(found[place], below=(*found[place].below, line))
    return found


def _way(cells: Sequence[Cell]) -> Iterator[int]:
    """Yield the places of the cells that all of a branch has in common, from its top to where it begins to part."""
    for place, cell in enumerate(cells):
        if cell.capacity is not None:
            return
        yield place
        if len(cell.children) != 1 or cell.join is Join.SPAN:
            return
