"""Schedule rows that are equal but for designations, made one with ranges: `-TB1…60-FC1`."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from sld.layout.diagram.ranges import joined, pattern

__all__ = ["alike_as_one"]

_BETWEEN = " – "
_LEAST_COUNT = 3
"""Fewer rows are kept as they are, which is easier to read."""

Row = tuple[str, ...]


def alike_as_one(rows: Iterable[Row], numbered: Sequence[int]) -> tuple[Row, ...]:
    """Return the rows in their order, three and more that differ only in the numbers of some columns as one.

    numbered: the columns that hold designations, one or several with a dash between.
    """
    groups: dict[Row, list[Row]] = {}
    for row in rows:
        key = tuple(pattern(cell) if place in numbered else cell for place, cell in enumerate(row))
        groups.setdefault(key, []).append(row)
    found: list[Row] = []
    for group in groups.values():
        found += [_one(group, numbered)] if len(group) >= _LEAST_COUNT else group
    return tuple(found)


def _one(rows: Sequence[Row], numbered: Sequence[int]) -> Row:
    return tuple(
        _joined([row[place] for row in rows]) if place in numbered else cell for place, cell in enumerate(rows[0])
    )


def _joined(cells: Sequence[str]) -> str:
    """Join the designations of several cells, those before and after a dash each for themselves."""
    parts = zip(*(cell.split(_BETWEEN) for cell in cells), strict=True)
    return _BETWEEN.join(joined(part) for part in parts)
