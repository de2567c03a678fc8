"""Documents, the drawing with its diagram -> sheets: flat strokes in page millimetres."""

from sld.sheet.assemble import sheets
from sld.sheet.pages import pages

__all__ = ["pages", "sheets"]
