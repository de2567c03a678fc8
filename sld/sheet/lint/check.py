"""The checks of the geometric lint.

text-text: the ink of two lines of text touches. text-stroke: a line, circle, arc or curve runs through a text or closer
than 0.08 mm. text-area: text lies on an inked area or is hidden by a paper one. symbol-symbol: boxes of two devices'
symbols share area. wire-symbol: a conductor runs right through a symbol. outside: ink beyond the frame. small-text:
letters under 1.8 mm anywhere, or under 2.5 mm where ordinary text stands. glyph: a character that the font lacks.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from sld.frozen import dataclass
from sld.picture.lettering import Letters
from sld.sheet.ink import ink_box, outline, strokes_box
from sld.sheet.lint.grid import Grid, inside_part, segment_meets_box
from sld.sheet.paper import Paper, frame_box
from sld.sheet.sheet import Group, Sheet
from sld.symbols.glyph import glyph_box
from sld.symbols.stroke import Arc, Box, Circle, Curve, Fill, Point, Polyline, Text, box_between
from sld.symbols.typeface import missing

__all__ = ["Defect", "lint"]

CLEARANCE_MM = 0.08
LEAST_HEIGHT_MM = 1.8
ORDINARY_HEIGHT_MM = 2.5
SHORT_COUNT = 6
"""A text of so few characters is a sign in a symbol, a flag or the legend, and may be smaller than a rating."""

WIRE_LAYERS = ("ac", "dc", "earth", "data")


@dataclass(frozen=True, slots=True)
class Defect:
    """One defect: its kind, the groups concerned, where it is (page millimetres), and a sentence."""

    kind: str
    keys: tuple[str, ...]
    at: Point
    message: str


@dataclass(frozen=True, slots=True)
class _Line:
    """A line of text with its ink and its place in the drawing order."""

    text: Text
    box: Box
    group: Group
    order: int


@dataclass(frozen=True, slots=True)
class _Segment:
    start: Point
    end: Point
    half_width_mm: float
    group: Group


@dataclass(frozen=True, slots=True)
class _Area:
    outline: tuple[Point, ...]
    fill: Fill
    group: Group
    order: int


def _middle(box: Box) -> Point:
    return ((box.left_mm + box.right_mm) / 2, (box.top_mm + box.bottom_mm) / 2)


def _lines(sheet: Sheet) -> list[_Line]:
    found = []
    for n, group in enumerate(sheet.groups):
        for k, stroke in enumerate(group.strokes):
            if isinstance(stroke, Text) and (box := glyph_box(stroke)):
                found.append(_Line(stroke, box, group, n * 100_000 + k))
    return found


def _shapes(sheet: Sheet) -> Iterator[tuple[Polyline | Circle | Arc | Curve, Group, int]]:
    for n, group in enumerate(sheet.groups):
        for k, stroke in enumerate(group.strokes):
            if not isinstance(stroke, Text):
                yield stroke, group, n * 100_000 + k


def _segments(sheet: Sheet) -> Grid[_Segment]:
    grid: Grid[_Segment] = Grid()
    for stroke, group, _ in _shapes(sheet):
        points = outline(stroke)
        for start, end in pairwise(points):
            grid.add_segment(start, end, _Segment(start, end, stroke.width_mm / 2, group))
    return grid


def _areas(sheet: Sheet) -> Grid[_Area]:
    grid: Grid[_Area] = Grid()
    for stroke, group, order in _shapes(sheet):
        if isinstance(stroke, Polyline | Circle) and stroke.fill is not Fill.NONE:
            grid.add_box(ink_box(stroke), _Area(outline(stroke), stroke.fill, group, order))
    return grid


def _within(point: Point, corners: tuple[Point, ...]) -> bool:
    """Return whether a point lies inside a closed chain (ray casting)."""
    inside = False
    x, y = point
    for (x1, y1), (x2, y2) in zip(corners, (*corners[1:], corners[0]), strict=True):
        if (y1 > y) != (y2 > y) and x < x1 + (y - y1) / (y2 - y1) * (x2 - x1):
            inside = not inside
    return inside


def _text_on_text(lines: list[_Line]) -> Iterator[Defect]:
    grid: Grid[_Line] = Grid()
    for line in lines:
        for other in grid.near(line.box):
            if line.box.grown(CLEARANCE_MM / 2).meets(other.box.grown(CLEARANCE_MM / 2)):
                message = f'"{other.text.text}" and "{line.text.text}" touch'
                yield Defect("text-text", (other.group.key, line.group.key), _middle(line.box), message)
        grid.add_box(line.box, line)


def _text_on_stroke(lines: list[_Line], segments: Grid[_Segment]) -> Iterator[Defect]:
    for line in lines:
        for segment in segments.near(line.box.grown(1.0)):
            if segment_meets_box(segment.start, segment.end, line.box.grown(CLEARANCE_MM + segment.half_width_mm)):
                message = f'a line of {segment.group.key} runs through "{line.text.text}" of {line.group.key}'
                yield Defect("text-stroke", (line.group.key, segment.group.key), _middle(line.box), message)
                break


def _text_on_area(lines: list[_Line], areas: Grid[_Area]) -> Iterator[Defect]:
    for line in lines:
        for area in areas.near(line.box):
            if area.fill is Fill.PAPER and area.order < line.order:
                continue
            box = line.box
            corners = ((box.left_mm, box.top_mm), (box.right_mm, box.top_mm), (box.right_mm, box.bottom_mm),
                       (box.left_mm, box.bottom_mm), _middle(box))  # fmt: skip
            if any(_within(point, area.outline) for point in corners):
                word = "lies on" if area.fill is Fill.INK else "is hidden by"
                message = f'"{line.text.text}" {word} a filled area of {area.group.key}'
                yield Defect("text-area", (line.group.key, area.group.key), _middle(box), message)


def _outside(sheet: Sheet) -> Iterator[Defect]:
    frame = frame_box(Paper("", sheet.width_mm, sheet.height_mm)).grown(0.001)
    for group in sheet.groups:
        if group.layer == "frame":
            continue
        for stroke in group.strokes:
            box = (glyph_box(stroke) or ink_box(stroke)) if isinstance(stroke, Text) else ink_box(stroke)
            if box.joined(frame) != frame:
                yield Defect("outside", (group.key,), _middle(box), f"{group.key} reaches beyond the frame")
                break


def _least_height_mm(line: _Line) -> float:
    """Return how small this text may be: 1.8 mm for captions, flags and signs in symbols, else 2.5 mm."""
    if line.group.layer in ("frame", "flag") or line.group.key == "title-block":
        return LEAST_HEIGHT_MM
    if line.group.layer in WIRE_LAYERS or len(line.text.text) <= SHORT_COUNT:
        return LEAST_HEIGHT_MM
    return ORDINARY_HEIGHT_MM


def _lettering(lines: list[_Line], font: Letters | None) -> Iterator[Defect]:
    for line in lines:
        least = _least_height_mm(line)
        if line.text.height_mm < least - 1e-6:
            message = f'"{line.text.text}" is {line.text.height_mm:g} mm high, least is {least:g} mm'
            yield Defect("small-text", (line.group.key,), line.text.at, message)
        if unknown := font.lacking(missing(line.text.text)) if font else missing(line.text.text):
            yield Defect("glyph", (line.group.key,), line.text.at, f'the font has no "{unknown}"')


def _parts(shapes: Sequence[Polyline | Circle | Arc | Curve]) -> list[Box]:
    """Return the boxes of a symbol's bodies, and one around all that is open: a terminal strip is no part of a body."""
    closed = [shape for shape in shapes if isinstance(shape, Circle) or (isinstance(shape, Polyline) and shape.closed)]
    others = [shape for shape in shapes if shape not in closed]
    return [strokes_box([shape]) for shape in closed] + ([strokes_box(others)] if others else [])


def _symbols(sheet: Sheet) -> Iterator[Defect]:
    """Yield symbols on symbols and conductors right through symbols."""
    grid: Grid[tuple[str, Box]] = Grid()
    for group in sheet.groups:
        shapes = [stroke for stroke in group.strokes if not isinstance(stroke, Text)]
        if group.layer != "symbol" or not shapes:
            continue
        found: dict[str, Box] = {}
        for box in _parts(shapes):
            for key, other in grid.near(box):
                if key != group.key and box.grown(-CLEARANCE_MM).meets(other.grown(-CLEARANCE_MM)):
                    found.setdefault(key, box)
            grid.add_box(box, (group.key, box))
        for key, box in found.items():
            yield Defect("symbol-symbol", (key, group.key), _middle(box), f"{key} and {group.key} overlap")
    for stroke, group, _ in _shapes(sheet):
        if group.layer in WIRE_LAYERS and isinstance(stroke, Polyline):
            yield from _wire_through_symbol(stroke, group, grid)


def _wire_through_symbol(wire: Polyline, group: Group, grid: Grid[tuple[str, Box]]) -> Iterator[Defect]:
    for start, end in pairwise(wire.points):
        span = box_between(start, end)
        for key, box in grid.near(span):
            part = inside_part(start, end, box.grown(-0.3))
            if part and part[0] > 0.0 and part[1] < 1.0:
                yield Defect("wire-symbol", (group.key, key), _middle(box), f"{group.key} runs through {key}")


def lint(sheet: Sheet) -> list[Defect]:
    """Return the defects of a sheet, kind by kind, in drawing order; time grows with the number of strokes."""
    lines = _lines(sheet)
    return [
        *_text_on_text(lines),
        *_text_on_stroke(lines, _segments(sheet)),
        *_text_on_area(lines, _areas(sheet)),
        *_symbols(sheet),
        *_outside(sheet),
        *_lettering(lines, sheet.font),
    ]  # fmt: skip
