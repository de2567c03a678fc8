"""A sheet as a picture: the SVG rasterised, on white."""

from __future__ import annotations

from sld.render.font import cairo_with_font
from sld.render.svg import svg
from sld.sheet.sheet import Sheet

__all__ = ["png"]

MM_PER_INCH = 25.4


def png(sheet: Sheet, dots_per_inch: float = 150.0) -> bytes:
    """Return the sheet as PNG. Raises MissingCairo where the cairo library is not installed."""
    cairo_with_font()
    import cairosvg  # needs cairo, so only after the check

    pixels = round(sheet.width_mm / MM_PER_INCH * dots_per_inch)
    return bytes(cairosvg.svg2png(bytestring=svg(sheet), output_width=pixels, background_color="white"))
