"""SVG -> dots, drawn by CairoSVG at the resolution of a printer and cut to the ink.

No file or address is read for it, and no font: text is refused, since it would look otherwise on another machine.
"""

from __future__ import annotations

import math
import re
from io import BytesIO
from typing import Any, NoReturn

import cairocffi
from cairosvg.parser import Tree
from cairosvg.surface import PNGSurface
from PIL import Image

from sld.picture.dots import on_white
from sld.picture.permitted import refuse_foreign
from sld.picture.picture import BadPicture, Picture

__all__ = ["read_svg"]

MOST_COLUMNS, MOST_ROWS = 1181, 378
"""600 dots per inch on the 50 mm by 16 mm that a title block keeps for a logo."""

MAX_STEPS = 30_000
"""How many elements may be drawn when every reference is followed; a reference counts as all elements of the file."""

MAX_PATH_LENGTH, MAX_CLIP_LENGTH = 300_000, 20_000
"""How many characters of path data may be drawn, and how many may clip, counted each time that they do.

Cairo compares each side of a clip path with each side of those around it.
"""

REFUSED = ("mask", "filter", "marker", "marker-start", "marker-mid", "marker-end", "stroke-dasharray")
"""What CairoSVG draws otherwise than a browser, and dashes, of which a line may have any number."""

WELL_FILLED = 1.1
"""How much larger the ink must fit than it is before it is drawn again."""

Box = tuple[int, int, int, int]
"""Left, top, right and bottom in dots."""

_PLAIN = "save it as plain SVG, or as PNG"
_LENGTH = re.compile(r"\s*(\d+\.?\d*|\.\d+)(px|pt|pc|mm|cm|in|)\s*")


def _refused(url: str, resource_type: str) -> NoReturn:
    raise BadPicture(f"the SVG refers to `{url[:40]}`", "take everything that it shows into the file itself")


def _fitting(width: float, height: float) -> float:
    """Return by what two sides are multiplied to be as large as they may be in dots."""
    return min(MOST_COLUMNS / width, MOST_ROWS / height)


def _page(content: bytes) -> tuple[Tree, float, float]:
    """Return an SVG with its width and height, of which only the proportion counts. Raises BadPicture without them.

    A size that is not given, or is a percentage of a page around it, is made that of the viewBox.
    """
    tree = Tree(bytestring=content, unsafe=False, url_fetcher=_refused)
    given = [_LENGTH.fullmatch(tree.get(key, "")) for key in ("width", "height")]
    sides = [float(length[1]) for length in given if length]
    if len(sides) < 2 or len({length[2] for length in given if length}) > 1:
        sides = [float(number) for number in re.split(r"[\s,]+", tree.get("viewBox", "").strip())[2:4]]
        tree.update(zip(("width", "height"), map(str, sides), strict=False))
    if len(sides) < 2 or not min(sides) > 0 or not max(sides) < math.inf:
        raise BadPicture("the SVG does not say how large it is", "give it a viewBox")
    return tree, sides[0], sides[1]


class _Drawn(PNGSurface):  # type: ignore[misc]
    """A part of the page of an SVG as dots. larger_factor: than fits. left, top: where the part begins, in dots."""

    def __init__(self, content: bytes, larger_factor: float, left: float, top: float) -> None:
        tree, width, height = _page(content)
        scale = _fitting(width, height) * larger_factor
        self.left, self.top = left, top
        self.elements_count, self.steps_count = sum(1 for _ in tree.xml_tree.iter()), 0
        self.path_length = self.clip_length = 0
        super().__init__(tree, None, 96, output_width=width * scale, output_height=height * scale)

    def _create_surface(self, width: float, height: float) -> tuple[Any, float, float]:
        columns, rows = (max(1, round(side)) for side in (width, height))
        surface = cairocffi.ImageSurface(cairocffi.FORMAT_ARGB32, min(columns, MOST_COLUMNS), min(rows, MOST_ROWS))
        surface.set_device_offset(-self.left, -self.top)
        return surface, width, height

    def draw(self, node: Any) -> None:
        """Draw an element and what is in it. Raises BadPicture for what would take too long."""
        self.steps_count += self.elements_count if node.root else 1
        if self.steps_count > MAX_STEPS:
            raise BadPicture("the SVG refers to its own parts too often", _PLAIN)
        for name in REFUSED:
            if node.get(name, "none") not in ("none", ""):
                raise BadPicture(f"the SVG uses `{name}`", "turn it into plain paths")
        length = len(node.get("d", "")) + len(node.get("points", ""))
        self.path_length += length
        if self.path_length > MAX_PATH_LENGTH:
            raise BadPicture("the SVG has too long paths", "simplify it, or save it as PNG")
        self.clip_length += 0 if self.stroke_and_fill else length
        if self.clip_length > MAX_CLIP_LENGTH:
            raise BadPicture("the SVG has too long clip paths", "cut the shapes themselves")
        super().draw(node)


def _cut(content: bytes, larger_factor: float = 1.0, left: float = 0.0, top: float = 0.0) -> tuple[Image.Image, Box]:
    """Return a part of the page as a picture with transparency, and the box of its ink. Raises BadPicture."""
    out = BytesIO()
    try:
        _Drawn(content, larger_factor, left, top).cairo.write_to_png(out)
    except BadPicture:
        raise
    except Exception as problem:  # CairoSVG passes on whatever a wrong value makes of its arithmetic
        raise BadPicture("the SVG cannot be drawn", _PLAIN) from problem
    picture = Image.open(out, formats=["PNG"]).convert("RGBA")
    ink = picture.getchannel("A").getbbox()
    if ink is None:
        raise BadPicture("the SVG shows nothing", "check what it holds")
    return picture, ink


def read_svg(content: bytes) -> Picture:
    """Return the dots of an SVG, cut to the box that its ink fills, on white. Raises BadPicture.

    Where the ink fills only a part of the page, that part is drawn again as large as it may be.
    """
    refuse_foreign(content)
    picture, ink = _cut(content)
    larger = _fitting(ink[2] - ink[0], ink[3] - ink[1])
    if larger > WELL_FILLED:
        picture, ink = _cut(content, larger, ink[0] * larger, ink[1] * larger)
    return on_white(picture.crop(ink))
