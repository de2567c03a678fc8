"""Sheets as one PDF of many pages, drawn straight from the strokes: vector, searchable, the font inside.

PDF from cairo carries no structure for screen readers; the SVG is the accessible form.
"""

from __future__ import annotations

from collections.abc import Sequence
from io import BytesIO
from typing import Any

from sld.render.font import cairo_with_font
from sld.render.page import draw_page
from sld.sheet.sheet import NOTHING_TOLD, About, Chapter, Group, Sheet
from sld.symbols.stroke import Text
from sld.symbols.typeface import printable

__all__ = ["pdf"]

POINT_PER_MM = 72 / 25.4
ROOM_MM = 3.0
"""How far above and left of what a bookmark points to the reader's window begins."""
_OF_TEXT = ("frame", "table")
"""The layers of a page without a diagram."""
FIXED_DATE = "2000-01-01T00:00:00Z"
"""Written as the date of creation where none is given, so that the same sheets give the same bytes."""


def _metadata(surface: Any, cairo: Any, sheets: Sequence[Sheet], about: About) -> None:
    """Set what the file says about itself; what is empty is left out."""
    first = sheets[0]
    date = f"{about.date}T00:00:00Z" if about.date else FIXED_DATE
    facts = {
        cairo.PDF_METADATA_TITLE: printable(about.title or first.title.removesuffix(f", sheet 1 of {len(sheets)}")),
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


class _Outline:
    """The outline of a file while its pages are written: chapters if there are any, sheets, tables where they begin."""

    def __init__(self, surface: Any, cairo: Any, chapters: Sequence[Chapter]) -> None:
        self._surface, self._root = surface, cairo.PDF_OUTLINE_ROOT
        self._chapters = {each.first_page: each.title for each in chapters}
        self._chapter = self._root
        self._seen: set[str] = set()

    def enter(self, sheet: Sheet, page: int) -> None:
        """Enter a sheet, and below it each table or list that begins there, at its upper left corner.

        In a chapter a sheet without a diagram has no entry of its own: its tables stand below the chapter.
        """
        top = f"page={page} pos=[0 0]"
        if page in self._chapters:
            self._chapter, self._seen = self._add(self._root, self._chapters[page], top), set()
        parent, seen, groups = self._chapter, self._seen, [each for each in sheet.groups if each.section]
        if not self._chapters or any(group.layer not in _OF_TEXT for group in sheet.groups):
            parent, seen, groups = self._add(self._chapter, sheet.title, top), set(), [*sheet.groups]
        for group in groups:
            corner = _corner(group)
            if group.layer == "table" and group.title and group.title not in seen and corner is not None:
                seen.add(group.title)
                x, y = (max(0.0, mm) * POINT_PER_MM for mm in corner)
                self._add(parent, group.title, f"page={page} pos=[{x:.1f} {y:.1f}]")

    def _add(self, parent: int, title: str, where: str) -> int:
        return int(self._surface.add_outline(parent, printable(title), where, 0))


def _corner(group: Group) -> tuple[float, float] | None:
    """Return the upper left corner of the group's texts in millimetres, with a little room; None without texts."""
    texts = [stroke for stroke in group.strokes if isinstance(stroke, Text)]
    if not texts:
        return None
    return min(text.at[0] for text in texts) - ROOM_MM, min(t.at[1] - t.height_mm for t in texts) - ROOM_MM


def pdf(sheets: Sequence[Sheet], about: About = NOTHING_TOLD, chapters: Sequence[Chapter] = ()) -> bytes:
    """Return the sheets as one PDF, a page each, with an outline entry for each and for what stands on it.

    about: author, keywords and date of creation. chapters: of the outline, where the sheets are several documents. The
    same arguments give the same bytes. Raises MissingCairo where the cairo library is not installed, ValueError when
    there are no sheets.
    """
    if not sheets:
        raise ValueError("a PDF needs at least one sheet")
    cairo: Any = cairo_with_font()
    out = BytesIO()
    first = sheets[0]
    surface = cairo.PDFSurface(out, first.width_mm * POINT_PER_MM, first.height_mm * POINT_PER_MM)
    _metadata(surface, cairo, sheets, about)
    context = cairo.Context(surface)
    outline = _Outline(surface, cairo, chapters)
    for number, sheet in enumerate(sheets, 1):
        surface.set_size(sheet.width_mm * POINT_PER_MM, sheet.height_mm * POINT_PER_MM)
        outline.enter(sheet, number)
        draw_page(context, cairo, sheet, POINT_PER_MM)
        context.show_page()
    surface.finish()
    return out.getvalue()
