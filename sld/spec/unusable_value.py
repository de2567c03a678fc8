"""A value of the wrong shape, with everything that is known about it and about its block."""

from __future__ import annotations

import difflib
import re
from collections.abc import Iterable, Mapping
from functools import lru_cache
from typing import Any

from pydantic import BaseModel
from pydantic.fields import FieldInfo

from sld.finding import SpecPath
from sld.frozen import dataclass
from sld.spec.fields import blocks_at, fields_of
from sld.spec.source import Source

__all__ = ["Explanation", "UnusableValue", "dotted", "nearest", "written_path"]

_MANY, _LONG = 300, 200
"""Words to compare with, and letters of a word, beyond which comparing letter by letter takes too long."""


def nearest(word: str, words: Iterable[str], least_share: float = 0.6) -> str:
    """Return the word that was probably meant, or nothing. Capitals do not count.

    least_share: of its letters that must agree. Among very many words only one that differs in capitals, spaces and
    hyphens alone is found, and a very long word is never compared.
    """
    known = tuple(words)
    if len(word) > _LONG:
        return ""
    if len(known) > _MANY:
        return _by_bare_letters(known).get(_bare(word), "")
    folded = {each.casefold(): each for each in known if len(each) <= _LONG}
    close = difflib.get_close_matches(word.casefold(), list(folded), n=1, cutoff=least_share)
    return folded[close[0]] if close else ""


def _bare(word: str) -> str:
    return "".join(filter(str.isalnum, word.casefold()))


@lru_cache(maxsize=8)
def _by_bare_letters(words: tuple[str, ...]) -> dict[str, str]:
    return {_bare(each): each for each in words}


def dotted(path: SpecPath) -> str:
    """Write a path of the spec as an acceptance does: inverters.north.inputs[0]."""
    return "".join(f"[{step}]" if isinstance(step, int) else f".{step}" for step in path).removeprefix(".")


def written_path(path: SpecPath) -> str:
    """Return a path as it is printed: `inverters.north.inputs[0]`."""
    return f"`{dotted(path)}`" if path else "the top level"


@dataclass(frozen=True, slots=True)
class Explanation:
    """What a finding says of a value that cannot be used. at: another place than that of the value."""

    code: str
    message: str
    remedy: str
    on_key: bool = False
    at: SpecPath | None = None


@dataclass(frozen=True, slots=True)
class UnusableValue:
    """A value that cannot be used: an error of pydantic with its true path in the data.

    missing: the key that the block at `path` lacks. extra: pydantic's own place went beyond the path, into a union.
    """

    kind: str
    path: SpecPath
    value: Any
    text: str
    context: Mapping[str, Any]
    root: type[BaseModel]
    source: Source
    missing: str = ""
    extra: bool = False
    loc: tuple[str | int, ...] = ()

    @property
    def name(self) -> str:
        """Return the words for the value: its key, or its number in a list."""
        last = self.path[-1] if self.path else ""
        if isinstance(last, int):
            return f"entry {last + 1} of {written_path(self.path[:-1])}"
        return f"`{last}`" if last else "the top level"

    def block(self, path: SpecPath) -> dict[str, Any]:
        """Return the data of the block at a path."""
        data: Any = self.source.data
        for step in path:
            data = data[step]
        return data if isinstance(data, dict) else {}

    def keys(self, path: SpecPath) -> dict[str, FieldInfo]:
        """Return the fields that a block at a path can have, by key."""
        blocks = blocks_at(self.root, self.source.data, path)
        return {key: field for block in blocks for key, field in fields_of(block).items()}

    def field(self) -> FieldInfo | None:
        """Return the field that the value is for, None for an entry of a list."""
        return self.keys(self.path[:-1]).get(str(self.path[-1])) if self.path else None

    def free_keys(self) -> list[str]:
        """Return the keys that the block around the value could have and has not, the needed ones first."""
        here = self.path[:-1]
        free = {key: field for key, field in self.keys(here).items() if key not in self.block(here)}
        return sorted(free, key=lambda key: not free[key].is_required())

    def words(self) -> list[str]:
        """Return the words that pydantic lists as allowed."""
        listed = str(self.context.get("expected", self.context.get("expected_tags", "")))
        return [quoted or number for quoted, number in re.findall(r"'([^']*)'|(-?\d[\d.]*)", listed)]

    def written(self) -> str:
        """Return the value as it stands in the text."""
        span = self.source.locate(self.path)
        lines = self.source.lines(span.file)
        text = lines[span.line - 1][span.column - 1 :][: span.width] if span.line <= len(lines) else ""
        return text or str(self.value)

    def shown(self) -> str:
        """Return a few words for the value."""
        if isinstance(self.value, bool):
            return str(self.value).lower()
        if isinstance(self.value, str):
            return f"the text `{self.value if len(self.value) <= 40 else self.value[:40] + '…'}`"
        if isinstance(self.value, int | float):
            return f"the number {self.written()}"
        return "a list" if isinstance(self.value, list) else "a block" if isinstance(self.value, dict) else "empty"
