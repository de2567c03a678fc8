"""A listing laid out at one width: a heading that is repeated, and rows that may be dealt out one by one."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from functools import lru_cache, partial
from typing import Protocol

from sld.frozen import dataclass
from sld.sheet.ink import right_aligned
from sld.sheet.lettering import fitted
from sld.symbols.stroke import Polyline, Stroke, Text
from sld.symbols.typeface import ascent_mm, descent_mm
from sld.words import Language, phrase

__all__ = [
    "LINES_PER_PIECE_COUNT",
    "LISTING_PITCH",
    "PADDING_MM",
    "TEXT_MM",
    "Laid",
    "Listing",
    "Piece",
    "lines_height_mm",
    "lines_strokes",
    "pieces_of_lines",
    "rule",
    "title_piece",
]  # fmt: skip

TEXT_MM = 2.5
TITLE_MM = 3.5
PADDING_MM = 0.15
LISTING_PITCH = 1.6
"""Distance of lines in letter heights; at least 22/14 for letters with marks on capitals (ISO 3098, from memory)."""
LINES_PER_PIECE_COUNT = 24
"""A longer row is cut into pieces of so many lines, so that every piece fits on a sheet of any size."""


@dataclass(frozen=True, slots=True)
class Piece:
    """A part of a listing and the height it takes.

    draw: makes its strokes, about their own upper left corner: of many ways to lay a listing out one is drawn.
    """

    height_mm: float
    draw: Callable[[], Iterable[Stroke]] = tuple

    @property
    def strokes(self) -> tuple[Stroke, ...]:
        """Return the strokes, drawn anew each time."""
        return tuple(self.draw())


@dataclass(frozen=True, slots=True)
class Laid:
    """A listing at one width, or what is left of it.

    head: repeated above each part. rows: each of one piece, or of several where it is long. per_row_count: how many of
    the listing's items stand side by side in a row.
    """

    head: Piece
    rows: tuple[tuple[Piece, ...], ...]
    per_row_count: int = 1


class Listing(Protocol):
    """What the flow needs of a listing."""

    @property
    def name(self) -> str:
        """Return the name of the section, the same in every language."""

    @property
    def title(self) -> str:
        """Return the title, printed above each part."""

    @property
    def least_width_mm(self) -> float:
        """Return the width below which the listing is not worth reading on the first sheet."""

    @property
    def least_height_mm(self) -> float:
        """Return a height that all of it, less its title, does not go below at any width."""

    @property
    def is_whole(self) -> bool:
        """Return whether it is never parted, as long as it fits a column of any sheet."""

    def laid(self, width_mm: float, start: int = 0) -> Laid:
        """Return the items from `start` on laid out at a column width."""


def lines_height_mm(count: int, height_mm: float = TEXT_MM) -> float:
    """Return the height of so many lines with the padding above and below."""
    return ascent_mm(height_mm) + (count - 1) * LISTING_PITCH * height_mm + descent_mm(height_mm) + 2 * PADDING_MM


def lines_strokes(
    lines: Sequence[str], left_mm: float, right_mm: float, top_mm: float = 0.0, align: str = "left",
    height_mm: float = TEXT_MM,
) -> list[Stroke]:  # fmt: skip
    """Return lines of text in a column, the first one padded down from `top_mm`; align is left or right."""
    drawn: list[Stroke] = []
    for n, line in enumerate(lines):
        y = top_mm + PADDING_MM + ascent_mm(height_mm) + n * LISTING_PITCH * height_mm
        if line:
            right = align == "right"
            drawn.append(
                right_aligned(line, (right_mm, y), height_mm) if right else Text((left_mm, y), line, height_mm)
            )
    return drawn


def pieces_of_lines(lines: Sequence[str]) -> list[Sequence[str]]:
    """Return the lines of one row cut into runs that fit on any sheet."""
    step = LINES_PER_PIECE_COUNT
    return [lines[n : n + step] for n in range(0, len(lines), step)] or [("",)]


@lru_cache(maxsize=256)
def title_piece(title: str, continued: bool, width_mm: float, language: Language) -> Piece:
    """Return the title with the rule under it; a part after the first says that it is continued."""
    text = language.say(phrase("{title} (continued)", title=title)) if continued else title
    lines = fitted(text, width_mm, TITLE_MM, 2)
    strokes = lines_strokes(lines, 0.0, width_mm, height_mm=TITLE_MM)
    rule_mm = lines_height_mm(len(lines), TITLE_MM) + 0.3
    return Piece(rule_mm + 0.25, partial(tuple, (*strokes, rule(rule_mm, width_mm, 0.5))))


def rule(y_mm: float, width_mm: float, line_mm: float) -> Stroke:
    """Return a horizontal line over the width of the column."""
    return Polyline(((0.0, y_mm), (width_mm, y_mm)), line_mm)
