"""Sheets as one PDF of many pages, drawn straight from the strokes: vector, searchable, the font inside.

PDF from cairo carries no structure for screen readers; the SVG is the accessible form.
"""

from __future__ import annotations

from collections.abc import Sequence
from io import BytesIO
from typing import Any

from sld.render.font import cairo_with_font
from sld.render.page import draw_page
from sld.sheet.sheet import NOTHING_TOLD, About, Group, Sheet
from sld.symbols.stroke import Text
from sld.symbols.typeface import printable

__all__ = ["pdf"]

POINT_PER_MM = 72 / 25.4
ROOM_MM = 3.0
"""How far above and left of what a bookmark points to the reader's window begins."""
FIXED_DATE = "2000-01-01T00:00:00Z"
"""Written as the date of creation where none is given, so that the same sheets give the same bytes."""


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
        draw_page(context, cairo, sheet, POINT_PER_MM)
        context.show_page()
    surface.finish()
    return out.getvalue()
