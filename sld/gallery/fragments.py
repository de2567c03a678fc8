"""A worked fragment for each block of the spec language: as it stands in a spec of `specs/`, else from its examples."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from functools import cache
from textwrap import wrap
from typing import Any, get_args, get_origin

from sld.frozen import dataclass
from sld.spec.blocks.block import Block
from sld.spec.fields import example_value, words_of
from sld.spec.language.blocks import fields_by_key, places
from sld.spec.language.forms import flow, written
from sld.spec.scalar import plain

__all__ = ["Fragment", "fragments"]

_WIDTH = 110
_FEW_KEYS = 2

Path = tuple[str | int, ...]


@dataclass(frozen=True, slots=True)
class Fragment:
    """A block as somebody wrote it. source: the name of its spec, empty for one made from the examples of its keys."""

    path: Path
    data: Mapping[str, Any]
    source: str

    def lines(self) -> list[str]:
        """Return the fragment as it stands in a spec, below the keys that lead to it."""
        found, indent, item = [], 0, ""
        for step in self.path:
            if isinstance(step, int):
                item = "- "
                continue
            found.append(f"{' ' * indent}{item}{written(step)}:")
            indent, item = indent + 2 + len(item), ""
        for key, value in self.data.items():
            text = f"{item}{key}: {flow(value)}"
            margin = " " * (indent + len(item) + 2)
            found += [
                f"{' ' * indent}{line}" if not at else f"{margin}{line}"
                for at, line in enumerate(wrap(text, _WIDTH, break_long_words=False, break_on_hyphens=False))
            ]
            if item:
                indent, item = indent + len(item), ""
        return found


def fragments(specs: Iterable[tuple[str, Mapping[str, Any]]]) -> dict[type[Block], Fragment]:
    """Return a fragment for each block that can stand in a spec. specs: name and data, as it was read."""
    standing = [(name, path, data) for name, whole in specs for path, data in _blocks((), whole)]
    by_pattern: dict[str, list[tuple[str, Path, Mapping[str, Any]]]] = {}
    for name, path, data in standing:
        by_pattern.setdefault(_pattern(path), []).append((name, path, data))
    found = {}
    for block, patterns in places().items():
        given = [each for pattern in patterns for each in by_pattern.get(pattern, ()) if _is(block, each[2])]
        if given:
            name, path, data = min(given, key=_brief)
            found[block] = Fragment(path, data, name)
        elif made := _made(block):
            found[block] = Fragment(_example_path(patterns[0]), made, "")
    return found


def _brief(standing: tuple[str, Path, Mapping[str, Any]]) -> tuple[bool, bool, int, str]:
    """Sort what says something first, of that what has some keys, then the shorter one."""
    name, _, data = standing
    return not data, len(data) < _FEW_KEYS, len(flow(data)), name


def _blocks(path: Path, data: object) -> Iterator[tuple[Path, Mapping[str, Any]]]:
    if isinstance(data, Mapping):
        yield path, data
        for key, value in data.items():
            yield from _blocks((*path, key), value)
    elif isinstance(data, list):
        for at, value in enumerate(data):
            yield from _blocks((*path, at), value)


def _pattern(path: Path) -> str:
    """Return the pattern of a path as `places` writes it, names by where the known patterns have them."""
    text, known = "", _patterns()
    for step in path:
        if isinstance(step, int):
            text += "[]"
            continue
        named, keyed = f"{text}.NAME", f"{text}.{step}" if text else step
        text = keyed if any(each == keyed or each.startswith((f"{keyed}.", f"{keyed}[")) for each in known) else named
    return text


@cache
def _patterns() -> set[str]:
    return {path for paths in places().values() for path in paths}


def _is(block: type[Block], data: Mapping[str, Any]) -> bool:
    """Return whether a mapping is of a block: its kind is the block's, and it has no key that this has not."""
    field = fields_by_key(block).get("kind")
    if (
        field is not None
        and get_origin(field.annotation) is not None
        and data.get("kind") not in get_args(field.annotation)
    ):
        return False
    return set(data) <= set(fields_by_key(block))


def _made(block: type[Block]) -> dict[str, Any]:
    """Return the keys that a block needs with the examples of the reference, nothing where a key has none."""
    made: dict[str, Any] = {}
    for key, field in fields_by_key(block).items():
        if not field.is_required() and key != "kind":
            continue
        example = example_value(field) or next(iter(words_of(field)), "")
        if not example:
            return {}
        made[key] = plain(example)
    return made


def _example_path(pattern: str) -> Path:
    steps: list[str | int] = []
    for step in pattern.split("."):
        steps.append("name" if step.startswith("NAME") else step.removesuffix("[]"))
        if step.endswith("[]"):
            steps.append(0)
    return tuple(steps)
