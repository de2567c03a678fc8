"""Sections by their trade names: every rating in mm² whose area is that of a size is printed as that size."""

from __future__ import annotations

from types import MappingProxyType

from sld.frozen import replace
from sld.quantity import Given, Rating
from sld.steps.ledger import Ratings
from sld.wire_size import name_of

__all__ = ["in_trade_names"]


def in_trade_names(ratings: Ratings) -> Ratings:
    """Return the same ratings with trade names, in the values and in the inputs of the formulas."""
    values = {
        key: MappingProxyType({symbol: _named(rating) for symbol, rating in of_device.items()})
        for key, of_device in ratings.values.items()
    }
    return replace(ratings, values=MappingProxyType(values))


def _named(rating: Rating) -> Rating:
    name = name_of(rating.value) if rating.unit == "mm²" else ""
    return replace(rating, trade_name=name, given=tuple(_input(given) for given in rating.given))


def _input(given: Given) -> Given:
    if given.unit != "mm²" or isinstance(given.value, str):
        return given
    name = name_of(given.number)
    return replace(given, value=name, unit="") if name else given
