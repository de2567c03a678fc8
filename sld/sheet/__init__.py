"""Document and diagram -> sheets: flat strokes in page millimetres."""

from sld.sheet.assemble import sheets

__all__ = ["sheets"]
