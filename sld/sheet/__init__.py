"""Plan, ratings and findings -> sheets: flat strokes in page millimetres."""

from sld.sheet.assemble import sheets

__all__ = ["sheets"]
