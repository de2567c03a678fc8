"""The drawing of every spec: all sheets as SVG, and sheet 1 as PNG for pages that show pictures only."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from pathlib import Path

from sld import run
from sld.spec.quote import counted

__all__ = ["Drawing", "drawings"]

DOTS_PER_INCH = 110.0
MM_PER_INCH = 25.4

WIDEST = 2000
"""The widest picture in pixels, so that one of a large sheet stays small as a file."""


@dataclass(frozen=True, slots=True)
class Drawing:
    """One spec and the files of its drawing by name.

    title: of the project. counted: what was found, `2 advice, 3 assumption`.
    """

    spec: str
    title: str
    counted: str
    files: Mapping[str, bytes]

    @property
    def picture(self) -> str:
        """Return the name of the PNG."""
        return next(name for name in self.files if name.endswith(".png"))

    @property
    def sheets(self) -> tuple[str, ...]:
        """Return the names of the SVGs, sheet 1 first."""
        return tuple(name for name in self.files if name.endswith(".svg"))


def drawings(specs: Iterable[Path]) -> list[Drawing]:
    """Return the drawing of each spec. Raises Unusable for a spec, MissingCairo where there can be no PNG."""
    found = []
    for path in specs:
        checked = run.check(path)
        sheets = run.draw(checked).sheets
        files = run.files(sheets, path.stem, ("svg",))
        dots_per_inch = min(DOTS_PER_INCH, WIDEST / (sheets[0].width_mm / MM_PER_INCH))
        files |= run.files(sheets[:1], path.stem, ("png",), png_dpi=dots_per_inch)
        found.append(Drawing(path.name, checked.system.project.title, counted(checked.findings), files))
    return found
