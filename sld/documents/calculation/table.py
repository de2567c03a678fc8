"""The ratings of circuits as a table: equal ones of equal devices once, the designations as a range."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import field

from sld.documents.calculation.circuits import Circuits, Rated
from sld.documents.calculation.owned import of_owners, unowned, with_ranges
from sld.documents.cell import EMPTY, Cell, State, by_ratings, computed, designated, given
from sld.documents.section import Column, Table
from sld.frozen import dataclass, replace
from sld.layout.diagram.ranges import joined
from sld.quantity import Given, Rating
from sld.steps import Ratings
from sld.words import Phrase, Said, Sayable, Value, amount, phrase, sequence, verbatim
from sld.words.plain import Plain

__all__ = ["table"]

_COLUMNS = (
    Column(phrase("Designation"), 1.0),
    Column(phrase("Quantity"), below=True),
    Column(phrase("Symbol")),
    Column(phrase("Result"), below=True),
    Column(phrase("Formula"), 2.0),
    Column(phrase("Numbers put in"), below=True),
    Column(phrase("Governed by"), below=True),
    Column(phrase("Source"), below=True),
    Column(phrase("Row of the table"), below=True),
    Column(phrase("Assumed"), below=True),
)

_GOVERNED_BY = "governed by"


@dataclass(slots=True)
class _Row:
    """What is told of one value, but for whose it is: the cells behind the designation, in the order of the columns."""

    cells: tuple[Cell, ...]
    devices: list[Rated] = field(default_factory=list)


def table(circuits: Circuits, ratings: Ratings) -> Table:
    """Return every rating of some circuits, by device in their order, the values of one quantity together."""
    slots: dict[object, dict[object, dict[object, _Row]]] = {}
    for rated in circuits.rated:
        quantities = slots.setdefault(rated.slot, {})
        for quantity, cells in _told(rated, ratings):
            like = tuple(cell.text for cell in cells)
            quantities.setdefault(quantity, {}).setdefault(like, _Row(cells)).devices.append(rated)
    rows = [row for slot in slots.values() for quantity in slot.values() for row in quantity.values()]
    return Table(circuits.name, circuits.title, _COLUMNS, tuple(_cells(row) for row in rows))


def _cells(row: _Row) -> tuple[Cell, ...]:
    """Return the cells of a row, with the designations of all devices that it tells of and of their owners."""
    owners = [rated.owner for rated in row.devices]
    told = (replace(cell, text=of_owners(cell.text, owners)) if cell != EMPTY else cell for cell in row.cells)
    return (_whose(row.devices), *told)


def _whose(devices: Sequence[Rated]) -> Cell:
    names = [rated.designation for rated in devices if isinstance(rated.designation, str)]
    return designated(joined(names)) if names else given(_sayable(devices[0].designation))


def _told(rated: Rated, ratings: Ratings) -> Iterator[tuple[object, tuple[Cell, ...]]]:
    """Yield what is told of each rating, of each result in words, and of each that has no value."""
    for symbol, rating in ratings.by_symbol(rated.key).items():
        yield symbol, _rating(rating, rated.owner)
    for word, stated in ratings.words_of(rated.key):
        yield word, _in_words(stated, rated.owner)
    for missing, why in ratings.missing_of(rated.key):
        none = Cell(phrase("no value"), State.NOT_APPLICABLE, why=Plain(why))
        quantity = (computed(_sayable(missing.meaning)), computed(_sayable(missing.printed)), none)
        yield ("none", missing), (*quantity, EMPTY, EMPTY, EMPTY, computed(Plain(why)), EMPTY, EMPTY)


def _rating(rating: Rating, owner: str) -> tuple[Cell, ...]:
    governing = [each.value for each in rating.given if each.name == _GOVERNED_BY]
    inputs = with_ranges([each for each in rating.given if each.name != _GOVERNED_BY])
    value = verbatim(rating.trade_name) if rating.trade_name else amount(rating.value, rating.unit)

    def cell(*said: Said) -> Cell:
        kept = [unowned(_sayable(each), owner) for each in said if each]
        return by_ratings(sequence(kept, "; "), rating) if kept else EMPTY

    return (
        cell(rating.symbol.meaning),
        cell(rating.symbol.printed),
        by_ratings(value, rating),  # its marks stand beside it, in the columns of clause and row
        cell(rating.formula),
        cell(*inputs),
        cell(*(phrase("governed by: {what}", what=_value(what)) for what in governing)),
        cell(rating.clause),
        cell(rating.table_row),
        cell(*(phrase("assumed: {what}", what=what) for what in rating.assumptions)),
    )


def _in_words(stated: Given, owner: str) -> tuple[Cell, ...]:
    said = (_sayable(stated.symbol), _value(stated.value), stated.origin)
    what, value, reason = (unowned(each, owner) for each in said)
    held = stated.value.values if isinstance(stated.value, Phrase) else ()
    behind = [each for _, each in held if isinstance(each, Rating)]
    result = by_ratings(value, *behind) if behind else computed(value)
    return computed(what), EMPTY, result, EMPTY, EMPTY, EMPTY, computed(reason), EMPTY, EMPTY


def _value(value: float | Value) -> Sayable:
    return amount(value) if isinstance(value, int | float) else _sayable(value)


def _sayable(said: Said) -> Sayable:
    return sequence([said], "")
