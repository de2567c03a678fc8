"""Labels at print size: a frame each, to be cut out; the first text of a row large, the last one small."""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial

from sld.frozen import dataclass
from sld.sheet.ink import moved
from sld.sheet.lettering import wrap
from sld.sheet.listings.laid import PADDING_MM, Laid, Piece, lines_height_mm, lines_strokes
from sld.symbols.stroke import Polyline, Stroke

__all__ = ["LABEL_MM", "Placards"]

LABEL_MM = 80.0
"""Width of a label."""
_GAP_MM = 4.0
_INSET_MM = 3.0
_LETTERS_MM = (5.0, 3.5)
"""Of what the notice says, and of its data; where it stands and its clause are as any text."""
_SMALL_MM = 2.5
_FRAME_MM = 0.5


@dataclass(frozen=True, slots=True)
class Placards:
    """Titled labels. rows: of each what it says, its data, where it stands and its clause; empty for none."""

    name: str
    title: str
    rows: tuple[tuple[str, ...], ...]
    least_width_mm: float = LABEL_MM
    least_height_mm: float = 0.0
    is_whole: bool = False

    def laid(self, width_mm: float, start: int = 0) -> Laid:
        """Return the labels from `start` on, as many side by side as a column is wide."""
        count = max(int((width_mm + _GAP_MM) // (LABEL_MM + _GAP_MM)), 1)
        label_mm = min(LABEL_MM, width_mm)
        left = self.rows[start:]
        deals = [left[n : n + count] for n in range(0, len(left), count)]
        return Laid(Piece(_GAP_MM / 2), tuple((_side_by_side(deal, label_mm),) for deal in deals), count)


def _side_by_side(rows: Sequence[tuple[str, ...]], label_mm: float) -> Piece:
    """Return labels of one height beside each other."""
    inside = [_texts(row, label_mm) for row in rows]
    height_mm = max(piece.height_mm for piece in inside)
    strokes: list[Stroke] = []
    for n, piece in enumerate(inside):
        left_mm = n * (label_mm + _GAP_MM)
        right_mm = left_mm + label_mm
        corners = ((left_mm, 0.0), (right_mm, 0.0), (right_mm, height_mm), (left_mm, height_mm), (left_mm, 0.0))
        strokes.append(Polyline(corners, _FRAME_MM))
        strokes += [moved(stroke, left_mm, 0.0) for stroke in piece.strokes]
    return Piece(height_mm + _GAP_MM, partial(tuple, strokes))


def _texts(row: tuple[str, ...], label_mm: float) -> Piece:
    """Return the texts of a label below each other: what it says, its data, then where it stands and its clause."""
    notice, data, place, clause = row
    sized = [(notice, _LETTERS_MM[0]), (data, _LETTERS_MM[1]), (place, _LETTERS_MM[1]), (clause, _SMALL_MM)]
    y_mm = _INSET_MM
    strokes: list[Stroke] = []
    for text, letters_mm in sized:
        if text:
            lines = wrap(text, label_mm - 2 * _INSET_MM, letters_mm)
            strokes += lines_strokes(lines, _INSET_MM, label_mm - _INSET_MM, y_mm, height_mm=letters_mm)
            y_mm += lines_height_mm(len(lines), letters_mm) + PADDING_MM
    return Piece(y_mm + _INSET_MM, partial(tuple, strokes))
