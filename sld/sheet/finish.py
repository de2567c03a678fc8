"""The last touches to composed sheets: colour, the user's logo in its field, and what the files say of themselves."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from sld.finding import Finding
from sld.model.system import System
from sld.picture.picture import Picture
from sld.sheet.about import about
from sld.sheet.assemble import title_block
from sld.sheet.compose import Composition
from sld.sheet.paper import LEFT_MARGIN_MM, MARGIN_MM
from sld.sheet.sheet import PlacedPicture, Sheet
from sld.sheet.title_block import TitleBlock, logo_box
from sld.symbols.stroke import Box
from sld.symbols.typeface import printable

__all__ = ["finished", "fitted_picture"]

CLEAR_MM = 1.5
"""Between a logo and the lines around its field."""


def finished(made: Composition, system: System, findings: Sequence[Finding], logo: Picture | None) -> Composition:
    """Return the sheets with colour, logo and metadata. findings: of the system, for the title block."""
    titles = title_block(system, findings)
    sheets = tuple(_touched(sheet, titles, system.drawing.colour, logo) for sheet in made.sheets)
    return replace(made, sheets=sheets, about=about(system))


def _touched(sheet: Sheet, titles: TitleBlock, colour: str, logo: Picture | None) -> Sheet:
    if logo is None:
        return replace(sheet, colour=colour)
    corner = Box(LEFT_MARGIN_MM, MARGIN_MM, sheet.width_mm - MARGIN_MM, sheet.height_mm - MARGIN_MM)
    box = fitted_picture(logo_box(titles, corner).grown(-CLEAR_MM), logo.aspect_factor)
    name = printable(f"Logo of {titles.legal_owner}" if titles.legal_owner else "Logo")
    return replace(sheet, colour=colour, pictures=(PlacedPicture(box, logo, name),))


def fitted_picture(box: Box, aspect_factor: float) -> Box:
    """Return the largest box of a proportion in the middle of a box. aspect_factor: width by height."""
    width = min(box.width_mm, box.height_mm * aspect_factor)
    height = width / aspect_factor
    left, top = (box.left_mm + box.right_mm - width) / 2, (box.top_mm + box.bottom_mm - height) / 2
    return Box(left, top, left + width, top + height)
