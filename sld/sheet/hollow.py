"""The largest room that a diagram leaves within itself, so that a table can stand there."""

from __future__ import annotations

from collections.abc import Iterable
from math import ceil, floor

from sld.symbols.stroke import Box

__all__ = ["hollow"]

_STEP_MM = 2.5
"""The room is looked for in such steps, from the upper left corner."""


def hollow(taken: Iterable[Box], within: Box, least_width_mm: float, least_height_mm: float) -> Box | None:
    """Return the largest empty rectangle in a box, the upper left one of equals, None where none is large enough."""
    columns, rows = int(within.width_mm / _STEP_MM), int(within.height_mm / _STEP_MM)
    free = [[True] * columns for _ in range(rows)]
    for box in taken:
        left, right = _steps(box.left_mm - within.left_mm, box.right_mm - within.left_mm, columns)
        top, bottom = _steps(box.top_mm - within.top_mm, box.bottom_mm - within.top_mm, rows)
        for row in free[top:bottom]:
            row[left:right] = [False] * (right - left)
    best: tuple[int, Box] | None = None
    heights = [0] * columns
    for number, row in enumerate(free, 1):
        heights = [height + 1 if is_free else 0 for height, is_free in zip(heights, row, strict=True)]
        open_: list[tuple[int, int]] = []  # where rectangles begin that may go on, with their heights, which rise
        for at, height in enumerate((*heights, 0)):
            start = at
            while open_ and open_[-1][1] > height:
                start, high = open_.pop()
                large = (at - start) * _STEP_MM >= least_width_mm and high * _STEP_MM >= least_height_mm
                if large and (best is None or (at - start) * high > best[0]):
                    best = (at - start) * high, Box(start, number - high, at, number)
            if height and (not open_ or open_[-1][1] < height):
                open_.append((start, height))
    if best is None:
        return None
    return Box(*(_STEP_MM * edge for edge in best[1])).moved(within.left_mm, within.top_mm)


def _steps(start_mm: float, end_mm: float, count: int) -> tuple[int, int]:
    """Return the first step that is taken, and the one after the last."""
    first = min(max(floor(start_mm / _STEP_MM), 0), count)
    return first, min(max(ceil(end_mm / _STEP_MM), first), count)
