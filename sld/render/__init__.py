"""Finished sheets written as files. Each format decides nothing: it draws the strokes of a sheet and knows no device.

svg, png, dxf and text take one sheet, pdf takes all, xlsx takes tables.
"""

from __future__ import annotations

from sld.render.dxf import dxf
from sld.render.font import lacking, readable
from sld.render.missing import (
    MissingCairo,
    MissingEzdxf,
    MissingLibrary,
    MissingOpenpyxl,
    MissingScripts,
    UnknownLetters,
)
from sld.render.pdf import pdf
from sld.render.png import png
from sld.render.svg import anchors, inline_svg, letters, style, svg
from sld.render.text import text
from sld.render.xlsx import xlsx

__all__ = [
    "MissingCairo", "MissingEzdxf", "MissingLibrary", "MissingOpenpyxl", "MissingScripts", "UnknownLetters", "anchors",
    "dxf", "inline_svg", "lacking", "letters", "pdf", "png", "readable", "style", "svg", "text", "xlsx",
]  # fmt: skip
