"""A sheet as a picture, drawn like the PDF, on white."""

from __future__ import annotations

import math
import zlib
from io import BytesIO
from typing import Any

from sld.render.font import cairo_with_font
from sld.render.page import draw_page
from sld.sheet.sheet import Sheet

__all__ = ["png"]

MM_PER_INCH = 25.4
MOST_DOTS = 32_000
"""Cairo makes no picture longer than 32 767 dots."""

MARK = "Software\0sld (sheet {})"
"""Keyword and text by which a sheet of an earlier drawing is known again."""

_HEADER_BYTES = 8 + 4 + 4 + 13 + 4
"""Signature; length, type, content and code of the header chunk."""


def png(sheet: Sheet, dots_per_inch: float = 150.0) -> bytes:
    """Return the sheet as PNG; one longer than MOST_DOTS is drawn coarser, so that it has so many.

    Raises MissingCairo where the cairo library is not installed.
    """
    cairo: Any = cairo_with_font()
    dots_per_mm = min(dots_per_inch / MM_PER_INCH, MOST_DOTS / max(sheet.width_mm, sheet.height_mm))
    size = [max(1, math.ceil(length_mm * dots_per_mm - 1e-6)) for length_mm in (sheet.width_mm, sheet.height_mm)]
    surface = cairo.ImageSurface(cairo.FORMAT_RGB24, *size)
    context = cairo.Context(surface)
    context.set_source_rgb(1, 1, 1)
    context.paint()
    draw_page(context, cairo, sheet, dots_per_mm)
    out = BytesIO()
    surface.write_to_png(out)
    return _marked(out.getvalue(), sheet.number)


def _marked(content: bytes, number: int) -> bytes:
    """Return a PNG that says, after its header, by what it was made and which sheet it is.

    A textual chunk of ISO/IEC 15948, 11.3.4: length, type, keyword and text, and their cyclic redundancy code.
    """
    chunk = b"tEXt" + MARK.format(number).encode("ascii")
    whole = (len(chunk) - 4).to_bytes(4, "big") + chunk + zlib.crc32(chunk).to_bytes(4, "big")
    return content[:_HEADER_BYTES] + whole + content[_HEADER_BYTES:]
