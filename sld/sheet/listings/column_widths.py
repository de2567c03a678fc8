"""How the columns of a table share a width that is not enough for all texts on one line."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence
from functools import cache
from typing import NamedTuple

from sld.symbols.typeface import SLACK_MM, text_width_mm

__all__ = ["dealt_widths_mm"]

_STEPS_COUNT = 32
"""The spare width is dealt out in so many equal steps."""

_AT_ONCE = ((1, 2, 4, 8), (1, 2, 3, 4, 6, 8, 10, 13, 16))
"""So many steps are looked ahead, in two ways of which the better one is taken: a long text may need several steps for
one line less."""

_ROUNDS_COUNT = 3
"""So often what turned out to be of no use is taken back and dealt out again."""

_NOTHING_MM = 0.01
"""Less than this is not dealt out."""

_Text = tuple[tuple[float, ...], ...]
"""Of each line that a text has of its own where its words begin, and where one more would, as of `lengths_mm`."""


def dealt_widths_mm(
    least_mm: Sequence[float], most_mm: Sequence[float], lengths: Sequence[Sequence[_Text]], room_mm: float
) -> list[float]:
    """Return widths of columns from the least up to the most that fill the room. lengths: by row and column.

    The spare width goes, step by step, to where it makes the rows lower by the most lines; where no column alone does,
    to the one that most lines are due to. What is left when all rows are as low as they can be is shared by all.
    """
    texts = [[row[place] for row in lengths] for place in range(len(least_mm))]
    columns = [_Column(each, width) for each, width in zip(texts, least_mm, strict=True)]
    ways = [_dealt(_Dealt(columns, least_mm, most_mm, at_once, room_mm)) for at_once in _AT_ONCE]
    fewest_count, widths = min(ways, key=lambda way: way[0])
    if fewest_count > max((column.rows[-1] + 1 for column in columns if column.rows), default=0):
        widths = _squeezed(columns, least_mm, most_mm, room_mm, fewest_count) or widths
    return widths


def _squeezed(
    columns: Sequence[_Column], least_mm: Sequence[float], most_mm: Sequence[float], room_mm: float, fewest_count: int
) -> list[float]:
    """Return the most widths made narrower, none where that makes no fewer lines than the fewest so far.

    Each step is taken where it costs the fewest lines. So texts of several columns of a row stay on one line together,
    where widening either alone would be of no use.
    """
    others_mm = sum(least_mm)
    widths = [min(most, room_mm - others_mm + least) for least, most in zip(least_mm, most_mm, strict=True)]
    if sum(widths) - room_mm < _NOTHING_MM:
        return []
    dealt = _Dealt(columns, least_mm, most_mm, _AT_ONCE[0], room_mm, widths)
    return dealt.widths if dealt.squeeze(fewest_count) else []


class _Column:
    """The texts of a column that take several lines at its least width: others never decide how high their row is.

    rows: in which they are. They are counted in lines once for each width.
    """

    def __init__(self, texts: Sequence[_Text], least_mm: float) -> None:
        self.rows = [row for row, text in enumerate(texts) if _lines_count(text, least_mm) > 1]
        self._texts = [texts[row] for row in self.rows]
        self._counts: dict[float, list[int]] = {}

    def counts(self, width_mm: float) -> list[int]:
        """Return about how many lines each text takes."""
        key = round(width_mm, 6)  # which several ways come to, but for the last digits
        if (found := self._counts.get(key)) is None:
            found = [_lines_count(text, width_mm) for text in self._texts]
            self._counts[key] = found
        return found


def _dealt(dealt: _Dealt) -> tuple[int, list[float]]:
    """Deal all out; return how many lines there are then, and the widths."""
    spare = dealt.deal(_STEPS_COUNT)
    for _ in range(_ROUNDS_COUNT):
        back = dealt.taken_back()
        if not back:
            break
        spare = dealt.deal(spare + back)
    left_mm = spare * dealt.step_mm / len(dealt.widths)
    return sum(dealt.rows.lines), [width + left_mm for width in dealt.widths]


class _Rows:
    """How many lines rows take, by row: the most of a column, and of the others then, at least one."""

    def __init__(self, columns: Sequence[_Column], counts: Sequence[Sequence[int]]) -> None:
        size = max((column.rows[-1] for column in columns if column.rows), default=-1) + 1
        self.lines, self.others = [1] * size, [1] * size
        lines, others = self.lines, self.others
        for column, of_column in zip(columns, counts, strict=True):
            for row, count in zip(column.rows, of_column, strict=True):
                if count > lines[row]:
                    lines[row], others[row] = count, lines[row]
                elif count > others[row]:
                    others[row] = count


class _Due(NamedTuple):
    """What widening a column may do: how many lines are due to it, how many it saves at most, and of which texts.

    texts: the place of each among those of the column, and how many lines its row takes without it.
    """

    lines_count: int
    most_count: int
    texts: Sequence[tuple[int, int]]


def _may_save(each: tuple[_Due, int]) -> int:
    return each[0].most_count


class _Dealt:
    """Widths while they are dealt out, and how many lines each text takes in them."""

    def __init__(
        self, columns: Sequence[_Column], least_mm: Sequence[float], most_mm: Sequence[float],
        at_once: Sequence[int], room_mm: float, widths: Sequence[float] | None = None,
    ) -> None:  # fmt: skip
        """Begin at the least widths, or at others of which some are to be taken back (`squeeze`)."""
        self.columns, self.most_mm, self.at_once = columns, most_mm, at_once
        self.widths = list(widths or least_mm)
        self.step_mm = abs(room_mm - sum(self.widths)) / _STEPS_COUNT
        self.steps = [0] * len(least_mm)
        if widths:
            self.steps = [int((w - low) / self.step_mm + 1e-6) for w, low in zip(widths, least_mm, strict=True)]
        self.counts = [column.counts(width) for column, width in zip(columns, self.widths, strict=True)]
        self.rows = _Rows(columns, self.counts)

    def deal(self, spare: int) -> int:
        """Deal out so many steps; return how many are of no use."""
        while spare:
            _, lines_count, place, steps = self._best(spare)
            if not lines_count:  # all rows are as low as they can be
                break
            self._widen(-place, steps)
            spare -= steps
        return spare

    def squeeze(self, fewest_count: int) -> bool:
        """Take back as many steps as are dealt out at once in all, where each costs the fewest lines.

        Return whether there are fewer lines then; it is given up as soon as there are not, as they only become more.
        """
        spare = _STEPS_COUNT
        while spare and sum(self.rows.lines) < fewest_count:
            ways = [
                (self._cost(place, steps) / steps, -self.widths[place], place, steps)
                for place, left in enumerate(self.steps)
                for steps in self.at_once
                if steps <= min(left, spare)
            ]
            if not ways:
                break
            *_, place, steps = min(ways)
            self._widen(place, -steps)
            spare -= steps
        if sum(self.rows.lines) >= fewest_count:
            return False
        if spare:  # less than a step is left to each
            self.widths = [width - spare * self.step_mm / len(self.widths) for width in self.widths]
        return True

    def _cost(self, place: int, steps: int) -> int:
        """Return how many lines the rows grow by where a column is made so many steps narrower."""
        column, lines = self.columns[place], self.rows.lines
        counts = column.counts(self.widths[place] - steps * self.step_mm)
        return sum(count - lines[row] for row, count in zip(column.rows, counts, strict=True) if count > lines[row])

    def taken_back(self) -> int:
        """Make each column as narrow as it can be without a row growing; return how many steps that frees."""
        freed = 0
        for place in range(len(self.widths)):
            before = self.steps[place]
            while self.steps[place] and self._as_low(place):
                self._widen(place, -1)
            freed += before - self.steps[place]
        return freed

    def _best(self, spare: int) -> tuple[float, int, int, int]:
        """Return what the best way to widen a column saves for each step, the lines due to it, which, by how many."""
        best = (0.0, 0, 0, 1)
        dues = [(self._due(place), place) for place in range(len(self.widths))]
        for due, place in sorted([each for each in dues if each[0].texts], key=_may_save, reverse=True):
            best = max(best, (0.0, due.lines_count, -place, 1))
            now, width = self.counts[place], self.widths[place]
            for steps in self.at_once:
                if steps > spare or due.most_count / steps < best[0]:
                    break
                counts = self.columns[place].counts(width + steps * self.step_mm)
                saved = 0
                for text, others in due.texts:
                    count = counts[text]
                    saved += now[text] - (count if count > others else others)
                best = max(best, (saved / steps, due.lines_count, -place, steps))
        return best

    def _due(self, place: int) -> _Due:
        """Return what widening a column may do."""
        if self.widths[place] >= self.most_mm[place]:
            return _Due(0, 0, ())
        lines, others = self.rows.lines, self.rows.others
        texts = zip(self.columns[place].rows, self.counts[place], strict=True)
        due = [(text, others[row]) for text, (row, own) in enumerate(texts) if own > 1 and own == lines[row]]
        most = sum([self.counts[place][text] - other for text, other in due])
        return _Due(len(due) + most, most, due)

    def _as_low(self, place: int) -> bool:
        """Return whether no row grows with a column one step narrower."""
        column, lines = self.columns[place], self.rows.lines
        counts = column.counts(self.widths[place] - self.step_mm)
        return not any(count > lines[row] for row, count in zip(column.rows, counts, strict=True))

    def _widen(self, place: int, steps: int) -> None:
        self.steps[place] += steps
        self.widths[place] += steps * self.step_mm
        counts = self.columns[place].counts(self.widths[place])
        if counts != self.counts[place]:
            self.counts[place] = counts
            self.rows = _Rows(self.columns, self.counts)


def _lines_count(text: _Text, width_mm: float) -> int:
    """Return how many lines a text takes; a word that is too wide counts as one."""
    room_mm = width_mm - SLACK_MM + _blank_mm()
    if len(text) == 1 and text[0][-1] <= room_mm:  # nearly all
        return 1
    count = 0
    for begins in text:
        at, end = 0, len(begins) - 1
        while at < end:
            at = max(bisect_right(begins, begins[at] + room_mm) - 1, at + 1)
            count += 1
        count += end == 0
    return count


@cache
def _blank_mm() -> float:
    return text_width_mm(" ")
