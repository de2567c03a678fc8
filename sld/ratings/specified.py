"""What the spec gives, as a rating like any other."""

from __future__ import annotations

from sld.citation import cited
from sld.quantity import Origin, Rating
from sld.ratings.symbol import Symbol
from sld.words import phrase

__all__ = ["specified"]

_FORMULA, _CLAUSE = phrase("as specified"), cited(phrase("spec"))


def specified(symbol: Symbol, value: float, unit: str) -> Rating:
    """Return a value that the spec gives, as a rating like any other."""
    return Rating(symbol, value, unit, _FORMULA, (), _CLAUSE, origin=Origin.GIVEN)
