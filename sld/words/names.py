"""The names inside what is said: found, and changed one by one, without a look at any sentence around them."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from sld.words.phrase import Phrase, Sayable, Sequence, Unbroken, Value, Verbatim

__all__ = ["names_in", "with_names"]


def with_names(
    said: Value, change: Callable[[str], str], other: Callable[[Sayable], Sayable] = lambda said: said
) -> Value:  # fmt: skip
    """Return the same with each name inside it changed, a count being one too.

    other: applied to what has no names and is no phrase: amounts, ratings.
    """
    if isinstance(said, str | int):
        return change(str(said))
    if isinstance(said, Verbatim):
        return Verbatim(change(said.text))
    if isinstance(said, Unbroken):
        return replace(said, what=with_names(said.what, change, other))
    if isinstance(said, Sequence):
        return replace(said, parts=tuple(with_names(part, change, other) for part in said.parts))
    if isinstance(said, Phrase):
        return replace(said, values=tuple((key, with_names(value, change, other)) for key, value in said.values))
    return other(said)


def names_in(said: Value) -> list[str]:
    """Return each name inside what is said, in order."""
    found: list[str] = []

    def keep(name: str) -> str:
        found.append(name)
        return name

    with_names(said, keep)
    return found
