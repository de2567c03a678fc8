"""The last touches to composed sheets: colour, the user's logo in its field, and what the files say of themselves."""

from __future__ import annotations

from sld.documents.title import TitleBlock
from sld.frozen import replace
from sld.picture.lettering import Letters
from sld.picture.picture import Picture
from sld.sheet.compose import Composition
from sld.sheet.paper import Paper, frame_box
from sld.sheet.sheet import About, PlacedPicture, Sheet
from sld.sheet.title_block import logo_box
from sld.symbols.stroke import Box
from sld.symbols.typeface import printable
from sld.words import phrase

__all__ = ["finished", "fitted_picture", "lettered"]

CLEAR_MM = 1.5
"""Between a logo and the lines around its field."""


def finished(made: Composition, titles: TitleBlock, colour: str, logo: Picture | None, about: About) -> Composition:
    """Return the sheets with colour, logo and metadata. titles: the title block, which keeps a field for the logo."""
    sheets = tuple(_touched(sheet, titles, colour, logo) for sheet in made.sheets)
    return replace(made, sheets=sheets, about=about)


def _touched(sheet: Sheet, titles: TitleBlock, colour: str, logo: Picture | None) -> Sheet:
    if logo is None or sheet.number > 1:  # further sheets have a strip without that field
        return replace(sheet, colour=colour)
    corner = frame_box(Paper("", sheet.width_mm, sheet.height_mm))
    box = fitted_picture(logo_box(titles, corner).grown(-CLEAR_MM), logo.aspect_factor)
    name = phrase("Logo of {owner}", owner=titles.legal_owner) if titles.legal_owner else phrase("Logo")
    shown = PlacedPicture(box, logo, printable(titles.language.say(name)))
    return replace(sheet, colour=colour, pictures=(shown,))


def lettered(made: Composition, font: Letters | None) -> Composition:
    """Return the sheets with the user's font for letters that the font of the sheets lacks."""
    return replace(made, sheets=tuple(replace(sheet, font=font) for sheet in made.sheets)) if font else made


def fitted_picture(box: Box, aspect_factor: float) -> Box:
    """Return the largest box of a proportion in the middle of a box. aspect_factor: width by height."""
    width = min(box.width_mm, box.height_mm * aspect_factor)
    height = width / aspect_factor
    left, top = (box.left_mm + box.right_mm - width) / 2, (box.top_mm + box.bottom_mm - height) / 2
    return Box(left, top, left + width, top + height)
