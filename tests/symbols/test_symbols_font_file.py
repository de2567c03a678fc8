"""Our reading of the font file against that of a font library."""

from __future__ import annotations

from fontTools.ttLib import TTFont

from sld.symbols.typeface import FONT_FILE, font


def test_every_character_has_the_advance_and_the_box_that_a_font_library_reads() -> None:
    ours = font()
    with TTFont(FONT_FILE, lazy=True) as theirs:
        names, advances, outlines = theirs.getBestCmap(), theirs["hmtx"], theirs["glyf"]
        assert ours.glyph_of == {code: theirs.getGlyphID(name) for code, name in names.items()}
        assert {code: ours.advance_of[glyph] for code, glyph in ours.glyph_of.items()} == {
            code: advances[name][0] for code, name in names.items()
        }
        for code in (*range(0x20, 0x250), *range(0x370, 0x400), 0x2126, 0x2264, 0x1D54F):
            if code in names:
                glyph = outlines[names[code]]
                box = (glyph.xMin, glyph.yMin, glyph.xMax, glyph.yMax) if glyph.numberOfContours else (0, 0, 0, 0)
                assert ours.box(ours.glyph_of[code]) == box, chr(code)


def test_heights_are_those_of_the_font() -> None:
    ours = font()
    with TTFont(FONT_FILE, lazy=True) as theirs:
        assert (ours.em, ours.capital) == (theirs["head"].unitsPerEm, theirs["glyf"]["H"].yMax)
        assert (ours.ascent, ours.descent) == (theirs["hhea"].ascent, -theirs["hhea"].descent)
