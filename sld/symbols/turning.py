"""Strokes turned a quarter, clockwise on the page: what led to the right leads down, what hung below is on the left.

Texts stay level and keep their places to each other; one that would lie on a line goes beside it.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import pairwise

from sld.frozen import replace
from sld.symbols.glyph import glyph_box
from sld.symbols.stroke import Arc, Box, Circle, Curve, Point, Polyline, Stroke, Text, box_between
from sld.symbols.typeface import text_box

__all__ = ["turned", "turned_box", "turned_point"]

_CLEAR_MM = 0.25
"""Distance of a text from the middle of a line beside it, and the step in which it is moved away."""

_FARTHEST_COUNT = 16
"""So many steps at most: a text in a shape that is too narrow for it stays."""


def turned_point(point: Point) -> Point:
    """Return a point turned about the origin."""
    return (-point[1], point[0])


def turned_box(box: Box) -> Box:
    """Return a box turned about the origin."""
    return Box(-box.bottom_mm, box.left_mm, -box.top_mm, box.right_mm)


def turned(strokes: Iterable[Stroke]) -> tuple[Stroke, ...]:
    """Return strokes turned about the origin."""
    strokes = tuple(strokes)
    middle = _middle([stroke for stroke in strokes if isinstance(stroke, Text)])
    found = tuple(_turned(stroke, middle) for stroke in strokes)
    lines = [_around(ends) for each in found if isinstance(each, Polyline) for ends in pairwise(each.points)]
    return tuple(_beside(each, lines) if isinstance(each, Text) else each for each in found)


def _around(ends: tuple[Point, Point]) -> Box:
    return box_between(*ends).grown(_CLEAR_MM)


def _beside(text: Text, lines: Sequence[Box]) -> Text:
    """Return a text at the nearest place, level or upright of its own, where it lies on no line."""
    box = glyph_box(text)
    for step in range(_FARTHEST_COUNT):
        for dx, dy in ((step, 0), (-step, 0), (0, step), (0, -step)):
            there = box and box.moved(dx * _CLEAR_MM, dy * _CLEAR_MM)
            if there and not any(there.meets(line) for line in lines):
                return text.moved(dx * _CLEAR_MM, dy * _CLEAR_MM)
    return text


def _middle(texts: Sequence[Text]) -> Point:
    """Return the middle of texts."""
    boxes = [text_box(text) for text in texts]
    if not boxes:
        return (0.0, 0.0)
    x = sum(box.left_mm + box.right_mm for box in boxes) / 2 / len(boxes)
    y = sum(box.top_mm + box.bottom_mm for box in boxes) / 2 / len(boxes)
    return (x, y)


def _turned(stroke: Stroke, middle: Point) -> Stroke:
    if isinstance(stroke, Text):
        x, y = turned_point(middle)
        return stroke.moved(x - middle[0], y - middle[1])
    if isinstance(stroke, Polyline | Curve):
        return replace(stroke, points=tuple(turned_point(point) for point in stroke.points))
    if isinstance(stroke, Circle):
        return replace(stroke, centre=turned_point(stroke.centre))
    assert isinstance(stroke, Arc), "there are no other strokes"
    return replace(
        stroke, centre=turned_point(stroke.centre), radius_x_mm=stroke.radius_y_mm, radius_y_mm=stroke.radius_x_mm,
        start_deg=stroke.start_deg + 90.0, end_deg=stroke.end_deg + 90.0,
    )  # fmt: skip
