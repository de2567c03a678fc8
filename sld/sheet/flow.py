"""Listings dealt out over columns and sheets, in the order given, column by column."""

from __future__ import annotations

from collections.abc import Sequence

from sld.frozen import dataclass, replace
from sld.sheet.ink import moved, right_aligned
from sld.sheet.listings.flag import FlagList
from sld.sheet.listings.laid import PADDING_MM, TEXT_MM, Laid, Listing, Piece, title_piece
from sld.sheet.sheet import Group
from sld.symbols.stroke import Box, Point, Stroke
from sld.symbols.typeface import ascent_mm
from sld.words import ENGLISH, Language, phrase

__all__ = ["CONTINUED_MM", "TOGETHER_MM", "Dealt", "Manner", "Remembered", "columns_of", "flow", "remembered"]

COLUMN_MM = 175.0
GUTTER_MM = 6.0
BETWEEN_MM = 3.0
CONTINUED_MM = 5.0
"""Room for the words below a part that say on which sheet it goes on."""

TOGETHER_MM = 80.0
"""A listing of at most this height is not parted, unless it begins a column."""

WORTH_MM = 45.0
"""Beside a part of the diagram no part of a listing stands that is less high."""

LONG_MM = 150.0
"""A listing that is higher is parted anyway."""

WHOLE_MM = 1e9
"""As together_mm: what is never parted, unless no column of a sheet holds it."""


def columns_of(box: Box) -> tuple[Box, ...]:
    """Return the box cut into columns of equal width, each near 175 mm (about 120 to 205 mm)."""
    count = max(1, int((box.width_mm + GUTTER_MM) / (COLUMN_MM + GUTTER_MM) + 0.5))
    width = (box.width_mm + GUTTER_MM) / count - GUTTER_MM
    lefts = [box.left_mm + n * (width + GUTTER_MM) for n in range(count)]
    return tuple(Box(left, box.top_mm, left + width, box.bottom_mm) for left in lefts)


class Remembered:
    """A listing that is laid out once for each width, however often it is asked: a long table has many parts."""

    def __init__(self, listing: Listing) -> None:
        self.name = listing.name
        self.title = listing.title
        self.least_width_mm = listing.least_width_mm
        self.least_height_mm = listing.least_height_mm
        self.is_whole = listing.is_whole
        self.urgent_count = listing.urgent_count if isinstance(listing, FlagList) else 0
        self._listing = listing
        self._whole: dict[float, Laid] = {}

    def laid(self, width_mm: float, start: int = 0) -> Laid:
        """Return the items from `start` on laid out at a column width."""
        whole = self._whole.get(width_mm)
        if whole is None:
            whole = self._whole[width_mm] = self._listing.laid(width_mm)
        if not start:
            return whole
        if start % whole.per_row_count:
            return self._listing.laid(width_mm, start)
        return replace(whole, rows=whole.rows[start // whole.per_row_count :])


def remembered(listing: Listing) -> Remembered:
    """Return a listing that is laid out once for each width; one that is so already as it is."""
    return listing if isinstance(listing, Remembered) else Remembered(listing)


@dataclass(slots=True)
class _Cursor:
    """Where the next part goes: the column's index counted on over all sheets, and how far down it is filled.

    first: the columns of sheets with a diagram, each with the index of its sheet. sheets_count: of those.
    beside_diagram: whether these columns are what a diagram left, not those of a page.
    """

    first: Sequence[tuple[int, Box]]
    further: Sequence[Box]
    sheets_count: int
    beside_diagram: bool
    index: int = 0
    y_mm: float = 0.0

    def __post_init__(self) -> None:
        self.y_mm = self.box.top_mm

    @property
    def on_first(self) -> bool:
        return self.index < len(self.first)

    @property
    def in_rest(self) -> bool:
        """Return whether the column is what a diagram left of a sheet."""
        return self.beside_diagram and self.on_first

    @property
    def in_between(self) -> bool:
        """Return whether the column is on a further sheet with a part of the diagram."""
        return self.in_rest and self.sheet_index > 0

    @property
    def box(self) -> Box:
        if self.on_first:
            return self.first[self.index][1]
        return self.further[(self.index - len(self.first)) % len(self.further)]

    @property
    def sheet_index(self) -> int:
        if self.on_first:
            return self.first[self.index][0]
        return self.sheets_count + (self.index - len(self.first)) // len(self.further)

    @property
    def empty(self) -> bool:
        return self.y_mm == self.box.top_mm

    def advance(self) -> None:
        self.index += 1
        self.y_mm = self.box.top_mm


def _rows_that_fit(pieces: Sequence[Sequence[Piece]], room_mm: float) -> tuple[int, int]:
    """Return how many whole rows fit, and how many pieces of the row after them."""
    for n, row in enumerate(pieces):
        for k, piece in enumerate(row):
            if piece.height_mm > room_mm:
                return n, k
            room_mm -= piece.height_mm
    return len(pieces), 0


@dataclass(frozen=True, slots=True)
class Dealt:
    """A part of a listing at its place, without ink: many ways to deal are tried, and one is drawn.

    key: as of the group. pieces: one below the other from `at` on. words: what else is drawn, where it is to be.
    width_mm: of the column. end_count: how many items of the listing have been dealt out whole when the part ends.
    """

    key: str
    listing: Remembered
    at: Point = (0.0, 0.0)
    pieces: tuple[Piece, ...] = ()
    words: tuple[Stroke, ...] = ()
    end_count: int = 0
    width_mm: float = 0.0

    @property
    def area_mm2(self) -> float:
        """Return what the pieces take of their column, with the distance to the part before them."""
        return self.width_mm * (_height_mm([self.pieces]) + BETWEEN_MM) if self.pieces else 0.0

    @property
    def section(self) -> str:
        """Return the name of the section of the document."""
        return self.listing.name

    def inked(self) -> Group:
        """Return the part as strokes on the page."""
        (x, y), drawn = self.at, list(self.words)
        for piece in self.pieces:
            drawn += [moved(stroke, x, y) for stroke in piece.strokes]
            y += piece.height_mm
        return Group(self.key, "table", tuple(drawn), self.listing.title, section=self.section)


def _height_mm(rows: Sequence[Sequence[Piece]]) -> float:
    return sum(piece.height_mm for row in rows for piece in row)


def _fit(cursor: _Cursor, rest: Sequence[Sequence[Piece]], heads_mm: float, together_mm: float) -> tuple[int, int]:
    """Return how many whole rows of the rest, and pieces of the next one, go into the column; (0, 0) for none.

    together_mm: a rest of at most this height is not parted. Below a part there is room to say where it goes on.
    """
    gap = 0.0 if cursor.empty else BETWEEN_MM
    room_mm = cursor.box.bottom_mm - cursor.y_mm - gap - heads_mm
    if _rows_that_fit(rest, room_mm)[0] == len(rest):
        return len(rest), 0
    rows, pieces = _rows_that_fit(rest, room_mm - CONTINUED_MM)
    if cursor.in_rest and together_mm == WHOLE_MM:
        return 0, 0
    if cursor.in_between and _height_mm(rest[:rows]) < WORTH_MM:
        return 0, 0
    if cursor.in_rest:
        pieces = 0  # a long row is parted only where all columns are equally wide
    elif cursor.empty:
        return (rows, pieces) if rows or pieces else (0, 1)  # it fits nowhere better
    if rows < 2 or (not cursor.empty and _height_mm(rest) <= together_mm):
        return 0, 0
    return rows, pieces


def _taken(rest: Sequence[Sequence[Piece]], rows: int, pieces: int) -> list[Piece]:
    """Return the pieces of so many whole rows and of the one after them."""
    whole = [piece for row in rest[:rows] for piece in row]
    return [*whole, *rest[rows][:pieces]] if pieces else whole


@dataclass(frozen=True, slots=True)
class Manner:
    """How listings are dealt out.

    together_mm: a listing of at most this height is not parted unless it begins a column. beside_diagram: whether the
    first sheet has a diagram; else it is a page like the others, and the order is kept. fill: what is left of a column
    of a further sheet is filled with the next listing that fits there whole, as one of the first sheet is.
    """

    language: Language = ENGLISH
    beside_diagram: bool = True
    together_mm: float = TOGETHER_MM
    fill: bool = False


def flow(
    listings: Sequence[Listing],
    first: Sequence[Box],
    further: Sequence[Box],
    manner: Manner,
    between: Sequence[Sequence[Box]] = (),
) -> tuple[tuple[Dealt, ...], ...]:
    """Return the parts on the first sheet (index 0), on those between, and on each further sheet that is needed.

    first: free regions of the sheet with the diagram. between: those of each sheet with a part of the diagram, which
    follow it. further: the columns of each sheet after these, equally wide. A part after the first repeats title and
    headings and says that it is continued. Listings without rows are left out.
    """
    beside = [(number, box) for number, boxes in enumerate((first, *between)) for box in boxes]
    cursor = _Cursor(beside, further, 1 + len(between), manner.beside_diagram)
    flowing = _Flow(manner, cursor, list(enumerate(map(remembered, listings), 1)), [[] for _ in (first, *between)])
    while flowing.waiting:
        flowing.deal(*flowing.waiting.pop(0))
    return tuple(map(tuple, flowing.sheets))


@dataclass(slots=True)
class _Flow:
    """Where listings flow to: which wait, numbered as in their order, and what is dealt so far, by sheet."""

    manner: Manner
    cursor: _Cursor
    waiting: list[tuple[int, Remembered]]
    sheets: list[list[Dealt]]

    def deal(self, number: int, listing: Remembered) -> None:
        """Deal out a listing, and another one before it, or between its parts, where that one fills a column."""
        cursor, start, piece, part = self.cursor, 0, 0, 0
        end = (0, cursor.box)
        while (laid := listing.laid(cursor.box.width_mm, start)).rows:
            head = (title_piece(listing.title, part > 0, cursor.box.width_mm, self.manner.language), laid.head)
            rest = [laid.rows[0][piece:], *laid.rows[1:]]
            rows, pieces = self._fit(listing, rest, _height_mm([head]), part)
            if rows == pieces == 0:
                if not self._fills():
                    cursor.advance()
                continue
            if part:
                self._go_on(f"block-{number}-{part}-continued", listing, *end)
            part += 1
            end_count = start + rows * laid.per_row_count
            self._put(f"block-{number}-{part}", listing, (*head, *_taken(rest, rows, pieces)), end_count)
            end = (cursor.sheet_index, cursor.box._replace(top_mm=cursor.y_mm))
            piece = pieces if rows else piece + pieces
            if rows < len(rest):
                if piece >= len(laid.rows[rows]):
                    rows, piece = rows + 1, 0
                cursor.advance()
            start += rows * laid.per_row_count

    def _fit(self, listing: Remembered, rest: Sequence[Sequence[Piece]], heads_mm: float, part: int) -> tuple[int, int]:
        """Return how many whole rows of the rest, and pieces of the next one, go into the column."""
        if not _wide_enough(self.cursor, listing):
            return 0, 0
        together_mm = WHOLE_MM if listing.is_whole else self.manner.together_mm
        return _fit(self.cursor, rest, heads_mm, 0.0 if part else together_mm)

    def _fills(self) -> bool:
        """Deal out a listing that fits into what is left of the column; return whether there is one.

        It fits whole, or is a long one of which a worthwhile part does, but not on the first sheet.
        """
        filler = _filler(self.cursor, self.waiting) if self.cursor.in_rest or self.manner.fill else None
        if filler is None and self.manner.fill and (self.cursor.in_between or not self.cursor.in_rest):
            filler = _parted_filler(self.cursor, self.waiting)
        if filler is not None:
            self.deal(*self.waiting.pop(filler))
        return filler is not None

    def _put(self, key: str, listing: Remembered, taken: tuple[Piece, ...], end_count: int) -> None:
        """Put a part at the cursor. end_count: as of what is dealt."""
        cursor = self.cursor
        if not cursor.empty:
            cursor.y_mm += BETWEEN_MM
        while len(self.sheets) <= cursor.sheet_index:
            self.sheets.append([])
        at = (cursor.box.left_mm, cursor.y_mm)
        dealt = Dealt(key, listing, at, taken, end_count=end_count, width_mm=cursor.box.width_mm)
        self.sheets[cursor.sheet_index].append(dealt)
        cursor.y_mm += _height_mm([taken])

    def _go_on(self, key: str, listing: Remembered, sheet_index: int, below: Box) -> None:
        """Say below a part on which sheet it goes on, where that is another one. below: what is left of its column."""
        number = self.cursor.sheet_index
        if number != sheet_index:
            words = _continued(below, number + 1, self.manner.language)
            self.sheets[sheet_index].append(Dealt(key, listing, words=(words,)))


def _continued(below: Box, sheet_number: int, language: Language) -> Stroke:
    """Return the words below a part that goes on elsewhere. below: what is left of its column."""
    baseline = below.top_mm + PADDING_MM + ascent_mm(TEXT_MM)
    text = language.say(phrase("continued on sheet {number}", number=sheet_number))
    return right_aligned(text, (below.right_mm, baseline), TEXT_MM)


def _wide_enough(cursor: _Cursor, listing: Remembered) -> bool:
    """Return whether a column is as wide as a listing wants; the columns of further sheets always are."""
    return not cursor.in_rest or cursor.box.width_mm >= listing.least_width_mm


def _filler(cursor: _Cursor, waiting: Sequence[tuple[int, Remembered]]) -> int | None:
    """Return which waiting listing fits whole into what is left of a column, None for none.

    The first sheet is the one that is read, so its room is used before the order of the listings is kept.
    """
    room_mm = cursor.box.bottom_mm - cursor.y_mm - (0.0 if cursor.empty else BETWEEN_MM)
    for place, (_, listing) in enumerate(waiting):
        if not _wide_enough(cursor, listing):
            continue
        title = title_piece(listing.title, False, cursor.box.width_mm, ENGLISH)
        if title.height_mm + listing.least_height_mm > room_mm:
            continue
        laid = listing.laid(cursor.box.width_mm)
        if laid.rows and title.height_mm + laid.head.height_mm + _height_mm(laid.rows) <= room_mm:
            return place
    return None


def _parted_filler(cursor: _Cursor, waiting: Sequence[tuple[int, Remembered]]) -> int | None:
    """Return which waiting listing is so long that a worthwhile part of it stands in a column, None for none."""
    for place, (_, listing) in enumerate(waiting):
        if listing.is_whole or not _wide_enough(cursor, listing):
            continue
        laid = listing.laid(cursor.box.width_mm)
        if _height_mm(laid.rows) > LONG_MM:
            title = title_piece(listing.title, False, cursor.box.width_mm, ENGLISH)
            count, _ = _fit(cursor, laid.rows, title.height_mm + laid.head.height_mm, 0.0)
            if _height_mm(laid.rows[:count]) >= WORTH_MM:
                return place
    return None
