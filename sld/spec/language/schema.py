"""The spec language as a JSON Schema (draft 2020-12), for editors that complete and check while a spec is written.

It is made from the blocks, so that it cannot be out of date. What it refuses, the reader refuses too; the reader
refuses more: what does not go together, names that lead nowhere, what is far from usual.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from sld.spec.blocks.block import Block
from sld.spec.document import Spec
from sld.spec.language.blocks import fields_by_key, places, title_of
from sld.spec.language.forms import form
from sld.spec.units import Unit, Units
from sld.spec.usual import Usual, marks_of

__all__ = ["schema"]

_DIALECT = "https://json-schema.org/draft/2020-12/schema"


def schema() -> dict[str, Any]:
    """Return the schema of a spec: plain data, the same each time."""
    made = Spec.model_json_schema(by_alias=True)
    blocks = {block.__name__: block for block in places()}
    for name, described in ((Spec.__name__, made), *made["$defs"].items()):
        _describe(described, blocks[name])
    return {
        "$schema": _DIALECT,
        **_without_noise(made),
        "title": "PV system",
        "description": "The spec of a PV system.",
    }


def _describe(described: dict[str, Any], block: type[Block]) -> None:
    """Give a block its heading, and its quantities their examples."""
    described["title"] = title_of(block)
    for key, field in fields_by_key(block).items():
        marks = list(marks_of(field))
        usual = next((mark for mark in marks if isinstance(mark, Usual)), None)
        told = described["properties"][key]
        if usual is not None:
            told["examples"] = list(usual.among or (usual.example,))
        if any(isinstance(mark, Unit | Units) for mark in marks):
            written = form(field.annotation, field.metadata, title_of).replace("`", "")
            told["description"] = f"{told['description']} {written[:1].upper()}{written[1:]}."


def _without_noise(node: Any) -> Any:
    """Return a schema without what the library adds and no reader needs: names of keys as titles, empty defaults."""
    if isinstance(node, list):
        return [_without_noise(each) for each in node]
    if not isinstance(node, dict):
        return node
    return dict(_kept(node))


def _kept(node: dict[str, Any]) -> Iterator[tuple[str, Any]]:
    for key, value in node.items():
        if key == "properties":
            yield key, {name: _without_noise(_untitled(each)) for name, each in value.items()}
        elif key == "$defs":
            yield key, {name: _without_noise(each) for name, each in value.items()}
        elif key == "discriminator" or (key == "default" and (value is None or value in ({}, []) or _is_block(value))):
            continue
        else:
            yield key, _without_noise(value) if key not in ("default", "const", "enum", "examples") else value


def _is_block(value: Any) -> bool:
    return isinstance(value, dict)


def _untitled(node: dict[str, Any]) -> dict[str, Any]:
    return {key: value for key, value in node.items() if key != "title"}
