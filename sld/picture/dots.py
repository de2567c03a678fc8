"""PNG -> dots, decoded by Pillow."""

from __future__ import annotations

import struct
import warnings
import zlib
from io import BytesIO

from PIL import Image

from sld.picture.picture import BadPicture, Picture

__all__ = ["MAX_DOTS", "on_white", "read_png"]

MAX_DOTS = 500_000
"""About 25 dots to a millimetre of the box on the sheet, as a printer has; more would only make files heavy."""

MAX_SIDE_DOTS = 10_000
"""The libraries that draw it hold no side above 32,767 dots; what is longer than this is no logo."""

_AGAIN = "open it in a picture program and save it again as PNG"
_DAMAGE = (OSError, SyntaxError, ValueError, EOFError, IndexError, struct.error, zlib.error)
"""What Pillow raises where a file is cut off or not as the format says."""


def _opened(content: bytes) -> Image.Image:
    """Return the file with only its header read. Raises BadPicture for one that is damaged or too large."""
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore", Image.DecompressionBombWarning)  # the limit below is a lower one
            picture = Image.open(BytesIO(content), formats=["PNG"])
    except Image.DecompressionBombError:
        raise BadPicture(f"the PNG has more than {MAX_DOTS} dots", "make it smaller") from None
    except _DAMAGE:
        raise BadPicture("the PNG is damaged", _AGAIN) from None
    columns, rows = picture.size
    if columns * rows > MAX_DOTS:
        raise BadPicture(
            f"the PNG has {columns} × {rows} dots, more than {MAX_DOTS}", "make it smaller, for example 600 × 300 dots"
        )
    if max(columns, rows) > MAX_SIDE_DOTS:
        raise BadPicture(
            f"the PNG has {columns} × {rows} dots, more than {MAX_SIDE_DOTS} on one side", "cut it to the logo"
        )
    return picture


def on_white(picture: Image.Image) -> Picture:
    """Return a picture with what is transparent on white. Raises BadPicture for a grey that cannot be converted."""
    if picture.mode.startswith("I"):  # 16 bits of grey, of which the upper eight are taken
        if "transparency" in picture.info:
            raise BadPicture("the PNG has 16 bits of grey, one of them transparent", _AGAIN)
        picture = picture.point(lambda grey: grey * (1 / 256)).convert("L")
    dots = picture.convert("RGBA")
    dots = Image.alpha_composite(Image.new("RGBA", dots.size, "white"), dots).convert("RGB")
    return Picture(*dots.size, dots.tobytes())


def read_png(content: bytes) -> Picture:
    """Return the dots of a PNG, what is transparent on white. Raises BadPicture."""
    picture = _opened(content)
    try:
        picture.verify()  # the check sums; a picture so checked has to be opened again
        picture = _opened(content)
        picture.load()
    except _DAMAGE:
        raise BadPicture("the PNG is damaged or ends too early", _AGAIN) from None
    return on_white(picture)
