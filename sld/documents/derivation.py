"""How values came about, device by device, for who asks about one: `sld explain` and the page for a browser."""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import SpecPath
from sld.frozen import dataclass
from sld.model.kinds.units import DATA_CABLE, EARTH_CONDUCTOR
from sld.model.system import System
from sld.quantity import Rating
from sld.steps import Ratings
from sld.words import Sayable, amount, phrase, sequence, verbatim

__all__ = ["Derived", "Entity", "derived", "entities"]

_GOVERNED_BY = "governed by"


@dataclass(frozen=True, slots=True)
class Entity:
    """What has a designation: a device, a data cable or an earth conductor. at: None for what is assumed."""

    key: str
    designation: str
    what: Sayable
    at: SpecPath | None


@dataclass(frozen=True, slots=True)
class Derived:
    """A quantity, its value in words, and each step on the way to it: a heading and what there is to say."""

    symbol: str
    meaning: Sayable
    value: Sayable
    steps: tuple[tuple[Sayable, Sayable], ...]


def entities(system: System) -> dict[str, Entity]:
    """Return all that has a designation, by its key, in the order of the tree from the network down."""
    found = [
        Entity(
            each.key,
            each.designation,
            sequence([each.kind.word_of(each.given), *([verbatim(each.name)] if each.name else [])]),
            None if each.assumed else each.at,
        )
        for each in system.devices.values()
    ]
    found += [Entity(each.key, each.designation, DATA_CABLE.word, each.at) for each in system.chains]
    found += [
        Entity(
            each.key,
            each.designation,
            sequence([EARTH_CONDUCTOR.word, each.to]),
            None if each.assumed else each.at,
        )
        for each in system.earth_conductors
    ]
    return {each.key: each for each in found}


def derived(ratings: Ratings, key: str) -> Iterator[Derived]:
    """Yield each quantity of a device: its ratings in the order they were made, results in words, what has no value."""
    shown = set[str]()
    for rating in ratings.of(key):
        told = f"{rating.symbol.meaning}{rating.trace()}"
        if told not in shown:  # some are kept under two symbols, which a later step may tell apart
            shown.add(told)
            value = sequence([rating, " (", _ORIGINS[rating.origin.value], ")"], "")
            yield Derived(str(rating.symbol), rating.symbol.meaning, value, tuple(_steps(rating)))
    for word, stated in ratings.words_of(key):
        reason = (phrase("Source"), stated.origin)
        said = amount(stated.value) if isinstance(stated.value, int | float) else sequence([stated.value], "")
        yield Derived("", word.value, said, (reason,) if stated.origin else ())
    for symbol, why in ratings.missing_of(key):
        yield Derived(str(symbol), symbol.meaning, phrase("no value"), ((phrase("Reason"), why.what),))


_ORIGINS = {
    "given": phrase("given"),
    "computed": phrase("computed"),
    "chosen": phrase("chosen"),
    "assumed": phrase("assumed"),
}


def _steps(rating: Rating) -> Iterator[tuple[Sayable, Sayable]]:
    """Yield what a value was worked out from and why it is that one."""
    inputs = [each for each in rating.given if each.name != _GOVERNED_BY]
    yield phrase("Formula"), sequence([rating.formula], "")
    if inputs:
        yield phrase("Numbers put in"), sequence(inputs, "; ")
    for each in rating.given:
        if each.name == _GOVERNED_BY:
            governs = amount(each.value) if isinstance(each.value, int | float) else sequence([each.value], "")
            yield phrase("Governed by"), governs
    yield phrase("Source"), rating.clause
    if rating.table_row:
        yield phrase("Row of the table"), rating.table_row
    for assumed in rating.assumptions:
        yield phrase("Assumed"), assumed
    for other in rating.passed_over:
        yield phrase("Passed over"), other
