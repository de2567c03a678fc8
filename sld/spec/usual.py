"""What is usual for a key: an example of it, and the range outside of which a value is asked about.

`Annotated[Watts, Usual("12 kW", "100 W", "10 MW")]` stands in the field itself, so that the reader, the page of the
spec language and the tests have it from one place. A value outside is not impossible: it is refused with a question,
and taken where the spec accepts it in writing (`accept` with code SP41). Where a range comes from stands beside it; one
without a source is common practice, and wide enough for what is built.
"""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal
from math import isinf
from typing import Annotated, Any, get_args, get_origin

from pydantic.fields import FieldInfo

from sld.frozen import dataclass
from sld.spec.measure import convert, measure
from sld.words import Amount, Phrase, amount, listing, phrase

__all__ = ["Doubt", "Usual", "doubt_of", "doubt_of_ratio", "marks_of"]

_SAME = 1e-9
"""Share by which a converted value may miss a bound and still stand at it."""


def _parts(written: str) -> tuple[Decimal, str]:
    number, _, unit = written.partition(" ")
    return Decimal(number), unit


def _said(written: str) -> Amount:
    number, unit = _parts(written)
    return amount(float(number), unit, 6)


@dataclass(frozen=True, slots=True)
class Usual:
    """An example of a key and its usual range, ends included, as they are written in a spec.

    low, high: empty where that end is open. among: the only usual values, instead of a range.
    """

    example: str
    low: str = ""
    high: str = ""
    among: tuple[str, ...] = ()

    def holds(self, value: float, unit: str) -> bool:
        """Return whether a value in a unit is usual. Raises ValueError for a unit of another kind."""
        if self.among:
            return any(_near(value, convert(*_parts(each), unit)) for each in self.among)
        low, high = (convert(*_parts(end), unit) if end else None for end in (self.low, self.high))
        at_end = any(_near(value, end) for end in (low, high) if end is not None)
        return at_end or ((low is None or value >= low) and (high is None or value <= high))

    @property
    def bounded(self) -> bool:
        """Return whether any value is unusual."""
        return bool(self.low or self.high or self.among)

    def __str__(self) -> str:
        """Return the range in words, empty without one: `100 W to 10 MW`."""
        if self.among:
            return " or ".join(self.among)
        if self.low and self.high:
            return f"{self.low} to {self.high}"
        return f"at least {self.low}" if self.low else f"at most {self.high}" if self.high else ""


def _near(one: float, other: float) -> bool:
    return abs(one - other) <= _SAME * max(abs(one), abs(other))


@dataclass(frozen=True, slots=True)
class Doubt:
    """An unusual value of a block. key: of the block, or `block.key`. said: what is unusual. asked: the question."""

    key: str
    said: Phrase
    asked: str


def marks_of(field: FieldInfo) -> Iterator[Any]:
    """Yield the marks of a field: those of its annotation, and those of the members of a union."""
    for mark in field.metadata:
        yield from marks_of(mark) if isinstance(mark, FieldInfo) else (mark,)
    yield from _inside(field.annotation)


def _inside(annotation: Any) -> Iterator[Any]:
    if get_origin(annotation) is Annotated:
        inner, *marks = get_args(annotation)
        yield from _inside(inner)
        yield from marks
    elif get_origin(annotation) is not None:
        for part in get_args(annotation):
            if get_origin(part) is Annotated:
                yield from _inside(part)


def doubt_of(key: str, value: float, unit: str, usual: Usual, asked: str = "") -> Doubt | None:
    """Return the doubt about a value in a unit, None where it is usual. asked: a question that fits better."""
    if usual.holds(value, unit):
        return None
    return Doubt(key, _unusual(key, _in_scale(value, unit, usual), usual), asked or _question(value, unit, usual))


def _in_scale(value: float, unit: str, usual: Usual) -> Amount:
    """Return a value in the unit of the upper end, or else of the lower, in which it is not below 1: 10 kV, not
    10000 V, beside 2 kV."""
    for end in (usual.high, usual.low):
        other = _parts(end)[1] if end else unit
        there = float(convert(Decimal(repr(value)), unit, other))
        if abs(there) >= 1:
            return amount(there, other, 6)
    return amount(value, unit, 6)


def _unusual(key: str, value: Amount, usual: Usual) -> Phrase:
    name = f"`{key}`"
    if usual.among:
        values = listing(_said(each) for each in usual.among)
        return phrase("{key} is {value}; usual values: {values}", key=name, value=value, values=values)
    if not usual.high:
        return phrase("{key} is {value}; usual is at least {low}", key=name, value=value, low=_said(usual.low))
    if not usual.low:
        return phrase("{key} is {value}; usual is at most {high}", key=name, value=value, high=_said(usual.high))
    low, high = _said(usual.low), _said(usual.high)
    return phrase("{key} is {value}; usual is {low} to {high}", key=name, value=value, low=low, high=high)


def doubt_of_ratio(key: str, what: Phrase, ratio: float, bounds: tuple[float, float], asked: str) -> Doubt | None:
    """Return the doubt about a ratio of two values, None where it is within its bounds. what: the ratio in words."""
    low, high = bounds
    if low <= ratio <= high:
        return None
    if isinf(high):
        said = phrase("{what}: {ratio}; usual is at least {low}", what=what, ratio=amount(ratio), low=amount(low))
        return Doubt(key, said, asked)
    values = {"ratio": amount(ratio), "low": amount(low), "high": amount(high)}
    if low:
        return Doubt(key, phrase("{what}: {ratio}; usual is {low} to {high}", what=what, **values), asked)
    del values["low"]
    return Doubt(key, phrase("{what}: {ratio}; usual is at most {high}", what=what, **values), asked)


def _question(value: float, unit: str, usual: Usual) -> str:
    """Ask for the slip that is most likely: of the unit, of the sign, of a digit, of the key."""
    for factor, other in ((1000, _larger(unit)), (0.001, _smaller(unit))):
        if other and usual.holds(value * factor, unit):
            return f"is the unit missing, or is it meant in {other}?"
    if unit == "%/K" and usual.holds(100 * value, unit):
        return "is it a share and not a percentage?"
    if (value < 0 or usual.low) and usual.holds(-value, unit):
        return "is the sign right?"
    if unit == "%/K":
        return "is the unit right?"
    if any(usual.holds(value * factor, unit) for factor in (0.1, 10, 0.01, 100, 0.001, 1000)):
        return "is the decimal point in the right place?"
    return "is it the value of another key?"


def _larger(unit: str) -> str:
    """Return the unit a thousand times as large, empty where none is in use."""
    other = unit[1:] if unit[0] == "m" and unit not in ("m", "mm2") else f"k{unit}"
    return other if measure(other) and unit != other else ""


def _smaller(unit: str) -> str:
    """Return the unit a thousandth as large, empty where none is in use."""
    other = unit[1:] if unit[0] == "k" else f"m{unit}"
    return other if measure(other) and unit != other else ""
