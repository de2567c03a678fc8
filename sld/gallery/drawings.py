"""The drawing of every spec: sheet 1 as SVG, and as PNG for pages that show pictures only. `sld draw` makes the others.

The SVG keeps its font. The part of it that a sheet uses is 7 kB of 30 to 200 kB; letters as paths would be ten times
that, and with a font of the reader's own, texts would be wider than the room that was kept for them.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from io import BytesIO
from pathlib import Path

from PIL import Image

from sld import run
from sld.frozen import dataclass
from sld.spec.quote import counted

__all__ = ["Drawing", "drawings"]

DOTS_PER_INCH = 110.0
MM_PER_INCH = 25.4

WIDEST = 1750
"""The widest picture in pixels, so that one of a large sheet stays small as a file."""

TINTS_COUNT = 16
"""Colours of a picture: paper, ink, the few of the conductors, and the edges between them."""


@dataclass(frozen=True, slots=True)
class Drawing:
    """One spec and the files of its drawing by name.

    title: of the project. counted: what was found, `2 advice, 3 assumption`. sheets_count: all that the drawing has.
    """

    spec: str
    title: str
    counted: str
    sheets_count: int
    files: Mapping[str, bytes]

    @property
    def picture(self) -> str:
        """Return the name of the PNG."""
        return next(name for name in self.files if name.endswith(".png"))

    @property
    def sheet(self) -> str:
        """Return the name of the SVG of sheet 1."""
        return next(name for name in self.files if name.endswith(".svg"))


def _in_few_tints(png: bytes) -> bytes:
    """Return a picture with a palette: a third of the size, and nothing that can be seen is lost."""
    kept = BytesIO()
    with Image.open(BytesIO(png)) as picture:
        tints = picture.convert("RGB").quantize(TINTS_COUNT, dither=Image.Dither.NONE)
    tints.save(kept, "PNG", optimize=True)
    return kept.getvalue()


def drawings(specs: Iterable[Path]) -> list[Drawing]:
    """Return the drawing of each spec. Raises Unusable for a spec, MissingCairo where there can be no PNG."""
    found = []
    for path in specs:
        checked = run.check(path)
        sheets = run.draw(checked).sheets
        first = sheets[:1]
        dots_per_inch = min(DOTS_PER_INCH, WIDEST / (first[0].width_mm / MM_PER_INCH))
        files = run.files(first, path.stem, ("svg",))
        pictures = run.files(first, path.stem, ("png",), png_dpi=dots_per_inch)
        files |= {name: _in_few_tints(content) for name, content in pictures.items()}
        told = counted(checked.findings)
        found.append(Drawing(path.name, checked.project.title, told, len(sheets), files))
    return found
