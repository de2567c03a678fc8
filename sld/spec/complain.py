"""Data -> the typed model, or a finding for each mistake in its shape: what is wrong, where, and what to write.

Two mistakes are never told for one: a misspelt key hides the key that is missing for it, and the members of a union
that were tried in vain make one finding.
"""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping
from typing import Any, TypeVar

from pydantic import BaseModel, ValidationError

from sld.finding import Finding, Severity, SpecPath
from sld.spec.mistake import Mistake, Told, nearest
from sld.spec.mistakes import TOLD, tell, told_key_error
from sld.spec.source import Source

__all__ = ["TOLD", "validate"]

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


def _mistakes(error: ValidationError, root: type[BaseModel], source: Source) -> list[Mistake]:
    found = []
    for details in error.errors(include_url=False):
        kind, loc = details["type"], details["loc"]
        missing = str(loc[-1]) if kind == "missing" else ""
        path, value, extra = _follow(loc[:-1] if missing else loc, source.data)
        context = details.get("ctx", {})
        found.append(Mistake(kind, path, value, details["msg"], context, root, source, missing, extra, loc))
    return found


def _without_consequences(mistakes: list[Mistake]) -> list[Mistake]:
    """Drop each missing key for which an unknown key of the same block was probably meant."""
    meant = {
        (each.path[:-1], near)
        for each in mistakes
        if each.kind == "extra_forbidden" and (near := nearest(str(each.path[-1]), each.free_keys()))
    }
    return [each for each in mistakes if not (each.missing and (each.path, each.missing) in meant)]


def _one_each(mistakes: list[Mistake]) -> Iterable[tuple[Mistake, list[Mistake]]]:
    """Yield one mistake for each place, with those of the other members of the same union."""
    places: dict[tuple[SpecPath, str], list[Mistake]] = {}
    for each in mistakes:
        places.setdefault((each.path, each.missing), []).append(each)
    deepest = [path for path, _ in places]
    for (path, missing), group in places.items():
        from_union = all(each.extra for each in group) and not missing
        if from_union and any(len(other) > len(path) and other[: len(path)] == path for other in deepest):
            continue
        words = [each for each in group if each.kind == "literal_error"]
        quantity = [each for each in group if each.kind.startswith("quantity")]
        close = [each for each in words if nearest(str(each.value), each.words())]
        first = (close or quantity or words or group)[0]
        yield first, [each for each in words if each is not first]


def _finding(mistake: Mistake, others: list[Mistake]) -> Finding:
    told: Told = told_key_error(mistake) if mistake.loc[-1:] == ("[key]",) else tell(mistake)
    allowed = [word for other in others for word in other.words()]
    remedy = f"{told.remedy}, or `{'`, `'.join(allowed)}`" if allowed else told.remedy
    at = mistake.path if told.at is None else told.at
    return Finding(told.code, Severity.DANGER, told.message, remedy, at, on_key=told.on_key)


def findings_of(error: ValidationError, root: type[BaseModel], source: Source) -> list[Finding]:
    """Return a finding for each mistake that pydantic reports, in the order of the text."""
    mistakes = _without_consequences(_mistakes(error, root, source))
    findings = [_finding(first, others) for first, others in _one_each(mistakes)]
    order: Mapping[str, int] = {file: number for number, file in enumerate(source.texts)}

    def place(finding: Finding) -> tuple[int, int, int, str, str]:
        span = source.locate(finding.at, finding.on_key)
        return order.get(span.file, 0), span.line, span.column, finding.code, str(finding.message)

    unique = {(finding.at, finding.message): finding for finding in findings}
    return sorted(unique.values(), key=place)


def validate(model_class: type[_Model], source: Source) -> tuple[_Model | None, list[Finding]]:
    """Return the model, or None and what is wrong.

    The data goes to pydantic as JSON: its strict mode then takes a list for a tuple and still no text for a number.
    """
    try:
        return model_class.model_validate_json(json.dumps(source.data)), []
    except ValidationError as error:
        return None, findings_of(error, model_class, source)
