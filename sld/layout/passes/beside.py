"""What stands beside what in a row, and how far apart their lanes must be for it.

Before: rows, lanes, stacks. After: for two lanes the least distance of their axes at which nothing of one lies on, or
passes, what stands at the same height of the other in any row. A text may reach over or under its neighbour where that
has nothing at its height: levels collide, not columns.

Each row is looked at from left to right in steps of height; at each step only neighbours need a distance.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import lru_cache
from math import ceil, floor

from sld.frozen import dataclass
from sld.layout.passes.lanes import Lanes
from sld.layout.passes.rows import Rows
from sld.layout.passes.stack import Stack
from sld.symbols.stroke import Box

__all__ = ["apart_of"]

_APART_MM = 1.2
"""Least distance of two things at the same height."""

_HIGHEST, _LOWEST = -60, 90
"""Steps of height of 1 mm that a row is looked at in; further out all counts as the outermost."""

_EVERYWHERE_MM = 1000.0


@dataclass(frozen=True, eq=False, slots=True)
class _Profile:
    """What boxes take, one of the same boxes; two are compared as objects.

    steps_mm: step of height, and how far to the left and to the right something reaches there, from the origin.
    """

    steps_mm: tuple[tuple[int, float, float], ...]


_Row = tuple[tuple[int, _Profile], ...]
"""What stands in each lane of a row, from the left."""


def apart_of(
    rows: Rows, lanes: Lanes, stacks: Sequence[Stack], offsets: Sequence[float]
) -> dict[tuple[int, int], float]:
    """Return the least distance of the axes of two lanes, by (left lane, right lane). offsets: of origins from axes."""
    found: dict[tuple[int, int], float] = {}
    alike = {tuple([(lane, _profile(tuple(boxes))) for lane, boxes in row]): None
             for row in _rows(rows, lanes, stacks, offsets)}  # fmt: skip
    for row in alike:
        for lanes_apart, least in _demanded(row):
            found[lanes_apart] = max(least, found.get(lanes_apart, 0.0))
    return found


def _rows(
    rows: Rows, lanes: Lanes, stacks: Sequence[Stack], offsets: Sequence[float]
) -> Iterator[list[tuple[int, list[Box]]]]:
    """Yield for each row the boxes in its lanes, from the left, about the axis of the lane and of the row."""
    found: list[dict[int, list[Box]]] = [{} for _ in range(rows.count)]
    for place, (lane, stack, dx) in enumerate(zip(lanes.of, stacks, offsets, strict=True)):
        form = stack.form
        for row, boxes in ((stack.upper_row, stack.boxes[0]), (stack.lower_row, stack.boxes[1])):
            found[row].setdefault(lane, []).extend([box.moved(dx, 0.0) for box in boxes] if dx else boxes)
        if stack.is_high:
            high = Box(form.box.left_mm + dx, -_EVERYWHERE_MM, form.box.right_mm + dx, _EVERYWHERE_MM)
            found[rows.axis[place]].setdefault(lane, []).append(high)
        if form.strip is None:
            continue
        head, foot = rows.head[place], rows.foot[place]
        for row in range(head, foot + 1):
            top = form.strip.top_mm if row == head else -_EVERYWHERE_MM
            bottom = form.strip.bottom_mm if row == foot else _EVERYWHERE_MM
            strip = Box(form.strip.left_mm + dx, top, form.strip.right_mm + dx, bottom)
            found[row].setdefault(lane, []).append(strip)
    for by_lane in found:
        yield sorted(by_lane.items(), reverse=True)


@lru_cache(maxsize=512)  # a large plant needs some hundred; more of other specs would only be kept in memory
def _profile(boxes: tuple[Box, ...]) -> _Profile:
    """Return what boxes take at each step of height."""
    lefts: dict[int, float] = {}
    rights: dict[int, float] = {}
    for left, top, right, bottom in boxes:
        first, last = max(floor(top), _HIGHEST), min(ceil(bottom), _LOWEST)
        for step in range(min(first, _LOWEST - 1), max(last, first + 1)):
            if step not in lefts:
                lefts[step], rights[step] = left, right
                continue
            if left < lefts[step]:
                lefts[step] = left
            if right > rights[step]:
                rights[step] = right
    return _Profile(tuple([(step, lefts[step], rights[step]) for step in sorted(lefts)]))


@lru_cache(maxsize=512)
def _demanded(row: _Row) -> tuple[tuple[tuple[int, int], float], ...]:
    """Return the distances that a row demands."""
    found: list[tuple[tuple[int, int], float]] = []
    before: dict[int, tuple[int, float]] = {}
    for lane, profile in row:
        widened: dict[int, float] = {}
        for step, left, right in profile.steps_mm:
            if step in before:
                other, reached = before[step]
                least = reached - left + _APART_MM
                if least > widened.get(other, 0.0):
                    widened[other] = least
            before[step] = (lane, right)
        found += [((other, lane), least) for other, least in widened.items()]
    return tuple(found)
