"""The true extent of a line of text: the ink of its glyphs, not the room reserved for it."""

from __future__ import annotations

from functools import lru_cache

from sld.symbols.stroke import Box, Text
from sld.symbols.typeface import font, font_size_mm

__all__ = ["glyph_box"]


@lru_cache(maxsize=1)
def _glyphs() -> tuple[dict[int, tuple[int, int, int, int, int]], int]:
    """Return advance, left, bottom, right and top of each code point's glyph in font units, and the units per em."""
    ours = font()
    return {code: (ours.advance_of[glyph], *ours.box(glyph)) for code, glyph in ours.glyph_of.items()}, ours.em


def _lacking(em: int) -> tuple[int, int, int]:
    """Return bottom, right and top of a character that the font lacks.

    The font's own empty box is 0.88 em high. A browser takes another font, and draws Chinese, Japanese and Korean
    within 0.88 em above and 0.12 em below the baseline (the usual em box of such fonts, common practice, no source).
    """
    return -em * 18 // 100, em, em * 88 // 100


@lru_cache(maxsize=20_000)
def _extent(text: str) -> tuple[float, float, float, float] | None:
    """Return left, bottom, right, top of the ink in em, from the start of the baseline; None where there is none."""
    glyphs, em = _glyphs()
    x, boxes = 0, []
    for char in text:
        advance, left, bottom, right, top = glyphs.get(ord(char), (em, 0, *_lacking(em)))
        if right > left:
            boxes.append((x + left, bottom, x + right, top))
        x += advance
    if not boxes:
        return None
    low, high = min(b[1] for b in boxes), max(b[3] for b in boxes)
    return (boxes[0][0] / em, low / em, max(b[2] for b in boxes) / em, high / em)


def glyph_box(text: Text) -> Box | None:
    """Return the box around the ink of a line of text, None for blanks."""
    extent = _extent(text.text)
    if extent is None:
        return None
    size = font_size_mm(text.height_mm)
    x, y = text.at
    return Box(x + extent[0] * size, y - extent[3] * size, x + extent[2] * size, y - extent[1] * size)
