"""A user's own picture, such as a logo, made into plain dots; nothing else of the file goes on. `lettering.py`: a font.

Neither the bytes of the file nor its scripts, links, fonts or metadata reach a drawing: a PNG is decoded, an SVG drawn
once. What cannot be taken is refused with the reason, never left out silently.
"""

from __future__ import annotations

from sld.picture.picture import BadPicture, Picture

__all__ = ["MAX_BYTES", "BadPicture", "Picture", "read"]

MAX_BYTES = 500_000

_PNG = b"\x89PNG\r\n\x1a\n"


def read(content: bytes) -> Picture:
    """Return the picture in the bytes of a PNG or SVG file. Raises BadPicture."""
    from sld.picture.dots import read_png  # the libraries are loaded only where a spec has a picture

    if len(content) > MAX_BYTES:
        raise BadPicture(f"the file is larger than {MAX_BYTES // 1000} kB", "save a smaller one")
    if content.startswith(_PNG):
        return read_png(content)
    if b"<svg" not in content[:4000]:
        raise BadPicture("the file is neither a PNG nor an SVG", "save the picture as PNG or SVG")
    try:
        from sld.picture.drawing import read_svg
    except OSError:  # cairocffi found no library to load
        raise BadPicture(
            "an SVG is drawn with the cairo library, which is not installed",
            "save it as PNG, or install the library; on Debian and Ubuntu: sudo apt-get install -y libcairo2",
        ) from None
    return read_svg(content)
