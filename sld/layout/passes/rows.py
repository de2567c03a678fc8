"""Rows.

Before: the tree. After: every leaf has a row of its own, in preorder; a cell lies in the row of its middle child (the
upper one of two), so that the main path is straight; the rows of a subtree are contiguous. So every cell lies in one
row, and all cells of a row lie on one path to the root.
"""

from __future__ import annotations

from sld.frozen import dataclass
from sld.layout.passes.tree import Tree

__all__ = ["Rows", "rows_of"]


@dataclass(frozen=True, slots=True)
class Rows:
    """Rows by node, counted from the top.

    axis: where its wires enter and leave. head, foot: the rows its upper and lower labels belong to: those of the first
    and last child where it is stretched, its own row otherwise. first, last: the rows of its subtree.
    """

    axis: tuple[int, ...]
    head: tuple[int, ...]
    foot: tuple[int, ...]
    first: tuple[int, ...]
    last: tuple[int, ...]
    count: int


def rows_of(tree: Tree, *, from_the_top: bool = False) -> Rows:
    """Return the rows of all nodes. from_the_top: the first root lies in the row of its first child."""
    n = len(tree.nodes)
    axis, head, foot, first, last = ([0] * n for _ in range(5))
    count = 0
    for place, node in enumerate(tree.nodes):
        if not node.children:
            axis[place] = head[place] = foot[place] = first[place] = last[place] = count
            count += 1
    for place in range(n - 1, -1, -1):
        node = tree.nodes[place]
        below = node.children
        if below:
            middle = 0 if from_the_top and place == 0 else (len(below) - 1) // 2
            axis[place] = head[place] = foot[place] = axis[below[middle]]
            first[place], last[place] = first[below[0]], last[below[-1]]
            if node.spans:
                head[place], foot[place] = axis[below[0]], axis[below[-1]]
    return Rows(tuple(axis), tuple(head), tuple(foot), tuple(first), tuple(last), count)
