"""A table: headings, columns as wide as their content needs or sharing what is left, rows parted by thin rules."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import lru_cache, partial
from itertools import zip_longest

from sld.frozen import dataclass, replace
from sld.sheet.lettering import fitted, lengths_mm, words_of, wrap
from sld.sheet.listings.column_widths import dealt_widths_mm
from sld.sheet.listings.laid import (
    LINES_PER_PIECE_COUNT,
    TEXT_MM,
    Laid,
    Piece,
    lines_height_mm,
    lines_strokes,
    rule,
)
from sld.symbols.stroke import Stroke
from sld.symbols.typeface import SLACK_MM, text_width_mm

__all__ = ["Column", "Table", "column_widths_mm"]

GAP_MM = 2.5
HEADING_LINES_COUNT = 5
LEAST_MM = 4.0
LEAST_TABLE_MM = 110.0
LEAST_OF_COLUMN_MM = 37.5
"""A table of few columns may be as narrow as so much for each."""
MEASURED_ROWS_COUNT = 32
"""Of a longer table about so many rows decide how its columns share the width."""
ABREAST_MM = 165.0

Rows = tuple[tuple[str, ...], ...]


@dataclass(frozen=True, slots=True)
class Column:
    """A column.

    share_factor: its share of the width that is left, or None: as wide as its content. align: left or right.
    """

    heading: str
    share_factor: float | None = None
    align: str = "left"


@dataclass(frozen=True, slots=True)
class Table:
    """A titled table; each row has one text per column.

    abreast: two rows stand side by side where they fit, and the table is never parted.
    """

    name: str
    title: str
    columns: tuple[Column, ...]
    rows: Rows
    abreast: bool = False

    @property
    def is_whole(self) -> bool:
        """Return whether a part of it says too little."""
        return self.abreast

    @property
    def least_width_mm(self) -> float:
        """Return the width below which a word, or a number with its unit, would have to be cut."""
        words, _ = _wants(self.columns, self.rows)
        few_mm = LEAST_OF_COLUMN_MM * len(self.columns)
        least_mm = LEAST_TABLE_MM if self.abreast else min(LEAST_TABLE_MM, few_mm)
        return max(least_mm, sum(words) + GAP_MM * (len(self.columns) - 1))

    @property
    def least_height_mm(self) -> float:
        """Return the height with each text, and the headings where there are any, on one line."""
        rows_count = (len(self.rows) + 1) // 2 if self.abreast else len(self.rows)
        headed = any(column.heading for column in self.columns)
        return lines_height_mm(1) * (rows_count + headed)

    def laid(self, width_mm: float, start: int = 0) -> Laid:
        """Return the rows from `start` on at a column width. Raises ValueError where a row and the columns differ."""
        for n, row in enumerate(self.rows):
            if len(row) != len(self.columns):
                raise ValueError(f"{self.title}: row {n + 1} has {len(row)} texts for {len(self.columns)} columns")
        if self.abreast and width_mm >= ABREAST_MM:
            return replace(self._doubled().laid(width_mm, start // 2), per_row_count=2)
        widths = column_widths_mm(self.columns, self.rows, width_mm)
        heads = [fitted(c.heading, w, TEXT_MM, HEADING_LINES_COUNT) for c, w in zip(self.columns, widths, strict=True)]
        head = self._piece(heads, widths, width_mm, 0.35) if any(map(any, heads)) else Piece(0.0)
        return Laid(head, tuple(self._row(row, widths, width_mm) for row in self.rows[start:]))

    def _doubled(self) -> Table:
        """Return the first half of the rows with the second half beside it."""
        half = (len(self.rows) + 1) // 2
        left, right = self.rows[:half], (*self.rows[half:], ("",) * len(self.columns))
        pairs = tuple((*one, *other) for one, other in zip(left, right, strict=False))
        return Table(self.name, self.title, self.columns * 2, pairs)

    def _row(self, row: Sequence[str], widths: Sequence[float], width_mm: float) -> tuple[Piece, ...]:
        cells = [wrap(text, width) for text, width in zip(row, widths, strict=True)]
        step, count = LINES_PER_PIECE_COUNT, max(len(lines) for lines in cells)
        starts = range(0, count, step)
        return tuple(
            self._piece([lines[n : n + step] for lines in cells], widths, width_mm, 0.18 if n == starts[-1] else 0.0)
            for n in starts
        )

    def _piece(self, cells: Sequence[Sequence[str]], widths: Sequence[float], width_mm: float, line_mm: float) -> Piece:
        """Return one row, with a rule of the given line width under it (none where that is zero)."""
        height = lines_height_mm(max(len(lines) for lines in cells)) + line_mm
        under = (rule(height - line_mm / 2, width_mm, line_mm),) if line_mm else ()
        return Piece(height, partial(self._drawn, cells, widths, under))

    def _drawn(
        self, cells: Sequence[Sequence[str]], widths: Sequence[float], under: Sequence[Stroke]
    ) -> Iterator[Stroke]:
        """Yield the strokes of a row. under: what stands below it."""
        x = 0.0
        for column, lines, width in zip(self.columns, cells, widths, strict=True):
            yield from lines_strokes(lines, x, x + width, align=column.align)
            x += width + GAP_MM
        yield from under


def _room_mm(text: str) -> float:
    return text_width_mm(text) + SLACK_MM + 0.01


@lru_cache(maxsize=16)
def _wants(columns: tuple[Column, ...], rows: Rows) -> tuple[tuple[float, ...], tuple[float, ...]]:
    """Return for each column the width of its longest word (a number with its unit is one) and of its longest text."""
    words, texts = [], []
    for column, cells in zip_longest(columns, zip(*rows, strict=True), fillvalue=()):
        if not isinstance(column, Column):
            continue
        all_texts = [column.heading, *cells]
        lines = [line for text in all_texts for line in text.split("\n")]
        texts.append(max([LEAST_MM, *(_room_mm(" ".join(words_of(line))) for line in lines)]))
        words.append(max([LEAST_MM, *(_room_mm(w) for line in lines for w in words_of(line))]))
    return tuple(words), tuple(texts)


def _squeezed(least: Sequence[float], room_mm: float) -> list[float]:
    """Return widths below the least ones, all shrunk alike."""
    return [room_mm * w / sum(least) for w in least]


def column_widths_mm(columns: tuple[Column, ...], rows: Rows, width_mm: float) -> list[float]:
    """Return the widths of the columns, together with the gaps at most `width_mm`.

    Where all texts have room on one line, each column gets its longest one and the last one with a share what is left.
    Else none gets less than its longest word, and the rest goes to where it makes the table least tall. Where not even
    the words have room, all columns shrink and words are cut.
    """
    room = width_mm - GAP_MM * (len(columns) - 1)
    words, texts = _wants(columns, rows)
    if sum(texts) <= room:
        shared = [place for place, column in enumerate(columns) if column.share_factor]
        return [text + (room - sum(texts) if [place] == shared[-1:] else 0.0) for place, text in enumerate(texts)]
    if sum(words) >= room:
        return _squeezed(words, room)
    return dealt_widths_mm(words, texts, _lengths(columns, rows), room)


def _lengths(columns: tuple[Column, ...], rows: Rows) -> list[list[tuple[tuple[float, ...], ...]]]:
    """Return for some rows, in each column, where the words begin on the lines that its texts have of their own."""
    step = max(1, len(rows) // MEASURED_ROWS_COUNT)
    some = (tuple(column.heading for column in columns), *rows[::step])
    return [[tuple(map(lengths_mm, text.split("\n"))) for text in row] for row in some]
