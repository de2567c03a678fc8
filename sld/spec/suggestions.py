"""The key or kind that was probably meant by one that is not known, or nothing: no guess is better than a wrong one."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from difflib import SequenceMatcher
from typing import Any, Literal, get_args, get_origin

from pydantic.fields import FieldInfo
from pydantic_core import PydanticCustomError

from sld.spec.fields import members, words_of
from sld.spec.measure import measure
from sld.spec.synonyms import besides, meant
from sld.spec.units import Unit, Units
from sld.spec.unusable_value import nearest
from sld.spec.usual import marks_of

__all__ = ["fits", "meant_key", "meant_kind", "meant_word"]

_LEAST_SHARE = 0.6
"""Of the letters of a word that must agree with those of another for a slip of the hand."""


def meant_key(key: str, value: Any, free: Iterable[str], fields: Mapping[str, FieldInfo]) -> str:
    """Return the key of a block that was probably meant by one that it has not.

    value: what stands under it, which the key must be able to hold. free: the keys not used yet, likeliest first.
    """
    able = [each for each in free if fits(fields[each], value)]
    return next((each for each in meant(key) if each in able), "") or _near(key, able)


def meant_kind(tag: str, kinds: Iterable[str]) -> tuple[str, str]:
    """Return the kind of device that was probably meant, and the key with its value that this says besides."""
    known = list(kinds)
    own = next((each for each in meant(tag) if each in known), "")
    return (own, besides(tag)) if own else (nearest(tag, known), "")


def meant_word(word: str, words: Iterable[str]) -> str:
    """Return the word of a list that was probably meant; one with a part more or less is another word: TN-C, TN-C-S."""
    near = nearest(word, words)
    return near if len(_parts(near)) == len(_parts(word)) or _letters(near) == _letters(word) else ""


def fits(field: FieldInfo, value: Any) -> bool:
    """Tell whether a key can hold a value by its shape: a quantity of its unit, one of its words, a text, a block."""
    if value is None:
        return True
    for mark in marks_of(field):
        if isinstance(mark, Unit | Units):
            return _is_quantity(mark, value)
    words = words_of(field)
    if words and isinstance(value, str) and not isinstance(value, bool):
        return bool(nearest(value, [word.strip('"') for word in words]))
    return any(_holds(member, value) for member in members(field.annotation))


def _is_quantity(mark: Unit | Units, value: Any) -> bool:
    try:
        mark.read(value)
    except PydanticCustomError as error:
        return error.type in ("quantity_range", "quantity_size")
    return True


def _holds(member: Any, value: Any) -> bool:
    origin = get_origin(member)
    if isinstance(value, dict):
        return origin is dict or (isinstance(member, type) and hasattr(member, "model_fields"))
    if isinstance(value, list):
        return origin in (list, tuple)
    if origin is Literal:
        return any(type(word) is type(value) for word in get_args(member))
    if isinstance(value, bool):
        return member is bool
    return (member in (int, float) and isinstance(value, int | float)) or (member is str and isinstance(value, str))


def _near(key: str, able: list[str]) -> str:
    """Return the key that differs by slips alone: each word of either has its like in the other."""
    near = nearest(key, able)
    if not near or _letters(near) == _letters(key) or _share(near, key) > 0.9:
        return near
    there, asked = _parts(near), _without_unit(key)
    if len(there) == len(asked) == 1 and near[0].casefold() != key[0].casefold():
        return ""  # `material` is no slip of `terminals`
    if all(_has_like(word, there) for word in asked) and (len(asked) < len(there) or _alike(there, asked)):
        return near
    return ""


def _alike(there: list[str], asked: list[str]) -> bool:
    return all(_has_like(word, asked) for word in there)


def _has_like(word: str, words: list[str]) -> bool:
    return any(_share(word, other) >= _LEAST_SHARE for other in words)


def _share(one: str, other: str) -> float:
    return SequenceMatcher(None, one.casefold(), other.casefold()).ratio()


def _parts(word: str) -> list[str]:
    return word.replace("-", "_").replace(" ", "_").split("_")


def _without_unit(key: str) -> list[str]:
    """Return the parts of a key without a unit at its end: `length_mm2`."""
    parts = _parts(key)
    return parts[:-1] if len(parts) > 1 and measure(parts[-1]) else parts


def _letters(word: str) -> str:
    return "".join(filter(str.isalnum, word.casefold()))
