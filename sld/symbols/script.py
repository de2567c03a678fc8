"""Scripts that run from right to left: the order in which letters stand, and the forms in which Arabic ones join.

The order is that of the Unicode bidirectional algorithm (Unicode Standard Annex 9) by the library python-bidi. The
joined forms are the presentation forms of the Unicode Standard, section 9.2, which the shipped font has, by the
library arabic-reshaper. Each line of a sheet counts as a paragraph: its direction is that of its first strong letter.
"""

from __future__ import annotations

import re
import unicodedata
from functools import lru_cache
from importlib import import_module
from importlib.util import find_spec
from typing import Any

__all__ = ["in_order", "joined_up", "known", "runs_left", "starts_right"]

_RIGHT_TO_LEFT, _STRONG = {"R", "AL"}, {"L", "R", "AL"}
_ARABIC = re.compile("[\u0600-\u077f]")
_MARK = "\u034f"
"""Is not seen, and goes the way of the sign that it follows (rules W1, N0): behind it, or before it where it runs left.

The library orders letters and does not say which signs it would mirror (rule L4).
"""


@lru_cache(maxsize=1)
def known() -> bool:
    """Return whether the libraries for these scripts are installed."""
    return find_spec("bidi") is not None and find_spec("arabic_reshaper") is not None


def runs_left(text: str) -> bool:
    """Return whether some letters of a text run from right to left, as Hebrew and Arabic ones do."""
    return not text.isascii() and any(unicodedata.bidirectional(char) in _RIGHT_TO_LEFT for char in text)


def starts_right(text: str) -> bool:
    """Return whether a line as a whole begins at its right end: its first strong letter runs to the left."""
    return next((way for char in text if (way := unicodedata.bidirectional(char)) in _STRONG), "L") != "L"


@lru_cache(maxsize=1)
def _reshaper() -> Any:
    """Return what joins letters; marks over and under them stay."""
    return import_module("arabic_reshaper").ArabicReshaper({"delete_harakat": False, "support_zwj": True})


def joined_up(text: str) -> str:
    """Return a text with each Arabic letter in its joined form, in the order of reading; others are left alone.

    Without the library nothing is joined; such a sheet is refused when it is written.
    """
    if text.isascii() or not _ARABIC.search(text) or not known():
        return text
    joined: str = _reshaper().reshape(text)
    return joined


def in_order(line: str) -> str:
    """Return the letters of a line as they stand from left to right; brackets in text that runs left are mirrored.

    Raises ModuleNotFoundError for such text where the library is not installed.
    """
    if not runs_left(line):
        return line
    mirrored: dict[str, str] = import_module("bidi.mirror").MIRRORED
    plain = line.replace(_MARK, "")
    marked = "".join(sign + _MARK if sign in mirrored else sign for sign in plain)
    ordered: str = import_module("bidi").get_display(marked, base_dir="R" if starts_right(line) else "L")
    signs = re.escape("".join(mirrored))
    return re.sub(f"{_MARK}(.)|([{signs}]){_MARK}", lambda found: found[2] or mirrored[found[1]], ordered)
