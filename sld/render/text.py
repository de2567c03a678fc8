"""A sheet as text, one stroke a line: for golden files and for comparing two drawings with any diff."""

from __future__ import annotations

from sld.sheet.sheet import Sheet
from sld.symbols.stroke import Arc, Circle, Dash, Fill, Point, Polyline, Stroke, Text

__all__ = ["text"]


def _mm(value: float) -> str:
    """Return a length with two decimals; minus zero is zero."""
    return f"{round(value, 2) + 0.0:.2f}"


def _points(points: tuple[Point, ...]) -> str:
    return " ".join(f"{_mm(x)},{_mm(y)}" for x, y in points)


def _line(stroke: Stroke) -> str:
    if isinstance(stroke, Text):
        return f"text {_points((stroke.at,))} h={_mm(stroke.height_mm)} {stroke.text!r}"
    if isinstance(stroke, Circle):
        more = "" if stroke.fill is Fill.NONE else f" fill={stroke.fill.value}"
        more += f" {stroke.role}" if stroke.role else ""
        return f"circle {_points((stroke.centre,))} r={_mm(stroke.radius_mm)} w={_mm(stroke.width_mm)}{more}"
    if isinstance(stroke, Arc):
        radii = f"r={_mm(stroke.radius_x_mm)},{_mm(stroke.radius_y_mm)}"
        angles = f"{stroke.start_deg:g}..{stroke.end_deg:g}"
        return f"arc {_points((stroke.centre,))} {radii} {angles} w={_mm(stroke.width_mm)}"
    words = ["curve" if not isinstance(stroke, Polyline) else "area" if stroke.closed else "line"]
    words += [_points(stroke.points), f"w={_mm(stroke.width_mm)}"]
    if isinstance(stroke, Polyline):
        if stroke.dash is not Dash.CONTINUOUS:
            words.append(stroke.dash.name.lower())
        if stroke.fill is not Fill.NONE:
            words.append(f"fill={stroke.fill.value}")
        if stroke.role:
            words.append(stroke.role)
    return " ".join(words)


def text(sheet: Sheet) -> str:
    """Return the sheet as text: a line for it and for each group, stroke and picture; lengths in millimetres."""
    lines = [f"sheet {sheet.number} {_mm(sheet.width_mm)} x {_mm(sheet.height_mm)} {sheet.language} {sheet.title!r}"]
    for group in sheet.groups:
        lines.append(f"group {group.layer} {group.key} {group.status}")
        if group.title:
            lines.append(f"  title {group.title!r}")
        lines += [f"  {_line(stroke)}" for stroke in group.strokes]
    for placed in sheet.pictures:
        box = placed.box
        corners = _points(((box.left_mm, box.top_mm), (box.right_mm, box.bottom_mm)))
        lines.append(f"picture {corners} {placed.title!r}")
    return "\n".join(lines) + "\n"
