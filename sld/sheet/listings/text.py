"""Paragraphs, numbered or not."""

from __future__ import annotations

from dataclasses import dataclass

from sld.sheet.ink import moved, right_aligned
from sld.sheet.lettering import wrap
from sld.sheet.listings.laid import PADDING_MM, Laid, Piece, lines_height_mm, lines_strokes, pieces_of_lines
from sld.symbols.stroke import Box, Stroke
from sld.symbols.typeface import SLACK_MM, text_width_mm

__all__ = ["TextList"]

GAP_MM = 2.0
BETWEEN_MM = 0.6


@dataclass(frozen=True, slots=True)
class TextList:
    """Titled paragraphs; numbered ones hang behind their numbers, which are right-aligned.

    sign: strokes that stand before the first paragraph, about any origin, with the box that they take.
    """

    name: str
    title: str
    paragraphs: tuple[str, ...]
    numbered: bool = False
    least_width_mm: float = 60.0
    sign: tuple[tuple[Stroke, ...], Box] | None = None

    def laid(self, width_mm: float, start: int = 0) -> Laid:
        """Return the paragraphs from `start` on at a column width."""
        number_mm = text_width_mm(f"{len(self.paragraphs)}.") + SLACK_MM if self.numbered else 0.0
        left = number_mm + GAP_MM if self.numbered else 0.0
        return Laid(
            Piece(BETWEEN_MM, ()),
            tuple(
                self._row(n, text, left, number_mm, width_mm)
                for n, text in enumerate(self.paragraphs[start:], start + 1)
            ),
        )

    def _row(self, number: int, text: str, left_mm: float, number_mm: float, width_mm: float) -> tuple[Piece, ...]:
        pieces = []
        strokes, box = self.sign if self.sign and number == 1 else ((), Box(0.0, 0.0, -GAP_MM, 0.0))
        text_mm = left_mm + box.width_mm + GAP_MM
        for part, lines in enumerate(pieces_of_lines(wrap(text, width_mm - text_mm))):
            drawn: list[Stroke] = lines_strokes(lines, text_mm, width_mm)
            if part == 0:
                drawn += [moved(stroke, left_mm - box.left_mm, PADDING_MM - box.top_mm) for stroke in strokes]
            if self.numbered and part == 0:
                first = lines_strokes(("M",), 0.0, width_mm)[0]
                drawn.append(right_aligned(f"{number}.", (number_mm, first.at[1]), 2.5))  # type: ignore[union-attr]
            height_mm = max(lines_height_mm(len(lines)), box.height_mm + 2 * PADDING_MM if part == 0 else 0.0)
            pieces.append(Piece(height_mm + BETWEEN_MM, tuple(drawn)))
        return tuple(pieces)
