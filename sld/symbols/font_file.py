"""What a TrueType font file says, read from its bytes: characters, advances, glyphs.

Only what drawing needs of it. A library reads every table of a font into objects, which takes as long as laying out a
drawing; here it is a few milliseconds. Source of the tables: OpenType specification, ISO/IEC 14496-22, chapter 5.
"""

from __future__ import annotations

import struct
from array import array
from pathlib import Path

from sld.frozen import dataclass

__all__ = ["FontFile", "read"]

_UNICODE_FULL = (3, 10)
"""Platform and encoding of the character map that has all of Unicode (format 12)."""


@dataclass(frozen=True, slots=True)
class FontFile:
    """A font: its tables as they stand in the file, and of each character the glyph.

    em, capital, ascent, descent: in units of the font. The ascent and descent are those of a line of text.
    """

    tables: dict[str, bytes]
    glyph_of: dict[int, int]
    advance_of: list[int]
    offsets: array[int]
    em: int
    capital: int
    ascent: int
    descent: int

    def glyph(self, number: int) -> bytes:
        """Return the outline of a glyph as it stands in the file, empty where there is no ink."""
        return self.tables["glyf"][self.offsets[number] : self.offsets[number + 1]]

    def box(self, number: int) -> tuple[int, int, int, int]:
        """Return left, bottom, right and top of the ink of a glyph; zeros where there is none."""
        glyph = self.glyph(number)
        if not glyph:
            return (0, 0, 0, 0)
        left, bottom, right, top = struct.unpack_from(">4h", glyph, 2)
        return (left, bottom, right, top)


def read(file: Path) -> FontFile:
    """Return what a TrueType file says. It is our own file: one that lacks a table raises KeyError."""
    data = file.read_bytes()
    tables = {}
    for n in range(struct.unpack_from(">H", data, 4)[0]):
        tag, _, offset, length = struct.unpack_from(">4s3L", data, 12 + 16 * n)
        tables[tag.decode("ascii")] = data[offset : offset + length]
    glyphs = struct.unpack_from(">H", tables["maxp"], 4)[0]
    ascent, descent = struct.unpack_from(">2h", tables["hhea"], 4)
    offsets = _offsets(tables, glyphs)
    glyph_of = _characters(tables["cmap"])
    # the OS/2 table of the font has no height of capitals
    capital = struct.unpack_from(">h", tables["glyf"], offsets[glyph_of[ord("H")]] + 8)[0]
    em = struct.unpack_from(">H", tables["head"], 18)[0]
    return FontFile(tables, glyph_of, _advances(tables, glyphs), offsets, em, capital, ascent, -descent)


def _big_endian(code: str, data: bytes) -> array[int]:
    """Return the numbers of a table; code: of the module `array`."""
    numbers = array(code, data)
    if struct.pack("=H", 1) != struct.pack(">H", 1):
        numbers.byteswap()
    return numbers


def _offsets(tables: dict[str, bytes], glyphs: int) -> array[int]:
    """Return where in `glyf` each glyph begins, and the end of the last one."""
    if struct.unpack_from(">h", tables["head"], 50)[0]:
        return _big_endian("I", tables["loca"][: 4 * (glyphs + 1)])
    return array("I", (2 * half for half in _big_endian("H", tables["loca"][: 2 * (glyphs + 1)])))


def _advances(tables: dict[str, bytes], glyphs: int) -> list[int]:
    """Return the advance of each glyph; the last one that is listed counts for all after it."""
    listed: int = struct.unpack_from(">H", tables["hhea"], 34)[0]
    advances = list(_big_endian("H", tables["hmtx"][: 4 * listed])[::2])
    return advances + advances[-1:] * (glyphs - listed)


def _characters(table: bytes) -> dict[int, int]:
    """Return the glyph of each code point."""
    where = {
        struct.unpack_from(">2H", table, 4 + 8 * n): struct.unpack_from(">L", table, 8 + 8 * n)[0]
        for n in range(struct.unpack_from(">H", table, 2)[0])
    }
    start = where[_UNICODE_FULL]
    found: dict[int, int] = {}
    for n in range(struct.unpack_from(">L", table, start + 12)[0]):
        first, last, glyph = struct.unpack_from(">3L", table, start + 16 + 12 * n)
        found.update(zip(range(first, last + 1), range(glyph, glyph + last - first + 1), strict=True))
    return found
