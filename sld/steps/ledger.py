"""Where ratings are kept: by device key and symbol. The empty key holds what belongs to the whole system."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import field
from types import MappingProxyType

from sld.frozen import dataclass
from sld.model.copies import Copy
from sld.quantity import Given, LetterSymbol, Rating
from sld.ratings.specified import specified
from sld.ratings.symbol import Symbol, Word
from sld.steps.unanswered import Unanswered
from sld.tables.table import NoRow
from sld.words import Phrase, Sayable, phrase

__all__ = ["NEEDED", "NOT_NEEDED", "OF_ARRAY", "OF_SUB_ARRAY", "Ledger", "Ratings", "Reason"]

NEEDED, NOT_NEEDED = phrase("needed"), phrase("not needed")
"""Whether string fuses are needed, as the results in words say it."""

OF_SUB_ARRAY, OF_ARRAY = phrase("sub-array"), phrase("array")
"""Which fuse an input needs beside those of the strings."""


@dataclass(frozen=True, slots=True)
class Ratings:
    """Every rating of a system. Those of equal inverters are kept once, under the keys of the first one.

    values: by key and symbol. words: results that are words, not numbers (the type of an RCD), as a Given whose origin
    is the reason. unanswered: (key, symbol) -> why there is no value, where a table or a standard size has no answer.
    copied: for each device of a copy the key of the same device of the first inverter, and the copy.
    """

    values: Mapping[str, Mapping[LetterSymbol, Rating]]
    words: Mapping[tuple[str, Word], Given]
    unanswered: Mapping[tuple[str, Symbol], Unanswered]
    copied: Mapping[str, tuple[str, Copy]] = field(default_factory=dict)
    _without_names: set[int] = field(default_factory=set, init=False, repr=False, compare=False)
    _words_by_key: dict[str, list[tuple[Word, Given]]] = field(
        default_factory=dict, init=False, repr=False, compare=False
    )
    _missing_by_key: dict[str, list[tuple[Symbol, Unanswered]]] = field(
        default_factory=dict, init=False, repr=False, compare=False
    )

    def __post_init__(self) -> None:
        for (key, word), given in self.words.items():
            self._words_by_key.setdefault(key, []).append((word, given))
        for (key, symbol), why in self.unanswered.items():
            self._missing_by_key.setdefault(key, []).append((symbol, why))

    def __getitem__(self, place: tuple[str, Symbol]) -> Rating:
        """Return a rating that the steps always make. Raises LookupError naming device and symbol without it."""
        rating = self.get(*place)
        if rating is None:
            raise _missing(*place)
        return rating

    def get(self, key: str, symbol: Symbol) -> Rating | None:
        """Return a rating of a device that may be absent, or None."""
        if key in self.copied:
            first, copy = self.copied[key]
            rating = self.values.get(first, {}).get(symbol)
            return None if rating is None else self._of_copy(rating, copy)
        return self.values.get(key, {}).get(symbol)

    def of(self, key: str) -> tuple[Rating, ...]:
        """Return all ratings of a device, in the order they were made."""
        return tuple(self.by_symbol(key).values())

    def by_symbol(self, key: str) -> Mapping[LetterSymbol, Rating]:
        """Return the ratings of a device by symbol, in the order they were made."""
        if key in self.copied:
            first, copy = self.copied[key]
            return {symbol: self._of_copy(each, copy) for symbol, each in self.values.get(first, {}).items()}
        return self.values.get(key, {})

    def _of_copy(self, rating: Rating, copy: Copy) -> Rating:
        """Return a rating of the first inverter as that of a copy; the same one where it names nothing of the first."""
        if id(rating) in self._without_names:
            return rating
        named = rating.with_names(copy.named)
        if named is rating:
            self._without_names.add(id(rating))
        return named

    def rated(self) -> Iterator[str]:
        """Yield the keys of all devices that have ratings, empty for the whole system."""
        copies: dict[str, list[str]] = {}
        for key, (first, _) in self.copied.items():
            copies.setdefault(first, []).append(key)
        for key in self.values:
            yield from (key, *copies.get(key, ()))

    def word(self, key: str, word: Word) -> str:
        """Return a result that is a letter or a number of a standard (`B`, `DC-PV2`), or an empty text."""
        return _letters(self.words, self.first(key), word)

    def told(self, key: str, word: Word) -> Phrase | None:
        """Return a result in words, or None."""
        given = self.words.get((self.first(key), word))
        return given.value if given and isinstance(given.value, Phrase) else None

    def words_of(self, key: str) -> Sequence[tuple[Word, Given]]:
        """Return the results in words of a device; of a copy, as those of the first inverter say them."""
        return self._words_by_key.get(self.first(key), ())

    def missing_of(self, key: str) -> Sequence[tuple[Symbol, Unanswered]]:
        """Return which ratings of a device have no value, and why; of a copy, as those of the first inverter say it."""
        return self._missing_by_key.get(self.first(key), ())

    def first(self, key: str) -> str:
        """Return the key that the ratings of a device are kept under."""
        return self.copied[key][0] if key in self.copied else key

    def __iter__(self) -> Iterator[tuple[str, Rating]]:
        """Yield each rating of every device, copies too, with its key."""
        for key in self.rated():
            for rating in self.of(key):
                yield key, rating

    def kept(self) -> Iterator[tuple[str, Rating]]:
        """Yield each rating that is kept, those of equal inverters once, with its key."""
        for key, ratings in self.values.items():
            for rating in ratings.values():
                yield key, rating


Reason = Phrase | Unanswered


class Ledger:
    """Collects ratings while the steps run; what is asked or kept of a copy is that of the first of equal inverters."""

    def __init__(self, copied: Mapping[str, tuple[str, Copy]] = MappingProxyType({})) -> None:
        """copied: for each device of a copy the key of the same device of the first inverter, and the copy."""
        self._copied = copied
        self._values: dict[str, dict[LetterSymbol, Rating]] = {}
        self._words: dict[tuple[str, Word], Given] = {}
        self._unanswered: dict[tuple[str, Symbol], Unanswered] = {}
        self._once: dict[Rating, Rating] = {}  # of thousands of equal strings each rating is kept once

    def add(self, key: str, *ratings: Rating | None, symbol: Symbol | None = None) -> None:
        """Keep ratings of a device under their own symbols, or one under `symbol`. None is passed over."""
        key = self._first(key)
        for rating in ratings:
            if rating is not None:
                self._values.setdefault(key, {})[symbol or rating.symbol] = self._once.setdefault(rating, rating)

    def specified(self, key: str, symbol: Symbol, value: float | None) -> bool:
        """Keep a value that the spec gives, in the unit of the symbol, and return whether it gives one."""
        if value is not None:
            self.add(key, specified(symbol, value, symbol.unit))
        return value is not None

    def choose(
        self, key: str, symbol: Symbol, value: float | None, make: Callable[[], Rating | None], why_none: Reason
    ) -> None:
        """Keep a value as the spec gives it, else one that is made, else the reason why it could not be."""
        if not self.specified(key, symbol, value):
            self.attempt(key, symbol, make, why_none)

    def word(self, key: str, word: Word, value: Phrase | str, reason: Sayable) -> None:
        """Keep a result that is no number: a letter or a number of a standard as text, words as a phrase."""
        self._words[self._first(key), word] = Given(word.value, value, "", reason)

    def stated(self, key: str, word: Word) -> str:
        """Return a result that is a letter or a number of a standard, or an empty text."""
        return _letters(self._words, self._first(key), word)

    def unanswered(self, key: str, symbol: Symbol, why: Reason) -> None:
        """Keep the reason why a rating could not be made."""
        self._unanswered[self._first(key), symbol] = why if isinstance(why, Unanswered) else Unanswered(why)

    def attempt(self, key: str, symbol: Symbol, make: Callable[[], Rating | None], why_none: Reason) -> Rating | None:
        """Make and keep a rating; where a table or the standard sizes have no answer, keep the reason instead.

        why_none: the reason in plain words. The message of a `NoRow` names tables and columns, fit for a trace only.
        """
        try:
            rating = make()
        except NoRow:
            rating = None
        if rating is None:
            self.unanswered(key, symbol, why_none)
            return None
        self.add(key, rating, symbol=symbol)
        return rating

    def __getitem__(self, place: tuple[str, Symbol]) -> Rating:
        """Return a rating that an earlier step always makes. Raises LookupError naming device and symbol without it."""
        rating = self.get(*place)
        if rating is None:
            raise _missing(*place)
        return rating

    def get(self, key: str, symbol: Symbol) -> Rating | None:
        """Return a rating made by an earlier step, or None."""
        return self._values.get(self._first(key), {}).get(symbol)

    def _first(self, key: str) -> str:
        return self._copied[key][0] if key in self._copied else key

    def value(self, key: str, symbol: Symbol) -> float | None:
        """Return the value of a rating made by an earlier step, or None."""
        rating = self.get(key, symbol)
        return None if rating is None else rating.value

    def closed(self) -> Ratings:
        """Return what was collected, unchangeable."""
        values = {key: MappingProxyType(ratings) for key, ratings in self._values.items()}
        return Ratings(
            MappingProxyType(values), MappingProxyType(self._words), MappingProxyType(self._unanswered), self._copied
        )


def _letters(words: Mapping[tuple[str, Word], Given], key: str, word: Word) -> str:
    given = words.get((key, word))
    return given.value if given and isinstance(given.value, str) else ""


def _missing(key: str, symbol: Symbol) -> LookupError:
    return LookupError(f"no step made {symbol.name} ({symbol.meaning}) of {key or 'the system'}")
