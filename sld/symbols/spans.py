"""How far what spans several rows reaches: a bar, or the terminal strip of a body. Lengths in modules, y up."""

from __future__ import annotations

__all__ = ["LEAST_HEIGHT_M", "STRIP_REACH_M", "STRIP_WIDTH_M", "body_of", "feeds_of"]

LEAST_HEIGHT_M = 4.0

STRIP_WIDTH_M = 0.4
STRIP_REACH_M = 0.5
"""So wide a terminal strip is, and so far it reaches beyond its outermost terminals."""


def feeds_of(feeds_m: tuple[float, ...] | None) -> dict[str, float]:
    """Return the feeding terminals by name with their heights (M): `feed` on the axis, or `feed1`, `feed2`, ..."""
    if feeds_m is None:
        return {"feed": 0.0}
    return {f"feed{number}": y for number, y in enumerate(feeds_m, start=1)}


def body_of(feeds_m: tuple[float, ...] | None) -> tuple[float, float]:
    """Return (bottom, top) of a body that covers the axis and all feeds with at least 1 M beyond the outermost.

    feeds_m: heights of the feeding terminals above the axis, whole modules; None for one on the axis. The body
    is at least 4 M tall, its edges lie on whole modules, and a single feed on the axis is in its middle.
    """
    feeds_m = feeds_m or (0.0,)
    bottom, top = min(0.0, *feeds_m) - 1.0, max(0.0, *feeds_m) + 1.0
    lacking = max(0.0, LEAST_HEIGHT_M - (top - bottom))
    above = (lacking + 1.0) // 2
    return (bottom - (lacking - above), top + above)
