"""The legend: each symbol of the sheet beside its meaning, in as many columns as there is room for."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import partial
from itertools import accumulate

from sld.frozen import dataclass
from sld.sheet.ink import moved
from sld.sheet.lettering import divided, fitted
from sld.sheet.listings.laid import Laid, Piece, lines_height_mm, lines_strokes
from sld.symbols.stroke import Box, Stroke
from sld.symbols.typeface import SLACK_MM, text_width_mm
from sld.words.phrase import SOFT_HYPHEN

__all__ = ["Legend", "LegendEntry"]

ENTRY_MM = 42.0
GAP_MM = 3.0
BETWEEN_MM = 1.2
WORDING_LINES_COUNT = 8
STEP_MM = 0.5
_ROUNDS_COUNT = 4
"""So often the columns are dealt out anew with the room that their symbols leave."""
DENSE_MOST_MM = 150.0
"""A higher legend may have to go on elsewhere."""


@dataclass(frozen=True, slots=True)
class LegendEntry:
    """A symbol's strokes about any origin, the box they take, and what they mean, with soft hyphens if need be."""

    strokes: tuple[Stroke, ...]
    box: Box
    text: str


@dataclass(frozen=True, slots=True)
class Legend:
    """A titled legend."""

    name: str
    title: str
    entries: tuple[LegendEntry, ...]
    least_width_mm: float = 60.0
    least_height_mm: float = 0.0
    is_whole: bool = True

    def laid(self, width_mm: float, start: int = 0) -> Laid:
        """Return the entries from `start` on at a column width; they run down, then to the right.

        Where they are too high to stay together they run from left to right, so that they can go on elsewhere.
        """
        word_mm = self._word_mm()
        most = max(1, int((width_mm + GAP_MM) // (max(ENTRY_MM, self._symbol_mm() + GAP_MM + word_mm) + GAP_MM)))
        abreast = range(max(1, most - 1), most + 1)
        if start == 0 and self.entries:
            dense = [way for across in (*abreast, most + 1) for way in self._dense(width_mm, across, most, word_mm)]
            lowest = min(dense, key=lambda piece: piece.height_mm)
            if lowest.height_mm <= DENSE_MOST_MM:
                return Laid(Piece(1.2), ((lowest,),), len(self.entries))
        ways = [self._laid(width_mm, start, across) for across in abreast]
        return min(ways, key=lambda way: sum(row[0].height_mm for row in way.rows))

    def _dense(self, width_mm: float, across: int, most_count: int, word_mm: float) -> Iterator[Piece]:
        """Yield ways to set the entries in so many columns, each entry right below the one before it.

        First each column has room for the widest symbol, as long as they are not more than that allows; then for the
        widest of its own, and all wordings for more. word_mm: the longest word.
        """
        room_mm = width_mm - (2 * across - 1) * GAP_MM
        widest_mm = min(self._symbol_mm(), (room_mm / across + GAP_MM) / 2)
        symbols_mm = [widest_mm] * across
        for _ in range(_ROUNDS_COUNT):
            text_mm = (room_mm - sum(symbols_mm)) / across
            heights = [_height_mm(entry, text_mm) + BETWEEN_MM for entry in self.entries]
            columns = _lowest(heights, across)
            own_mm = [0.0] * across
            for entry, column in zip(self.entries, columns, strict=True):
                own_mm[column] = max(own_mm[column], entry.box.width_mm)
            fits = all(own <= symbol + 1e-6 for own, symbol in zip(own_mm, symbols_mm, strict=True))
            roomy = text_mm >= word_mm
            if (fits and roomy) or (across <= most_count and symbols_mm == [widest_mm] * across):
                most_mm = _height_of_columns(columns, heights)
                yield Piece(most_mm, partial(self._in_columns, columns, heights, symbols_mm, text_mm))
            if own_mm == symbols_mm or (room_mm - sum(own_mm)) / across < word_mm:
                break
            symbols_mm = own_mm

    def _in_columns(
        self, columns: Sequence[int], heights: Sequence[float], symbols_mm: Sequence[float], text_mm: float
    ) -> Iterator[Stroke]:
        """Yield the strokes of the entries in their columns."""
        feet = [0.0] * len(symbols_mm)
        lefts = list(accumulate((each + text_mm + 2 * GAP_MM for each in symbols_mm), initial=0.0))
        for entry, column, height_mm in zip(self.entries, columns, heights, strict=True):
            cell = _cell(entry, symbols_mm[column] + GAP_MM + text_mm, symbols_mm[column])
            yield from (moved(stroke, lefts[column], feet[column]) for stroke in cell.strokes)
            feet[column] += height_mm

    def _laid(self, width_mm: float, start: int, across: int) -> Laid:
        """Return the entries with so many of them in a row."""
        entry_mm = (width_mm + GAP_MM) / across - GAP_MM
        symbol_mm = min(self._symbol_mm(), entry_mm / 2)
        rows = []
        for n in range(start, len(self.entries), across):
            cells = [_cell(entry, entry_mm, symbol_mm) for entry in self.entries[n : n + across]]
            height = max(cell.height_mm for cell in cells)
            rows.append((Piece(height + BETWEEN_MM, partial(_in_a_row, cells, height, entry_mm + GAP_MM)),))
        return Laid(Piece(1.2), tuple(rows), across)

    def _symbol_mm(self) -> float:
        return max((e.box.width_mm for e in self.entries), default=0.0)

    def _word_mm(self) -> float:
        """Return the width of the longest word, or part of one up to its hyphen, so that none is torn elsewhere."""
        words = [word for e in self.entries for word in e.text.replace(SOFT_HYPHEN, "-").replace("-", "- ").split()]
        return max((text_width_mm(word) + SLACK_MM for word in words), default=0.0)


def _lowest(heights: Sequence[float], across: int) -> list[int]:
    """Return in which of so many columns each entry stands, in their order, where the columns are as low as can be."""
    most_mm = max(sum(heights) / across, *heights, 0.0)
    while max(columns := _columns_of(heights, most_mm)) >= across:
        most_mm += STEP_MM
    return columns


def _lines(entry: LegendEntry, text_mm: float) -> tuple[str, ...]:
    """Return the wording of an entry in lines of a width, of which 10 mm is the least."""
    width_mm = max(text_mm, 10.0)
    return fitted(divided(entry.text, width_mm), width_mm, 2.5, WORDING_LINES_COUNT)


def _height_mm(entry: LegendEntry, text_mm: float) -> float:
    """Return the height of an entry with its wording at a width."""
    lines = _lines(entry, text_mm)
    return max(entry.box.height_mm, lines_height_mm(len(lines)))


def _columns_of(heights: Sequence[float], most_mm: float) -> list[int]:
    """Return in which column each entry stands where columns are at most so high."""
    found: list[int] = []
    column, y_mm = 0, 0.0
    for height_mm in heights:
        if y_mm + height_mm > most_mm + 1e-6:
            column, y_mm = column + 1, 0.0
        found.append(column)
        y_mm += height_mm
    return found


def _height_of_columns(columns: Sequence[int], heights: Sequence[float]) -> float:
    feet: dict[int, float] = {}
    for column, height_mm in zip(columns, heights, strict=True):
        feet[column] = feet.get(column, 0.0) + height_mm
    return max(feet.values())


def _in_a_row(cells: Sequence[Piece], height_mm: float, pitch_mm: float) -> Iterator[Stroke]:
    """Yield the strokes of entries beside each other, each in the middle of the height of the row."""
    for place, cell in enumerate(cells):
        y_mm = (height_mm - cell.height_mm) / 2
        yield from (moved(stroke, place * pitch_mm, y_mm) for stroke in cell.strokes)


def _cell(entry: LegendEntry, entry_mm: float, symbol_mm: float) -> Piece:
    """Return the symbol, centred in its column, with the wording in the middle of its height beside it."""
    left = max(symbol_mm, entry.box.width_mm) + GAP_MM
    lines = _lines(entry, entry_mm - left)
    height = max(entry.box.height_mm, lines_height_mm(len(lines)))
    dx = (max(symbol_mm, entry.box.width_mm) - entry.box.width_mm) / 2 - entry.box.left_mm
    dy = (height - entry.box.height_mm) / 2 - entry.box.top_mm

    def drawn() -> Iterator[Stroke]:
        yield from (moved(stroke, dx, dy) for stroke in entry.strokes)
        yield from lines_strokes(lines, left, entry_mm, (height - lines_height_mm(len(lines))) / 2)

    return Piece(height, drawn)
