"""A font cut down to some characters, as WOFF: what an SVG carries.

The glyphs are copied as they stand in the file, without the instructions for small screens; the same bytes each time.
Sources: OpenType specification (ISO/IEC 14496-22), chapter 5; W3C Recommendation WOFF File Format 1.0.
"""

from __future__ import annotations

import struct
import zlib
from collections.abc import Iterable
from itertools import accumulate

from sld.symbols.font_file import FontFile

__all__ = ["woff"]

_WORDS, _SCALE, _MORE, _PAIR, _INSTRUCTIONS, _MATRIX = 0x1, 0x8, 0x20, 0x40, 0x100, 0x80
"""Flags of a part of a glyph that is made of others."""

_NAMES = (1, 2)
"""Of the names of the font, the family and the style."""


def woff(font: FontFile, characters: str) -> bytes:
    """Return the font with just these characters. Those that it lacks are left out."""
    codes = sorted({ord(char) for char in characters} & font.glyph_of.keys())
    kept = _with_parts(font, (font.glyph_of[code] for code in codes))
    place = {glyph: n for n, glyph in enumerate(kept)}
    outlines = [_outline(font.glyph(glyph), place) for glyph in kept]
    starts = list(accumulate(map(len, outlines), initial=0))
    tables = {
        "OS/2": font.tables["OS/2"],
        "cmap": _cmap([(code, place[font.glyph_of[code]]) for code in codes]),
        "glyf": b"".join(outlines),
        "head": _changed(font.tables["head"], {8: struct.pack(">L", 0), 50: struct.pack(">h", 1)}),
        "hhea": _changed(font.tables["hhea"], {34: struct.pack(">H", len(kept))}),
        "hmtx": b"".join(
            struct.pack(">Hh", font.advance_of[glyph], font.box(glyph)[0]) for glyph in kept
        ),
        "loca": struct.pack(f">{len(starts)}L", *starts),
        "maxp": _changed(font.tables["maxp"], {4: struct.pack(">H", len(kept)), 26: struct.pack(">H", 0)}),
        "name": _name(font.tables["name"]),
        "post": struct.pack(">L", 0x00030000) + font.tables["post"][4:32],
    }  # fmt: skip
    return _wrapped(tables)


def _with_parts(font: FontFile, glyphs: Iterable[int]) -> list[int]:
    """Return glyphs, the empty box that stands for what is lacking, and what they are made of, in order."""
    found, ahead = set[int](), [0, *glyphs]
    while ahead:
        glyph = ahead.pop()
        if glyph not in found:
            found.add(glyph)
            ahead += [part for _, _, part in _parts(font.glyph(glyph))]
    return sorted(found)


def _parts(glyph: bytes) -> list[tuple[int, int, int]]:
    """Return offset, flags and number of each glyph that one is made of; none where it has an outline of its own."""
    if not glyph or struct.unpack_from(">h", glyph)[0] >= 0:
        return []
    found, at, flags = [], 10, _MORE
    while flags & _MORE:
        flags, number = struct.unpack_from(">2H", glyph, at)
        found.append((at, flags, number))
        at += _part_length(flags)
    return found


def _part_length(flags: int) -> int:
    scale = 2 if flags & _SCALE else 4 if flags & _PAIR else 8 if flags & _MATRIX else 0
    return 4 + (4 if flags & _WORDS else 2) + scale


def _outline(glyph: bytes, place: dict[int, int]) -> bytes:
    """Return a glyph without instructions, padded to four bytes; place: the new number of each glyph."""
    if not glyph:
        return b""
    contours = struct.unpack_from(">h", glyph)[0]
    if contours >= 0:
        at = 10 + 2 * contours
        length = struct.unpack_from(">H", glyph, at)[0]
        return _padded(glyph[:at] + b"\0\0" + glyph[at + 2 + length :])
    cut = bytearray(glyph)
    for at, flags, number in _parts(glyph):
        struct.pack_into(">2H", cut, at, flags & ~_INSTRUCTIONS, place[number])
        end = at + _part_length(flags)
    return _padded(bytes(cut[:end]))


def _padded(data: bytes) -> bytes:
    return data + bytes(-len(data) % 4)


def _changed(table: bytes, fields: dict[int, bytes]) -> bytes:
    """Return a table with other values at some offsets."""
    changed = bytearray(table)
    for at, value in fields.items():
        changed[at : at + len(value)] = value
    return bytes(changed)


def _cmap(pairs: list[tuple[int, int]]) -> bytes:
    """Return the character map: all in format 12, and in format 4 for readers that know no other."""
    groups = struct.pack(">2H3L", 12, 0, 16 + 12 * len(pairs), 0, len(pairs))
    groups += b"".join(struct.pack(">3L", code, code, glyph) for code, glyph in pairs)
    short = _segments([(code, glyph) for code, glyph in pairs if code < 0xFFFF])
    head = struct.pack(">2H", 0, 2) + struct.pack(">2HL", 3, 1, 20) + struct.pack(">2HL", 3, 10, 20 + len(short))
    return head + short + groups


def _segments(pairs: list[tuple[int, int]]) -> bytes:
    """Return a map in format 4: a segment for each character, and the one that ends it."""
    codes = [code for code, _ in pairs] + [0xFFFF]
    deltas = [(glyph - code) & 0xFFFF for code, glyph in pairs] + [1]
    count = len(codes)
    power = 1 << (count.bit_length() - 1)
    search = (2 * count, 2 * power, power.bit_length() - 1, 2 * (count - power))
    return struct.pack(
        f">7H{count}HH{count}H{count}H{count}H",
        *(4, 16 + 8 * count, 0), *search, *codes, 0, *codes, *deltas, *([0] * count),
    )  # fmt: skip


def _name(table: bytes) -> bytes:
    """Return the table of names with those that a font must have."""
    count, texts = struct.unpack_from(">2H", table, 2)
    records = [struct.unpack_from(">6H", table, 6 + 12 * n) for n in range(count)]
    kept = [each for each in records if each[3] in _NAMES and each[0] == 3]
    head, body = struct.pack(">3H", 0, len(kept), 6 + 12 * len(kept)), b""
    for *which, length, offset in kept:
        head += struct.pack(">6H", *which, length, len(body))
        body += table[texts + offset : texts + offset + length]
    return head + body


def _sum(data: bytes) -> int:
    padded = _padded(data)
    total: int = sum(struct.unpack(f">{len(padded) // 4}L", padded))
    return total & 0xFFFFFFFF


def _wrapped(tables: dict[str, bytes]) -> bytes:
    """Return tables as a WOFF file, with the sums of the TrueType file that a reader makes of it."""
    count = len(tables)
    power = 1 << (count.bit_length() - 1)
    plain = struct.pack(">L4H", 0x00010000, count, 16 * power, power.bit_length() - 1, 16 * (count - power))
    offset = 12 + 16 * count
    for tag, data in tables.items():
        plain += struct.pack(">4s3L", tag.encode(), _sum(data), offset, len(data))
        offset += len(_padded(data))
    whole = (_sum(plain) + sum(map(_sum, tables.values()))) & 0xFFFFFFFF
    sums = {tag: _sum(data) for tag, data in tables.items()}
    adjusted = _changed(tables["head"], {8: struct.pack(">L", (0xB1B0AFBA - whole) & 0xFFFFFFFF)})
    directory, body, at = b"", b"", 44 + 20 * count
    for tag, data in (tables | {"head": adjusted}).items():
        packed = zlib.compress(data, 9)
        stored = packed if len(packed) < len(data) else data
        directory += struct.pack(">4s4L", tag.encode(), at, len(stored), len(data), sums[tag])
        body += _padded(stored)
        at += len(_padded(stored))
    head = struct.pack(">4s2L2HL2H5L", b"wOFF", 0x00010000, at, count, 0, offset, 1, 0, 0, 0, 0, 0, 0)
    return head + directory + body
