"""The blocks of the spec language in the order of the document, and where each may stand."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from functools import cache
from typing import Annotated, Any, get_args, get_origin

from pydantic.fields import FieldInfo

from sld.frozen import dataclass
from sld.spec.blocks.block import Block, Named, Placed, Wired
from sld.spec.blocks.circuit import AcDevice, DcDevice, Installed, StringDevice
from sld.spec.document import Spec
from sld.spec.language.forms import members

__all__ = [
    "AC_DEVICES",
    "DC_DEVICES",
    "SHARED",
    "STRING_DEVICES",
    "fields_by_key",
    "own_fields",
    "places",
    "shared_bases",
    "title_of",
]

SHARED: tuple[type[Block], ...] = (Named, Placed, Wired, Installed)
"""Blocks that never stand alone: other blocks have their keys too."""

_TITLES: dict[type[Block], str] = {
    Spec: "Top level",
    Named: "Everything that is drawn",
    Placed: "Every device",
    Wired: "Everything with terminals",
    Installed: "Every device of a circuit",
}


def _blocks_of(annotation: Any) -> list[tuple[type[Block], str]]:
    """Return the blocks inside an annotation, each with what its path adds: `[]` in a list, `.NAME` by name."""
    if get_origin(annotation) is Annotated:
        return _blocks_of(get_args(annotation)[0])
    found = []
    for member in members(annotation):
        origin = get_origin(member)
        if origin is Annotated:
            found += _blocks_of(member)
        elif isinstance(member, type) and issubclass(member, Block):
            found.append((member, ""))
        elif isinstance(origin, type) and issubclass(origin, list | Mapping):
            step = "[]" if issubclass(origin, list) else ".NAME"
            found += [(block, step + rest) for block, rest in _blocks_of(get_args(member)[-1])]
    return found


def _classes(annotation: Any) -> tuple[type[Block], ...]:
    return tuple(block for block, _ in _blocks_of(annotation))


AC_DEVICES = _classes(AcDevice)
DC_DEVICES = _classes(DcDevice)
STRING_DEVICES = _classes(StringDevice)


@dataclass(frozen=True, slots=True)
class _Visit:
    block: type[Block]
    path: str


def _walk(block: type[Block], path: str) -> Iterator[_Visit]:
    yield _Visit(block, path)
    for key, field in fields_by_key(block).items():
        for inner, step in _blocks_of(field.annotation):
            yield from _walk(inner, f"{path}.{key}{step}".removeprefix("."))


@cache
def places() -> dict[type[Block], list[str]]:
    """Return every block with the paths at which it may stand, the shortest first, in the order of the document."""
    found: dict[type[Block], list[str]] = {}
    for visit in _walk(Spec, ""):
        found.setdefault(visit.block, []).append(visit.path)
    return {block: sorted(paths, key=lambda path: path.count(".")) for block, paths in found.items()}


def fields_by_key(block: type[Block]) -> dict[str, FieldInfo]:
    """Return the fields of a block by their keys in the spec, those of shared blocks too."""
    return {field.alias or name: field for name, field in block.model_fields.items()}


def own_fields(block: type[Block]) -> dict[str, FieldInfo]:
    """Return the fields by key that a block does not share with others."""
    shared = {key for base in shared_bases(block) for key in fields_by_key(base)}
    own = vars(block).get("__annotations__", {})
    keys = {field.alias or name for name, field in block.model_fields.items() if name in own}
    return {key: field for key, field in fields_by_key(block).items() if key in keys or key not in shared}


def shared_bases(block: type[Block]) -> tuple[type[Block], ...]:
    """Return the shared blocks whose keys a block has too, the nearest first."""
    return tuple(base for base in block.__mro__[1:] if base in SHARED)


def title_of(block: type[Block]) -> str:
    """Return the heading of a block: `AcCable` is `AC cable`."""
    if block in _TITLES:
        return _TITLES[block]
    words = re.findall(r"[A-Z][a-z]*", block.__name__)
    upper = {"Ac", "Dc", "Pv", "Mpp", "Rcd", "Rcbo"}
    first, *rest = [word.upper() if word in upper else word.lower() for word in words]
    return " ".join([first[:1].upper() + first[1:], *rest])
