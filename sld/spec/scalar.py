"""What an unquoted word of the text means: the core of YAML 1.2 (section 10.2), cut down to what JSON has too.

YAML 1.1 readers turn `200:5` into 12005, `010` into 8 and `NO` into false. Here they stay the text they are.
"""

from __future__ import annotations

import math
import re

__all__ = ["Scalar", "plain"]

Scalar = str | int | float | bool | None

_NUMBER = re.compile(r"[-+]?(0|[1-9][0-9]*)(\.[0-9]+)?([eE][-+]?[0-9]+)?")
_WORDS: dict[str, Scalar] = {"true": True, "false": False, "null": None, "~": None, "": None}
_LONGEST_NUMBER = 40


def plain(text: str) -> Scalar:
    """Return the meaning of an unquoted word. A number too large for a float stays text."""
    if len(text) > _LONGEST_NUMBER or not _NUMBER.fullmatch(text):
        return _WORDS.get(text, text)
    if not set(text) & set(".eE"):
        return int(text)
    value = float(text)
    return value if math.isfinite(value) else text
