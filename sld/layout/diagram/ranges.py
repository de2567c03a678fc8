"""Consecutive designations written as one: `-TB1-FC1` to `-TB60-FC1` is `-TB1…60-FC1`."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from functools import lru_cache
from itertools import pairwise

__all__ = ["advance", "between", "counts_up", "joined", "listed", "members", "pattern", "reaches"]

_NUMBER = re.compile(r"([0-9]+(?:…[0-9]+)?)")
_LEAST_COUNT = 3
"""Fewer designations are listed one by one."""


@lru_cache(maxsize=4096)
def _parts(text: str) -> tuple[str, ...]:
    """Return the text cut into words and numbers (or ranges) in turn, a word, perhaps empty, first and last."""
    return tuple(_NUMBER.split(text))


def _first_last(number: str) -> tuple[str, str]:
    """Return the two ends of a range; of a plain number, the number twice."""
    first, _, last = number.partition("…")
    return first, last or first


def pattern(text: str) -> str:
    """Return the text with each number or range made `0`: texts that number things of one kind have the same."""
    return "0".join(_parts(text)[::2])


def advance(text: str, after: str) -> int | None:
    """Return which number of a text, counted from 1, goes on in the text after it; 0 where the two are equal.

    `-GC3` goes on after `-GC2`, `-GC5…8` after `-GC1…4`. None where the two differ otherwise, so that they cannot be
    written as one range.
    """
    if text == after:
        return 0
    old, new = _parts(text), _parts(after)
    if len(old) != len(new):
        return None
    place = -1
    for number, (a, b) in enumerate(zip(old, new, strict=True)):
        if a != b:
            if place >= 0 or number % 2 == 0:
                return None
            place = number
    (first, last), (next_first, next_last) = _first_last(old[place]), _first_last(new[place])
    follows = int(next_first) == int(last) + 1 and int(next_last) - int(next_first) == int(last) - int(first)
    return (place + 1) // 2 if follows else None


def counts_up(texts: Sequence[str]) -> bool:
    """Return whether each of several texts goes on from the one before, all in the same number."""
    number = advance(texts[0], texts[1])
    if not number:
        return False
    parts = _parts(texts[0])
    head, tail = "".join(parts[: 2 * number - 1]), "".join(parts[2 * number :])
    begun = parts[2 * number - 1]
    return begun.isdigit() and all(text == f"{head}{at}{tail}" for at, text in enumerate(texts, start=int(begun)))


def reaches(first: str, last: str, steps_count: int) -> bool:
    """Return whether a text is so many numbers behind another one, in one of its numbers and equal otherwise."""
    old, new = _parts(first), _parts(last)
    differing = [place for place, (a, b) in enumerate(zip(old, new, strict=False)) if a != b]
    if len(old) != len(new) or len(differing) != 1 or differing[0] % 2 == 0:
        return False
    begun, ended = old[differing[0]], new[differing[0]]
    return begun.isdigit() and ended.isdigit() and int(ended) - int(begun) == steps_count


def members(text: str) -> list[str]:
    """Return the designations that a range stands for: -GC1, -GC2, -GC3 for `-GC1…3`. Without a range, the text."""
    found = [""]
    for part in _parts(text):
        first, last = _first_last(part)
        ends = range(int(first), int(last) + 1) if "…" in part else [part]
        found = [f"{begun}{end}" for begun in found for end in ends]
    return found


def between(first: str, last: str) -> str:
    """Return one text for a range, its numbers that differ written `first…last`. Both are of the same pattern."""
    return "".join(
        a if a == b else f"{_first_last(a)[0]}…{_first_last(b)[1]}"
        for a, b in zip(_parts(first), _parts(last), strict=True)
    )


def listed(texts: Sequence[str], most_count: int) -> str | None:
    """Return texts of one pattern as one: equal, a range, or their numbers in a list of at most `most_count`.

    None where that is not possible. A range that counts down is written upwards.
    """
    pairs = list(pairwise(texts))
    for ordered in (pairs, [(b, a) for a, b in pairs]):
        steps = {advance(a, b) for a, b in ordered}
        if len(steps) <= 1 and None not in steps:
            return between(texts[0], texts[-1]) if ordered is pairs else between(texts[-1], texts[0])
    parts = [_parts(text) for text in texts]
    if len({pattern(text) for text in texts}) > 1 or len(texts) > most_count:
        return None
    differing = [place for place, values in enumerate(zip(*parts, strict=True)) if len(set(values)) > 1]
    if len(differing) != 1:
        return None
    numbers = ", ".join(each[differing[0]] for each in parts)
    return "".join(numbers if place == differing[0] else part for place, part in enumerate(parts[0]))


def joined(texts: Iterable[str]) -> str:
    """Return texts as a list, each once; three and more that count up are one: `-TB1…3-FC1, -TB5-FC1`."""
    found = list(dict.fromkeys(texts))
    if len(found) < _LEAST_COUNT:
        return ", ".join(found)
    depth = max((len(_parts(text)) for text in found), default=0)
    for place in range(1, depth, 2):
        found = _joined_at(found, place)
    return ", ".join(found)


def _joined_at(texts: Sequence[str], place: int) -> list[str]:
    """Return the texts with those that differ in one number only, and count up in it, made one."""
    alike: dict[tuple[tuple[str, ...], tuple[str, ...]], list[tuple[int, int, int]]] = {}
    for number, text in enumerate(texts):
        parts = _parts(text)
        if place < len(parts):
            first, _, last = parts[place].partition("…")
            ends = (int(first), int(last or first), number)
            alike.setdefault((parts[:place], parts[place + 1 :]), []).append(ends)
    made: dict[int, str | None] = {}
    for found in alike.values():
        for run in _runs(found) if len(found) >= _LEAST_COUNT else ():
            made |= dict.fromkeys(run)
            made[min(run)] = between(texts[run[0]], texts[run[-1]])
    kept = (made.get(number, text) for number, text in enumerate(texts)) if made else texts
    return [text for text in kept if text is not None]


def _runs(found: list[tuple[int, int, int]]) -> Iterator[list[int]]:
    """Yield which of some ranges go on from one to the next, in their order, where there are enough of them.

    found: first and last number of each, and what it is called. Ranges that go on are of the same length.
    """
    run: list[int] = []
    before: tuple[int, int] | None = None
    for first, last, number in sorted(found, key=lambda each: each[0]):
        if before is not None and not (first == before[1] + 1 and last - first == before[1] - before[0]):
            if len(run) >= _LEAST_COUNT:
                yield run
            run = []
        run.append(number)
        before = first, last
    if len(run) >= _LEAST_COUNT:
        yield run
