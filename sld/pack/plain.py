"""Values of the house as plain JSON: dataclasses and blocks by their attributes, which end in the units they are in."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import fields, is_dataclass
from datetime import date
from enum import Enum
from typing import Any

from sld.grid.evidence import Frozen
from sld.model.kinds.row import Kind
from sld.spec.blocks.block import Block
from sld.words import ENGLISH

__all__ = ["plain"]


def plain(value: Any) -> Any:
    """Return a value as JSON can hold it. What is to be said is said in English; a kind of device is its name."""
    match value:
        case None | bool() | int() | float() | str():
            return value
        case Kind():
            return value.name or ENGLISH.say(value.word)
        case Enum():
            return value.name
        case date():
            return value.isoformat()
        case Block() | Frozen():
            return {name: plain(getattr(value, name)) for name in type(value).model_fields}
        case Mapping():
            return {str(key): plain(each) for key, each in value.items()}
        case list() | tuple():
            return [plain(each) for each in value]
        case set() | frozenset():
            return sorted(plain(each) for each in value)
    if hasattr(value, "said"):
        return ENGLISH.say(value)
    assert is_dataclass(value), f"{type(value)} has no plain form"
    return {field.name: plain(getattr(value, field.name)) for field in fields(value)}
