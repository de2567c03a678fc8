"""Comparing two numbers, and writing both: a rule compares, it never computes."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import TypeVar

from sld.model.device import Device
from sld.model.system import EarthConductor
from sld.number import digits_to_tell_apart
from sld.quantity import Rating
from sld.ratings.symbol import Symbol
from sld.steps.ledger import Ratings
from sld.words import Amount, Sayable, amount

__all__ = ["above", "below", "shortfalls", "two", "two_sections"]

Keyed = TypeVar("Keyed", bound=Device | EarthConductor)

_KILO = 1000
_NOISE = 1e-9  # of the arithmetic: 1.2 · 25 is not above 30


def above(value: float, limit: float) -> bool:
    """Return whether a value is above a limit in the same unit; exactly at the limit it is not."""
    return value > limit and value - limit > _NOISE * abs(limit)


def below(value: float, limit: float) -> bool:
    """Return whether a value is below a limit in the same unit; exactly at the limit it is not."""
    return value < limit and limit - value > _NOISE * abs(limit)


def two(left: float, right: float, unit: str) -> tuple[Amount, Amount]:
    """Return two compared values with their unit, both in kW or kVA from a thousand on, with as many digits as it takes
    to tell them apart."""
    if unit in ("W", "VA") and max(abs(left), abs(right)) >= _KILO:
        left, right, unit = left / _KILO, right / _KILO, f"k{unit}"
    digits = digits_to_tell_apart(left, right)
    return amount(left, unit, digits), amount(right, unit, digits)


def two_sections(left: Rating, right: Rating) -> tuple[Sayable, Sayable]:
    """Return two compared sections: by their trade names where they have them, else in mm²."""
    if left.trade_name or right.trade_name:
        return left, right
    return two(left.value, right.value, "mm²")


def shortfalls(
    ratings: Ratings, devices: Iterable[Keyed], has: Symbol, needs: Symbol
) -> Iterator[tuple[Keyed, Rating, Rating]]:
    """Yield each device whose rating `has` is below its rating `needs`, with both. A missing one is no shortfall."""
    for device in devices:
        rating, least = ratings.get(device.key, has), ratings.get(device.key, needs)
        if rating is not None and least is not None and below(rating.value, least.value):
            yield device, rating, least
