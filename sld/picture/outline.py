"""Outlines of the shapes of an SVG as lines and cubic curves, moved and turned."""

from __future__ import annotations

import math
import re
from collections.abc import Mapping

from sld.picture.picture import BadPicture, Segment
from sld.symbols.stroke import Point

__all__ = ["moved_and_turned", "outline", "path_of"]

Matrix = tuple[float, float, float, float, float, float]

_NUMBER = r"[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?"


def _numbers(text: str) -> list[float]:
    return [float(each) for each in re.findall(_NUMBER, text)]


def _times(one: Matrix, other: Matrix) -> Matrix:
    """Return the matrix that does the other, then the one (SVG 1.1, 7.4)."""
    a, b, c, d, e, f = one
    g, h, i, j, k, m = other
    return (a * g + c * h, b * g + d * h, a * i + c * j, b * i + d * j, a * k + c * m + e, b * k + d * m + f)


def _step(name: str, n: list[float]) -> Matrix | None:
    """Return the matrix of one transform (SVG 1.1, 7.6), None where its numbers are too few or too many."""
    if name == "matrix" and len(n) == 6:
        return (n[0], n[1], n[2], n[3], n[4], n[5])
    if name == "translate" and len(n) in (1, 2):
        return (1.0, 0.0, 0.0, 1.0, n[0], (*n, 0.0)[1])
    if name == "scale" and len(n) in (1, 2):
        return (n[0], 0.0, 0.0, n[-1], 0.0, 0.0)
    if name == "rotate" and len(n) in (1, 3):
        c, s = math.cos(math.radians(n[0])), math.sin(math.radians(n[0]))
        x, y = n[1:] or (0.0, 0.0)
        return (c, s, -s, c, x - c * x + s * y, y - s * x - c * y)
    if name in ("skewX", "skewY") and len(n) == 1:
        t = math.tan(math.radians(n[0]))
        return (1.0, 0.0, t, 1.0, 0.0, 0.0) if name == "skewX" else (1.0, t, 0.0, 1.0, 0.0, 0.0)
    return None


def moved_and_turned(matrix: Matrix, transform: str) -> Matrix:
    """Return a matrix followed inwards by the steps of a `transform` attribute. Raises BadPicture."""
    for name, numbers in re.findall(r"([A-Za-z]+)\s*\(([^)]*)\)", transform):
        step = _step(name, _numbers(numbers))
        if step is None:
            raise BadPicture(f"the SVG has the transform `{name}({numbers[:30]})`", "turn it into plain paths")
        matrix = _times(matrix, step)
    return matrix


def _value(attributes: Mapping[str, str], key: str) -> float:
    text = attributes.get(key, "0").strip().removesuffix("px")
    if not re.fullmatch(_NUMBER, text):
        raise BadPicture(f"the SVG has a `{key}` of `{text[:20]}`", "write a plain number")
    return float(text)


def _oval(cx: float, cy: float, rx: float, ry: float) -> str:
    return f"M{cx - rx},{cy} A{rx},{ry} 0 1 1 {cx + rx},{cy} A{rx},{ry} 0 1 1 {cx - rx},{cy} Z" if rx and ry else ""


def _rectangle(attributes: Mapping[str, str]) -> str:
    """Return the path of a rectangle, round at the corners where it says so (SVG 1.1, 9.2)."""
    x, y, w, h = (_value(attributes, key) for key in ("x", "y", "width", "height"))
    if w <= 0 or h <= 0:
        return ""
    rx = min(_value(attributes, "rx" if "rx" in attributes else "ry"), w / 2)
    ry = min(_value(attributes, "ry" if "ry" in attributes else "rx"), h / 2)
    if not (rx and ry):
        return f"M{x},{y} H{x + w} V{y + h} H{x} Z"
    return (
        f"M{x + rx},{y} H{x + w - rx} A{rx},{ry} 0 0 1 {x + w},{y + ry} V{y + h - ry} "
        f"A{rx},{ry} 0 0 1 {x + w - rx},{y + h} H{x + rx} A{rx},{ry} 0 0 1 {x},{y + h - ry} V{y + ry} "
        f"A{rx},{ry} 0 0 1 {x + rx},{y} Z"
    )


def path_of(name: str, attributes: Mapping[str, str]) -> str:
    """Return the path data of a path or basic shape, empty for one without extent. Raises BadPicture."""
    if name == "path":
        return attributes.get("d", "").strip()
    if name == "rect":
        return _rectangle(attributes)
    if name == "line":
        x1, y1, x2, y2 = (_value(attributes, key) for key in ("x1", "y1", "x2", "y2"))
        return f"M{x1},{y1} L{x2},{y2}"
    if name in ("circle", "ellipse"):
        cx, cy = _value(attributes, "cx"), _value(attributes, "cy")
        rx, ry = (_value(attributes, "r" if name == "circle" else key) for key in ("rx", "ry"))
        return _oval(cx, cy, rx, ry)
    numbers = _numbers(attributes.get("points", ""))
    if len(numbers) < 4:
        return ""
    pairs = " ".join(f"{x},{y}" for x, y in zip(numbers[::2], numbers[1::2], strict=False))
    return f"M{pairs}" + (" Z" if name == "polygon" else "")


def outline(data: str, matrix: Matrix) -> tuple[Segment, ...]:
    """Return path data as moves, lines and cubic curves. Raises BadPicture where it is not path data."""
    if not data:
        return ()
    from fontTools.pens.recordingPen import RecordingPen
    from fontTools.svgLib.path import parse_path

    pen = RecordingPen()
    try:
        parse_path(data, pen)
    except (ValueError, IndexError, TypeError, AssertionError, ZeroDivisionError, OverflowError):
        raise BadPicture(f"the SVG has the path `{data[:30]}`, which cannot be read", "save it again") from None
    a, b, c, d, e, f = matrix

    def at(point: Point) -> Point:
        x, y = point
        return (a * x + c * y + e, b * x + d * y + f)

    found: list[Segment] = []
    here: Point = (0.0, 0.0)
    for word, points in pen.value:
        if word == "qCurveTo":
            found.append(("C", tuple(map(at, _cubic(here, points)))))
        elif word in ("moveTo", "lineTo", "curveTo"):
            found.append(({"moveTo": "M", "lineTo": "L", "curveTo": "C"}[word], tuple(map(at, points))))
        elif word == "closePath":
            found.append(("Z", ()))
        here = points[-1] if points else here
    if not all(math.isfinite(value) for _, points in found for point in points for value in point):
        raise BadPicture(f"the SVG has the path `{data[:30]}`, which cannot be read", "save it again")
    return tuple(found)


def _cubic(start: Point, points: tuple[Point, ...]) -> tuple[Point, Point, Point]:
    """Return the control points of the cubic curve that is the quadratic one from `start`."""
    (qx, qy), end = points
    return (
        (start[0] + 2 / 3 * (qx - start[0]), start[1] + 2 / 3 * (qy - start[1])),
        (end[0] + 2 / 3 * (qx - end[0]), end[1] + 2 / 3 * (qy - end[1])),
        end,
    )
