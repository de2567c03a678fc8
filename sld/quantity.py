"""Numbers that can explain themselves, and the one way a number is written.

A `Rating` is a value with its unit, its symbol and the reason for it: the formula, the inputs, the clause and the table
row. Everything that is printed beside a device on the sheet is a `Rating`, so the print, the hover text, the schedule
and the tests read one object.
"""

from __future__ import annotations

from collections.abc import Callable
from enum import Enum
from typing import Any

from sld.frozen import dataclass, replace
from sld.number import pair, shown
from sld.words import ENGLISH, NOTHING, Phrase, Sayable, Value, amount, phrase, sequence
from sld.words.names import renamed
from sld.words.phrase import NO_BREAK, Speaker

__all__ = ["Given", "LetterSymbol", "Origin", "Rating", "pair", "shown"]


class Origin(Enum):
    """How a value came about."""

    GIVEN = "given"
    """The spec says it."""
    COMPUTED = "computed"
    """By a formula, or read from a table."""
    CHOSEN = "chosen"
    """A standard value that fits, because the spec leaves it out."""
    ASSUMED = "assumed"
    """A usual value, because the spec leaves it out and nothing follows from the rest."""


class LetterSymbol(Enum):
    """The letter symbol of a quantity (IEC 60027): how it is printed, its unit, its meaning in words.

    The members are in `sld.ratings.symbol`. Each is itself and nothing else: two that are printed alike are not equal.
    """

    def __init__(self, printed: str, unit: str, meaning: Phrase) -> None:
        self.printed = printed
        self.unit = unit
        self.meaning = meaning

    __hash__ = object.__hash__  # that of `Enum` is called in Python, for each rating that is kept or asked for

    def __str__(self) -> str:
        return self.printed

    def said(self, speaker: Speaker) -> str:
        """Return the letters, which are the same in every language."""
        return self.printed


@dataclass(frozen=True, slots=True)
class Given:
    """One input of a formula. `origin` is empty for a value of the spec, else says where it came from.

    symbol, value: a letter symbol, a designation, a number or the code of a table as text; what is words is a phrase.
    """

    symbol: Phrase | str
    value: float | Value
    unit: str = ""
    origin: Sayable = NOTHING

    @property
    def name(self) -> str:
        """Return what the input is asked for by: its symbol, or the English of its words."""
        return self.symbol if isinstance(self.symbol, str) else self.symbol.text

    @property
    def number(self) -> float:
        """Return the value of an input that is a number. Raises TypeError for one in words."""
        if not isinstance(self.value, int | float):
            raise TypeError(f"{self.name} is no number")
        return float(self.value)

    def with_names(self, named: Callable[[Value], Any]) -> Given:
        """Return the same input with what names something changed; itself where that changes nothing."""
        value = self.value if isinstance(self.value, int | float) else named(self.value)
        symbol, origin = named(self.symbol), named(self.origin)
        if symbol == self.symbol and value is self.value and origin is self.origin:
            return self
        return Given(symbol, value, self.unit, origin)

    def __str__(self) -> str:
        return ENGLISH.say(self)

    def said(self, speaker: Speaker) -> str:
        """Return symbol, value and unit, and where the value came from."""
        value = amount(self.value, self.unit, 4) if isinstance(self.value, int | float) else self.value
        text = sequence([self.symbol, " = ", value], "").said(speaker)
        origin = self.origin.said(speaker)
        return f"{text} ({origin})" if origin else text


@dataclass(frozen=True, slots=True)
class Rating:
    """A computed or chosen number and why it is that number.

    symbol: of what it is the value, printed `Uoc,max`; value in `unit`; formula in the symbols of `given`, a phrase
    where it holds words; clause: the source of the formula, see `sld.citation`; table_row: the row of a table in
    `sld/tables`, if one was read; assumptions: what had to be assumed, in words fit for the sheet; trade_name: what the
    trade calls the value where it has a name for it and no number, such as 10 AWG; printed instead of value and unit.
    origin: how the value came about. passed_over: the standard values next to a chosen one that do not do, each with
    why.
    """

    symbol: LetterSymbol
    value: float
    unit: str
    formula: Sayable | str
    given: tuple[Given, ...]
    clause: Sayable
    table_row: Sayable = NOTHING
    assumptions: tuple[Sayable, ...] = ()
    trade_name: str = ""
    origin: Origin = Origin.COMPUTED
    passed_over: tuple[Sayable, ...] = ()

    def __hash__(self) -> int:
        """Of what tells most ratings apart, which takes a tenth of the time that all of it takes.

        Equal values of different devices are told apart by their first input, which names the device.
        """
        return hash((self.symbol, self.value, self.unit, self.given[0].name if self.given else ""))

    def __str__(self) -> str:
        return f"{self.symbol} = {self.quantity()}"

    def said(self, speaker: Speaker) -> str:
        """Return value and unit alone, `812 V`, or the trade name, `10 AWG`."""
        return self.trade_name.replace(" ", NO_BREAK) or amount(self.value, self.unit).said(speaker)

    def quantity(self) -> str:
        """Return value and unit alone in English."""
        return ENGLISH.say(self)

    def trace(self) -> Sayable:
        """Return the whole reason on one line: value, formula, inputs, clause, table row, assumptions."""
        value = sequence([self.symbol, " = ", self, " = ", self.formula], "")
        assumed = (phrase("assumed: {what}", what=text) for text in self.assumptions)
        return sequence([value, sequence(self.given, "; "), self.clause, self.table_row, *assumed], " | ")

    def input(self, symbol: str) -> float | Value:
        """Return the value of one input. Raises KeyError where there is no such input."""
        for given in self.given:
            if given.name == symbol:
                return given.value
        raise KeyError(symbol)

    def number(self, symbol: str) -> float:
        """Return one input that is a number. Raises KeyError where there is none such."""
        for given in self.given:
            if given.name == symbol and isinstance(given.value, int | float):
                return float(given.value)
        raise KeyError(symbol)

    def as_input(self, origin: Sayable = NOTHING) -> Given:
        """Return this rating as an input of another formula. origin: where it came from."""
        return Given(str(self.symbol), self.value, self.unit, origin)

    def by_formula(self) -> Given:
        """Return this rating as an input of another formula that says how it was come by."""
        return self.as_input(sequence([self.formula]))

    def with_names(self, change: Callable[[str], str]) -> Rating:
        """Return the same rating with each name in it changed; itself where that changes nothing."""

        def named(value: Value) -> Any:
            return renamed(value, change)

        given = tuple([each.with_names(named) for each in self.given])
        assumptions = tuple([named(each) for each in self.assumptions])
        formula, table_row = named(self.formula), named(self.table_row)
        old = (self.formula, self.table_row, *self.given, *self.assumptions)
        if all(
            new is each or new == each
            for new, each in zip((formula, table_row, *given, *assumptions), old, strict=True)
        ):
            return self
        return replace(self, formula=formula, given=given, table_row=table_row, assumptions=assumptions)

    def assuming(self, *what: Sayable) -> Rating:
        """Return the same rating with assumptions added."""
        return replace(self, assumptions=(*self.assumptions, *what))
