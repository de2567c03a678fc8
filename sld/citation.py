"""Where a formula or a figure is from; what was not read in the source is never printed without saying so.

The name of a standard and the number of a clause are the same in every language; remarks and marks are phrases.
"""

from __future__ import annotations

from enum import Enum
from functools import lru_cache
from typing import Protocol

from sld.frozen import dataclass
from sld.words import NOTHING, Phrase, Sayable, Sequence, Value, phrase, sequence
from sld.words.phrase import Speaker

__all__ = [
    "MEMORY_SIGN",
    "Citation",
    "Citations",
    "Mark",
    "citations",
    "cited",
    "clause_from_memory",
    "clauses_from_memory",
    "from_memory",
    "in_annex",
    "in_table",
    "in_tables",
    "marks",
    "rests_on_memory",
    "with_mark",
]


MEMORY_SIGN = "*"
"""Stands behind a value on a drawing that rests on what is from memory."""


class Mark(Enum):
    """What of a citation is from memory and was not read in a source."""

    FROM_MEMORY = phrase("from memory")
    CLAUSE_FROM_MEMORY = phrase("clause from memory")
    CLAUSES_FROM_MEMORY = phrase("clauses from memory")
    FORMULA_FROM_MEMORY = phrase("formula from memory")

    __hash__ = object.__hash__  # that of `Enum` is called in Python

    def said(self, speaker: Speaker) -> str:
        """Return the words of the mark."""
        return self.value.said(speaker)


@dataclass(frozen=True, slots=True)
class Citation:
    """One source or several that are taken together: `IEC 60364-5-53:2019 534.4 (from memory)`.

    sources: each a standard with its clause, or a phrase. remark: what is cited of it, in brackets. mark: what of it is
    from memory.
    """

    sources: tuple[Value, ...]
    mark: Mark | None = None
    remark: Sayable = NOTHING

    def __str__(self) -> str:
        return str(self._parts())

    def said(self, speaker: Speaker) -> str:
        """Return the sources with remark and mark."""
        return self._parts().said(speaker)

    def _parts(self) -> Sequence:
        inner = sequence([self.remark, *([self.mark] if self.mark else [])])
        bracket = [sequence(["(", inner, ")"], "")] if self.mark or self.remark != NOTHING else []
        return sequence([sequence(self.sources, "; "), *bracket], " ")


def cited(*sources: Value, mark: Mark | None = None, remark: Sayable = NOTHING) -> Citation:
    """Return the citation of a source, or of several that share remark and mark."""
    return Citation(sources, mark, remark)


def from_memory(*sources: Value, remark: Sayable = NOTHING) -> Citation:
    """Return a citation that is from memory."""
    return Citation(sources, Mark.FROM_MEMORY, remark)


def clause_from_memory(*sources: Value, remark: Sayable = NOTHING) -> Citation:
    """Return a citation whose clause is from memory: what it asks for was read, where it stands was not."""
    return Citation(sources, Mark.CLAUSE_FROM_MEMORY, remark)


def clauses_from_memory(*sources: Value, remark: Sayable = NOTHING) -> Citation:
    """Return a citation of several clauses that are from memory."""
    return Citation(sources, Mark.CLAUSES_FROM_MEMORY, remark)


def in_table(standard: str, number: str) -> Phrase:
    """Return a table of a standard as a source."""
    return phrase("{standard} Table {number}", standard=standard, number=number)


def in_tables(standard: str, numbers: Value) -> Phrase:
    """Return several tables of a standard as a source."""
    return phrase("{standard} Tables {numbers}", standard=standard, numbers=numbers)


def in_annex(standard: str, name: str) -> Phrase:
    """Return an annex of a standard as a source."""
    return phrase("{standard} Annex {name}", standard=standard, name=name)


@dataclass(frozen=True, slots=True)
class Citations:
    """Several citations for one value, each with its own mark."""

    parts: tuple[Sayable, ...]

    def __str__(self) -> str:
        return str(sequence(self.parts, "; "))

    def said(self, speaker: Speaker) -> str:
        """Return all of them in a row."""
        return sequence(self.parts, "; ").said(speaker)


def citations(*parts: Sayable) -> Citations:
    """Return several citations as one; those that are joined already are taken apart, so that equal ones are equal."""
    flat: list[Sayable] = []
    for part in parts:
        flat += part.parts if isinstance(part, Citations) else [part]
    return Citations(tuple(flat))


def marks(*said: object) -> frozenset[Mark]:
    """Return what is from memory of sources: of citations, several joined, and texts that hold them."""
    found: set[Mark] = set()
    waiting = list(said)
    while waiting:
        match waiting.pop():
            case str() | int():
                pass
            case Phrase() as each:
                waiting += [value for _, value in each.values]
            case Citation() as each:
                found |= {each.mark} if each.mark else set()
                waiting += each.sources
            case Citations() | Sequence() as each:
                waiting += each.parts
            case _:
                pass
    return frozenset(found)


class Sourced(Protocol):
    """A value with the source of its formula and the row of a table behind it, such as a `Rating`."""

    @property
    def clause(self) -> Sayable:
        """Return the source of the formula."""

    @property
    def table_row(self) -> Sayable:
        """Return the row of a table, nothing where none was read."""

    def __hash__(self) -> int:
        """Equal values have the same."""


_NOT_READ = frozenset({Mark.FROM_MEMORY, Mark.FORMULA_FROM_MEMORY})


@lru_cache(maxsize=2048)
def rests_on_memory(value: Sourced) -> bool:
    """Return whether the table row, the limit or the formula behind a value is from memory; where only the number of a
    clause is, the value was read."""
    return not _NOT_READ.isdisjoint(marks(value.clause, value.table_row))


def with_mark(said: Sayable, *values: Sourced) -> Sayable:
    """Return what is said of values, with the sign for what is from memory where one of them is; the sheet explains
    it."""
    return sequence([said, MEMORY_SIGN], "") if any(map(rests_on_memory, values)) else said
