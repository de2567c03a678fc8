"""Sheets as one PDF of many pages, drawn straight from the strokes: vector, searchable, the font inside.

PDF from cairo carries no structure for screen readers; the SVG is the accessible form.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from io import BytesIO
from typing import Any

from sld.render.colour import fractions, ink
from sld.render.font import cairo_with_font
from sld.sheet.sheet import NOTHING_TOLD, About, Group, Sheet
from sld.symbols.stroke import Arc, Circle, Curve, Dash, Fill, Polyline, Stroke, Text
from sld.symbols.typeface import FAMILY, font_size_mm, printable

__all__ = ["pdf"]

POINT_PER_MM = 72 / 25.4
ROOM_MM = 3.0
"""How far above and left of what a bookmark points to the reader's window begins."""
FIXED_DATE = "2000-01-01T00:00:00Z"
"""Written as the date of creation where none is given, so that the same sheets give the same bytes."""


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


def _draw(context: Any, cairo: Any, stroke: Stroke, scheme: str) -> None:
    """Draw one stroke. scheme: of the sheet's colours."""
    colour = fractions(ink(stroke, scheme))
    context.set_source_rgb(*colour)
    if isinstance(stroke, Text):
        context.set_font_size(font_size_mm(stroke.height_mm))
        context.move_to(*stroke.at)
        context.show_text(printable(stroke.text))
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


def _page(context: Any, cairo: Any, sheet: Sheet) -> None:
    """Draw one sheet in millimetres."""
    context.save()
    context.scale(POINT_PER_MM, POINT_PER_MM)
    context.select_font_face(FAMILY)
    options = cairo.FontOptions()
    options.set_hint_style(cairo.HINT_STYLE_NONE)
    options.set_hint_metrics(cairo.HINT_METRICS_OFF)
    context.set_font_options(options)
    for group in sheet.groups:
        # texts last, as in the SVG
        for stroke in sorted(group.strokes, key=lambda s: isinstance(s, Text)):
            _draw(context, cairo, stroke, sheet.colour)
    context.restore()


def _metadata(surface: Any, cairo: Any, sheets: Sequence[Sheet], about: About) -> None:
    """Set what the file says about itself; what is empty is left out."""
    first = sheets[0]
    date = f"{about.date}T00:00:00Z" if about.date else FIXED_DATE
    facts = {
        cairo.PDF_METADATA_TITLE: printable(first.title.removesuffix(f", sheet 1 of {len(sheets)}")),
        cairo.PDF_METADATA_AUTHOR: printable(about.author),
        cairo.PDF_METADATA_SUBJECT: printable(first.description),
        cairo.PDF_METADATA_KEYWORDS: ", ".join(printable(word) for word in about.keywords),
        cairo.PDF_METADATA_CREATOR: "sld",
        cairo.PDF_METADATA_CREATE_DATE: date,
        cairo.PDF_METADATA_MOD_DATE: date,
    }
    for key, value in facts.items():
        if value:
            surface.set_metadata(key, value)


def _bookmarks(surface: Any, cairo: Any, sheet: Sheet, number: int) -> None:
    """Enter the sheet in the outline, and below it each table or list that begins there, at its upper left corner."""
    parent = surface.add_outline(cairo.PDF_OUTLINE_ROOT, printable(sheet.title), f"page={number} pos=[0 0]", 0)
    seen: set[str] = set()
    for group in sheet.groups:
        corner = _corner(group)
        if group.layer != "table" or not group.title or group.title in seen or corner is None:
            continue
        seen.add(group.title)
        x, y = (max(0.0, mm) * POINT_PER_MM for mm in corner)
        surface.add_outline(parent, printable(group.title), f"page={number} pos=[{x:.1f} {y:.1f}]", 0)


def _corner(group: Group) -> tuple[float, float] | None:
    """Return the upper left corner of the group's texts in millimetres, with a little room; None without texts."""
    texts = [stroke for stroke in group.strokes if isinstance(stroke, Text)]
    if not texts:
        return None
    return min(text.at[0] for text in texts) - ROOM_MM, min(t.at[1] - t.height_mm for t in texts) - ROOM_MM


def pdf(sheets: Sequence[Sheet], about: About = NOTHING_TOLD) -> bytes:
    """Return the sheets as one PDF, a page each, with an outline entry for each and for what stands on it.

    about: author, keywords and date of creation. The same arguments give the same bytes. Raises MissingCairo where the
    cairo library is not installed, ValueError when there are no sheets.
    """
    if not sheets:
        raise ValueError("a PDF needs at least one sheet")
    cairo: Any = cairo_with_font()
    out = BytesIO()
    first = sheets[0]
    surface = cairo.PDFSurface(out, first.width_mm * POINT_PER_MM, first.height_mm * POINT_PER_MM)
    _metadata(surface, cairo, sheets, about)
    context = cairo.Context(surface)
    for number, sheet in enumerate(sheets, 1):
        surface.set_size(sheet.width_mm * POINT_PER_MM, sheet.height_mm * POINT_PER_MM)
        _bookmarks(surface, cairo, sheet, number)
        _page(context, cairo, sheet)
        context.show_page()
    surface.finish()
    return out.getvalue()
