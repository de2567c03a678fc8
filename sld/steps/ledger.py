"""Where ratings are kept: by device key and symbol. The empty key holds what belongs to the whole system."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from types import MappingProxyType

from sld.quantity import Given, LetterSymbol, Rating
from sld.ratings.symbol import Symbol, Word
from sld.tables.table import NoRow
from sld.words import Said

__all__ = ["Ledger", "Ratings", "specified"]


@dataclass(frozen=True, slots=True)
class Ratings:
    """Every rating of a system.

    words: results that are words, not numbers (the type of an RCD), as a Given whose origin is the reason.
    unanswered: (key, symbol) -> why there is no value, where a table or a standard size has no answer.
    """

    values: Mapping[str, Mapping[LetterSymbol, Rating]]
    words: Mapping[tuple[str, Word], Given]
    unanswered: Mapping[tuple[str, Symbol], str]

    def __getitem__(self, place: tuple[str, Symbol]) -> Rating:
        """Return a rating that the steps always make. Raises LookupError naming device and symbol without it."""
        return _found(self.values, *place)

    def get(self, key: str, symbol: Symbol) -> Rating | None:
        """Return a rating of a device that may be absent, or None."""
        return self.values.get(key, {}).get(symbol)

    def of(self, key: str) -> tuple[Rating, ...]:
        """Return all ratings of a device, in the order they were made."""
        return tuple(self.values.get(key, {}).values())

    def word(self, key: str, word: Word) -> str:
        """Return a result in words, or an empty text."""
        given = self.words.get((key, word))
        return str(given.value) if given else ""

    def __iter__(self) -> Iterator[tuple[str, Rating]]:
        for key, ratings in self.values.items():
            for rating in ratings.values():
                yield key, rating


class Ledger:
    """Collects ratings while the steps run."""

    def __init__(self) -> None:
        self._values: dict[str, dict[LetterSymbol, Rating]] = {}
        self._words: dict[tuple[str, Word], Given] = {}
        self._unanswered: dict[tuple[str, Symbol], str] = {}

    def add(self, key: str, *ratings: Rating | None, symbol: Symbol | None = None) -> None:
        """Keep ratings of a device under their own symbols, or one under `symbol`. None is passed over."""
        for rating in ratings:
            if rating is not None:
                self._values.setdefault(key, {})[symbol or rating.symbol] = rating

    def word(self, key: str, word: Word, value: str, reason: Said) -> None:
        """Keep a result in words."""
        self._words[key, word] = Given(word, value, "", reason)

    def stated(self, key: str, word: Word) -> str:
        """Return a result in words, or an empty text."""
        given = self._words.get((key, word))
        return str(given.value) if given else ""

    def unanswered(self, key: str, symbol: Symbol, why: str) -> None:
        """Keep the reason why a rating could not be made."""
        self._unanswered[key, symbol] = why

    def attempt(self, key: str, symbol: Symbol, make: Callable[[], Rating | None], why_none: str) -> Rating | None:
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
        return _found(self._values, *place)

    def get(self, key: str, symbol: Symbol) -> Rating | None:
        """Return a rating made by an earlier step, or None."""
        return self._values.get(key, {}).get(symbol)

    def value(self, key: str, symbol: Symbol) -> float | None:
        """Return the value of a rating made by an earlier step, or None."""
        rating = self.get(key, symbol)
        return None if rating is None else rating.value

    def closed(self) -> Ratings:
        """Return what was collected, unchangeable."""
        values = {key: MappingProxyType(ratings) for key, ratings in self._values.items()}
        return Ratings(MappingProxyType(values), MappingProxyType(self._words), MappingProxyType(self._unanswered))


def _found(values: Mapping[str, Mapping[LetterSymbol, Rating]], key: str, symbol: Symbol) -> Rating:
    rating = values.get(key, {}).get(symbol)
    if rating is None:
        raise LookupError(f"no step made {symbol.name} ({symbol.meaning}) of {key or 'the system'}")
    return rating


def specified(symbol: Symbol, value: float, unit: str) -> Rating:
    """Return a value that the spec gives, as a rating like any other."""
    return Rating(symbol, value, unit, "as specified", (), "spec")
