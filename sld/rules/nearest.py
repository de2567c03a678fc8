"""The nearest value that works, for remedies: numbers of modules that were rated, standard sizes that are listed."""

from __future__ import annotations

from sld.model.device import StringGroup
from sld.quantity import Rating
from sld.ratings.symbol import Symbol
from sld.steps.ledger import Ratings
from sld.tables.table import next_at_least, series
from sld.words import Phrase, Sayable, amount, phrase

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


def size_at_least(series_name: str, least: float, unit: str, *, nec: bool = False) -> Sayable:
    """Return the smallest standard size that is not below a value: `25 A`, or `at least 700 A` above the series.

    nec: take the series that is made in North America.
    """
    series_name = _IN_NORTH_AMERICA.get(series_name, series_name) if nec else series_name
    size = next_at_least(series(series_name), least)
    if size is None:
        return phrase("at least {size}", size=amount(least, unit, digits=4))
    return amount(size, unit, digits=4)


def section_at_least(least: Rating) -> Sayable:
    """Return the smallest standard section that is not below one: `6 mm²`; one with a trade name is such a size."""
    return least if least.trade_name else size_at_least("section_mm2", least.value, "mm²")


def fewer_modules(ratings: Ratings, group: StringGroup) -> Phrase:
    """Return the remedy for a string that is too long: the largest number of modules that fits."""
    most = ratings.get(group.key, Symbol.NMAX)
    if ratings.get(group.key, Symbol.NUNITS) is not None:
        return phrase("use fewer modules in the string, or optimisers for a lower voltage")
    if most is None or most.value < 1:
        return phrase("choose another module or inverter; not even one of these modules fits")
    return phrase("use at most {most} modules in series", most=amount(most.value))


def more_modules(ratings: Ratings, group: StringGroup) -> Phrase:
    """Return the remedy for a string that is too short: the smallest number of modules, where one fits at all."""
    least, most = ratings.get(group.key, Symbol.NMIN), ratings.get(group.key, Symbol.NMAX)
    if least is None:
        return phrase("use more modules in series")
    if most is not None and least.value > most.value:
        return phrase(
            "choose another module or inverter; {needs} modules in series are needed and only {fits} fit",
            needs=amount(least.value),
            fits=amount(most.value),
        )
    return phrase("use at least {least} modules in series", least=amount(least.value))
