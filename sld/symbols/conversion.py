"""From schemdraw segments (modules, y up) to strokes (millimetres, y down)."""

from __future__ import annotations

from functools import singledispatch
from typing import Any

from schemdraw.segments import Segment, SegmentArc, SegmentBezier, SegmentCircle, SegmentPoly, SegmentText

from sld.symbols.element import DASH_STYLE, INK, LINE_MM, MM_PER_PT, PAPER
from sld.symbols.stroke import MODULE_MM, Arc, Circle, Curve, Dash, Fill, Point, Polyline, Stroke, Text
from sld.symbols.typeface import font_size_mm, text_width_mm

__all__ = ["page_point", "stroke_of"]

_DASH = {style: dash for dash, style in DASH_STYLE.items()}
_FILL = {None: Fill.NONE, False: Fill.NONE, True: Fill.INK, INK: Fill.INK, PAPER: Fill.PAPER}


def page_point(point: Any) -> Point:
    """Return the place in millimetres, y down, of a point in modules, y up."""
    return (_tidy(point[0] * MODULE_MM), _tidy(-point[1] * MODULE_MM))


def _tidy(value_mm: float) -> float:
    """Round to a tenth of a micrometre, far below what any device can draw, and lose the sign of zero."""
    return round(value_mm, 4) + 0.0


def _width_mm(segment: Any) -> float:
    return LINE_MM if segment.lw is None else _tidy(segment.lw * MM_PER_PT)


def _dash(segment: Any) -> Dash:
    return Dash.CONTINUOUS if segment.ls is None else _DASH[segment.ls]


@singledispatch
def stroke_of(segment: object) -> Stroke:
    """Return the stroke that a segment draws. Raises TypeError for a kind of segment that no stroke can show."""
    raise TypeError(f"no stroke shows a {type(segment).__name__}")


@stroke_of.register
def _(segment: Segment) -> Stroke:
    return Polyline(tuple(page_point(point) for point in segment.path), _width_mm(segment), _dash(segment))


@stroke_of.register
def _(segment: SegmentPoly) -> Stroke:
    points = tuple(page_point(point) for point in segment.verts)
    return Polyline(points, _width_mm(segment), _dash(segment), segment.closed, _FILL[segment.fill])


@stroke_of.register
def _(segment: SegmentCircle) -> Stroke:
    radius = _tidy(segment.radius * MODULE_MM)
    return Circle(page_point(segment.center), radius, _width_mm(segment), _FILL[segment.fill])


@stroke_of.register
def _(segment: SegmentArc) -> Stroke:
    """Turn the sense: counter-clockwise with y up is clockwise between the negated angles with y down."""
    if segment.angle:
        raise TypeError("no stroke shows a tilted arc")
    sweep = segment.theta2 - segment.theta1
    sweep = 360.0 if sweep and sweep % 360 == 0 else sweep % 360
    start = -(segment.theta1 + sweep) % 360
    rx, ry = (_tidy(size / 2 * MODULE_MM) for size in (segment.width, segment.height))
    return Arc(page_point(segment.center), rx, ry, start, start + sweep, _width_mm(segment))


@stroke_of.register
def _(segment: SegmentBezier) -> Stroke:
    """Raise a quadratic curve to a cubic; keep a cubic."""
    points = [page_point(point) for point in segment.p]
    if len(points) == 3:
        (x0, y0), (x1, y1), (x2, y2) = points
        points = [
            (x0, y0), (_tidy((x0 + 2 * x1) / 3), _tidy((y0 + 2 * y1) / 3)),
            (_tidy((x2 + 2 * x1) / 3), _tidy((y2 + 2 * y1) / 3)), (x2, y2),
        ]  # fmt: skip
    return Curve(tuple(points), _width_mm(segment))


@stroke_of.register
def _(segment: SegmentText) -> Stroke:
    """Start every text at its left end: only start-anchored baseline text is placed alike by all renderers."""
    if segment.rotation or segment.align is None or segment.align[1] != "base":
        raise TypeError("text in a symbol stands level on its baseline")
    x, y = page_point(segment.xy)
    height = round(segment.fontsize * MM_PER_PT / font_size_mm(1.0), 3)
    share = {"left": 0.0, "center": 0.5, "right": 1.0}[segment.align[0]]
    return Text((_tidy(x - share * text_width_mm(segment.text, height)), y), segment.text, height)
