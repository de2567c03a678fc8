"""What is said of consecutive devices, as one: `-TB1-FC1` to `-TB60-FC1`, `input 1` to `input 10`.

Names and counts inside what is said are compared number by number (`ranges.py`), no two numbers of one word; all else
must be equal, or, where so much is asked, equal but for what follows from lengths (`Span`).
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from sld.layout.diagram import ranges
from sld.quantity import Rating
from sld.words import Amount, Sayable, Span, amount
from sld.words.names import names_in, with_names
from sld.words.phrase import Value

__all__ = ["Step", "advance", "between", "likeness", "measured_in", "pattern", "spanning"]

Step = tuple[tuple[int, int, int], ...]
"""Which of the names inside go on, in which word, and which number of it: all counted from 1."""


def pattern(said: Sayable) -> Value:
    """Return the same with each number in its names made `0`: what numbers things of one kind has the same."""
    return with_names(said, ranges.pattern)


def likeness(said: Sayable, *, names: bool = True) -> Value:
    """Return the same without what follows from lengths. names: without the numbers in names too."""
    return with_names(said, ranges.pattern if names else lambda name: name, _unmeasured)


def _unmeasured(said: Sayable) -> Sayable:
    return Span(Amount(0.0, said.least.unit), Amount(0.0, said.least.unit)) if isinstance(said, Span) else said


def measured_in(said: Value) -> list[Span]:
    """Return each value with a unit inside what is said, in order."""
    found: list[Span] = []

    def keep(each: Sayable) -> Sayable:
        found.extend(_measured(each))
        return each

    with_names(said, lambda name: name, keep)
    return found


def _measured(said: Sayable) -> tuple[Span, ...]:
    """Return the value that this is, none where it is something else or has a name of the trade."""
    if isinstance(said, Rating) and not said.trade_name:
        said = amount(said.value, said.unit)
    if isinstance(said, Amount):
        return (Span(said, said),)
    return (said,) if isinstance(said, Span) else ()


def spanning(every: Sequence[Sayable]) -> Sayable:
    """Return what is said of all: the same but for values with a unit, of which the two ends are said."""
    ends = iter([_ends(values) for values in zip(*map(measured_in, every), strict=True)])

    def spanned(each: Sayable) -> Sayable:
        if not _measured(each):
            return each
        found = next(ends)
        return each if found.least == found.greatest else found

    made = with_names(every[0], lambda name: name, spanned)
    assert not isinstance(made, str | int), "what is said stays what it is"
    return made


def _ends(values: Sequence[Span]) -> Span:
    least = min((each.least for each in values), key=lambda each: each.value)
    return Span(least, max((each.greatest for each in values), key=lambda each: each.value))


def advance(said: Sayable, after: Sayable) -> Step | None:
    """Return which number goes on from one to the other, both of one pattern; None where they differ otherwise."""
    found: list[tuple[int, int, int]] = []
    for place, names in enumerate(zip(names_in(said), names_in(after), strict=True), start=1):
        old_words, new_words = (name.split(" ") for name in names)
        for word, (old, new) in enumerate(zip(old_words, new_words, strict=True), start=1):
            number = ranges.advance(old, new)
            if number is None:
                return None
            if number:
                found.append((place, word, number))
    return tuple(found)


def between(first: Sayable, last: Sayable) -> Sayable:
    """Return what is said of a range, its numbers that differ written `first…last`. Both are of one pattern."""
    ends: Iterator[str] = iter(names_in(last))
    made = with_names(first, lambda name: ranges.between(name, next(ends)))
    assert not isinstance(made, str | int), "what is said stays what it is"
    return made
