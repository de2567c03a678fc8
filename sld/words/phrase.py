"""What is to be said: a sentence with places for values, an amount, a name, or several of these in a row.

None of them is text yet. A name of the spec, a designation or a trade mark is `verbatim`: it is the same in every
language. `phrase`, `phrase_in` and `counted` take the English as a literal, because the catalogues are made by reading
the source.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Protocol

from sld.frozen import dataclass, replace
from sld.number import SIGNIFICANT_DIGITS, shown

__all__ = [
    "NOTHING",
    "NO_BREAK",
    "Amount",
    "Capitalised",
    "Day",
    "Phrase",
    "Said",
    "Sayable",
    "Sequence",
    "Span",
    "Speaker",
    "Unbroken",
    "Value",
    "Verbatim",
    "amount",
    "capitalised",
    "counted",
    "listing",
    "of_count",
    "phrase",
    "phrase_in",
    "sequence",
    "span",
    "unbroken",
    "verbatim",
]

NO_BREAK = "\u00a0"
"""Between a number and its unit: lines are not broken there."""

SOFT_HYPHEN = "\u00ad"
"""Where a catalogue allows a long word to be divided; elsewhere it is not seen."""


class Speaker(Protocol):
    """A language, as far as what is to be said needs to know it."""

    def translated(self, said: Phrase) -> str:
        """Return the sentence of a phrase, its places for values still open."""

    def number(self, value: float, digits: int = SIGNIFICANT_DIGITS) -> str:
        """Write a number."""

    def date(self, day: str) -> str:
        """Write a date that is given as YYYY-MM-DD."""


class Sayable(Protocol):
    """Anything that can be said in a language."""

    def said(self, speaker: Speaker) -> str:
        """Return the text, with no-break spaces where no line may be broken."""


Said = Sayable | str
"""What is to be said, or text that is said already: a terminal's, which is English."""

Value = Sayable | str | int
"""What a phrase may hold: text as it is, a count, or what is itself still to be said."""


class _Spoken:
    """What is to be said, with its English text as `str`."""

    __slots__ = ()

    def said(self, speaker: Speaker) -> str:
        """Return the text in a language."""
        raise NotImplementedError

    def __str__(self) -> str:
        from sld.words.language import ENGLISH  # a language is made of phrases itself

        return ENGLISH.say(self)


def _said(value: Value, speaker: Speaker) -> str:
    if isinstance(value, str):
        return value
    if isinstance(value, int):
        return str(value)
    return value.said(speaker)


@dataclass(frozen=True, slots=True)
class Phrase(_Spoken):
    """A sentence or a part of one.

    text: the English, `{name}` where a value goes; with context it identifies the entry of a catalogue. plural: the
    English for a count other than one. context: tells two phrases apart that are alike in English only.
    """

    text: str
    values: tuple[tuple[str, Value], ...] = ()
    context: str = ""
    plural: str = ""
    count: int = 0

    def said(self, speaker: Speaker) -> str:
        """Return the text in a language. Raises KeyError where a place of the text has no value."""
        text = speaker.translated(self)
        if not self.values:
            return text.replace("{{", "{").replace("}}", "}")
        return text.format_map({name: _said(value, speaker) for name, value in self.values})


@dataclass(frozen=True, slots=True)
class Verbatim(_Spoken):
    """Text that is the same in every language: a name, a designation, a formula, the number of a clause."""

    text: str

    def __bool__(self) -> bool:
        return bool(self.text)

    def said(self, speaker: Speaker) -> str:
        """Return the text."""
        return self.text


@dataclass(frozen=True, slots=True, eq=False)
class Amount(_Spoken):
    """A number with its unit. digits: the significant ones that are written; two are equal that are written alike."""

    value: float
    unit: str = ""
    digits: int = SIGNIFICANT_DIGITS

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Amount) and self._written() == other._written()

    def __hash__(self) -> int:
        return hash(self._written())

    def _written(self) -> tuple[str, str]:
        return shown(self.value, self.digits), self.unit

    def said(self, speaker: Speaker) -> str:
        """Return number and unit."""
        number = speaker.number(self.value, self.digits)
        return f"{number}{NO_BREAK}{self.unit}" if self.unit else number


@dataclass(frozen=True, slots=True)
class Span(_Spoken):
    """An amount that follows from where something is, as a length does; of several things, the least and the greatest.

    Only these may differ in what is drawn once for many.
    """

    least: Amount
    greatest: Amount

    def said(self, speaker: Speaker) -> str:
        """Return the amount, or both ends with the unit once: `8…12 m`."""
        if self.least == self.greatest:
            return self.least.said(speaker)
        return f"{speaker.number(self.least.value, self.least.digits)}…{self.greatest.said(speaker)}"


@dataclass(frozen=True, slots=True)
class Day(_Spoken):
    """A date, given as YYYY-MM-DD."""

    day: str

    def __bool__(self) -> bool:
        return bool(self.day)

    def said(self, speaker: Speaker) -> str:
        """Return the date in the form of the language."""
        return speaker.date(self.day)


@dataclass(frozen=True, slots=True)
class Sequence(_Spoken):
    """Several parts in a row. last: what stands before the last one instead of the separator, a phrase, if any."""

    parts: tuple[Value, ...]
    separator: str = ", "
    last: Sayable | None = None

    def __bool__(self) -> bool:
        return bool(self.parts)

    def said(self, speaker: Speaker) -> str:
        """Return the parts joined; those that are empty are left out."""
        texts = [text for text in (_said(part, speaker) for part in self.parts) if text]
        if self.last is None or len(texts) < 2:
            return self.separator.join(texts)
        return f"{self.separator.join(texts[:-1])}{self.last.said(speaker)}{texts[-1]}"


@dataclass(frozen=True, slots=True)
class Unbroken(_Spoken):
    """What stands on one line."""

    what: Value

    def said(self, speaker: Speaker) -> str:
        """Return the text without common spaces."""
        return _said(self.what, speaker).replace(" ", NO_BREAK)


@dataclass(frozen=True, slots=True)
class Capitalised(_Spoken):
    """What begins with a capital letter, at the head of a row."""

    what: Sayable

    def said(self, speaker: Speaker) -> str:
        """Return the text with its first letter made a capital."""
        text = self.what.said(speaker)
        return f"{text[:1].upper()}{text[1:]}"


NOTHING = Verbatim("")


def phrase(text: str, /, **values: Value) -> Phrase:
    """Return what is said by an English sentence, `{name}` in it for each value. The text is a literal."""
    return Phrase(text, tuple(values.items()))


def phrase_in(context: str, text: str, /, **values: Value) -> Phrase:
    """Return a phrase that another one is like in English but not in other languages; context tells them apart."""
    return Phrase(text, tuple(values.items()), context)


def counted(one: str, many: str, count: int, /, **values: Value) -> Phrase:
    """Return a phrase that depends on a count, which is the value `{count}` of both texts. Both are literals."""
    return Phrase(one, (("count", count), *values.items()), "", many, count)


def of_count(said: Phrase, count: int) -> Phrase:
    """Return a counted phrase for another count."""
    return replace(said, values=(("count", count), *said.values[1:]), count=count)


def capitalised(what: Sayable) -> Capitalised:
    """Return what begins with a capital letter."""
    return Capitalised(what)


def verbatim(text: str) -> Verbatim:
    """Return text that is the same in every language."""
    return Verbatim(text)


def amount(value: float, unit: str = "", digits: int = SIGNIFICANT_DIGITS) -> Amount:
    """Return a number with its unit."""
    return Amount(value, unit, digits)


def span(value: float, unit: str) -> Span:
    """Return an amount that may differ in what is drawn once for many."""
    return Span(Amount(value, unit), Amount(value, unit))


def sequence(parts: Iterable[Value], separator: str = ", ") -> Sequence:
    """Return parts that stand in a row: `a, b, c`. Empty ones are left out."""
    return Sequence(tuple(parts), separator)


_AND = phrase_in("between the last two of a list", " and ")


def listing(parts: Iterable[Value]) -> Sequence:
    """Return parts as a list in a sentence: `a, b and c`."""
    return Sequence(tuple(parts), ", ", _AND)


def unbroken(*parts: Value) -> Unbroken:
    """Return parts that always stand on one line: `≤ 1000 V`; empty ones are left out."""
    return Unbroken(sequence(parts, " "))
