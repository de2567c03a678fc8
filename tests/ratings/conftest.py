"""Whatever a test of this folder makes, each `Rating` and `Given` must be what `sld/quantity.py` says of its fields."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Any

import pytest

import sld.tables
from sld.quantity import Given, Rating
from sld.ratings.symbol import Symbol
from sld.tables.table import table


@cache
def references() -> tuple[str, ...]:
    """Return how each row of each table is cited."""
    stems = sorted(path.stem for path in Path(sld.tables.__file__).parent.glob("*.csv"))
    return tuple(row.reference for stem in stems for row in table(stem))


@cache
def cites_a_row(text: str) -> bool:
    return any(text.startswith(reference) for reference in references())


def check_given(given: Given) -> None:
    assert isinstance(given.symbol, str), given
    assert given.symbol, given
    assert isinstance(given.value, int | float | str), given
    assert isinstance(given.unit, str), given
    assert isinstance(given.origin, str), given


def check_rating(rating: Rating) -> None:
    assert isinstance(rating.symbol, Symbol), rating
    assert rating.unit == rating.symbol.unit, f"{rating.symbol.name} is in {rating.symbol.unit}, not {rating.unit}"
    assert isinstance(rating.value, int | float), rating
    assert isinstance(rating.formula, str), rating
    assert isinstance(rating.given, tuple), rating
    assert all(isinstance(each, Given) for each in rating.given), rating
    assert isinstance(rating.clause, str), rating
    assert rating.clause, rating
    assert not cites_a_row(rating.clause), f"the clause is a row of a table: {rating}"
    assert isinstance(rating.table_row, str), rating
    assert not rating.table_row or cites_a_row(rating.table_row), f"not a row of a table: {rating.table_row}"
    assert isinstance(rating.assumptions, tuple), rating
    assert all(isinstance(each, str) for each in rating.assumptions), rating


@pytest.fixture(autouse=True, scope="module")
def _each_rating_is_well_formed() -> Iterator[None]:
    make_given, make_rating = Given.__init__, Rating.__init__

    def given(self: Given, *values: Any, **named: Any) -> None:
        make_given(self, *values, **named)
        check_given(self)

    def rating(self: Rating, *values: Any, **named: Any) -> None:
        make_rating(self, *values, **named)
        check_rating(self)

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(Given, "__init__", given)
        patch.setattr(Rating, "__init__", rating)
        yield
