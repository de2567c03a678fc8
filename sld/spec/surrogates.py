r"""Pairs of escapes such as `\ud83d\ude00`, as encoders of JSON write what lies beyond U+FFFF (RFC 8259 section 7).

The parser of YAML refuses them. Each pair is read as a pair of other escapes of the same length, so that no place in
the text moves, and turned back in the values.
"""

from __future__ import annotations

import re

__all__ = ["hidden", "restored"]

_PAIR = re.compile(r"(?<!\\)((?:\\\\)*)\\u([dD])([89abAB][0-9a-fA-F]{2})\\u([dD])([c-fC-F][0-9a-fA-F]{2})")
_READ = re.compile("([\uf800-\ufbff])([\ufc00-\uffff])")
_AS_WRITTEN = re.compile(r"\\u([fF])([89abAB][0-9a-fA-F]{2})\\u([fF])([c-fC-F][0-9a-fA-F]{2})")
_HIGH, _LOW, _BEYOND = 0xF800, 0xFC00, 0x10000
_STAND_IN = str.maketrans("dDfF", "fFdD")


def hidden(text: str) -> str:
    """Return the text with `\\ud…\\ud…` written `\\uf…\\uf…`; what begins so in double quotes was a pair."""
    return _PAIR.sub(lambda found: _exchanged(found[1], *found.groups()[1:]), text)


def restored(value: str, written: str, style: str | None) -> str:
    """Return a value with its pairs as the characters they stand for.

    written: the value as it stands in the text; style: its quotes. Outside of double quotes an escape is plain letters.
    """
    if not _PAIR.search(written):
        return value
    if style == '"':
        return _READ.sub(_character, value)
    return _AS_WRITTEN.sub(lambda found: _exchanged("", *found.groups()), value)


def _exchanged(before: str, first: str, high: str, second: str, low: str) -> str:
    return rf"{before}\u{first.translate(_STAND_IN)}{high}\u{second.translate(_STAND_IN)}{low}"


def _character(found: re.Match[str]) -> str:
    return chr(_BEYOND + ((ord(found[1]) - _HIGH) << 10) + ord(found[2]) - _LOW)
