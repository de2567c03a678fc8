"""Cells and words for what the rules of a country say: the clause, its edition, where it was read, what it is worth."""

from __future__ import annotations

from sld.documents.cell import Cell, State
from sld.grid.entry import Condition, Entry, Limit
from sld.grid.evidence import Source, Standing
from sld.grid.outcome import told
from sld.grid.quantity import UNITS, WORDS, Quantity
from sld.quantity import Rating
from sld.words import Day, Phrase, Sayable, amount, phrase, sequence, verbatim

__all__ = ["condition", "laid_down", "outcome", "read_in", "rests_on", "value_of"]


def laid_down(entry: Entry, said: Sayable, ratings: tuple[Rating, ...] = ()) -> Cell:
    """Return a cell of what an entry says, known as well as its sources are."""
    state = State.LAID_DOWN if entry.standing is Standing.CONFIRMED else State.UNCONFIRMED
    return Cell(said, state, ratings, why=sequence([entry.cited, entry.standing.phrase], "; "))


def outcome(limit: Limit) -> Sayable:
    """Return what an entry leads to, with the form or paper by its name, and a share where it has one."""
    said: Phrase = told(limit.outcome)
    extra = [
        *([verbatim(limit.form)] if limit.form else ()),
        *([amount(limit.share_percent, "%")] if limit.share_percent is not None else ()),
    ]
    return phrase("{what} ({form})", what=said, form=sequence(extra)) if extra else said


def condition(each: Condition) -> Phrase:
    """Return a condition: quantity, sign and limit."""
    return phrase("{quantity} {sign} {limit}", quantity=WORDS[each.quantity], sign=each.sign.printed, limit=each.amount)


def value_of(quantity: Quantity, rating: Rating | None) -> Sayable:
    """Return the value of a quantity in the unit of its limits; nothing counts as zero."""
    unit, factor = UNITS[quantity]
    return amount((rating.value if rating else 0.0) / factor, unit, 4)


def read_in(source: Source) -> Sayable:
    """Return where something was read and when; the page of the country has all of an address."""
    if source.mark == "memory":
        return phrase("from memory")
    where = sequence([source.publisher or "", source.short_address])
    if source.seen_on is None:
        return where
    day = Day(source.seen_on.isoformat())
    return (
        phrase("{source}, seen on {day}", source=where, day=day)
        if source.mark == "primary"
        else phrase("{source}, restating it, seen on {day}", source=where, day=day)
    )


def rests_on(entry: Entry) -> Sayable:
    """Return all sources of an entry; of a replaced one, whose rule it is and why."""
    if entry.override is not None:
        return phrase("{by}: {reason}", by=entry.override.by, reason=entry.override.reason)
    return sequence([read_in(each) for each in entry.resolved], "; ")
