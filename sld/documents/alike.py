"""Rows that are equal but for designations, made one with ranges: `-TB1…60-FC1`."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace

from sld.documents.cell import Cell, Designations
from sld.layout.diagram.ranges import joined, pattern

__all__ = ["alike_as_one"]

Row = tuple[Cell, ...]


def alike_as_one(rows: Iterable[Row]) -> tuple[Row, ...]:
    """Return the rows in their order, those that differ only in the numbers of designations as one."""
    groups: dict[tuple[object, ...], list[Row]] = {}
    for row in rows:
        groups.setdefault(tuple(map(_structure, row)), []).append(row)
    return tuple(_one(group) if len(group) > 1 else group[0] for group in groups.values())


def _structure(cell: Cell) -> object:
    """Return what must be equal in rows that are made one; of designations, all but their numbers."""
    if isinstance(cell.text, Designations):
        return tuple(tuple(map(pattern, names)) for names in cell.text.groups), cell.text.rest
    return cell.text


def _one(rows: Sequence[Row]) -> Row:
    return tuple(_joined([row[place] for row in rows]) for place in range(len(rows[0])))


def _joined(cells: Sequence[Cell]) -> Cell:
    """Return one cell for several; the designations in each place are joined for themselves."""
    first = cells[0]
    texts = [cell.text for cell in cells if isinstance(cell.text, Designations)]
    if not texts:
        return first
    places = zip(*(text.groups for text in texts), strict=True)
    groups = tuple((joined(name for names in place for name in names),) for place in places)
    return replace(first, text=replace(texts[0], groups=groups))
