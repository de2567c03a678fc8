"""Which block class stands at a place of the data, and what its keys are: found by walking the annotations."""

from __future__ import annotations

import types
from collections.abc import Iterable, Mapping
from typing import Annotated, Any, Literal, Union, get_args, get_origin

from pydantic import BaseModel
from pydantic.fields import FieldInfo

from sld.finding import SpecPath
from sld.spec.usual import Usual, marks_of

__all__ = ["blocks_at", "example_value", "fields_of", "members", "words_of"]


def fields_of(block: type[BaseModel]) -> dict[str, FieldInfo]:
    """Return the fields of a block by their key in the spec, its own before those that it shares with other blocks."""
    own = vars(block).get("__annotations__", {})
    fields = sorted(block.model_fields.items(), key=lambda item: item[0] not in own)
    return {field.alias or name: field for name, field in fields}


def members(annotation: Any) -> list[Any]:
    """Return what an annotation can be, without `Annotated`, unions and names of types."""
    if hasattr(annotation, "__value__"):
        return members(annotation.__value__)
    if get_origin(annotation) is Annotated:
        return members(get_args(annotation)[0])
    if get_origin(annotation) in (Union, types.UnionType):
        return [member for part in get_args(annotation) for member in members(part)]
    return [annotation]


def _is_block(annotation: Any) -> bool:
    return isinstance(annotation, type) and issubclass(annotation, BaseModel)


def _inside(annotation: Any, step: str | int) -> Iterable[Any]:
    """Yield the annotations of what stands under a key or index."""
    for member in members(annotation):
        origin, parts = get_origin(member), get_args(member)
        if _is_block(member):
            field = fields_of(member).get(str(step))
            if field is not None:
                yield field.annotation
        elif isinstance(origin, type) and issubclass(origin, Mapping):
            yield parts[1]
        elif origin is tuple and isinstance(step, int) and parts[-1] is not Ellipsis:
            yield from parts[step : step + 1]
        elif origin is not None and parts and origin is not Literal:
            yield parts[0]


def _fits(block: type[BaseModel], data: Any) -> bool:
    """Tell whether the words that mark a block of this class are those in the data."""
    if not isinstance(data, dict):
        return True
    for key, field in fields_of(block).items():
        if get_origin(field.annotation) is Literal and key == "kind" and key in data:
            return data[key] in get_args(field.annotation)
    return True


def blocks_at(root: type[BaseModel], data: Any, path: SpecPath) -> list[type[BaseModel]]:
    """Return the block classes that can stand at a path, narrowed by the `kind` in the data."""
    annotations: list[Any] = [root]
    for step in path:
        possible = [member for each in annotations for member in members(each)]
        fitting = [member for member in possible if not _is_block(member) or _fits(member, data)]
        annotations = [inner for member in fitting for inner in _inside(member, step)]
        data = data[step]
    blocks = [member for each in annotations for member in members(each) if _is_block(member)]
    return [block for block in blocks if _fits(block, data)] or blocks


def _examples(annotation: Any) -> Iterable[str]:
    if get_origin(annotation) is Annotated:
        yield from _examples(get_args(annotation)[0])
    elif get_origin(annotation) in (Union, types.UnionType):
        for part in get_args(annotation):
            yield from _examples(part)
    elif get_origin(annotation) is Literal:
        yield _quoted(get_args(annotation)[0])
    elif annotation in (int, bool, float):
        yield {int: "1", bool: "true", float: "1.0"}[annotation]


def words_of(field: FieldInfo) -> tuple[str, ...]:
    """Return the words or numbers that a field chooses from as they are written; none where it has no such list."""
    for member in members(field.annotation):
        if member is bool:
            return ("true", "false")
        if get_origin(member) is Literal:
            return tuple(_quoted(word) for word in get_args(member))
    return ()


def _quoted(word: Any) -> str:
    """Write a word of a list; a text that would be read as a number is in quotes."""
    return f'"{word}"' if isinstance(word, str) and not word[:1].isalpha() else str(word)


def example_value(field: FieldInfo) -> str:
    """Return a value that could be written for a field, nothing for a text, a list or a block."""
    quantity = next((mark.example for mark in marks_of(field) if isinstance(mark, Usual)), "")
    return quantity or next(iter(_examples(field.annotation)), "")
