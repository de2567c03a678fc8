"""What is said of consecutive devices, as one: `-TB1-FC1` to `-TB60-FC1`, `input 1` to `input 10`.

Names and counts inside what is said are compared number by number (`ranges.py`); all else must be equal.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.layout.diagram import ranges
from sld.words import Sayable
from sld.words.names import names_in, with_names
from sld.words.phrase import Value

__all__ = ["Step", "advance", "between", "pattern"]

Step = tuple[int, int]
"""Which of the names inside goes on, and which number of it: both counted from 1, (0, 0) where nothing does."""


def pattern(said: Sayable) -> Value:
    """Return the same with each number in its names made `0`: what numbers things of one kind has the same."""
    return with_names(said, ranges.pattern)


def advance(said: Sayable, after: Sayable) -> Step | None:
    """Return which number goes on from one to the other, both of one pattern; None where they differ otherwise."""
    found = (0, 0)
    for place, (old, new) in enumerate(zip(names_in(said), names_in(after), strict=True), start=1):
        number = ranges.advance(old, new)
        if number is None or (number and found != (0, 0)):
            return None
        if number:
            found = (place, number)
    return found


def between(first: Sayable, last: Sayable) -> Sayable:
    """Return what is said of a range, its numbers that differ written `first…last`. Both are of one pattern."""
    ends: Iterator[str] = iter(names_in(last))
    made = with_names(first, lambda name: ranges.between(name, next(ends)))
    assert not isinstance(made, str | int), "what is said stays what it is"
    return made
