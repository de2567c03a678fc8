"""A sheet drawn on a surface of cairo, stroke by stroke: what PDF and PNG have in common.

Hints of the font are off, so that letters stand where its advances say, at every size and resolution.
"""

from __future__ import annotations

import math
from itertools import groupby
from typing import Any

from sld.render.colour import fractions, ink
from sld.render.font import further_family
from sld.render.missing import MissingScripts
from sld.render.picture import draw_picture
from sld.sheet.sheet import Sheet
from sld.symbols.script import in_order
from sld.symbols.stroke import Arc, Circle, Curve, Dash, Fill, Polyline, Stroke, Text
from sld.symbols.typeface import FAMILY, font_size_mm, missing, printable

__all__ = ["draw_page"]


def _path(context: Any, stroke: Polyline | Circle | Arc | Curve) -> None:
    """Lay the stroke's path."""
    context.new_path()
    if isinstance(stroke, Polyline):
        for point in stroke.points:
            context.line_to(*point)
        if stroke.closed:
            context.close_path()
    elif isinstance(stroke, Circle):
        context.arc(*stroke.centre, stroke.radius_mm, 0, 2 * math.pi)
        context.close_path()
    elif isinstance(stroke, Arc):
        context.save()
        context.translate(*stroke.centre)
        context.scale(stroke.radius_x_mm, stroke.radius_y_mm)
        turn = context.arc if stroke.end_deg >= stroke.start_deg else context.arc_negative
        turn(0, 0, 1, math.radians(stroke.start_deg), math.radians(stroke.end_deg))
        context.restore()
    else:
        context.move_to(*stroke.points[0])
        for n in range(1, len(stroke.points) - 2, 3):
            context.curve_to(*stroke.points[n], *stroke.points[n + 1], *stroke.points[n + 2])


def _ordered(line: str) -> str:
    """Return the letters of a line from left to right, as cairo sets them. Raises MissingScripts."""
    try:
        return in_order(line)
    except ModuleNotFoundError as error:
        raise MissingScripts from error


def _letter(context: Any, line: str, further: str) -> None:
    """Draw a line from the current point on; what the font of the sheets lacks in the family `further`."""
    lacking = missing(line) if further else ""
    for borrowed, letters in groupby(line, lambda letter: letter in lacking):
        if lacking:
            context.select_font_face(further if borrowed else FAMILY)
        context.show_text("".join(letters))
    if lacking:
        context.select_font_face(FAMILY)


def _draw(context: Any, cairo: Any, stroke: Stroke, scheme: str, further: str) -> None:
    """Draw one stroke. scheme: of the sheet's colours. further: the user's font, empty without any."""
    colour = fractions(ink(stroke, scheme))
    context.set_source_rgb(*colour)
    if isinstance(stroke, Text):
        context.set_font_size(font_size_mm(stroke.height_mm))
        context.move_to(*stroke.at)
        _letter(context, _ordered(printable(stroke.text)), further)
        return
    _path(context, stroke)
    if isinstance(stroke, Polyline | Circle) and stroke.fill is not Fill.NONE:
        if stroke.fill is Fill.PAPER:
            context.set_source_rgb(1, 1, 1)
        context.fill_preserve()
        context.set_source_rgb(*colour)
    dash = stroke.dash if isinstance(stroke, Polyline) else Dash.CONTINUOUS
    context.set_line_width(stroke.width_mm)
    context.set_dash([part * stroke.width_mm for part in dash.value])
    # as in the SVG: round caps make the short dots of ISO 128-2 printable
    context.set_line_cap(cairo.LINE_CAP_ROUND if dash is Dash.DOTTED else cairo.LINE_CAP_BUTT)
    context.stroke()


def draw_page(context: Any, cairo: Any, sheet: Sheet, units_per_mm: float) -> None:
    """Draw one sheet with its upper left corner at the origin.

    context: of a cairo surface. cairo: the module. units_per_mm: how many units of the surface a millimetre takes.
    """
    context.save()
    context.scale(units_per_mm, units_per_mm)
    context.select_font_face(FAMILY)
    options = cairo.FontOptions()
    options.set_hint_style(cairo.HINT_STYLE_NONE)
    options.set_hint_metrics(cairo.HINT_METRICS_OFF)
    context.set_font_options(options)
    further = further_family(sheet)
    for group in sheet.groups:
        # texts last, as in the SVG
        for stroke in sorted(group.strokes, key=lambda s: isinstance(s, Text)):
            _draw(context, cairo, stroke, sheet.colour, further)
    for picture in sheet.pictures:
        draw_picture(context, cairo, picture)
    context.restore()
