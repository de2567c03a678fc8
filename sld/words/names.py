"""The names inside what is said: found, and changed one by one, without a look at any sentence around them."""

from __future__ import annotations

from collections.abc import Callable
from collections.abc import Sequence as Row
from operator import is_

from sld.words.phrase import Phrase, Sayable, Sequence, Unbroken, Value, Verbatim

__all__ = ["names_in", "renamed", "with_names"]


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
    if isinstance(said, Phrase):
        return _holding(said, tuple([(key, with_names(value, change, other)) for key, value in said.values]))
    if isinstance(said, Sequence):
        return Sequence(tuple([with_names(part, change, other) for part in said.parts]), said.separator, said.last)
    if isinstance(said, Unbroken):
        return Unbroken(with_names(said.what, change, other))
    return other(said)


def renamed(said: Value, change: Callable[[str], str]) -> Value:
    """Return the same with each name inside it changed, counts left as they are; itself where nothing changes."""
    match said:
        case str():
            return change(said)
        case Verbatim():
            text = change(said.text)
            return said if text == said.text else Verbatim(text)
        case Unbroken():
            what = renamed(said.what, change)
            return said if what is said.what else Unbroken(what)
        case Sequence():
            parts = tuple([renamed(part, change) for part in said.parts])
            return said if _are_same(parts, said.parts) else Sequence(parts, said.separator, said.last)
        case Phrase():
            old = [value for _, value in said.values]
            values = [renamed(value, change) for value in old]
            if _are_same(values, old):
                return said
            return _holding(said, tuple(zip([name for name, _ in said.values], values, strict=True)))
    return said


def _holding(said: Phrase, values: tuple[tuple[str, Value], ...]) -> Phrase:
    """Return a phrase with other values: many are changed, and `dataclasses.replace` takes several times as long."""
    return Phrase(said.text, values, said.context, said.plural, said.count)


def _are_same(values: Row[Value], others: Row[Value]) -> bool:
    """Return whether two rows of one length hold the same; most that are the same are so by identity."""
    return all(map(is_, values, others)) or all(
        a is b or (isinstance(a, str) and a == b) for a, b in zip(values, others, strict=True)
    )


def names_in(said: Value) -> list[str]:
    """Return each name inside what is said, in order."""
    found: list[str] = []

    def keep(name: str) -> str:
        found.append(name)
        return name

    with_names(said, keep)
    return found
