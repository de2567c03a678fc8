"""Text of a table file: a phrase where it holds words, else the same in every language.

The extraction of texts and the tables ask the same question here, so that no cell is printed that nobody translates.
"""

from __future__ import annotations

import re

from sld.words.phrase import Phrase, Sayable, verbatim

__all__ = ["holds_words", "of_cell"]

_WORD = re.compile(r"[a-z]{3}")
"""Three small letters in a row: letter symbols, clauses and codes have none."""


def holds_words(text: str) -> bool:
    """Return whether a cell holds words of a language; numbers, clauses and codes hold none."""
    return _WORD.search(text) is not None


def of_cell(text: str) -> Sayable:
    """Return the text of a cell as it is to be said; an underscore of a key stands for a space."""
    plain = text.replace("_", " ")
    return Phrase(plain) if holds_words(plain) else verbatim(plain)
