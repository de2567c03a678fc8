"""A font made for the tests: two signs, each a box of a known width, in a TrueType file."""

from __future__ import annotations

from io import BytesIO

from fontTools.fontBuilder import FontBuilder
from fontTools.pens.ttGlyphPen import TTGlyphPen

__all__ = ["own_font"]

EM = 1000


def own_font(advances: dict[str, int]) -> bytes:
    """Return a font with a box for each letter, as wide as its advance in thousandths of an em."""
    names = {letter: f"box{ord(letter):X}" for letter in advances}
    widths = {".notdef": EM, **{names[letter]: advance for letter, advance in advances.items()}}
    builder = FontBuilder(EM, isTTF=True)
    builder.setupGlyphOrder(list(widths))
    builder.setupCharacterMap({ord(letter): name for letter, name in names.items()})
    glyphs = {}
    for name, width in widths.items():
        pen = TTGlyphPen(None)
        pen.moveTo((50, 0))
        for point in ((50, 700), (width - 50, 700), (width - 50, 0)):
            pen.lineTo(point)
        pen.closePath()
        glyphs[name] = pen.glyph()
    builder.setupGlyf(glyphs)
    builder.setupHorizontalMetrics({name: (width, 50) for name, width in widths.items()})
    builder.setupHorizontalHeader(ascent=880, descent=-120)
    builder.setupNameTable({"familyName": "Boxes", "styleName": "Regular"})
    builder.setupOS2()
    builder.setupPost()
    out = BytesIO()
    builder.save(out)
    return out.getvalue()
