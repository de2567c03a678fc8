"""Warning flags: the numbered triangle, on the diagram beside a device and in the list of what the flags mean."""

from __future__ import annotations

from dataclasses import dataclass

from sld.layout.passes.stack import FLAG_MM
from sld.sheet.ink import moved
from sld.sheet.lettering import wrap
from sld.sheet.listings.laid import Laid, Piece, lines_height_mm, lines_strokes, pieces_of_lines, rule
from sld.symbols.stroke import Box, Fill, Polyline, Stroke, Text
from sld.symbols.typeface import SLACK_MM, ascent_mm, descent_mm, text_width_mm

__all__ = ["FINDINGS", "FlagList", "FlagRow", "flag_strokes"]

FINDINGS = "findings"
"""Name of the list that explains the flags."""

NUMBER_MM = 1.8
LINE_MM = 0.25
GAP_MM = 2.5
BETWEEN_MM = 0.8


def flag_strokes(number: int, box: Box) -> tuple[Stroke, ...]:
    """Return the triangle that stands on the lower edge of its box, with the number in it.

    It has the width of the box, or more where the number's full line height would touch its sides: a box of 6.5 mm
    holds two digits.
    """
    text = str(number)
    number_width = text_width_mm(text, NUMBER_MM)
    foot, height = 0.35 + descent_mm(NUMBER_MM), box.height_mm
    # width of the triangle at the upper edge of the number's line, as a part of its base
    above = 1 - (foot + ascent_mm(NUMBER_MM)) / height
    width = max(box.width_mm, (number_width + SLACK_MM + 0.2) / above) if above > 0 else box.width_mm
    x, y = (box.left_mm + box.right_mm) / 2, box.bottom_mm
    corners = ((x - width / 2, y), (x + width / 2, y), (x, y - height))
    return (
        Polyline(corners, LINE_MM, closed=True, fill=Fill.PAPER),
        Text((x - number_width / 2, y - foot), text, NUMBER_MM),
    )


@dataclass(frozen=True, slots=True)
class FlagRow:
    """What one flag means: its number (0 for none) and its paragraphs, the finding first, then the remedy."""

    number: int
    paragraphs: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class FlagList:
    """The list of findings, each behind its triangle."""

    name: str
    title: str
    rows: tuple[FlagRow, ...]
    least_width_mm: float = 75.0

    def laid(self, width_mm: float, start: int = 0) -> Laid:
        """Return the rows from `start` on at a column width."""
        triangles = {row.number: _triangle(row.number) for row in self.rows if row.number}
        side = max([FLAG_MM, *(width for _, width in triangles.values())])
        rows = tuple(self._row(row, triangles.get(row.number), side, width_mm) for row in self.rows[start:])
        return Laid(Piece(0.6, ()), rows)

    def _row(
        self, row: FlagRow, triangle: tuple[tuple[Stroke, ...], float] | None, side_mm: float, width_mm: float
    ) -> tuple[Piece, ...]:
        left = side_mm + GAP_MM
        lines = [line for text in row.paragraphs for line in wrap(text, width_mm - left)]
        parts = pieces_of_lines(lines)
        pieces = []
        for n, part in enumerate(parts):
            drawn: list[Stroke] = lines_strokes(part, left, width_mm, BETWEEN_MM / 2)
            height = lines_height_mm(len(part)) + BETWEEN_MM
            if n == 0 and triangle:
                drawn += [moved(stroke, (side_mm - triangle[1]) / 2, 0.7) for stroke in triangle[0]]
                height = max(height, FLAG_MM + 1.4)
            if n == len(parts) - 1:
                drawn.append(rule(height, width_mm, 0.18))
            pieces.append(Piece(height, tuple(drawn)))
        return tuple(pieces)


def _triangle(number: int) -> tuple[tuple[Stroke, ...], float]:
    """Return the triangle with its left corner at the origin's x, and its width."""
    strokes = flag_strokes(number, Box(0.0, 0.0, FLAG_MM, FLAG_MM))
    base = strokes[0]
    assert isinstance(base, Polyline)
    left, right = base.points[0][0], base.points[1][0]
    return tuple(moved(stroke, -left, 0.0) for stroke in strokes), right - left
