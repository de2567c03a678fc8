"""Flowing content of a sheet: tables, numbered text, the legend, the flagged findings.

Each block can be laid out at a given column width, as rows that may be dealt out over several columns and sheets.
"""

from __future__ import annotations

from sld.sheet.blocks.flag import FlagBlock, FlagRow, flag_strokes
from sld.sheet.blocks.laid import Block, Laid, Piece
from sld.sheet.blocks.legend import LegendBlock, LegendEntry
from sld.sheet.blocks.table import Column, TableBlock
from sld.sheet.blocks.text import TextBlock

__all__ = ["Block", "Column", "FlagBlock", "FlagRow", "Laid", "LegendBlock", "LegendEntry", "Piece", "TableBlock",
           "TextBlock", "flag_strokes"]  # fmt: skip
