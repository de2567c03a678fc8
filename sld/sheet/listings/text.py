"""Paragraphs, numbered or not."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterable, Iterator, Sequence
from functools import partial
from itertools import accumulate

from sld.frozen import dataclass
from sld.sheet.ink import moved, right_aligned
from sld.sheet.lettering import wrap
from sld.sheet.listings.laid import (
    LISTING_PITCH,
    PADDING_MM,
    TEXT_MM,
    Laid,
    Piece,
    lines_height_mm,
    lines_strokes,
    pieces_of_lines,
)
from sld.symbols.stroke import Box, Stroke
from sld.symbols.typeface import SLACK_MM, text_width_mm

__all__ = ["TextList"]

GAP_MM = 2.0
BETWEEN_MM = 0.6
ABREAST_MM = 8.0
"""Distance of the two columns that short paragraphs may stand in."""
ABREAST_MOST_MM = 150.0
"""Higher ones are not set in two columns: they may have to go on elsewhere."""
_DOT = "•"
ABREAST_FACTOR = 0.95
"""Two columns are worth it where they take at most so much of the height."""


@dataclass(frozen=True, slots=True)
class TextList:
    """Titled paragraphs; numbered ones hang behind their numbers, which are right-aligned.

    sign: strokes that stand before the first paragraph, about any origin, with the box that they take. dense: nothing
    is between them, many short ones; dots stand before those without numbers.
    """

    name: str
    title: str
    paragraphs: tuple[str, ...]
    numbered: bool = False
    least_width_mm: float = 60.0
    is_whole: bool = False
    sign: tuple[tuple[Stroke, ...], Box] | None = None
    dense: bool = False

    @property
    def _is_marked(self) -> bool:
        """Return whether something stands before each paragraph."""
        return self.numbered or self.dense

    def _mark(self, number: int) -> str:
        return f"{number}." if self.numbered else _DOT

    @property
    def least_height_mm(self) -> float:
        """Return the height with each paragraph on one line; marked ones may stand in two columns."""
        rows_count = (len(self.paragraphs) + 1) // 2 if self._is_marked else len(self.paragraphs)
        return (LISTING_PITCH * TEXT_MM if self.dense else lines_height_mm(1) + BETWEEN_MM) * rows_count

    def laid(self, width_mm: float, start: int = 0) -> Laid:
        """Return the paragraphs from `start` on at a column width, many short ones in two columns."""
        rows = self._rows(width_mm, start)
        if start == 0 and self._is_marked and len(rows) > 3:
            apart_mm = ABREAST_MM / 2 if self.dense else ABREAST_MM
            both = _in_two(self._rows((width_mm - apart_mm) / 2), (width_mm + apart_mm) / 2)
            if both.height_mm <= min(ABREAST_MOST_MM, ABREAST_FACTOR * _height_mm(rows)):
                rows = ((both,),)
        return Laid(Piece(BETWEEN_MM), rows)

    def _rows(self, width_mm: float, start: int = 0) -> tuple[tuple[Piece, ...], ...]:
        number_mm = text_width_mm(self._mark(len(self.paragraphs))) + SLACK_MM if self._is_marked else 0.0
        left = number_mm + (GAP_MM / 2 if self.dense else GAP_MM) if self._is_marked else 0.0
        return tuple(
            self._row(n, text, left, number_mm, width_mm) for n, text in enumerate(self.paragraphs[start:], start + 1)
        )

    def _row(self, number: int, text: str, left_mm: float, number_mm: float, width_mm: float) -> tuple[Piece, ...]:
        pieces = []
        strokes, box = self.sign if self.sign and number == 1 else ((), Box(0.0, 0.0, -GAP_MM, 0.0))
        text_mm = left_mm + box.width_mm + GAP_MM
        for part, lines in enumerate(pieces_of_lines(wrap(text, width_mm - text_mm))):
            drawn: list[Stroke] = lines_strokes(lines, text_mm, width_mm)
            if part == 0:
                drawn += [moved(stroke, left_mm - box.left_mm, PADDING_MM - box.top_mm) for stroke in strokes]
            if self._is_marked and part == 0:
                first = lines_strokes(("M",), 0.0, width_mm)[0]
                drawn.append(right_aligned(self._mark(number), (number_mm, first.at[1]), 2.5))  # type: ignore[union-attr]
            height_mm = max(lines_height_mm(len(lines)), box.height_mm + 2 * PADDING_MM if part == 0 else 0.0)
            tight_mm = LISTING_PITCH * TEXT_MM * len(lines)
            pieces.append(Piece(tight_mm if self.dense else height_mm + BETWEEN_MM, partial(tuple, drawn)))
        return tuple(pieces)


def _height_mm(rows: Iterable[tuple[Piece, ...]]) -> float:
    return sum(piece.height_mm for row in rows for piece in row)


def _in_two(rows: Sequence[tuple[Piece, ...]], dx_mm: float) -> Piece:
    """Return rows in two columns, about equally high, as one piece. dx_mm: where the second one begins."""
    feet_mm = list(accumulate((_height_mm([row]) for row in rows), initial=0.0))
    half_mm = feet_mm[-1] / 2
    count = bisect_right(feet_mm, half_mm) - 1
    if feet_mm[count + 1] - half_mm < half_mm - feet_mm[count]:
        count += 1
    columns = ((0.0, rows[:count]), (dx_mm, rows[count:]))
    return Piece(max(_height_mm(rows[:count]), _height_mm(rows[count:])), partial(_side_by_side, columns))


def _side_by_side(columns: Iterable[tuple[float, Sequence[tuple[Piece, ...]]]]) -> Iterator[Stroke]:
    """Yield the strokes of rows in columns, each with where it begins."""
    for x_mm, column in columns:
        y_mm = 0.0
        for piece in (piece for row in column for piece in row):
            yield from (moved(stroke, x_mm, y_mm) for stroke in piece.strokes)
            y_mm += piece.height_mm
