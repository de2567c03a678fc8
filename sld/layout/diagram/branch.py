"""Walking and rebuilding the trees of cells, without recursion, so that depth is no limit."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from sld.frozen import replace
from sld.layout.diagram.diagram import Cell

__all__ = ["branch", "rebuilt"]


def branch(top: Cell) -> Iterator[Cell]:
    """Yield the cells of a branch, a parent before its children, from the top row down."""
    waiting = [top]
    while waiting:
        cell = waiting.pop()
        yield cell
        waiting.extend(reversed(cell.children))


def rebuilt(cells: Sequence[Cell]) -> Cell:
    """Return the tree of cells given in the order of `branch`, each with as many children as it has."""
    stack: list[Cell] = []
    for cell in reversed(cells):
        below = tuple(stack.pop() for _ in cell.children)
        same = all(new is old for new, old in zip(below, cell.children, strict=True))
        stack.append(cell if same else replace(cell, children=below))
    return stack[0]
