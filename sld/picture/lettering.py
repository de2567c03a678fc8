"""A user's own font, for letters that the font of the sheets lacks: its file, and which letters it has."""

from __future__ import annotations

from functools import lru_cache
from io import BytesIO

from sld.frozen import dataclass
from sld.picture.picture import BadPicture

__all__ = ["MAX_FONT_BYTES", "Letters", "font_with", "read_font"]

MAX_FONT_BYTES = 40_000_000
"""The largest fonts with all Chinese, Japanese and Korean signs have about half of it."""


@dataclass(frozen=True, slots=True)
class Letters:
    """A font. content: the bytes of its file. codes: the code points of its signs that are at most an em wide.

    An em is what the sheets count for a letter that their own font lacks: so wide are the signs of these scripts.
    """

    content: bytes
    codes: frozenset[int]

    def lacking(self, characters: str) -> str:
        """Return the characters that it has no sign for either."""
        return "".join(char for char in characters if ord(char) not in self.codes)


def read_font(content: bytes) -> Letters:
    """Return the font in the bytes of a TrueType or OpenType file. Raises BadPicture."""
    if len(content) > MAX_FONT_BYTES:
        raise BadPicture(f"the file is larger than {MAX_FONT_BYTES // 1_000_000} MB", "take one with fewer letters")
    try:
        from fontTools.ttLib import TTFont
    except ModuleNotFoundError:
        raise BadPicture(
            "a font is read with the library fonttools, which is not installed",
            "install it: pip install 'fonttools>=4.50'",
        ) from None
    try:
        font = TTFont(BytesIO(content), fontNumber=0, lazy=True)
        advances, em = font["hmtx"].metrics, font["head"].unitsPerEm
        codes = frozenset(code for code, glyph in font.getBestCmap().items() if advances[glyph][0] <= em)
    except Exception as error:  # the library raises whatever a torn table leads to
        raise BadPicture(
            f"the file is no TrueType or OpenType font ({type(error).__name__})", "name a .ttf or .otf file"
        ) from None
    return Letters(content, codes)


@lru_cache(maxsize=8)
def font_with(letters: Letters, characters: str, family: str, flavour: str | None = None) -> bytes:
    """Return the font cut down to some characters, under another name; the same bytes for the same arguments.

    flavour: `woff`, or None for the plain file.
    """
    from fontTools.subset import Options, Subsetter
    from fontTools.ttLib import TTFont

    font = TTFont(BytesIO(letters.content), fontNumber=0, recalcTimestamp=False)
    options = Options(layout_features=[], hinting=False, notdef_outline=True, name_IDs=[1, 2, 4, 6])
    cut = Subsetter(options)
    cut.populate(text=characters)
    cut.subset(font)
    for record in font["name"].names:
        record.string = "Regular" if record.nameID == 2 else family
    font.flavor = flavour
    out = BytesIO()
    font.save(out)
    return out.getvalue()
