"""How the columns of a table share a width that is not enough for all texts on one line."""

from __future__ import annotations

from collections.abc import Sequence
from math import ceil

from sld.symbols.typeface import SLACK_MM

__all__ = ["dealt_widths_mm"]

_STEPS_COUNT = 32
"""The spare width is dealt out in so many equal steps."""

_AT_ONCE = ((1, 2, 4, 8), (1, 2, 3, 4, 6, 8, 10, 13, 16))
"""So many steps are looked ahead, in two ways of which the better one is taken: a long text may need several steps for
one line less."""

_ROUNDS_COUNT = 3
"""So often what turned out to be of no use is taken back and dealt out again."""

_RAGGED_FACTOR = 1.08
"""A text that is broken at words takes so much more than its length on one line."""

_Text = Sequence[float]
"""The lengths of the lines that a text has of its own."""


def dealt_widths_mm(
    least_mm: Sequence[float], most_mm: Sequence[float], lengths: Sequence[Sequence[_Text]], room_mm: float
) -> list[float]:
    """Return widths of columns from the least up to the most that fill the room. lengths: by row and column.

    The spare width goes, step by step, to where it makes the rows lower by the most lines; where no column alone does,
    to the one that most lines are due to. What is left when all rows are as low as they can be is shared by all.
    """
    ways = [_dealt(_Dealt(lengths, least_mm, most_mm, at_once, room_mm)) for at_once in _AT_ONCE]
    return min(ways, key=lambda way: way[0])[1]


def _dealt(dealt: _Dealt) -> tuple[int, list[float]]:
    """Deal all out; return how many lines there are then, and the widths."""
    spare = dealt.deal(_STEPS_COUNT)
    for _ in range(_ROUNDS_COUNT):
        back = dealt.taken_back()
        if not back:
            break
        spare = dealt.deal(spare + back)
    left_mm = spare * dealt.step_mm / len(dealt.widths)
    return sum(max(row) for row in dealt.counts), [width + left_mm for width in dealt.widths]


class _Dealt:
    """Widths while they are dealt out, and how many lines each text takes in them."""

    def __init__(
        self, lengths: Sequence[Sequence[_Text]], least_mm: Sequence[float], most_mm: Sequence[float],
        at_once: Sequence[int], room_mm: float,
    ) -> None:  # fmt: skip
        self.lengths, self.most_mm, self.at_once = lengths, most_mm, at_once
        self.step_mm = (room_mm - sum(least_mm)) / _STEPS_COUNT
        self.widths, self.steps = list(least_mm), [0] * len(least_mm)
        self.counts = [[_lines_count(text, width) for text, width in zip(row, least_mm, strict=True)]
                       for row in lengths]  # fmt: skip

    def deal(self, spare: int) -> int:
        """Deal out so many steps; return how many are of no use."""
        while spare:
            found = (0.0, 0, 0, 1)
            for place in range(len(self.widths)):
                found = max(found, self._best(place, spare))
            if not found[1]:  # all rows are as low as they can be
                break
            self._widen(-found[2], found[3])
            spare -= found[3]
        return spare

    def taken_back(self) -> int:
        """Make each column as narrow as it can be without a row growing; return how many steps that frees."""
        freed = 0
        for place in range(len(self.widths)):
            before = self.steps[place]
            while self.steps[place] and self._as_low(place):
                self._widen(place, -1)
            freed += before - self.steps[place]
        return freed

    def _best(self, place: int, spare: int) -> tuple[float, int, int, int]:
        """Return what widening a column saves for each step, how many lines are due to it, which, and by how many."""
        if self.widths[place] >= self.most_mm[place]:
            return (0.0, 0, -place, 1)
        due = [
            (text[place], row[place], others)
            for text, row in zip(self.lengths, self.counts, strict=True)
            if row[place] > 1 and row[place] >= (others := _others(row, place))
        ]
        lines = sum(1 + own - others for _, own, others in due)
        ways = [(0.0, lines, -place, 1)]
        for steps in self.at_once if due else ():
            if steps <= spare:
                width = self.widths[place] + steps * self.step_mm
                saved = sum(own - max(others, _lines_count(text, width)) for text, own, others in due)
                ways.append((saved / steps, lines, -place, steps))
        return max(ways)

    def _as_low(self, place: int) -> bool:
        """Return whether no row grows with a column one step narrower."""
        width = self.widths[place] - self.step_mm
        return all(
            _lines_count(text[place], width) <= max(row) for text, row in zip(self.lengths, self.counts, strict=True)
        )

    def _widen(self, place: int, steps: int) -> None:
        self.steps[place] += steps
        self.widths[place] += steps * self.step_mm
        for row, text in zip(self.counts, self.lengths, strict=True):
            row[place] = _lines_count(text[place], self.widths[place])


def _others(row: Sequence[int], place: int) -> int:
    """Return how many lines a row has without one of its columns."""
    return max((*row[:place], *row[place + 1 :]), default=1)


def _lines_count(text: _Text, width_mm: float) -> int:
    """Return about how many lines a text takes."""
    room_mm = width_mm - SLACK_MM
    return sum(1 if length <= room_mm else ceil(_RAGGED_FACTOR * length / width_mm) for length in text)
