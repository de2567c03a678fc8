"""Data -> the typed model, or a finding for each mistake in its shape: what is wrong, where, and what to write.

Two mistakes are never told for one: a misspelt key hides the key that is missing for it, and the members of a union
that were tried in vain make one finding.
"""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import field
from functools import partial
from typing import Any, TypeVar

from pydantic import BaseModel, ValidationError

from sld.finding import Finding, Severity, SpecPath
from sld.frozen import dataclass
from sld.spec.bounded import MOST_TOLD, Place, first_of_each_file, in_order
from sld.spec.explanations import EXPLANATIONS, explained, explained_key
from sld.spec.source import Source
from sld.spec.unusable_value import Explanation, UnusableValue, nearest

__all__ = ["EXPLANATIONS", "validate"]

_Model = TypeVar("_Model", bound=BaseModel)


def _is_tag(step: str | int, value: Any, entered: bool) -> bool:
    """Tell whether a step is the word that chose a block class and not a key."""
    return entered and isinstance(value, dict) and value.get("kind") == step


def _follow(loc: tuple[str | int, ...], data: Any) -> tuple[SpecPath, Any, bool]:
    """Return the path that is in the data, the value there, and whether the last step of `loc` is not part of it.

    What pydantic adds to a place is left out: the word that chose a member of a union, that member's name, `[key]`.
    """
    path: SpecPath = ()
    entered, extra = False, False
    for step in loc:
        extra = True
        if _is_tag(step, data, entered):
            entered = False
            continue
        inside = (isinstance(data, dict) and step in data) or (
            isinstance(data, list) and isinstance(step, int) and step < len(data)
        )
        if inside:
            data, path, entered, extra = data[step], (*path, step), True, False
    return path, data, extra


def _unusable_values(error: ValidationError, root: type[BaseModel], source: Source) -> Iterator[UnusableValue]:
    for details in error.errors(include_url=False, include_input=False):
        kind, loc = details["type"], details["loc"]
        missing = str(loc[-1]) if kind == "missing" else ""
        path, value, extra = _follow(loc[:-1] if missing else loc, source.data)
        context = details.get("ctx", {})
        yield UnusableValue(kind, path, value, details["msg"], context, root, source, missing, extra, loc)


_Groups = dict[tuple[SpecPath, str], list[UnusableValue]]
"""Mistakes by their place and the key that is missing there."""


def _by_place(mistakes: Iterable[UnusableValue]) -> _Groups:
    """Return the mistakes place by place, without those of a union that one inside of it explains."""
    places: _Groups = {}
    for each in mistakes:
        places.setdefault((each.path, each.missing), []).append(each)
    around = {path[:length] for path, _ in places for length in range(len(path))}
    return {
        (path, missing): group
        for (path, missing), group in places.items()
        if missing or path not in around or not all(each.extra for each in group)
    }


@dataclass(frozen=True, slots=True)
class _Consequences:
    """The missing keys of each block for which an unknown key of the same block was probably meant."""

    unknown: Mapping[SpecPath, list[UnusableValue]]
    meant: dict[SpecPath, set[str]] = field(default_factory=dict)

    def holds(self, path: SpecPath, key: str) -> bool:
        """Tell whether the key of the block at a path is missing because it is misspelt there."""
        if path not in self.meant:
            mistakes = self.unknown.get(path, [])[:MOST_TOLD]
            self.meant[path] = {nearest(str(each.path[-1]), each.free_keys()) for each in mistakes}
        return key in self.meant[path]


def _of_group(group: list[UnusableValue]) -> Finding:
    """Return the finding on one place; the others are those of the other members of the same union."""
    words = [each for each in group if each.kind == "literal_error"]
    quantity = [each for each in group if each.kind.startswith("quantity")]
    close = [each for each in words if nearest(str(each.value), each.words())]
    first = (close or quantity or words or group)[0]
    return _finding(first, [each for each in words if each is not first])


def _finding(unusable: UnusableValue, others: list[UnusableValue]) -> Finding:
    told: Explanation = explained_key(unusable) if unusable.loc[-1:] == ("[key]",) else explained(unusable)
    allowed = [word for other in others for word in other.words()]
    remedy = f"{told.remedy}, or `{'`, `'.join(allowed)}`" if allowed else told.remedy
    at = unusable.path if told.at is None else told.at
    return Finding(told.code, Severity.DANGER, told.message, remedy, at, on_key=told.on_key)


def findings_of(error: ValidationError, root: type[BaseModel], source: Source) -> list[Finding]:
    """Return a finding for each mistake that pydantic reports, in the order of the text, at most 100 a file."""
    groups = _by_place(_unusable_values(error, root, source))
    unknown: dict[SpecPath, list[UnusableValue]] = {}
    for group in groups.values():
        if group[0].kind == "extra_forbidden":
            unknown.setdefault(group[0].path[:-1], []).append(group[0])
    consequences = _Consequences(unknown)

    def told(path: SpecPath, missing: str, group: list[UnusableValue]) -> Finding | None:
        return None if missing and consequences.holds(path, missing) else _of_group(group)

    places = [
        Place(path, partial(told, path, missing, group), bool(missing)) for (path, missing), group in groups.items()
    ]
    unique = {(each.at, each.message): each for each in first_of_each_file(source, places)}
    key = in_order(source)
    return sorted(unique.values(), key=lambda each: (key(source.locate(each.at, each.on_key)), each.code, each.message))


def validate(model_class: type[_Model], source: Source) -> tuple[_Model | None, list[Finding]]:
    """Return the model, or None and what is wrong.

    The data goes to pydantic as JSON: its strict mode then takes a list for a tuple and still no text for a number.
    """
    try:
        return model_class.model_validate_json(json.dumps(source.data)), []
    except ValidationError as error:
        return None, findings_of(error, model_class, source)
