"""Flowing content of a sheet: tables, numbered text, the legend, the flagged findings.

Each listing can be laid out at a given column width, as rows that may be dealt out over several columns and sheets.
"""

from __future__ import annotations

from sld.sheet.listings.flag import FlagList, FlagRow, flag_strokes, revision_strokes
from sld.sheet.listings.laid import Laid, Listing, Piece
from sld.sheet.listings.legend import Legend, LegendEntry
from sld.sheet.listings.table import Column, Table
from sld.sheet.listings.text import TextList

__all__ = [
           "Column",
           "FlagList",
           "FlagRow",
           "Laid",
           "Legend",
           "LegendEntry",
           "Listing",
           "Piece",
           "Table",
           "TextList",
           "flag_strokes",
           "revision_strokes",
]  # fmt: skip
