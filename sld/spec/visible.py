"""Text made visible: what does not print is written by its number, so that no text can steer or forge what is shown."""

from __future__ import annotations

import json
import re
from typing import Any

__all__ = ["as_json_text", "visible"]


def visible(text: str, keep: str = "\t") -> str:
    """Return the text with control, line-break, direction and other characters that do not print as `\\x1b`, `\\u202e`.

    keep: characters that are left as they are. Letters, signs and the plain blank always are.
    """
    if text.isprintable():
        return text
    return "".join(sign if sign.isprintable() or sign in keep else _number(sign) for sign in text)


def as_json_text(data: Any, ascii_only: bool = False) -> str:
    """Return data as indented JSON in which what does not print is escaped. ascii_only: all that is not ASCII too."""
    text = json.dumps(data, indent=2, ensure_ascii=ascii_only, allow_nan=False)
    return re.sub(r"[^\n\x20-\x7e]", _json_escape, text)


def _number(sign: str) -> str:
    return sign.encode("unicode_escape").decode("ascii")


def _json_escape(match: re.Match[str]) -> str:
    sign = match[0]
    return sign if sign.isprintable() else r"\u007f" if sign == "\x7f" else json.dumps(sign)[1:-1]
