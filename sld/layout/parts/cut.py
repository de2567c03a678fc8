"""Trees of cells cut into several: a mark at each end of each cut, so that the parts can be on sheets of their own.

An edge is cut between a parent and its child: the parent keeps a mark in the child's place, the child gets a mark as
its parent. A busbar is cut between two of its ways: each part of it is drawn with its ways, and a mark joins it to the
next.
"""

from __future__ import annotations

from collections.abc import Container, Sequence
from itertools import pairwise

from sld.frozen import replace
from sld.layout.diagram.branch import branch, rebuilt
from sld.layout.diagram.diagram import Cell
from sld.layout.diagram.line import Line, Role, designation
from sld.layout.parts.marks import CONTINUED, designation_of, is_mark, mark_from, mark_to, other_end
from sld.words import phrase

__all__ = ["continued", "cut_above", "cut_busbar", "cut_from", "rejoined", "up_to_way"]

_CONTINUED = Line(Role.NAME, phrase("continued"))


def cut_above(tree: Cell, keys: Container[str]) -> tuple[Cell, list[Cell]]:
    """Return the tree cut above the cells of these keys, and the trees cut off, in their order."""
    kept: list[Cell] = []
    off: list[Cell] = []
    waiting: list[tuple[Cell, Cell | None]] = [(tree, None)]
    while waiting:
        cell, parent = waiting.pop()
        if parent is not None and cell.key in keys:
            off.append(mark_from(f"{cell.key}/from", cell, phrase("from {device}", device=designation_of(parent))))
            cell = mark_to(f"{cell.key}/to", cell, phrase("to {device}", device=designation_of(cell)))
        kept.append(cell)
        waiting.extend((child, cell) for child in reversed(cell.children))
    return rebuilt(kept), off


def cut_busbar(tree: Cell, busbar: Cell, starts: Sequence[int]) -> tuple[Cell, list[Cell]]:
    """Return the tree with a busbar cut before each of these ways, and the further parts with their ways."""
    further = [continued(busbar, start, end) for start, end in pairwise((*starts, len(busbar.children)))]
    return up_to_way(tree, busbar, starts[0]), further


def up_to_way(tree: Cell, busbar: Cell, end: int) -> Cell:
    """Return the tree with the ways of a busbar before the way `end`, and a mark in the place of the others."""
    ways = (*busbar.children[:end], _mark_at_end(busbar, busbar, end))
    return _replaced(tree, busbar.key, replace(busbar, children=ways))


def continued(busbar: Cell, start: int, end: int) -> Cell:
    """Return the part of a busbar with its ways from `start` to before `end`, behind a mark; one more where it goes
    on."""
    base, before = _numbered_from(busbar)
    name = designation_of(busbar)
    ways = busbar.children[start:end]
    if end < len(busbar.children):
        ways = (*ways, _mark_at_end(busbar, replace(busbar, status="new"), end))
    part = replace(
        busbar, key=f"{base}{CONTINUED}{before + start}", above=(designation(name), _CONTINUED), below=(), flags=(),
        earth=None, alike=(), children=ways,
    )  # fmt: skip
    return mark_from(f"{base}/from-{before + start}", part, phrase("{busbar} continued", busbar=name))


def _mark_at_end(busbar: Cell, like: Cell, end: int) -> Cell:
    """Return the mark where a busbar goes on elsewhere, with the way `end`. like: the cell that it is drawn like."""
    base, before = _numbered_from(busbar)
    return mark_to(f"{base}/to-{before + end}", like, phrase("{busbar} goes on", busbar=designation_of(busbar)))


def _numbered_from(busbar: Cell) -> tuple[str, int]:
    """Return the key of a whole busbar, and how many of its ways are before those of this part of it."""
    base, _, number = busbar.key.partition(CONTINUED)
    return base, int(number or 0)


def cut_from(off: Cell) -> str | None:
    """Return the key of the mark that stands where a tree was cut off; None for a whole, or a busbar that goes on."""
    return other_end(off.key) if is_mark(off) and CONTINUED not in off.children[0].key else None


def rejoined(tree: Cell, off: Cell) -> Cell:
    """Return a tree with one that was cut off it where it was."""
    return _replaced(tree, other_end(off.key), off.children[0])


def _replaced(tree: Cell, key: str, new: Cell) -> Cell:
    """Return the tree with the cell of a key replaced, branch and all."""
    parents: dict[str, Cell] = {}
    for old in branch(tree):
        if old.key == key:
            break
        parents.update((child.key, old) for child in old.children)
    else:
        return tree
    while (parent := parents.get(old.key)) is not None:
        new = replace(parent, children=tuple(new if each is old else each for each in parent.children))
        old = parent
    return new
