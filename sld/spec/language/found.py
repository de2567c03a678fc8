"""Where a word belongs in the spec language: blocks by heading, kind or path, and keys by name."""

from __future__ import annotations

import re
from collections.abc import Iterator
from difflib import get_close_matches
from typing import Any, get_args

from sld.frozen import dataclass
from sld.spec.blocks.block import Block
from sld.spec.language.blocks import SHARED, fields_by_key, places, title_of
from sld.spec.language.forms import default, form
from sld.spec.synonyms import meant

__all__ = ["KeyRow", "blocks_called", "key_rows", "keys_called", "near_words"]

_LONGEST = 100
"""Letters of a word that are compared with others."""


@dataclass(frozen=True, slots=True)
class KeyRow:
    """A key of a block: what may be written, whether it is needed or what stands for it, and what it means."""

    key: str
    form: str
    default: str
    meaning: str


def key_rows(block: type[Block]) -> list[KeyRow]:
    """Return a row for each key of a block, its own before those that it shares with others."""
    own = vars(block).get("__annotations__", {})
    own_keys = {field.alias or name for name, field in block.model_fields.items() if name in own}
    fields = sorted(fields_by_key(block).items(), key=lambda item: item[0] not in own_keys)
    return [
        KeyRow(
            key,
            form(field.annotation, field.metadata, title_of).replace("`", ""),
            default(field).replace("`", ""),
            field.description or "Says which device this is.",
        )
        for key, field in fields
    ]


def blocks_called(word: str) -> list[type[Block]]:
    """Return the blocks that a word names: by heading (`AC cable`), kind (`breaker`, `mcb`) or path (`supply`)."""
    asked = {_bare(word), *map(_bare, meant(word))}
    return [
        block
        for block, paths in places().items()
        if asked & {_bare(title_of(block)), *map(_bare, _kinds(block)), *map(_bare, map(_keys, paths)), *_ends(paths)}
        or any(_leads(path, word) for path in paths)
    ]


def keys_called(word: str) -> dict[str, list[type[Block]]]:
    """Return the keys that a word names, by their own name or one of the trade's, each with the blocks that have it."""
    found: dict[str, list[type[Block]]] = {}
    asked = {word.casefold(), *meant(word)}
    for block in (*places(), *SHARED):
        for key in fields_by_key(block):
            if key in asked:
                found.setdefault(key, []).append(block)
    return found


def near_words(word: str) -> str:
    """Return the heading, kind or key that was probably meant, or nothing."""
    known = {title_of(block) for block in places()} | {kind for block in places() for kind in _kinds(block)}
    known |= {key for block in places() for key in fields_by_key(block)}
    return next(iter(get_close_matches(word[:_LONGEST], sorted(known), 1, 0.7)), "")


def _bare(word: str) -> str:
    return re.sub(r"[\s_-]", "", word.casefold())


def _kinds(block: type[Block]) -> tuple[str, ...]:
    field = fields_by_key(block).get("kind")
    return tuple(_words(field.annotation)) if field and block.__doc__ else ()


def _words(annotation: Any) -> Iterator[str]:
    """Yield the words of an annotation: those of `Literal["rod", "ring"] | None`."""
    for part in get_args(annotation):
        if isinstance(part, str):
            yield part
        else:
            yield from _words(part)


def _ends(paths: list[str]) -> Iterator[str]:
    """Yield the last key of each path: `inputs` of `inverters.NAME.inputs[]`."""
    for path in paths:
        keys = [step for step in re.sub(r"\[\]", "", path).split(".") if step != "NAME"]
        if keys:
            yield _bare(keys[-1])


def _keys(path: str) -> str:
    """Return a path without its names and lists: `types.modules` of `types.modules.NAME`."""
    return path.replace("[]", "").replace(".NAME", "")


def _leads(path: str, word: str) -> bool:
    """Tell whether a path of a spec, with its names and numbers, is one of a block: `inverters.roof.inputs[0]`."""
    if "." not in word:
        return False
    pattern = re.escape(path).replace(r"\[\]", r"(\[\d*\])?").replace("NAME", r"[^.\[\]]+")
    return re.fullmatch(pattern, word) is not None
