"""Rows that are equal but for designations, made one with ranges: `-TB1…60-FC1`."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import groupby

from sld.documents.cell import Cell, Designations
from sld.layout.diagram.ranges import joined, pattern
from sld.model.copies import Copy
from sld.model.device import Device
from sld.model.system import System
from sld.words.names import renamed

__all__ = ["Repeated", "Row", "alike_as_one", "of_all"]

Row = tuple[Cell, ...]


@dataclass(frozen=True, slots=True)
class Repeated:
    """The rows of a device and of its copies, which differ in designations alone. copies: whose they are."""

    rows: tuple[Row, ...]
    copies: Sequence[Copy] = ()


def of_all(system: System, device: Device, row: Row) -> Iterator[Row | Repeated]:
    """Yield the row of a device, and those of its copies where its inverter is the first of equal ones."""
    copies = system.copies.get(device.owner, ())
    if not copies:
        yield row
    elif all(isinstance(cell.text, Designations) or renamed(cell.text, copies[0].named) is cell.text for cell in row):
        changing = [place for place, cell in enumerate(row) if _named(copies[0], cell) is not cell]
        yield Repeated((row, *(_of(copy, row, changing) for copy in copies)), copies)
    else:
        yield row
        yield from (_of(copy, row, range(len(row))) for copy in copies)


def _of(copy: Copy, row: Row, changing: Iterable[int]) -> Row:
    """Return a row as that of a copy. changing: the places of the cells that are other ones."""
    cells = list(row)
    for place in changing:
        cells[place] = _named(copy, row[place])
    return tuple(cells)


def _named(copy: Copy, cell: Cell) -> Cell:
    if isinstance(cell.text, Designations):
        groups = tuple([tuple(map(copy.named, names)) for names in cell.text.groups])
        return replace(cell, text=Designations(groups, cell.text.rest)) if groups != cell.text.groups else cell
    text = renamed(cell.text, copy.named)
    assert not isinstance(text, str | int)
    return cell if text is cell.text else replace(cell, text=text)


def alike_as_one(rows: Iterable[Row | Repeated]) -> tuple[Row, ...]:
    """Return the rows in their order, those that differ only in the numbers of designations as one."""
    groups: dict[tuple[object, ...], list[Repeated]] = {}
    for row in rows:
        each = row if isinstance(row, Repeated) else Repeated((row,))
        groups.setdefault(tuple(map(_structure, each.rows[0])), []).append(each)
    return tuple(_one(_in_order(group)) for group in groups.values())


def _in_order(group: Sequence[Repeated]) -> list[Row]:
    """Return the rows of a group by inverter, as if each stood by itself."""
    found: list[Row] = []
    for _, same in groupby(group, lambda each: id(each.copies)):
        for rows in zip(*(each.rows for each in same), strict=True):
            found += rows
    return found


def _structure(cell: Cell) -> object:
    """Return what must be equal in rows that are made one; of designations, all but their numbers."""
    if isinstance(cell.text, Designations):
        return tuple(tuple(map(pattern, names)) for names in cell.text.groups), cell.text.rest
    return cell.text


def _one(rows: Sequence[Row]) -> Row:
    if len(rows) == 1:
        return rows[0]
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
