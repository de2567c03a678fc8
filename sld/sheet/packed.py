"""Listings put whole into columns, in whatever order they fit, and what is too long into what they leave."""

from __future__ import annotations

from collections.abc import Sequence

from sld.frozen import dataclass
from sld.sheet.first_sheet import belongs_on_it
from sld.sheet.flow import BETWEEN_MM, LONG_MM, Dealt, Manner, Remembered, flow
from sld.sheet.listings.laid import Piece, title_piece
from sld.symbols.stroke import Box

__all__ = ["packed"]

_TRIES_COUNT = 800
"""So many times a listing is put somewhere before the search is given up."""

_Whole = tuple[int, Remembered]
"""A listing with its number among all."""


def packed(
    listings: Sequence[Remembered], sheets: Sequence[Sequence[Box]], page: Sequence[Box], manner: Manner
) -> tuple[tuple[Dealt, ...], ...] | None:
    """Return the listings dealt out over no more than these sheets, None where no way was found.

    sheets: the columns of each. page: those of a sheet without a diagram. What belongs on the first sheet stands there,
    no listing is parted that is not long, and in a column they stand in their order.
    """
    numbered = [each for each in enumerate(listings, 1) if each[1].laid(page[0].width_mm).rows]
    long = [each for each in numbered if _may_be_parted(each[1], page[0].width_mm)]
    whole = [each for each in numbered if each not in long]
    search = _Search(manner, [(n, box) for n, boxes in enumerate(sheets) for box in boxes], page[0].width_mm)
    if not search.has_area(numbered) or not search.put(search.in_order(whole)):
        return None
    dealt, left = search.dealt(len(sheets))
    if long:
        parts = flow([each for _, each in long], left[0], page, manner, left[1:])
        if len(parts) > len(sheets):
            return None
        for sheet, further in zip(dealt, parts, strict=False):
            sheet.extend(further)
    return tuple(map(tuple, dealt))


def _may_be_parted(listing: Remembered, width_mm: float) -> bool:
    """Return whether a listing is so long that it may go on elsewhere."""
    return not (listing.is_whole or belongs_on_it(listing.name)) and _rows_mm(listing, width_mm) > LONG_MM


def _rows_mm(listing: Remembered, width_mm: float) -> float:
    return sum(piece.height_mm for row in listing.laid(width_mm).rows for piece in row)


@dataclass()
class _Search:
    """What stands in which column. columns: with the sheet of each. width_mm: of those without a diagram."""

    manner: Manner
    columns: Sequence[tuple[int, Box]]
    width_mm: float

    def __post_init__(self) -> None:
        self.held: list[list[_Whole]] = [[] for _ in self.columns]
        self.room_mm = [box.height_mm + BETWEEN_MM for _, box in self.columns]
        self.tries_count = 0
        self.known_mm: dict[tuple[int, float], float] = {}

    def has_area(self, numbered: Sequence[_Whole]) -> bool:
        """Return whether the columns are large enough for all listings."""
        least_mm2 = sum(self._needs_mm(each, self.width_mm) for _, each in numbered) * self.width_mm
        return least_mm2 - 1.0 <= sum((box.height_mm + BETWEEN_MM) * box.width_mm for _, box in self.columns)

    def in_order(self, whole: Sequence[_Whole]) -> list[_Whole]:
        """Return listings as they are to be put: what belongs on the first sheet, then the highest."""
        return sorted(
            whole, key=lambda each: (not belongs_on_it(each[1].name), -self._needs_mm(each[1], self.width_mm))
        )

    def put(self, waiting: Sequence[_Whole]) -> bool:
        """Put all that wait; return whether there was a way."""
        if not waiting:
            return True
        (number, listing), *others = waiting
        for place, (sheet, box) in enumerate(self.columns):
            if self.tries_count >= _TRIES_COUNT or (sheet and belongs_on_it(listing.name)):
                return False
            if box.width_mm < min(listing.least_width_mm, self.width_mm - 0.01):
                continue
            if listing.least_height_mm > self.room_mm[place]:  # no need to lay it out
                continue
            needs_mm = self._needs_mm(listing, box.width_mm)
            if needs_mm <= self.room_mm[place] + 1e-6:
                self.tries_count += 1
                self.held[place].append((number, listing))
                self.room_mm[place] -= needs_mm
                if self.put(others):
                    return True
                self.held[place].pop()
                self.room_mm[place] += needs_mm
        return False

    def _pieces(self, listing: Remembered, width_mm: float) -> tuple[Piece, ...]:
        laid = listing.laid(width_mm)
        title = title_piece(listing.title, False, width_mm, self.manner.language)
        return (title, laid.head, *(piece for row in laid.rows for piece in row))

    def _needs_mm(self, listing: Remembered, width_mm: float) -> float:
        """Return the height of a listing with what is between it and the next one."""
        key = (id(listing), width_mm)
        if key not in self.known_mm:
            pieces = self._pieces(listing, width_mm)
            self.known_mm[key] = sum(piece.height_mm for piece in pieces) + BETWEEN_MM
        return self.known_mm[key]

    def dealt(self, sheets_count: int) -> tuple[list[list[Dealt]], list[list[Box]]]:
        """Return what stands on each sheet, and the columns that are left there."""
        found: list[list[Dealt]] = [[] for _ in range(sheets_count)]
        left: list[list[Box]] = [[] for _ in range(sheets_count)]
        for (sheet, box), held in zip(self.columns, self.held, strict=True):
            y_mm = box.top_mm
            for number, listing in sorted(held, key=lambda each: each[0]):
                laid, pieces = listing.laid(box.width_mm), self._pieces(listing, box.width_mm)
                count = len(laid.rows) * laid.per_row_count
                at, key = (box.left_mm, y_mm), f"block-whole-{number}"
                found[sheet].append(Dealt(key, listing, at, pieces, (), count, box.width_mm))
                y_mm += sum(piece.height_mm for piece in pieces) + BETWEEN_MM
            left[sheet].append(box._replace(top_mm=min(y_mm, box.bottom_mm)))
        return found, left
