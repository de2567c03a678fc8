"""Count the crossings.

Before: all wires. After: the number of points in which wires of different nets cross, a measure of how well a diagram
reads (Purchase 1997: crossings hurt most).
"""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Iterable

from sld.layout.plan import Wire

__all__ = ["crossings_count"]


def crossings_count(wires: Iterable[Wire]) -> int:
    """Return how often wires of different nets cross at a right angle."""
    level: dict[float, list[tuple[float, float, str]]] = {}
    upright: list[tuple[float, float, float, str]] = []
    for wire in wires:
        for (x1, y1), (x2, y2) in zip(wire.points, wire.points[1:], strict=False):
            if y1 == y2:
                level.setdefault(y1, []).append((min(x1, x2), max(x1, x2), wire.net))
            else:
                upright.append((x1, min(y1, y2), max(y1, y2), wire.net))
    heights = sorted(level)
    count = 0
    for x, top, bottom, net in upright:
        for y in heights[bisect_right(heights, top) : bisect_left(heights, bottom)]:
            count += sum(left < x < right and other != net for left, right, other in level[y])
    return count
