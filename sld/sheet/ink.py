"""Strokes moved, measured, put in the middle, and redrawn for devices that exist already or come later."""

from __future__ import annotations

import math
from collections.abc import Iterable
from functools import reduce

from sld.frozen import replace
from sld.symbols.stroke import Arc, Box, Circle, Curve, Dash, Point, Polyline, Stroke, Text
from sld.symbols.typeface import text_box, text_width_mm

__all__ = [
    "EXISTING_MM",
    "NEW_MM",
    "centred",
    "for_status",
    "ink_box",
    "moved",
    "outline",
    "right_aligned",
    "strokes_box",
    "thinner_mm",
]

WIDTHS_MM = (0.13, 0.18, 0.25, 0.35, 0.5, 0.7, 1.0, 1.4, 2.0)
"""The line widths of ISO 128-2."""

NEW_MM, EXISTING_MM = 0.35, 0.18
"""Widths of the outlines of new devices, and of those that exist or come later: one is twice the other, so that they
are told apart at arm's length and on a copy too. Symbols are described with a width between these."""


def moved(stroke: Stroke, dx_mm: float, dy_mm: float) -> Stroke:
    """Return the stroke moved."""
    if isinstance(stroke, Text):
        return stroke.moved(dx_mm, dy_mm)
    if isinstance(stroke, Polyline):  # nearly all: written out, which takes half the time of `replace`
        points = tuple([(x + dx_mm, y + dy_mm) for x, y in stroke.points])
        return Polyline(points, stroke.width_mm, stroke.dash, stroke.closed, stroke.fill, stroke.role)
    if isinstance(stroke, Circle | Arc):
        return replace(stroke, centre=(stroke.centre[0] + dx_mm, stroke.centre[1] + dy_mm))
    return replace(stroke, points=tuple([(x + dx_mm, y + dy_mm) for x, y in stroke.points]))


def centred(text: str, middle: Point, height_mm: float) -> Text:
    """Return a line of text whose capitals are centred on a point."""
    return Text((middle[0] - text_width_mm(text, height_mm) / 2, middle[1] + height_mm / 2), text, height_mm)


def right_aligned(text: str, end: Point, height_mm: float) -> Text:
    """Return a line of text whose advance ends at a point of its baseline."""
    return Text((end[0] - text_width_mm(text, height_mm), end[1]), text, height_mm)


def _arc_points(centre: Point, rx_mm: float, ry_mm: float, start_deg: float, end_deg: float) -> tuple[Point, ...]:
    """Return points along an elliptical arc, one every 10 degrees or closer."""
    parts = max(2, math.ceil(abs(end_deg - start_deg) / 10))
    angles = (math.radians(start_deg + (end_deg - start_deg) * i / parts) for i in range(parts + 1))
    return tuple((centre[0] + rx_mm * math.cos(a), centre[1] + ry_mm * math.sin(a)) for a in angles)


def _curve_points(points: tuple[Point, ...]) -> tuple[Point, ...]:
    """Return points along a chain of cubic Bezier curves, eight chords to a curve."""
    found = [points[0]]
    for n in range(0, len(points) - 3, 3):
        p = points[n : n + 4]
        for i in range(1, 9):
            t, s = i / 8, 1 - i / 8
            weights = (s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t)
            found.append((sum(w * q[0] for w, q in zip(weights, p, strict=True)),
                          sum(w * q[1] for w, q in zip(weights, p, strict=True))))  # fmt: skip
    return tuple(found)


def outline(stroke: Polyline | Circle | Arc | Curve) -> tuple[Point, ...]:
    """Return the stroke as a chain of chords; a closed one ends where it begins."""
    if isinstance(stroke, Polyline):
        return (*stroke.points, stroke.points[0]) if stroke.closed else stroke.points
    if isinstance(stroke, Circle):
        return _arc_points(stroke.centre, stroke.radius_mm, stroke.radius_mm, 0.0, 360.0)
    if isinstance(stroke, Arc):
        return _arc_points(stroke.centre, stroke.radius_x_mm, stroke.radius_y_mm, stroke.start_deg, stroke.end_deg)
    return _curve_points(stroke.points)


def ink_box(stroke: Stroke) -> Box:
    """Return the box of the stroke's centre line; of a text the room it needs."""
    if isinstance(stroke, Text):
        return text_box(stroke)
    if isinstance(stroke, Circle):  # exactly, where chords would fall short
        (x, y), r = stroke.centre, stroke.radius_mm
        return Box(x - r, y - r, x + r, y + r)
    points = outline(stroke)
    return Box(
        min(p[0] for p in points), min(p[1] for p in points), max(p[0] for p in points), max(p[1] for p in points)
    )


def strokes_box(strokes: Iterable[Stroke]) -> Box:
    """Return the box around all strokes. Raises ValueError when there are none."""
    boxes = [ink_box(s) for s in strokes]
    if not boxes:
        raise ValueError("nothing has no extent")
    return reduce(Box.joined, boxes)


def thinner_mm(width_mm: float) -> float:
    """Return the line width of ISO 128-2 two steps smaller, half as wide."""
    smaller = [w for w in WIDTHS_MM if w < width_mm - 0.01]
    return smaller[-2] if len(smaller) > 1 else WIDTHS_MM[0]


def _is_boundary(stroke: Stroke) -> bool:
    """Return whether a stroke is the boundary between two owners, which is no part of any device."""
    return isinstance(stroke, Polyline) and stroke.dash is Dash.PROPERTY


def _status_mm(width_mm: float, *, thin: bool) -> float:
    """Return the width of a stroke of a device; what is wider than an outline, such as a bar, keeps its proportion."""
    if width_mm > NEW_MM - 0.01:
        return thinner_mm(width_mm) if thin else width_mm
    return EXISTING_MM if thin else NEW_MM


def _as_wide(stroke: Polyline | Circle | Arc | Curve, width_mm: float) -> Stroke:
    """Return the stroke with another width."""
    if width_mm == stroke.width_mm:
        return stroke
    if isinstance(stroke, Polyline):
        return Polyline(stroke.points, width_mm, stroke.dash, stroke.closed, stroke.fill, stroke.role)
    return replace(stroke, width_mm=width_mm)


def for_status(strokes: tuple[Stroke, ...], status: str) -> tuple[Stroke, ...]:
    """Return a device's strokes for its status: new ones wide, existing and future ones thin, future ones dashed too.

    Dashes are measured in line widths: thinner ones are short enough for the shapes of symbols. Round shapes of future
    devices become chains of chords, since only a polyline carries a line pattern.
    """
    known = status in ("existing", "future")
    thin = tuple([
        s if isinstance(s, Text) or _is_boundary(s) else _as_wide(s, _status_mm(s.width_mm, thin=known))
        for s in strokes
    ])  # fmt: skip
    if not known:
        return thin
    if status == "existing":
        return thin
    drawn: list[Stroke] = []
    for s in thin:
        if isinstance(s, Text):
            drawn.append(s)
        elif isinstance(s, Polyline):
            drawn.append(replace(s, dash=Dash.DASHED) if s.dash is Dash.CONTINUOUS else s)
        elif isinstance(s, Circle):
            drawn.append(Polyline(outline(s)[:-1], s.width_mm, Dash.DASHED, closed=True, fill=s.fill))
        else:
            drawn.append(Polyline(outline(s), s.width_mm, Dash.DASHED))
    return tuple(drawn)
