"""The smallest standard value of a series that meets a demand."""

from __future__ import annotations

from sld.quantity import Given, Origin, Rating
from sld.ratings.passed_over import below
from sld.ratings.symbol import Symbol
from sld.tables.table import next_at_least, series, table
from sld.words import Phrase, Sayable

__all__ = ["smallest_standard"]


def smallest_standard(
    symbol: Symbol, series_name: str, least: Given, clause: Sayable, formula: Phrase
) -> Rating | None:
    """Return the smallest value of a series that is not below a demand, in its unit; None above the series.

    symbol: of the rating that is chosen. series_name: in `standard_ratings`. least: the demand. formula: in
    words, as `smallest standard In ≥ In,min`. Raises NoRow for an unknown series.
    Source: the series as its row says, a published one or common practice.
    """
    values = series(series_name)
    value = next_at_least(values, least.number)
    if value is None:
        return None
    row = table("standard_ratings").pick(series=series_name)
    return Rating(
        symbol,
        value,
        least.unit,
        formula,
        (least,),
        clause,
        row.reference,
        origin=Origin.CHOSEN,
        passed_over=below(values, least.number, least.unit),
    )
