"""The font that an SVG carries, read by a font library: the same outlines as in the whole font, and sound tables."""

from __future__ import annotations

import struct
from io import BytesIO

import pytest
from fontTools.pens.recordingPen import DecomposingRecordingPen
from fontTools.ttLib import TTFont, sfnt

from sld.render.font_subset import woff
from sld.symbols.typeface import FONT_FILE, font

PLAIN = " -=Uoc:1234,50V"
MADE_OF_OTHERS = "äÖüßéÅñΆ"  # a letter and its sign are glyphs of their own
BEYOND = "Ω≤φ²µ\U0001d54f"  # the last one has no place in a map of 16 bits


def _outlines(whole: TTFont, characters: str) -> dict[str, object]:
    glyphs, names = whole.getGlyphSet(), whole.getBestCmap()
    found = {}
    for char in characters:
        pen = DecomposingRecordingPen(glyphs)
        glyphs[names[ord(char)]].draw(pen)
        found[char] = (pen.value, glyphs[names[ord(char)]].width)
    return found


@pytest.mark.parametrize("characters", [PLAIN, MADE_OF_OTHERS, BEYOND, PLAIN + MADE_OF_OTHERS + BEYOND])
def test_characters_look_as_in_the_whole_font(characters: str) -> None:
    cut, whole = TTFont(BytesIO(woff(font(), characters))), TTFont(FONT_FILE)
    assert _outlines(cut, characters) == _outlines(whole, characters)
    assert set(cut.getBestCmap()) == set(map(ord, characters))


def test_a_character_that_the_font_lacks_is_left_out() -> None:
    assert woff(font(), "a漢") == woff(font(), "a")


def test_same_characters_in_any_order_give_the_same_bytes() -> None:
    assert woff(font(), "cab") == woff(font(), "abca")


def test_the_sums_of_the_file_are_right() -> None:
    data = woff(font(), PLAIN + MADE_OF_OTHERS)
    reader = sfnt.SFNTReader(BytesIO(data), checkChecksums=2)  # 2: a wrong sum of a table is an error
    for tag in reader.keys():  # noqa: SIM118 - not a mapping
        assert reader[tag]
    plain, again = BytesIO(), BytesIO()
    cut = TTFont(BytesIO(data), recalcTimestamp=False)
    cut.flavor = None
    cut.save(plain, reorderTables=False)
    TTFont(plain, recalcTimestamp=False).save(again, reorderTables=False)
    assert cut["head"].checkSumAdjustment == TTFont(again)["head"].checkSumAdjustment


def test_instructions_for_small_screens_are_gone() -> None:
    cut = TTFont(BytesIO(woff(font(), PLAIN + MADE_OF_OTHERS)))
    assert not {"fpgm", "prep", "cvt "} & set(cut.keys())
    assert not any(
        cut["glyf"][name].program.getBytecode() for name in cut.getGlyphOrder() if hasattr(cut["glyf"][name], "program")
    )


def _tables(characters: str) -> sfnt.SFNTReader:
    """The tables as they are in the file: the library makes its own of some fields when it reads them."""
    return sfnt.SFNTReader(BytesIO(woff(font(), characters)))


def test_as_many_widths_as_glyphs() -> None:
    cut = TTFont(BytesIO(woff(font(), PLAIN + MADE_OF_OTHERS)))
    glyphs = cut["maxp"].numGlyphs
    assert cut["hhea"].numberOfHMetrics == glyphs == len(cut.getGlyphOrder()) > len(PLAIN)
    assert len(_tables(PLAIN + MADE_OF_OTHERS)["hmtx"]) == 4 * glyphs
    assert len(_tables(PLAIN + MADE_OF_OTHERS)["loca"]) == 4 * (glyphs + 1)


def test_maps_are_those_of_windows_that_browsers_take() -> None:
    """ISO/IEC 14496-22 (OpenType) 5.2.1: platform 3, encoding 1 in format 4, encoding 10 in format 12."""
    cut = TTFont(BytesIO(woff(font(), PLAIN + BEYOND)))
    assert [(each.platformID, each.platEncID, each.format) for each in cut["cmap"].tables] == [(3, 1, 4), (3, 10, 12)]


@pytest.mark.parametrize(
    ("characters", "searched"),
    [
        # 14 characters and the last segment: 2 · 15 / 2 bytes, the power of two below 15 is 8: 16, 3, 30 - 16
        ("-=Uoc:1234,50V", (30, 16, 3, 14)),
        ("abc", (8, 8, 2, 0)),
    ],
)
def test_what_is_said_to_those_who_search_the_map(characters: str, searched: tuple[int, ...]) -> None:
    """OpenType, cmap format 4: 2 · segCount, 2 · 2^floor(log2(segCount)), that logarithm, the rest of the first."""
    data = _tables(characters)["cmap"]
    (at,) = struct.unpack_from(">L", data, 4 + 4)
    assert struct.unpack_from(">4H", data, at + 6) == searched


def test_the_font_keeps_its_name() -> None:
    cut, whole = TTFont(BytesIO(woff(font(), PLAIN))), TTFont(FONT_FILE)
    assert {each.nameID for each in cut["name"].names} == {1, 2}
    assert {each.platformID for each in cut["name"].names} == {3}
    for number in (1, 2):
        assert cut["name"].getDebugName(number) == whole["name"].getDebugName(number)
