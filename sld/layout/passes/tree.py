"""The tree of cells as a list, so that every later pass is a loop.

Before: a Diagram. After: nodes in preorder (a parent before its children, children from the top row down), the cells
outside the power tree last; keys are unique.
"""

from __future__ import annotations

from sld.frozen import dataclass
from sld.layout.diagram.diagram import Cell, Diagram, Join

__all__ = ["Node", "Tree", "tree_of"]


_FEW_FREE = 6


@dataclass(frozen=True, slots=True)
class Node:
    """One cell with its neighbours, named by their places in `Tree.nodes`. Roots and free cells have parent -1."""

    cell: Cell
    parent: int
    children: tuple[int, ...]
    free: bool

    @property
    def spans(self) -> bool:
        """Return whether the symbol is stretched over the rows of its children."""
        return self.cell.join is Join.SPAN and bool(self.children)


@dataclass(frozen=True, slots=True)
class Tree:
    """All cells of the diagram. index: key -> place in `nodes`."""

    nodes: tuple[Node, ...]
    index: dict[str, int]

    @property
    def has_few_free(self) -> bool:
        """Return whether cells outside the tree stand below each other, their labels on the left; else side by side."""
        return sum(node.free for node in self.nodes) <= _FEW_FREE


def tree_of(diagram: Diagram) -> Tree:
    """Return the nodes in preorder. Raises ValueError where a key occurs twice."""
    cells: list[tuple[Cell, int, bool]] = []
    waiting = [(cell, -1, True) for cell in reversed(diagram.free)]
    waiting += [(cell, -1, False) for cell in reversed(diagram.trees)]
    children: list[list[int]] = []
    while waiting:
        cell, parent, free = waiting.pop()
        place = len(cells)
        cells.append((cell, parent, free))
        children.append([])
        if parent >= 0:
            children[parent].append(place)
        waiting.extend((child, place, free) for child in reversed(cell.children))
    index: dict[str, int] = {}
    for place, (cell, _, _) in enumerate(cells):
        if cell.key in index:
            raise ValueError(f"two cells of the diagram have the key {cell.key!r}")
        index[cell.key] = place
    nodes = tuple(
        Node(cell, parent, tuple(below), free) for (cell, parent, free), below in zip(cells, children, strict=True)
    )
    return Tree(nodes, index)
