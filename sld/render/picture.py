"""A user's picture in SVG and on a surface of cairo: dots as a PNG of our own making, shapes as paths."""

from __future__ import annotations

import base64
import struct
import zlib
from collections.abc import Iterator
from typing import Any
from xml.sax.saxutils import escape, quoteattr

from sld.picture.picture import Dots, Shape, Shapes
from sld.render.colour import fractions
from sld.sheet.sheet import PlacedPicture

__all__ = ["draw_picture", "svg_picture"]


def _decimal(value: float) -> str:
    text = f"{value:.4f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def _chunk(name: bytes, data: bytes) -> bytes:
    return struct.pack(">I", len(data)) + name + data + struct.pack(">I", zlib.crc32(name + data))


def _png(dots: Dots) -> bytes:
    """Return the dots as a PNG with nothing else in it (ISO/IEC 15948: 8 bits, true colour, no filter)."""
    step = 3 * dots.columns_count
    rows = b"".join(b"\0" + dots.rgb[n : n + step] for n in range(0, len(dots.rgb), step))
    header = struct.pack(">IIBBBBB", dots.columns_count, dots.rows_count, 8, 2, 0, 0, 0)
    chunks = _chunk(b"IHDR", header) + _chunk(b"IDAT", zlib.compress(rows, 9)) + _chunk(b"IEND", b"")
    return b"\x89PNG\r\n\x1a\n" + chunks


def _path(shape: Shape) -> str:
    """Return a shape as a path element."""
    data = "".join(word + " ".join(f"{_decimal(x)} {_decimal(y)}" for x, y in points) for word, points in shape.path)
    ink = f' fill="{shape.fill or "none"}"' + (' fill-rule="evenodd"' if shape.even_odd and shape.fill else "")
    line = f' stroke="{shape.line}" stroke-width="{_decimal(shape.line_width_px)}"' if shape.line else ' stroke="none"'
    return f'<path d="{data}"{ink}{line}/>'


def svg_picture(placed: PlacedPicture, identifier: str) -> Iterator[str]:
    """Yield the lines of a picture as a group of an SVG whose unit is the millimetre."""
    box, picture = placed.box, placed.picture
    yield f'<g id="{identifier}" class="picture" role="img" aria-label={quoteattr(placed.title)}>'
    yield f"<title>{escape(placed.title)}</title>"
    if isinstance(picture, Dots):
        place = f'x="{_decimal(box.left_mm)}" y="{_decimal(box.top_mm)}"'
        size = f'width="{_decimal(box.width_mm)}" height="{_decimal(box.height_mm)}" preserveAspectRatio="none"'
        content = base64.b64encode(_png(picture)).decode("ascii")
        yield f'<image {place} {size} href="data:image/png;base64,{content}"/>'
    else:
        scale = box.width_mm / picture.width_px
        yield f'<g transform="translate({_decimal(box.left_mm)} {_decimal(box.top_mm)}) scale({scale:.6g})">'
        yield from (_path(shape) for shape in picture.shapes)
        yield "</g>"
    yield "</g>"


def draw_picture(context: Any, cairo: Any, placed: PlacedPicture) -> None:
    """Draw a picture. context: of a cairo surface scaled to millimetres. cairo: the module."""
    box, picture = placed.box, placed.picture
    context.save()
    context.translate(box.left_mm, box.top_mm)
    if isinstance(picture, Dots):
        context.scale(box.width_mm / picture.columns_count, box.height_mm / picture.rows_count)
        _dots(context, cairo, picture)
    else:
        context.scale(box.width_mm / picture.width_px, box.height_mm / picture.height_px)
        _shapes(context, cairo, picture)
    context.restore()


def _dots(context: Any, cairo: Any, dots: Dots) -> None:
    """Draw dots, one a unit. Cairo wants four bytes a dot in the order of the machine, the highest unused."""
    count = dots.columns_count * dots.rows_count
    data = bytearray(4 * count)
    for n in range(3):
        data[2 - n :: 4] = dots.rgb[n::3]
    stride = 4 * dots.columns_count
    surface = cairo.ImageSurface(cairo.FORMAT_RGB24, dots.columns_count, dots.rows_count, data, stride)
    context.rectangle(0, 0, dots.columns_count, dots.rows_count)
    context.set_source_surface(surface, 0, 0)
    context.get_source().set_extend(cairo.EXTEND_PAD)  # no soft edge where the dots end
    context.fill()


def _shapes(context: Any, cairo: Any, picture: Shapes) -> None:
    """Draw shapes, the lowest first."""
    context.set_dash([])
    context.set_line_cap(cairo.LINE_CAP_BUTT)
    for shape in picture.shapes:
        context.new_path()
        for word, points in shape.path:
            if word == "Z":
                context.close_path()
            else:
                draw = {"M": context.move_to, "L": context.line_to, "C": context.curve_to}[word]
                draw(*(value for point in points for value in point))
        if shape.fill:
            context.set_source_rgb(*fractions(shape.fill))
            context.set_fill_rule(cairo.FILL_RULE_EVEN_ODD if shape.even_odd else cairo.FILL_RULE_WINDING)
            context.fill_preserve()
        if shape.line:
            context.set_source_rgb(*fractions(shape.line))
            context.set_line_width(shape.line_width_px)
            context.stroke_preserve()
    context.new_path()
