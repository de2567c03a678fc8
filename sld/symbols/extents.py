"""The extents of strokes: of the centre lines of what is drawn, and of texts by their measured box.

Ink reaches half a line width further. It is left out because terminals and edges of bodies lie on the grid by their
centre lines: counted, it would cost a module of room on each side of a symbol wherever lengths are rounded to the grid.
"""

from __future__ import annotations

from collections.abc import Iterable
from functools import reduce, singledispatch
from math import cos, radians, sin, sqrt

from sld.symbols.stroke import Arc, Box, Circle, Curve, Point, Polyline, Stroke, Text
from sld.symbols.typeface import text_box

__all__ = ["extents"]


def extents(strokes: Iterable[Stroke]) -> Box:
    """Return the smallest box, in millimetres, around the centre lines of `strokes` and the room that texts need.

    Raises ValueError where there is no stroke.
    """
    boxes = [_box(stroke) for stroke in strokes]
    if not boxes:
        raise ValueError("no stroke, no extents")
    return reduce(Box.joined, boxes)


def _around(points: Iterable[Point]) -> Box:
    xs, ys = zip(*points, strict=True)
    return Box(min(xs), min(ys), max(xs), max(ys))


@singledispatch
def _box(stroke: object) -> Box:
    raise TypeError(f"{type(stroke).__name__} is no stroke")


@_box.register
def _(stroke: Polyline) -> Box:
    return _around(stroke.points)


@_box.register
def _(stroke: Circle) -> Box:
    return _around([stroke.centre]).grown(stroke.radius_mm)


@_box.register
def _(stroke: Arc) -> Box:
    """Take the ends, and the points where the arc crosses an axis of its ellipse."""
    (cx, cy), first = stroke.centre, int(stroke.start_deg // 90)
    turns = [90.0 * k for k in range(first, first + 6) if stroke.start_deg <= 90.0 * k <= stroke.end_deg]
    return _around(
        (cx + stroke.radius_x_mm * cos(radians(angle)), cy + stroke.radius_y_mm * sin(radians(angle)))
        for angle in (stroke.start_deg, stroke.end_deg, *turns)
    )


@_box.register
def _(stroke: Curve) -> Box:
    """Take the ends of each part, and the points where it is level or upright."""
    found: list[Point] = []
    for k in range(0, len(stroke.points) - 1, 3):
        part = stroke.points[k : k + 4]
        stops = {0.0, 1.0}.union(*(_stationary([point[axis] for point in part]) for axis in (0, 1)))
        found += [_on_curve(part, t) for t in stops]
    return _around(found)


def _stationary(p: list[float]) -> set[float]:
    """Return the parameters between 0 and 1 at which one coordinate of a cubic curve turns back."""
    a, b, c = p[3] - 3 * p[2] + 3 * p[1] - p[0], 2 * (p[2] - 2 * p[1] + p[0]), p[1] - p[0]
    if abs(a) < 1e-9:
        roots = [-c / b] if abs(b) > 1e-9 else []
    else:
        under = b * b - 4 * a * c
        roots = [(-b + sign * sqrt(under)) / (2 * a) for sign in (1, -1)] if under >= 0 else []
    return {t for t in roots if 0 < t < 1}


def _on_curve(p: tuple[Point, ...], t: float) -> Point:
    """Return the point of a cubic curve at `t`."""
    u = 1 - t
    weights = (u**3, 3 * u * u * t, 3 * u * t * t, t**3)
    x, y = (sum(weight * point[axis] for weight, point in zip(weights, p, strict=True)) for axis in (0, 1))
    return (x, y)


@_box.register
def _(stroke: Text) -> Box:
    return text_box(stroke)
