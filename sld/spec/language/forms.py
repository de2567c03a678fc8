"""What may be written for a key, in words: read from the annotations of the blocks."""

from __future__ import annotations

import json
import re
import types
from collections.abc import Callable, Iterable, Iterator, Mapping
from typing import Annotated, Any, Literal, Union, get_args, get_origin

from pydantic.fields import FieldInfo

from sld.spec.blocks.block import Block
from sld.spec.blocks.dates import Date
from sld.spec.scalar import plain as meaning
from sld.spec.units import Unit, Units
from sld.spec.usual import Usual

__all__ = ["default", "flow", "form", "members", "written"]

_DATE = get_args(Date)[1]
_NEEDS_QUOTES = re.compile(r"[,\[\]{}]|: |:$| #")
"""Of a text inside brackets."""

Link = Callable[[type[Block]], str]


def members(annotation: Any) -> list[Any]:
    """Return what a key may hold, without None; `Annotated` parts stay whole."""
    if get_origin(annotation) in (Union, types.UnionType):
        return [member for part in get_args(annotation) for member in members(part)]
    return [] if annotation is types.NoneType else [annotation]


def written(word: Any) -> str:
    """Return a word as it is written in a spec: in quotes where it would not be text without them."""
    if isinstance(word, bool):
        return str(word).lower()
    if isinstance(word, str):
        return word if meaning(word) == word else f'"{word}"'
    return f"{word:g}" if isinstance(word, float) else str(word)


def flow(value: Any) -> str:
    """Return plain data on one line of a spec: `{key: value}`, `[value, value]`, quotes where a text needs them."""
    if isinstance(value, Mapping):
        return f"{{{', '.join(f'{written(str(key))}: {flow(each)}' for key, each in value.items())}}}"
    if isinstance(value, list):
        return f"[{', '.join(map(flow, value))}]"
    if isinstance(value, bool):
        return str(value).lower()
    if isinstance(value, int | float):
        return str(value)
    text = str(value)
    return json.dumps(text, ensure_ascii=False) if _NEEDS_QUOTES.search(text) else written(text)


def _marks(metadata: Iterable[Any]) -> Iterator[Any]:
    """Yield the marks of an annotation, those inside a `Field(...)` too."""
    for mark in metadata:
        if isinstance(mark, FieldInfo):
            yield from _marks(mark.metadata)
        else:
            yield mark


def _mark(marks: list[Any], name: str) -> Any:
    """Return the value of a constraint that one of the marks has, or None."""
    return next((value for mark in marks if (value := getattr(mark, name, None)) is not None), None)


def _bounds(low: float | None, above: bool, high: float | None) -> str:
    """Write the bounds of a number: `, 1 to 20`, `, more than 0`, or nothing."""
    if low is not None and high is not None and not above:
        return f", {low:g} to {high:g}"
    parts = [] if low is None else [f"more than {low:g}" if above else f"at least {low:g}"]
    parts += [] if high is None else [f"at most {high:g}"]
    return "".join(f", {part}" for part in parts)


def _number(word: str, marks: list[Any]) -> str:
    above, least = _mark(marks, "gt"), _mark(marks, "ge")
    return word + _bounds(least if above is None else above, above is not None, _mark(marks, "le"))


def _quantity(mark: Unit | Units, usual: Usual | None) -> str:
    """Write the units, the bounds that nothing goes beyond, and what is usual."""
    if isinstance(mark, Units):
        words = f"quantity in {' or '.join(mark.units)}" + ("" if len(mark.units) == 1 else ", unit required")
    else:
        words = f"quantity in {mark.unit}" + _bounds(mark.minimum, mark.exclusive_minimum, mark.maximum)
    if usual is None:
        return words
    return words + f", for example `{usual.example}`" + (f"; usual is {usual}" if usual.bounded else "")


def _several(annotation: Any, marks: list[Any], link: Link) -> str:
    """Write a list, or a block of values by name."""
    parts = get_args(annotation)
    origin = get_origin(annotation)
    by_name = isinstance(origin, type) and issubclass(origin, Mapping)
    inner = form(parts[-1], (), link)
    least = _mark(marks, "min_length")
    return (f"{inner}, by name" if by_name else f"list of {inner}") + (f"; at least {least}" if least else "")


def form(annotation: Any, metadata: Iterable[Any], link: Link) -> str:
    """Return in words what may be written. link: how a block is named in the text. Raises TypeError for a new sort."""
    if get_origin(annotation) is Annotated:
        inner, *more = get_args(annotation)
        return form(inner, [*metadata, *more], link)
    marks = list(_marks(metadata))
    quantity = next((mark for mark in marks if isinstance(mark, Unit | Units)), None)
    choices = members(annotation)
    if len(choices) > 1:
        return "by `kind`: " + ", ".join(form(each, (), link) for each in choices)
    (only,) = choices
    if only is not annotation:
        return form(only, metadata, link)
    if quantity is not None:
        return _quantity(quantity, next((mark for mark in marks if isinstance(mark, Usual)), None))
    if get_origin(only) is Literal:
        words = [f"`{written(word)}`" for word in get_args(only)]
        return words[0] if len(words) == 1 else "one of " + ", ".join(words)
    if get_origin(only) is not None:
        return _several(only, marks, link)
    if only is str:
        pattern = _mark(marks, "pattern")
        if _DATE in marks:
            return "date, such as `2026-03-31`"
        return f"text of the form `{pattern}`" if pattern else "text"
    if isinstance(only, type) and issubclass(only, Block):
        return link(only)
    return {bool: "`true` or `false`", int: _number("whole number", marks), float: _number("number", marks)}[only]


def default(field: FieldInfo) -> str:
    """Return whether a key is required, optional, or which value stands where it is left out."""
    if field.is_required():
        return "required"
    value = field.default
    if value is None or value in ({}, []) or isinstance(value, Block):
        return "optional"
    unit = next((f" {mark.unit}" for mark in _marks(field.metadata) if isinstance(mark, Unit)), "")
    return f"`{written(value)}{unit}`"
