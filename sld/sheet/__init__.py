"""Documents, the drawing with its diagram -> sheets: flat strokes in page millimetres."""

from sld.sheet.assemble import sheets
from sld.sheet.finish import lettered
from sld.sheet.pages import pages

__all__ = ["lettered", "pages", "sheets"]
