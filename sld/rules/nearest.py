"""The nearest value that works, for remedies: numbers of modules that were rated, standard sizes that are listed."""

from __future__ import annotations

from sld.model.device import StringGroup
from sld.quantity import shown
from sld.rate.ledger import Ratings
from sld.tables.table import next_at_least, series

__all__ = ["fewer_modules", "more_modules", "size_at_least"]


def size_at_least(series_name: str, least: float, unit: str) -> str:
    """Write the smallest standard size that is not below a value: `25 A`, or `at least 700 A` above the series."""
    size = next_at_least(series(series_name), least)
    return f"at least {shown(least, 4)} {unit}" if size is None else f"{shown(size, 4)} {unit}"


def fewer_modules(ratings: Ratings, group: StringGroup) -> str:
    """Write the remedy for a string that is too long: the largest number of modules that fits."""
    most = ratings.get(group.key, "Nmax")
    if most is None or most.value < 1:
        return "choose another module or inverter; not even one of these modules fits"
    return f"use at most {shown(most.value)} modules in series"


def more_modules(ratings: Ratings, group: StringGroup) -> str:
    """Write the remedy for a string that is too short: the smallest number of modules, where one fits at all."""
    least, most = ratings.get(group.key, "Nmin"), ratings.get(group.key, "Nmax")
    if least is None:
        return "use more modules in series"
    if most is not None and least.value > most.value:
        needs, fits = shown(least.value), shown(most.value)
        return f"choose another module or inverter; {needs} modules in series are needed and only {fits} fit"
    return f"use at least {shown(least.value)} modules in series"
