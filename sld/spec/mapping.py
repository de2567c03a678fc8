"""A mapping of Python -> the JSON text that it makes, so that it is read, placed and refused like any other spec."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import field
from datetime import date
from numbers import Integral, Real
from typing import Any

from sld.finding import Finding, Severity, SpecPath
from sld.frozen import dataclass
from sld.spec.compose import MAX_DEPTH, MAX_VALUES
from sld.spec.source import Source, Unusable, read_text
from sld.spec.visible import as_json_text

__all__ = ["read_mapping"]


def read_mapping(given: Mapping[Any, Any], name: str) -> Source:
    """Read a spec from a mapping. name: what messages call it. Raises Unusable, also for a value that no text can say.

    What is read are copies: later changes of the mapping change nothing.
    """
    copy = _Copy()
    source = read_text(as_json_text(copy.value(given, ())), name)
    if copy.mistakes:
        raise Unusable(source, copy.mistakes)
    return source


@dataclass(slots=True)
class _Copy:
    """Copies values to those that JSON has, and keeps what is wrong."""

    mistakes: list[Finding] = field(default_factory=list)
    around: list[int] = field(default_factory=list)
    count: int = 0

    def value(self, given: Any, path: SpecPath) -> Any:
        """Return the copy of a value; of one that cannot be copied its class in words."""
        self.count += 1
        if given is None or isinstance(given, bool):
            return given
        if isinstance(given, str):
            return str.__str__(given)
        if isinstance(given, Integral):
            return int(given)
        if isinstance(given, Real):
            number = float(given)
            return number if math.isfinite(number) else str(number)
        if isinstance(given, date):
            return given.isoformat()
        if isinstance(given, Mapping | list | tuple):
            return self.block_or_list(given, path)
        self.refuse("SP34", f"an object of the class `{type(given).__name__}` is no value of a spec", path)
        return type(given).__name__

    def block_or_list(self, given: Mapping[Any, Any] | list[Any] | tuple[Any, ...], path: SpecPath) -> Any:
        """Return the copy of a mapping or list; None in place of what has no end, or more than is read."""
        if id(given) in self.around:
            self.refuse("SP16", "a mapping or list holds itself", path)
            return None
        if len(path) > MAX_DEPTH or self.count > MAX_VALUES:
            return None  # the reader of the text refuses so much
        self.around.append(id(given))
        copy = self.block(given, path) if isinstance(given, Mapping) else self.entries(given, path)
        self.around.pop()
        return copy

    def entries(self, given: list[Any] | tuple[Any, ...], path: SpecPath) -> list[Any]:
        """Return the copy of a list."""
        return [self.value(each, (*path, number)) for number, each in enumerate(given)]

    def block(self, given: Mapping[Any, Any], path: SpecPath) -> dict[str, Any]:
        """Return the copy of a mapping, its keys as texts."""
        block: dict[str, Any] = {}
        for key, value in given.items():
            word = str(key)
            if not isinstance(key, str | int) or isinstance(key, bool):
                self.refuse("SP17", f"a key is an object of the class `{type(key).__name__}`", (*path, word), True)
            elif word in block:
                self.refuse("SP11", f"key `{word}` is given twice, as a text and as a number", (*path, word), True)
            block[word] = self.value(value, (*path, word))
        return block

    def refuse(self, code: str, message: str, path: SpecPath, on_key: bool = False) -> None:
        """Keep a mistake."""
        remedy = "write a word as the key" if on_key else "give a text, a number, true or false, a list or a mapping"
        self.mistakes.append(Finding(code, Severity.DANGER, message, remedy, path, on_key=on_key))
