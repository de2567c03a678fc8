"""A spec from a file, a text or a mapping."""

from __future__ import annotations

import os
from collections.abc import Mapping
from pathlib import Path
from typing import Any, overload

from sld import run
from sld.door.design import Design

__all__ = ["load"]


@overload
def load(spec: str | os.PathLike[str], *, allow_outside: bool = False) -> Design: ...
@overload
def load(spec: Mapping[str, Any]) -> Design: ...
@overload
def load(*, text: str | bytes) -> Design: ...
def load(
    spec: str | os.PathLike[str] | Mapping[str, Any] | None = None,
    *,
    text: str | bytes | None = None,
    allow_outside: bool = False,
) -> Design:
    """Read, rate and review one spec.

    spec: the path of a YAML or JSON file, or the keys and values of a spec as a mapping. text: instead, the spec as
    YAML or JSON. allow_outside: types files and a logo from anywhere; else they stand in the folder of the file or
    below. A text or a mapping has no folder and can name none.

    A mapping is read as the JSON text that it makes, so that it is held to the same rules: places are lines of this
    text, `Finding.at` is the path of keys. Dates become texts.

    Raises Unusable with every mistake where the input cannot be used, TypeError or ValueError for another call.
    """
    if (spec is None) == (text is None):
        raise TypeError("load takes either a path or mapping, or text=")
    if allow_outside and not isinstance(spec, str | os.PathLike):
        raise TypeError("allow_outside is for a spec in a file; a text or mapping names no other file")
    if text is not None:
        return Design(run.check_text(text))
    if isinstance(spec, Mapping):
        return Design(run.check_mapping(spec))
    assert spec is not None  # or text was given
    if isinstance(spec, str) and "\n" in spec:
        raise ValueError("a path has no line breaks; a spec as text is load(text=...)")
    path = Path(spec)
    return Design(run.check(path, allow_outside=allow_outside), path)
