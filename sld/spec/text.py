"""Bytes of a file -> text that can be read, and text -> a block of data with its places."""

from __future__ import annotations

import os
import re
import stat
from pathlib import Path
from typing import Any

from sld.finding import SpecPath
from sld.spec.compose import compose
from sld.spec.span import Span, Spot, UnusableText, split_lines

__all__ = ["MAX_BYTES", "compose_block", "decode", "load"]

MAX_BYTES = 2_000_000
# What YAML 1.2 (section 5.1) does not call printable, and the byte order mark, which nobody can see. To say what is
# printable instead takes the library 4 ms to compile.
_UNPRINTABLE = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x84\x86-\x9f\ud800-\udfff\ufeff\ufffe\uffff]")


def load(path: Path, shown: str) -> bytes:
    """Return the bytes of a file, not more than are allowed and one. Raises UnusableText.

    A pipe, socket or device is refused, as reading from one may never end.
    """
    try:
        kind = path.stat().st_mode
        if not (stat.S_ISREG(kind) or stat.S_ISDIR(kind)):
            remedy = "write the spec into a file and name that"
            raise UnusableText("SP01", "cannot read it: a pipe or device, not a file", remedy, Span(shown, 1, 1))
        with open(os.open(path, os.O_RDONLY | getattr(os, "O_NONBLOCK", 0)), "rb") as stream:
            return stream.read(MAX_BYTES + 1)
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or "not a usable name"
        raise UnusableText(
            "SP01", f"cannot read the file: {reason.lower()}", "check the path", Span(shown, 1, 1)
        ) from None


def decode(raw: bytes | str, shown: str) -> str:
    """Return the text without a byte order mark. Raises UnusableText where it is too large or not text."""
    if len(raw) > MAX_BYTES:
        raise UnusableText("SP02", "the file is larger than 2 MB", "check that it is a spec", Span(shown, 1, 1))
    if isinstance(raw, str):
        text = raw
    else:
        if raw[:2] in (b"\xff\xfe", b"\xfe\xff"):
            raise UnusableText("SP03", "the file is text in UTF-16", "save it as UTF-8", Span(shown, 1, 1))
        try:
            text = raw.decode("utf-8")
        except UnicodeDecodeError as error:
            lines = split_lines(raw[: error.start].decode("utf-8"))
            span = Span(shown, len(lines), len(lines[-1].removeprefix("\ufeff")) + 1)
            message = f"byte 0x{raw[error.start]:02X} is not UTF-8 text"
            raise UnusableText("SP03", message, "save the file as plain text in UTF-8", span) from None
    text = text.removeprefix("\ufeff")
    hidden = _UNPRINTABLE.search(text)
    if hidden:
        lines = split_lines(text[: hidden.start()])
        span = Span(shown, len(lines), len(lines[-1]) + 1)
        name = f"U+{ord(hidden.group()):04X}"
        raise UnusableText(
            "SP04", f"character {name} does not print", "delete it, or save the file as plain text", span
        )
    return text


def compose_block(text: str, shown: str) -> tuple[dict[str, Any], dict[SpecPath, Spot]]:
    """Return data and spots of a text whose top level is a block. Raises UnusableText."""
    data, spots = compose(text, shown)
    if data is None:
        remedy = "begin with the smallest useful spec, at the top of gallery/spec-reference.md"
        raise UnusableText("SP05", "there is nothing in the file", remedy, Span(shown, 1, 1))
    if not isinstance(data, dict):
        what = "a list" if isinstance(data, list) else "a single value"
        span = spots[()].value
        raise UnusableText("SP18", f"the top level is {what}, not a block of keys", "begin with `project:`", span)
    return data, spots
