"""The nearest value that works, for remedies: numbers of modules that were rated, standard sizes that are listed."""

from __future__ import annotations

from sld.model.device import StringGroup
from sld.quantity import Rating, shown
from sld.ratings.symbol import Symbol
from sld.steps.ledger import Ratings
from sld.tables.table import next_at_least, series

__all__ = ["fewer_modules", "more_modules", "section_at_least", "size_at_least"]


_IN_NORTH_AMERICA = {
    "ac_switch_disconnector_a": "nec_switch_a",
    "assembly_a": "nec_panelboard_a",
    "dc_isolator_a": "nec_switch_a",
    "gg_fuse_a": "nec_240_6_a",
    "mcb_icn_ka": "nec_interrupting_ka",
    "rccb_a": "nec_switch_a",
}
"""Series of IEC ratings -> the series that is made there."""


def size_at_least(series_name: str, least: float, unit: str, *, nec: bool = False) -> str:
    """Write the smallest standard size that is not below a value: `25 A`, or `at least 700 A` above the series.

    nec: take the series that is made in North America.
    """
    series_name = _IN_NORTH_AMERICA.get(series_name, series_name) if nec else series_name
    size = next_at_least(series(series_name), least)
    return f"at least {shown(least, 4)} {unit}" if size is None else f"{shown(size, 4)} {unit}"


def section_at_least(least: Rating) -> str:
    """Write the smallest standard section that is not below one: `6 mm²`; one with a trade name is such a size."""
    return least.trade_name or size_at_least("section_mm2", least.value, "mm²")


def fewer_modules(ratings: Ratings, group: StringGroup) -> str:
    """Write the remedy for a string that is too long: the largest number of modules that fits."""
    most = ratings.get(group.key, Symbol.NMAX)
    if most is None or most.value < 1:
        return "choose another module or inverter; not even one of these modules fits"
    return f"use at most {shown(most.value)} modules in series"


def more_modules(ratings: Ratings, group: StringGroup) -> str:
    """Write the remedy for a string that is too short: the smallest number of modules, where one fits at all."""
    least, most = ratings.get(group.key, Symbol.NMIN), ratings.get(group.key, Symbol.NMAX)
    if least is None:
        return "use more modules in series"
    if most is not None and least.value > most.value:
        needs, fits = shown(least.value), shown(most.value)
        return f"choose another module or inverter; {needs} modules in series are needed and only {fits} fit"
    return f"use at least {shown(least.value)} modules in series"
