"""Numbers that can explain themselves, and the one way a number is written.

A `Rating` is a value with its unit, its symbol and the reason for it: the formula, the inputs, the clause and the table
row. Everything that is printed beside a device on the sheet is a `Rating`, so the print, the hover text, the schedule
and the tests read one object.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from decimal import ROUND_HALF_UP, Context, Decimal
from functools import lru_cache
from math import isfinite, isnan

__all__ = ["Given", "Rating", "pair", "shown"]

_SIGNIFICANT = 3
_LONGEST = 12
"""Characters of a number on paper: cells and labels are measured for them."""


@lru_cache(maxsize=65536)
def shown(value: float, digits: int = _SIGNIFICANT) -> str:
    """Write a number: `digits` significant ones, every digit before the point kept, halves away from zero.

    No text is longer than 12 characters: what does not fit loses digits, down to three, and is then written with a
    power of ten, 1.5e28. This is the only rounding in the project; nothing is rounded before it is written.
    """
    if not isfinite(value):
        return "undefined" if isnan(value) else "∞" if value > 0 else "-∞"
    exact = Decimal(repr(float(value)))
    if exact == 0:
        return "0"
    for kept in range(digits, min(digits, _SIGNIFICANT) - 1, -1):
        if -_LONGEST < exact.adjusted() < _LONGEST and len(text := _plain(exact, kept)) <= _LONGEST:
            return text
    kept = min(digits, _LONGEST - len("-.e-308"))
    mantissa, power = f"{Context(prec=kept, rounding=ROUND_HALF_UP).plus(exact):e}".split("e")
    return f"{_without_zeros(mantissa)}e{int(power)}"


def _plain(exact: Decimal, digits: int) -> str:
    """Write a number without a power of ten."""
    decimals = max(0, digits - 1 - exact.adjusted())
    return _without_zeros(f"{exact.quantize(Decimal(1).scaleb(-decimals), rounding=ROUND_HALF_UP):f}")


def _without_zeros(text: str) -> str:
    return text.rstrip("0").rstrip(".") if "." in text else text


def pair(left: float, right: float) -> tuple[str, str]:
    """Write two compared numbers with as many digits as it takes to tell them apart (1000.4 against 1000)."""
    for digits in range(_SIGNIFICANT, 12):
        texts = shown(left, digits), shown(right, digits)
        if texts[0] != texts[1] or left == right:
            return texts
    return shown(left, 15), shown(right, 15)


@dataclass(frozen=True, slots=True)
class Given:
    """One input of a formula. `origin` is empty for a value of the spec, else says where it came from."""

    symbol: str
    value: float | str
    unit: str = ""
    origin: str = ""

    def __str__(self) -> str:
        value = self.value if isinstance(self.value, str) else shown(self.value, 4)
        text = f"{self.symbol} = {value} {self.unit}".rstrip()
        return f"{text} ({self.origin})" if self.origin else text


@dataclass(frozen=True, slots=True)
class Rating:
    """A computed or chosen number and why it is that number.

    symbol: as it is printed (`Uoc,max`); value in `unit`; formula in the symbols of `given`; clause: the source of the
    formula (standard, clause, edition, or "common practice"); table_row: the row of a table in `sld/tables`, if one was
    read; assumptions: what had to be assumed, in words fit for the sheet; trade_name: what the trade calls the
    value where it has a name for it and no number, such as 10 AWG; it is printed instead of value and unit.
    """

    symbol: str
    value: float
    unit: str
    formula: str
    given: tuple[Given, ...]
    clause: str
    table_row: str = ""
    assumptions: tuple[str, ...] = ()
    trade_name: str = ""

    def __str__(self) -> str:
        return f"{self.symbol} = {self.quantity()}"

    def quantity(self) -> str:
        """Return value and unit alone: `812 V`, or the trade name: `10 AWG`."""
        return self.trade_name or f"{shown(self.value)} {self.unit}".rstrip()

    def trace(self) -> str:
        """Return the whole reason on one line: value, formula, inputs, clause, table row, assumptions."""
        parts = [f"{self} = {self.formula}", "; ".join(map(str, self.given)), self.clause, self.table_row]
        parts += [f"assumed: {text}" for text in self.assumptions]
        return " | ".join(part for part in parts if part)

    def input(self, symbol: str) -> float | str:
        """Return the value of one input. Raises KeyError where there is no such input."""
        for given in self.given:
            if given.symbol == symbol:
                return given.value
        raise KeyError(symbol)

    def assuming(self, *texts: str) -> Rating:
        """Return the same rating with assumptions added."""
        return replace(self, assumptions=(*self.assumptions, *texts))
