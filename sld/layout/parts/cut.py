"""Trees of cells cut into several: a mark at each end of each cut, so that the parts can be on sheets of their own.

An edge is cut between a parent and its child: the parent keeps a mark in the child's place, the child gets a mark as
its parent. A busbar is cut between two of its ways: each part of it is drawn with its ways, and a mark joins it to the
next.
"""

from __future__ import annotations

from collections.abc import Container, Sequence
from dataclasses import replace

from sld.layout.diagram.branch import rebuilt
from sld.layout.diagram.diagram import Cell
from sld.layout.diagram.line import Line, Role, designation
from sld.layout.parts.marks import CONTINUED, designation_of, is_mark, mark_from, mark_to, other_end
from sld.words import phrase

__all__ = ["cut_above", "cut_busbar", "cut_from", "rejoined"]


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
    base, _, number = busbar.key.partition(CONTINUED)
    before = int(number or 0)
    name = designation_of(busbar)
    goes_on, continued = phrase("{busbar} goes on", busbar=name), phrase("{busbar} continued", busbar=name)
    above = (designation(name), Line(Role.NAME, phrase("continued")))
    parts: list[Cell] = []
    ends = [*starts[1:], len(busbar.children)]
    for start, end in zip(starts, ends, strict=True):
        ways = busbar.children[start:end]
        if end < len(busbar.children):
            ways = (*ways, mark_to(f"{base}/to-{before + end}", replace(busbar, status="new"), goes_on))
        part = replace(
            busbar, key=f"{base}{CONTINUED}{before + start}", above=above, below=(), flags=(), earth=None,
            alike=(), children=ways,
        )  # fmt: skip
        parts.append(mark_from(f"{base}/from-{before + start}", part, continued))
    first = (*busbar.children[: starts[0]], mark_to(f"{base}/to-{before + starts[0]}", busbar, goes_on))
    return _replaced(tree, busbar.key, replace(busbar, children=first)), parts


def cut_from(off: Cell) -> str | None:
    """Return the key of the mark that stands where a tree was cut off; None for a whole, or a busbar that goes on."""
    return other_end(off.key) if is_mark(off) and CONTINUED not in off.children[0].key else None


def rejoined(tree: Cell, off: Cell) -> Cell:
    """Return a tree with one that was cut off it where it was."""
    return _replaced(tree, other_end(off.key), off.children[0])


def _replaced(tree: Cell, key: str, new: Cell) -> Cell:
    """Return the tree with the cell of a key replaced, branch and all."""
    cells: list[Cell] = []
    waiting = [tree]
    while waiting:
        cell = waiting.pop()
        cells.append(new if cell.key == key else cell)
        waiting.extend(reversed(cells[-1].children))
    return rebuilt(cells)
