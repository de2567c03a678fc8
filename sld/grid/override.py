"""The file of an operator or town beside the spec: entries of a country's rules replaced one by one, with a reason."""

from __future__ import annotations

from difflib import get_close_matches
from typing import Annotated, Any

from pydantic import ConfigDict, Field, ValidationError

from sld.grid.country import GROUPS, Country
from sld.grid.entry import Entry, Override
from sld.grid.evidence import Frozen, Line
from sld.grid.read import BadGridFile, located, reason_of, toml

__all__ = ["overridden"]


class _Replaced(Frozen):
    """One replacement: which entry, why, and whatever else of it is other than in the country's file."""

    model_config = ConfigDict(extra="allow", frozen=True)

    entry: Line
    reason: Line


class _File(Frozen):
    """The whole file. by: whose rules they are, printed with each."""

    by: Line
    replace: Annotated[tuple[_Replaced, ...], Field(min_length=1)]


def overridden(base: Country, text: str, file: str) -> Country:
    """Return the rules of a country with the entries replaced that a file (TOML) names. Raises BadGridFile."""
    data = toml(text, file)
    try:
        given = _File.model_validate(data)
    except ValidationError as error:
        first = error.errors(include_url=False)[0]
        raise located(first["loc"], reason_of(first), text, file) from None
    rules = base
    for place, each in enumerate(given.replace):
        rules = _with(rules, each, given.by, (text, file, place))
    return rules


def _names(rules: Country) -> list[str]:
    listed = [f"{group}.{entry.name}" for group in GROUPS for entry in getattr(rules, group)]
    return [*(["supply_point"] if rules.supply_point else []), *listed]


def _with(rules: Country, replaced: _Replaced, by: str, at: tuple[str, str, int]) -> Country:
    """Return the rules with one entry replaced. at: text and name of the file, number of the replacement."""
    text, file, place = at
    names = _names(rules)
    if replaced.entry not in names:
        near = get_close_matches(replaced.entry, names, n=1, cutoff=0.4)
        hint = f", perhaps `{near[0]}`" if near else ""
        reason = f"{rules.code} has no entry `{replaced.entry}`{hint}"
        raise BadGridFile(
            file,
            located(("replace", place, "entry"), reason, text, file).line,
            reason,
            f"write one of {', '.join(names)}",
        )
    group, _, name = replaced.entry.partition(".")
    entries = getattr(rules, group)
    old: Entry = entries if isinstance(entries, Entry) else next(each for each in entries if each.name == name)
    new = _changed(old, replaced, by, at)
    update = new if isinstance(entries, Entry) else tuple(new if each is old else each for each in entries)
    return rules.model_copy(update={group: update})


def _changed(old: Entry, replaced: _Replaced, by: str, at: tuple[str, str, int]) -> Entry:
    """Return an entry with other values; what other sources said of the old one is no longer of interest."""
    text, file, place = at
    changes: dict[str, Any] = dict(replaced.model_extra or {})
    kept = old.model_dump(mode="json", exclude={"resolved", "override", "differs"}, exclude_unset=True)
    try:
        new = type(old).model_validate(kept | changes)
    except ValidationError as error:
        first = error.errors(include_url=False)[0]
        raise located(("replace", place, *first["loc"]), reason_of(first), text, file) from None
    if "name" in changes or "sources" in changes:
        raise located(("replace", place), "`name` and `sources` of an entry stay as they are", text, file)
    why = Override(reason=replaced.reason, by=by)
    return new.model_copy(update={"resolved": old.resolved, "override": why})
