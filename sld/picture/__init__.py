"""A user's own picture, such as a logo, made into plain dots or plain shapes; nothing else of the file goes on.

Neither the bytes of the file nor its scripts, links, fonts or metadata reach a drawing: a PNG is decoded and an SVG
reduced to filled and stroked paths. What cannot be taken is refused with the reason, never left out silently.
"""

from __future__ import annotations

from sld.picture.dots import read_png
from sld.picture.picture import BadPicture, Dots, Picture, Shape, Shapes
from sld.picture.shapes import read_svg

__all__ = ["MAX_BYTES", "BadPicture", "Dots", "Picture", "Shape", "Shapes", "read"]

MAX_BYTES = 500_000

_PNG = b"\x89PNG\r\n\x1a\n"


def read(content: bytes) -> Picture:
    """Return the picture in the bytes of a PNG or SVG file. Raises BadPicture."""
    if len(content) > MAX_BYTES:
        raise BadPicture(f"the file is larger than {MAX_BYTES // 1000} kB", "save a smaller one")
    if content.startswith(_PNG):
        return read_png(content)
    if b"<svg" in content[:4000]:
        return read_svg(content)
    raise BadPicture("the file is neither a PNG nor an SVG", "save the picture as PNG or SVG")
