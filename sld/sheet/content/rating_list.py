"""The list of ratings: each formula once with its source, then the values by device."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from functools import lru_cache

from sld.layout.diagram.ranges import joined, pattern
from sld.model.system import System
from sld.quantity import Given
from sld.sheet.listings.table import Column, Table
from sld.steps import Ratings

__all__ = ["rating_list"]

_OWN = "\x00"
"""Stands for the designation of a device's owner, so that equal devices of equal owners have equal texts."""

_OWNED = re.compile(rf"{_OWN}([-A-Z0-9]*)")


@dataclass(slots=True)
class _Alike:
    """Devices with the same value, whose inputs differ in nothing but the owner. In the order they were met."""

    devices: list[str] = field(default_factory=list)
    owners: list[str] = field(default_factory=list)


def rating_list(system: System, ratings: Ratings) -> Table:
    """Return every rating that was computed or chosen.

    Equal values with equal inputs share a line; where the inputs are those of each device's own circuit, they are
    written as these are: `-TB1…3-WD1: 25 A with In(each of -TB1…3-FC1) = 25 A`.
    """
    names: Mapping[str, str] = {
        **{key: device.designation for key, device in system.devices.items()},
        **{conductor.key: conductor.designation for conductor in system.earth_conductors},
        **{chain.key: chain.designation for chain in system.chains},
        "": "system",
    }
    formulas: dict[tuple[str, str, str], dict[tuple[str, str], _Alike]] = {}
    for key, rating in ratings:
        if rating.formula == "as specified":
            continue
        owner = names.get(system.devices[key].owner, "") if key in system.devices else ""
        formula, given = _unowned(str(rating.formula), owner), _unowned(_inputs(rating.given), owner)
        values = formulas.setdefault((str(rating.symbol), formula, str(rating.clause)), {})
        alike = values.setdefault((rating.quantity(), given), _Alike())
        alike.devices.append(names.get(key, key))
        alike.owners.append(owner)
    rows = []
    for (symbol, formula, clause), values in formulas.items():
        owners = [owner for alike in values.values() for owner in alike.owners]
        lines = [f"{_owned(formula, owners)} | {clause}"]
        for (quantity, given), alike in values.items():
            inputs = f" with {_owned(given, alike.owners)}" if given else ""
            lines.append(f"{joined(alike.devices)}: {quantity}{inputs}")
        rows.append((symbol, "\n".join(lines)))
    return Table("Ratings", (Column("Rating"), Column("Formula | source; device: value with inputs", 1.0)), tuple(rows))


@lru_cache(maxsize=4096)
def _whole(owner: str) -> re.Pattern[str]:
    """Return what finds a designation that is not the beginning of another one, such as `-TB1` of `-TB12`."""
    return re.compile(rf"{re.escape(owner)}(?![0-9A-Za-z])")


def _unowned(text: str, owner: str) -> str:
    return _whole(owner).sub(_OWN, text) if owner and owner in text else text


def _owned(text: str, owners: Sequence[str]) -> str:
    """Return the text with the designations of all the owners, each with what follows it."""
    each = "each of " if len(set(owners)) > 1 else ""
    return _OWNED.sub(lambda found: each + joined(f"{owner}{found[1]}" for owner in owners), text)


def _inputs(given: tuple[Given, ...]) -> str:
    """Write the inputs of a formula; equal values with names that count up share one: `Ib(-TB1…60) = 40 A`."""
    parts = [str(each).partition(" = ") for each in given]
    if len({value for _, _, value in parts}) == len(parts):
        return "; ".join(f"{symbol} = {value}" for symbol, _, value in parts)
    alike: dict[tuple[str, str], list[str]] = {}
    for symbol, _, value in parts:
        alike.setdefault((pattern(symbol), value), []).append(symbol)
    return "; ".join(f"{joined(symbols)} = {value}" for (_, value), symbols in alike.items())
