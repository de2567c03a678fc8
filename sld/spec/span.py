"""Places in a text, and what stops it from being read there.

Places are named tuples, since a spec of 5,000 lines has 20,000 of them and a frozen dataclass takes longer to make.
"""

from __future__ import annotations

import re
from functools import lru_cache
from typing import NamedTuple

__all__ = ["Span", "Spot", "UnusableText", "split_lines"]

_BREAK = re.compile("\r\n|[\n\r\x85\u2028\u2029]")


@lru_cache(maxsize=16)
def split_lines(text: str) -> tuple[str, ...]:
    """Return the lines of a text, parted where the parser counts a line and nowhere else."""
    return tuple(_BREAK.split(text))


class Span(NamedTuple):
    """A piece of one line: file as it is printed, line and column from 1, width in characters."""

    file: str
    line: int
    column: int
    width: int = 1

    def __str__(self) -> str:
        return f"{self.file}:{self.line}:{self.column}"


class Spot(NamedTuple):
    """Where a value stands: its key, where it has one, and the value itself. A block or list is shown by its key."""

    key: Span | None
    value: Span
    is_block: bool = False

    def span(self, on_key: bool = False) -> Span:
        """Return what to underline."""
        return self.key if self.key is not None and (on_key or self.is_block) else self.value


class UnusableText(Exception):  # noqa: N818 - it is told to the designer as a finding, not as an error of the program
    """A text cannot be used; `also` holds further places with a word on each."""

    def __init__(
        self, code: str, message: str, remedy: str, span: Span, also: tuple[tuple[Span, str], ...] = ()
    ) -> None:
        super().__init__(message)
        self.code = code
        self.message = message
        self.remedy = remedy
        self.span = span
        self.also = also
