"""A grid of buckets: what lies near a box, without looking at everything."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import Generic, TypeVar

from sld.symbols.stroke import Box, Point, box_between

__all__ = ["Grid", "inside_part", "segment_meets_box"]

T = TypeVar("T")

BUCKET_MM = 8.0


class Grid(Generic[T]):
    """Things by the buckets of 8 mm that they lie in."""

    def __init__(self) -> None:
        self._buckets: dict[tuple[int, int], list[T]] = {}

    def add_box(self, box: Box, thing: T) -> None:
        """Put a thing into each bucket its box covers."""
        for key in _keys(box):
            self._buckets.setdefault(key, []).append(thing)

    def add_segment(self, start: Point, end: Point, thing: T) -> None:
        """Put a thing into the buckets along a segment, so that a long slanting line does not fill the sheet."""
        parts = max(1, math.ceil(math.dist(start, end) / (4 * BUCKET_MM)))
        dx, dy = (end[0] - start[0]) / parts, (end[1] - start[1]) / parts
        keys: dict[tuple[int, int], None] = {}
        for n in range(parts):
            x, y = start[0] + dx * n, start[1] + dy * n
            keys.update(dict.fromkeys(_keys(box_between((x, y), (x + dx, y + dy)))))
        for key in keys:
            self._buckets.setdefault(key, []).append(thing)

    def near(self, box: Box) -> list[T]:
        """Return the things in the buckets of a box, each once, in the order they were added first."""
        found: dict[int, T] = {}
        for key in _keys(box):
            for thing in self._buckets.get(key, ()):
                found.setdefault(id(thing), thing)
        return list(found.values())


def _keys(box: Box) -> Iterator[tuple[int, int]]:
    columns = range(math.floor(box.left_mm / BUCKET_MM), math.floor(box.right_mm / BUCKET_MM) + 1)
    rows = range(math.floor(box.top_mm / BUCKET_MM), math.floor(box.bottom_mm / BUCKET_MM) + 1)
    return ((column, row) for column in columns for row in rows)


def inside_part(start: Point, end: Point, box: Box) -> tuple[float, float] | None:
    """Return from where to where, as parts of its length, a segment lies inside a box; None where it misses it."""
    (x, y), dx, dy = start, end[0] - start[0], end[1] - start[1]
    low, high = 0.0, 1.0
    for delta, room_back, room_on in (
        (dx, x - box.left_mm, box.right_mm - x), (dy, y - box.top_mm, box.bottom_mm - y)
    ):  # fmt: skip
        if delta == 0.0:
            if room_back <= 0.0 or room_on <= 0.0:
                return None
            continue
        first, last = sorted((-room_back / delta, room_on / delta))
        low, high = max(low, first), min(high, last)
    return (low, high) if low < high else None


def segment_meets_box(start: Point, end: Point, box: Box) -> bool:
    """Return whether a segment passes through the inside of a box; a segment of no length counts as a point."""
    if start == end:
        x, y = start
        return box.left_mm < x < box.right_mm and box.top_mm < y < box.bottom_mm
    return inside_part(start, end, box) is not None
