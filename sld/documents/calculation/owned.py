"""Designations of a device's own circuit inside what is said of it, so that equal circuits are told once."""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import lru_cache
from typing import Any

from sld.frozen import dataclass, replace
from sld.layout.diagram.ranges import joined, pattern
from sld.quantity import Given
from sld.words import Phrase, Sayable, phrase
from sld.words import Sequence as Row
from sld.words.phrase import Speaker, Verbatim

__all__ = ["of_owners", "unowned", "with_ranges"]

_OWN = "\x00"
"""Stands for the designation of a device's owner, so that equal devices of equal owners have equal texts."""

_OWNED = re.compile(rf"{_OWN}([-A-Z0-9]*)")
_EACH = phrase("each of {names}", names=_OWN)


@lru_cache(maxsize=4096)
def _whole(owner: str) -> re.Pattern[str]:
    """Return what finds a designation that is not the beginning of another one, such as `-TB1` of `-TB12`."""
    return re.compile(rf"{re.escape(owner)}(?![0-9A-Za-z])")


def unowned(said: Any, owner: str) -> Any:
    """Return what is to be said with the designation of the owner, wherever it stands, made a place for any owner's.

    Takes texts, phrases, rows of these, inputs of formulas and tuples; numbers and symbols are returned as they are.
    """
    if not owner:
        return said
    match said:
        case str():
            return _whole(owner).sub(_OWN, said) if owner in said else said
        case Verbatim():
            return Verbatim(unowned(said.text, owner))
        case Phrase():
            return replace(said, values=tuple((name, unowned(value, owner)) for name, value in said.values))
        case Row():
            return replace(said, parts=tuple(unowned(part, owner) for part in said.parts))
        case Given():
            symbol, value, origin = (unowned(part, owner) for part in (said.symbol, said.value, said.origin))
            return replace(said, symbol=symbol, value=value, origin=origin)
        case tuple():
            return tuple(unowned(part, owner) for part in said)
        case _:
            return said


@dataclass(frozen=True, slots=True)
class _OfOwners:
    """What is said of devices of several owners: in the place of one's designation stand those of all."""

    said_of_one: Sayable
    owners: tuple[str, ...]

    def said(self, speaker: Speaker) -> str:
        text = self.said_of_one.said(speaker)
        if _OWN not in text:
            return text
        each = _EACH.said(speaker) if len(set(self.owners)) > 1 else _OWN
        return _OWNED.sub(lambda found: each.replace(_OWN, joined(f"{own}{found[1]}" for own in self.owners)), text)


def of_owners(said: Sayable, owners: Sequence[str]) -> Sayable:
    """Return what was made `unowned` with the designations of all owners, each with what follows it."""
    return _OfOwners(said, tuple(owners))


def with_ranges(given: Sequence[Given]) -> tuple[Given, ...]:
    """Return the inputs of a formula; equal values with symbols that count up share one: `Ib(-TB1…60) = 40 A`."""
    alike: dict[object, list[Given]] = {}
    for each in given:
        like = replace(each, symbol=pattern(each.symbol)) if isinstance(each.symbol, str) else each
        alike.setdefault(like, []).append(each)
    return tuple(
        replace(group[0], symbol=joined(each.name for each in group)) if isinstance(group[0].symbol, str) else group[0]
        for group in alike.values()
    )
