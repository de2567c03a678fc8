"""The smallest standard value of a series that meets a demand."""

from __future__ import annotations

from sld.quantity import Given, Rating
from sld.ratings.symbol import Symbol
from sld.tables.table import next_at_least, series, table
from sld.words import Said

__all__ = ["smallest_standard"]


def smallest_standard(symbol: Symbol, series_name: str, least: Given, clause: Said, what: str) -> Rating | None:
    """Return the smallest value of a series that is not below a demand, in its unit; None above the series.

    symbol: of the rating that is chosen. series_name: in `standard_ratings`. least: the demand. what: the words for
    such a value, as in `smallest standard In ≥ In,min`. Raises NoRow for an unknown series.
    Source: the series as its row says, a published one or common practice.
    """
    value = next_at_least(series(series_name), least.number)
    if value is None:
        return None
    row = table("standard_ratings").pick(series=series_name)
    return Rating(symbol, value, least.unit, f"smallest {what} ≥ {least.symbol}", (least,), clause, row.reference)
