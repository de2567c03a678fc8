"""Rows that are equal but for designations, made one with ranges: `-TB1…60-FC1`."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from itertools import groupby

from sld.documents.cell import Cell, Designations, designated
from sld.frozen import dataclass, replace
from sld.layout.diagram.ranges import between, counts_up, joined, pattern, reaches
from sld.model.copies import Copy
from sld.model.device import Device, StringGroup
from sld.model.system import System
from sld.words import Sayable, sequence
from sld.words.names import renamed

__all__ = ["Repeated", "Row", "alike_as_one", "names_of_all", "of_all", "structure"]

Row = tuple[Cell, ...]


@dataclass(frozen=True, slots=True)
class Repeated:
    """The row of a device, and those of its copies, which differ in designations alone.

    copies: whose they are. changing: the places of the cells that are other ones in each of them.
    """

    row: Row
    copies: Sequence[Copy] = ()
    changing: Sequence[int] = ()

    @property
    def rows(self) -> list[Row]:
        """Return each of the rows by itself."""
        return [self.row, *(_of(copy, self.row, self.changing) for copy in self.copies)]


def of_all(system: System, device: Device, row: Row) -> Iterator[Row | Repeated]:
    """Yield the row of a device, and those of its copies where its inverter is the first of equal ones."""
    copies = system.copies.get(device.owner, ())
    if not copies:
        yield row
    elif all(isinstance(cell.text, Designations) or renamed(cell.text, copies[0].named) is cell.text for cell in row):
        yield Repeated(row, copies, [place for place, cell in enumerate(row) if _named(copies[0], cell) is not cell])
    else:
        yield row
        yield from (_of(copy, row, range(len(row))) for copy in copies)


def names_of_all(system: System, devices: Iterable[Device]) -> str:
    """Return the designations of devices as a list, with those of the copies where one is of the first of equal ones.

    Of a group of strings each is listed.
    """
    rows = [
        each
        for device in devices
        for name in (device.designations if isinstance(device, StringGroup) else (device.designation,))
        for each in of_all(system, device, (designated(name),))
    ]
    repeated = [each if isinstance(each, Repeated) else Repeated(each) for each in rows]
    texts = [cell.text for (cell,) in _in_order(repeated)]
    return joined(name for text in texts if isinstance(text, Designations) for name in text.groups[0])


def _of(copy: Copy, row: Row, changing: Iterable[int]) -> Row:
    """Return a row as that of a copy. changing: the places of the cells that are other ones."""
    cells = list(row)
    for place in changing:
        cells[place] = _named(copy, row[place])
    return tuple(cells)


def _named(copy: Copy, cell: Cell) -> Cell:
    if isinstance(cell.text, Designations):
        groups = tuple([tuple(map(copy.named, names)) for names in cell.text.groups])
        return replace(cell, text=replace(cell.text, groups=groups)) if groups != cell.text.groups else cell
    text = renamed(cell.text, copy.named)
    assert not isinstance(text, str | int)
    return cell if text is cell.text else replace(cell, text=text)


def alike_as_one(
    rows: Iterable[Row | Repeated], apart: Callable[[Row], int | None] = lambda _: None
) -> tuple[Row, ...]:
    """Return the rows in their order, those that differ only in the numbers of designations as one.

    apart: which cell of a row may be another one too; the row of all says there, by the designations in its first cell,
    what each of them says.
    """
    groups: dict[tuple[object, ...], dict[object, list[Repeated]]] = {}
    for row in rows:
        each = row if isinstance(row, Repeated) else Repeated(row)
        own = apart(each.row)
        key = tuple(None if place == own else structure(cell) for place, cell in enumerate(each.row))
        same = groups.setdefault(key, {})
        same.setdefault(structure(each.row[own]) if own is not None else None, []).append(each)
    return tuple(_row_of_all(list(parts.values()), apart) for parts in groups.values())


def _row_of_all(parts: Sequence[Sequence[Repeated]], apart: Callable[[Row], int | None]) -> Row:
    """Return one row for some that are alike, in parts that differ in what is told apart."""
    if len(parts) == 1:
        return parts[0][0].row if _is_single(parts[0]) else _one(_in_order(parts[0]))
    by_part = [_in_order(part) for part in parts]
    own = apart(parts[0][0].row)
    cells = list(_one([row for part in by_part for row in part]))
    assert own is not None
    ones = [_one(part) for part in by_part]
    cells[own] = replace(cells[own], text=sequence([_told(one[0], one[own]) for one in ones], "; "))
    return tuple(cells)


def _told(names: Cell, what: Cell) -> Sayable:
    """Return what is told of some devices behind their names, without these where it begins with their owner."""
    if isinstance(what.text, Designations) and isinstance(names.text, Designations):
        (owner,), (each,) = what.text.groups[0], names.text.groups[0]
        if "," not in each and each.startswith(f"{owner}-"):
            return what.text
    return sequence([names.text, what.text], ": ")


def _is_single(group: Sequence[Repeated]) -> bool:
    return len(group) == 1 and not group[0].copies


def _in_order(group: Sequence[Repeated]) -> list[Row]:
    """Return the rows of a group by inverter, as if each stood by itself; those of copies that count up as one."""
    if (ranges := _as_ranges(group)) is not None:
        return ranges
    found: list[Row] = []
    for _, same in groupby(group, lambda each: id(each.copies)):
        for rows in zip(*(each.rows for each in same), strict=True):
            found += rows
    return found


def _as_ranges(group: Sequence[Repeated]) -> list[Row] | None:
    """Return the rows of a group with ranges for the designations of the copies; None where these do not make ranges.

    Joined they come to what all rows come to, as long as no others are there, which might go on from these.
    """
    copies = group[0].copies
    if len(copies) < 2 or any(each.copies is not copies or each.changing != group[0].changing for each in group):
        return None
    if not all(counts_up([first, *(copy.designations[first] for copy in copies)]) for first in copies[0].designations):
        return None
    columns = list(zip(*(each.row for each in group), strict=True))
    for place in group[0].changing:
        texts = [cell.text for cell in columns[place] if isinstance(cell.text, Designations)]
        ranges = _ranges([text.groups for text in texts], copies)
        if ranges is None:
            return None
        columns[place] = tuple(
            replace(cell, text=replace(text, groups=groups))
            for cell, text, groups in zip(columns[place], texts, ranges, strict=True)
        )
    return list(zip(*columns, strict=True))


_Groups = tuple[tuple[str, ...], ...]


def _ranges(rows: Sequence[_Groups], copies: Sequence[Copy]) -> list[_Groups] | None:
    """Return designations, by row and group, with those of copies as ranges.

    None where one is no range, or where in one group some are those of copies and others are not.
    """
    made: list[list[tuple[str, ...]]] = [[] for _ in rows]
    for groups in zip(*rows, strict=True):
        changed: set[bool] = set()
        for names, found in zip(groups, made, strict=True):
            lasts = [copies[-1].named(name) for name in names]
            pairs = list(zip(names, lasts, strict=True))
            if not all(first == last or reaches(first, last, len(copies)) for first, last in pairs):
                return None
            changed.update(first != last for first, last in pairs)
            found.append(tuple(between(first, last) for first, last in pairs))
        if len(changed) > 1:
            return None
    return [tuple(each) for each in made]


def structure(cell: Cell) -> object:
    """Return what must be equal in rows that are made one; of designations, all but their numbers."""
    if isinstance(cell.text, Designations):
        return tuple(tuple(map(pattern, names)) for names in cell.text.groups), cell.text.rest
    return cell.text


def _one(rows: Sequence[Row]) -> Row:
    """Return one row for several of one structure, or for one that has ranges."""
    return tuple(_joined([row[place] for row in rows]) for place in range(len(rows[0])))


def _joined(cells: Sequence[Cell]) -> Cell:
    """Return one cell for several; the designations in each place are joined for themselves."""
    first = cells[0]
    texts = [cell.text for cell in cells if isinstance(cell.text, Designations)]
    if not texts:
        return first
    places = zip(*(text.groups for text in texts), strict=True)
    groups = tuple((joined(name for names in place for name in names),) for place in places)
    short = texts[0].short if all(text.short == texts[0].short for text in texts) else ()
    return replace(first, text=replace(texts[0], groups=groups, short=short))
