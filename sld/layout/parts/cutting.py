"""Trees of cells cut into several: a mark at each end of each cut, so that the parts can be on sheets of their own.

An edge is cut between a parent and its child: the parent keeps a mark in the child's place, the child gets a mark as
its parent. A busbar is parted between two of its ways: each part of it is drawn with its ways, and a mark joins it to
the next. Marks of a pair are named by what was cut: CHILD/to and CHILD/from, or BUSBAR/to-N and BUSBAR/from-N, where N
ways are before the cut; the part of the busbar behind it is BUSBAR/continued-N.
"""

from __future__ import annotations

from collections.abc import Container, Sequence
from dataclasses import replace

from sld.layout.diagram.branch import rebuilt
from sld.layout.diagram.diagram import Cell, Join
from sld.layout.diagram.fold import names_of
from sld.layout.parts.reference import PLACEHOLDER

__all__ = [
    "CONTINUED", "cut", "designation_of", "goes_on", "is_busbar", "is_mark", "other_end",
    "parted",
]  # fmt: skip

CONTINUED = "/continued-"
_MARKS = ("continued_left", "continued_right", "continued_data")


def is_mark(cell: Cell) -> bool:
    """Return whether a cell stands for what is on another sheet."""
    return cell.symbol in _MARKS


def is_busbar(cell: Cell) -> bool:
    """Return whether a cell is a conductor with ways, not a device with terminals."""
    return cell.join is Join.SPAN and cell.symbol == "busbar"


def designation_of(cell: Cell) -> str:
    """Return the designation of a cell, its key where it has none."""
    names = names_of(cell)[0]
    return names[-1] if names else cell.key


def goes_on(cell: Cell) -> bool:
    """Return whether a cell is the mark behind the last way of a busbar that goes on on another sheet."""
    return is_mark(cell) and "/to-" in cell.key


def other_end(key: str) -> str:
    """Return the key of the mark that a mark of this key refers to."""
    owner, _, end = key.rpartition("/")
    word, dash, number = end.partition("-")
    return f"{owner}/{'from' if word == 'to' else 'to'}{dash}{number}"


def _to(key: str, child: Cell, text: str) -> Cell:
    """Return the mark that stands in the place of a child."""
    return Cell(key, "continued_left", (PLACEHOLDER,), (text,), kind=child.kind, status=child.status)


def _from(key: str, child: Cell, text: str) -> Cell:
    """Return the mark that stands in the place of the parent of a child."""
    return Cell(key, "continued_right", (PLACEHOLDER,), (text,), status=child.status, children=(child,))


def cut(tree: Cell, above: Container[str]) -> tuple[Cell, list[Cell]]:
    """Return the tree cut above the cells of these keys, and the trees cut off, in their order."""
    kept: list[Cell] = []
    off: list[Cell] = []
    waiting: list[tuple[Cell, Cell | None]] = [(tree, None)]
    while waiting:
        cell, parent = waiting.pop()
        if parent is not None and cell.key in above:
            off.append(_from(f"{cell.key}/from", cell, f"from {designation_of(parent)}"))
            cell = _to(f"{cell.key}/to", cell, f"to {designation_of(cell)}")
        kept.append(cell)
        waiting.extend((child, cell) for child in reversed(cell.children))
    return rebuilt(kept), off


def parted(tree: Cell, busbar: Cell, starts: Sequence[int]) -> tuple[Cell, list[Cell]]:
    """Return the tree with a busbar cut before each of these ways, and the further parts with their ways."""
    base, _, number = busbar.key.partition(CONTINUED)
    before = int(number or 0)
    name = designation_of(busbar)
    parts: list[Cell] = []
    ends = [*starts[1:], len(busbar.children)]
    for start, end in zip(starts, ends, strict=True):
        ways = busbar.children[start:end]
        if end < len(busbar.children):
            ways = (*ways, _to(f"{base}/to-{before + end}", replace(busbar, status="new"), f"{name} goes on"))
        part = replace(
            busbar, key=f"{base}{CONTINUED}{before + start}", above=(name, "continued"), below=(), flags=(), earth="",
            alike=(), children=ways,
        )  # fmt: skip
        parts.append(_from(f"{base}/from-{before + start}", part, f"{name} continued"))
    first = (*busbar.children[: starts[0]], _to(f"{base}/to-{before + starts[0]}", busbar, f"{name} goes on"))
    return _replaced(tree, busbar.key, replace(busbar, children=first)), parts


def _replaced(tree: Cell, key: str, new: Cell) -> Cell:
    """Return the tree with the cell of a key replaced, branch and all."""
    cells: list[Cell] = []
    waiting = [tree]
    while waiting:
        cell = waiting.pop()
        cells.append(new if cell.key == key else cell)
        waiting.extend(reversed(cells[-1].children))
    return rebuilt(cells)
