"""A country file (TOML) -> `Country`, or an error with file, line, what was expected and what to do."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Mapping
from functools import lru_cache
from pathlib import Path
from typing import Any

from pydantic import ValidationError

from sld.grid.country import GROUPS, Country

__all__ = ["GENERIC", "BadGridFile", "country", "known", "line_of", "located", "parse", "reason_of", "toml", "typed"]

_FOLDER = Path(__file__).parent / "countries"
GENERIC = "generic"
"""The name of the rules for where there are none of a country: EN 50549-1."""


class BadGridFile(ValueError):  # noqa: N818 - what is wrong is the file
    """A file of grid rules cannot be used. line: counted from 1. reason, remedy: as of a finding."""

    def __init__(self, file: str, line: int, reason: str, remedy: str) -> None:
        self.file, self.line, self.reason, self.remedy = file, line, reason, remedy
        super().__init__(f"{file}:{line}: {reason}; {remedy}")


def known() -> tuple[str, ...]:
    """Return the codes of the countries that there are rules of, in alphabetical order."""
    return tuple(sorted(path.stem for path in _FOLDER.glob("*.toml") if path.stem != GENERIC))


@lru_cache(maxsize=32)
def country(code: str) -> Country:
    """Return the rules of a country, or the generic ones. Raises KeyError where there are none."""
    path = _FOLDER / f"{code}.toml"
    if code not in {*known(), GENERIC}:
        raise KeyError(code)
    return parse(path.read_text(encoding="utf-8"), path.name)


def parse(text: str, file: str) -> Country:
    """Return the rules that a text says. Raises BadGridFile."""
    return typed(toml(text, file), text, file)


def toml(text: str, file: str) -> dict[str, Any]:
    """Return a text in TOML as data. Raises BadGridFile."""
    try:
        return tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        found = re.search(r"at line (\d+)", str(error))
        line = int(found[1]) if found else max(len(text.splitlines()), 1)
        reason = str(error).split(" (at ")[0]
        raise BadGridFile(file, line, f"this is no TOML: {reason[:1].lower()}{reason[1:]}", "see toml.io") from None


def typed(data: dict[str, Any], text: str, file: str) -> Country:
    """Return data as the rules of a country, every entry with its sources. Raises BadGridFile."""
    try:
        made = Country.model_validate(data)
    except ValidationError as error:
        first = error.errors(include_url=False)[0]
        raise located(first["loc"], reason_of(first), text, file) from None
    return _resolved(made, text, file)


def reason_of(error: Mapping[str, Any]) -> str:
    """Return what pydantic says of a mistake, as this house writes it."""
    message = str(error["msg"]).removeprefix("Value error, ")
    if error["type"] == "extra_forbidden":
        message = f"`{error['loc'][-1]}` is not a key here"
    elif error["type"] == "missing":
        message = f"`{error['loc'][-1]}` is missing"
    return f"{message[:1].lower()}{message[1:]}"


def located(at: tuple[str | int, ...], reason: str, text: str, file: str) -> BadGridFile:
    """Return the error for a place of a file, with the line where it stands."""
    where = ".".join(str(step + 1) if isinstance(step, int) else step for step in at)
    return BadGridFile(file, line_of(text, at), f"{where}: {reason}" if where else reason, "compare it with the others")


def _resolved(made: Country, text: str, file: str) -> Country:
    """Return the rules with the sources of every entry put into it. Raises BadGridFile for one that is not listed."""
    update: dict[str, Any] = {}
    for group in ("supply_point", *GROUPS):
        entries = getattr(made, group)
        listed = entries if isinstance(entries, tuple) else (entries,) if entries is not None else ()
        found = []
        for place, entry in enumerate(listed):
            names = (*entry.sources, *(each.source for each in getattr(entry, "differs", ())))
            for name in names:
                if name not in made.sources:
                    at = (group, place, "sources") if isinstance(entries, tuple) else (group, "sources")
                    raise located(at, f"there is no source `{name}` under `sources`", text, file)
            found.append(entry.model_copy(update={"resolved": tuple(made.sources[name] for name in entry.sources)}))
        if found:
            update[group] = tuple(found) if isinstance(entries, tuple) else found[0]
    return made.model_copy(update=update)


_HEAD = re.compile(r"^\s*\[(\[)?\s*([\w.\-]+)\s*\]")
_KEY = re.compile(r"^\s*([\w\-]+)\s*=")


def line_of(text: str, at: tuple[str | int, ...]) -> int:
    """Return the line where a value stands, counted from 1; for one that is not written, that of the table around it.

    What stands within the brackets of one value is told at its key.
    """
    best, depth = 1, 0
    counts: dict[str, int] = {}
    table: tuple[str | int, ...] = ()
    for number, line in enumerate(text.splitlines(), 1):
        if head := _HEAD.match(line):
            name = head[2]
            if head[1]:
                counts[name] = counts.get(name, -1) + 1
                table = (name, counts[name])
            else:
                table = tuple(name.split("."))
            here: tuple[str | int, ...] = table
        elif key := _KEY.match(line):
            here = (*table, key[1])
        else:
            continue
        if len(here) > depth and at[: len(here)] == here:
            best, depth = number, len(here)
    return best
