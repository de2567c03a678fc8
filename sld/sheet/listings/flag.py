"""Warning flags: the numbered mark, on the diagram beside a device and in the list of what the flags mean."""

from __future__ import annotations

from functools import partial
from math import hypot

from sld.documents.section import FlagForm
from sld.frozen import dataclass
from sld.layout.passes.stack import FLAG_MM
from sld.sheet.lettering import wrap
from sld.sheet.listings.laid import Laid, Piece, lines_height_mm, lines_strokes, pieces_of_lines, rule
from sld.symbols.stroke import Box, Circle, Fill, Polyline, Stroke, Text
from sld.symbols.typeface import SLACK_MM, ascent_mm, descent_mm, text_width_mm

__all__ = ["FINDINGS", "FlagList", "FlagRow", "flag_strokes", "revision_strokes"]

FINDINGS = "findings"
"""Name of the list that explains the flags."""

NUMBER_MM = 1.8
LINE_MM = 0.25
HEAVY_MM = 0.5
_CLEAR_MM = 0.6
"""Least distance of the number's ends from the outline, half its line included."""
_BESIDE_MM = 0.3
GAP_MM = 2.5
BETWEEN_MM = 0.8
_OCTAGON = 0.4142
"""Half a side of a regular octagon against half its width: tan 22.5°."""


def flag_strokes(number: int, box: Box, form: FlagForm = FlagForm.ADVICE) -> tuple[Stroke, ...]:
    """Return the flag in its box, with the number in it: a circle for advice, a square for what was accepted.

    A non-compliance is an octagon, a danger one with a heavy line. The triangle is left to revisions, as is usual.
    """
    text = str(number)
    x, y = (box.left_mm + box.right_mm) / 2, (box.top_mm + box.bottom_mm) / 2
    baseline = y + (ascent_mm(NUMBER_MM) - descent_mm(NUMBER_MM)) / 2
    figure = Text((x - text_width_mm(text, NUMBER_MM) / 2, baseline), text, NUMBER_MM)
    reach = (ascent_mm(NUMBER_MM) + descent_mm(NUMBER_MM)) / 2, text_width_mm(text, NUMBER_MM) / 2 + _CLEAR_MM
    half = max(box.height_mm / 2, hypot(*reach))  # three digits, which only lists have, need more
    if form is FlagForm.ADVICE:
        return (Circle((x, y), half - LINE_MM / 2, LINE_MM, Fill.PAPER), figure)
    width = HEAVY_MM if form is FlagForm.DANGER else LINE_MM
    half -= width / 2
    cut = 0.0 if form is FlagForm.ACCEPTED else half * _OCTAGON
    corners = [(-half, -cut), (-half, cut), (-cut, half), (cut, half), (half, cut), (half, -cut), (cut, -half),
               (-cut, -half)]  # fmt: skip
    if not cut:
        corners = [(-half, -half), (half, -half), (half, half), (-half, half)]
    outline = Polyline(tuple((x + dx, y + dy) for dx, dy in corners), width, closed=True, fill=Fill.PAPER)
    return (outline, figure)


def revision_strokes(index: str, box: Box) -> tuple[Stroke, ...]:
    """Return the mark of a revision in its box: a triangle and behind it the index (common practice, from memory).

    In a triangle of this size no letter of a legible height is clear of the sides.
    """
    half, start = LINE_MM / 2, box.right_mm - SLACK_MM - text_width_mm(index, NUMBER_MM)
    left, right = box.left_mm + half, start - _BESIDE_MM
    top, foot = box.top_mm + half, box.bottom_mm - half
    outline = Polyline(((left, foot), ((left + right) / 2, top), (right, foot)), LINE_MM, closed=True, fill=Fill.PAPER)
    return (outline, Text((start, foot - descent_mm(NUMBER_MM)), index, NUMBER_MM))


@dataclass(frozen=True, slots=True)
class FlagRow:
    """What one flag means: its number (0 for none) and its paragraphs, the finding first, then the remedy."""

    number: int
    paragraphs: tuple[str, ...]
    form: FlagForm = FlagForm.ADVICE


@dataclass(frozen=True, slots=True)
class FlagList:
    """The list of findings, each behind its flag."""

    name: str
    title: str
    rows: tuple[FlagRow, ...]
    least_width_mm: float = 75.0
    least_height_mm: float = 0.0
    is_whole: bool = False

    @property
    def urgent_count(self) -> int:
        """Return how many rows there are up to the last danger or non-compliance."""
        places = (n for n, row in enumerate(self.rows, 1) if row.form in (FlagForm.DANGER, FlagForm.NON_COMPLIANCE))
        return max(places, default=0)

    def laid(self, width_mm: float, start: int = 0) -> Laid:
        """Return the rows from `start` on at a column width."""
        rows = tuple(self._row(row, width_mm) for row in self.rows[start:])
        return Laid(Piece(0.6), rows)

    def _row(self, row: FlagRow, width_mm: float) -> tuple[Piece, ...]:
        left = FLAG_MM + GAP_MM
        lines = [line for text in row.paragraphs for line in wrap(text, width_mm - left)]
        parts = pieces_of_lines(lines)
        pieces = []
        for n, part in enumerate(parts):
            drawn: list[Stroke] = lines_strokes(part, left, width_mm, BETWEEN_MM / 2)
            height = lines_height_mm(len(part)) + BETWEEN_MM
            if n == 0 and row.number:
                drawn += flag_strokes(row.number, Box(0.0, 0.7, FLAG_MM, 0.7 + FLAG_MM), row.form)
                height = max(height, FLAG_MM + 1.4)
            if n == len(parts) - 1:
                drawn.append(rule(height, width_mm, 0.18))
            pieces.append(Piece(height, partial(tuple, drawn)))
        return tuple(pieces)
