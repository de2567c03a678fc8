"""A user's picture in SVG, as a PNG of its dots and nothing else, and on a surface of cairo."""

from __future__ import annotations

import base64
import struct
import zlib
from collections.abc import Iterator
from typing import Any
from xml.sax.saxutils import escape, quoteattr

from sld.picture.picture import Picture
from sld.sheet.sheet import PlacedPicture

__all__ = ["draw_picture", "svg_picture"]


def _decimal(value: float) -> str:
    text = f"{value:.4f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def _chunk(name: bytes, data: bytes) -> bytes:
    return struct.pack(">I", len(data)) + name + data + struct.pack(">I", zlib.crc32(name + data))


def _png(picture: Picture) -> bytes:
    """Return the dots as a PNG with nothing else in it (ISO/IEC 15948: 8 bits, true colour, no filter)."""
    step = 3 * picture.columns_count
    rows = b"".join(b"\0" + picture.rgb[n : n + step] for n in range(0, len(picture.rgb), step))
    header = struct.pack(">IIBBBBB", picture.columns_count, picture.rows_count, 8, 2, 0, 0, 0)
    chunks = _chunk(b"IHDR", header) + _chunk(b"IDAT", zlib.compress(rows, 9)) + _chunk(b"IEND", b"")
    return b"\x89PNG\r\n\x1a\n" + chunks


def svg_picture(placed: PlacedPicture, identifier: str) -> Iterator[str]:
    """Yield the lines of a picture as a group of an SVG whose unit is the millimetre."""
    box = placed.box
    yield f'<g id="{identifier}" class="picture" role="img" aria-label={quoteattr(placed.title)}>'
    yield f"<title>{escape(placed.title)}</title>"
    place = f'x="{_decimal(box.left_mm)}" y="{_decimal(box.top_mm)}"'
    size = f'width="{_decimal(box.width_mm)}" height="{_decimal(box.height_mm)}" preserveAspectRatio="none"'
    content = base64.b64encode(_png(placed.picture)).decode("ascii")
    yield f'<image {place} {size} href="data:image/png;base64,{content}"/>'
    yield "</g>"


def draw_picture(context: Any, cairo: Any, placed: PlacedPicture) -> None:
    """Draw a picture. context: of a cairo surface scaled to millimetres. cairo: the module."""
    box, picture = placed.box, placed.picture
    columns, rows = picture.columns_count, picture.rows_count
    data = bytearray(4 * columns * rows)  # cairo wants four bytes a dot in the order of the machine, the highest unused
    for n in range(3):
        data[2 - n :: 4] = picture.rgb[n::3]
    surface = cairo.ImageSurface(cairo.FORMAT_RGB24, columns, rows, data, 4 * columns)
    context.save()
    context.translate(box.left_mm, box.top_mm)
    context.scale(box.width_mm / columns, box.height_mm / rows)
    context.rectangle(0, 0, columns, rows)
    context.set_source_surface(surface, 0, 0)
    context.get_source().set_extend(cairo.EXTEND_PAD)  # no soft edge where the dots end
    context.fill()
    context.restore()
