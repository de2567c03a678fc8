"""Plan, ratings and findings -> sheets: flat strokes in page millimetres."""

from sld.sheet.assemble import sheets
from sld.sheet.finish import finished

__all__ = ["finished", "sheets"]
