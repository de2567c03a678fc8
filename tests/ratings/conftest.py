"""Whatever a test of this folder makes, each `Rating` and `Given` must be what `sld/quantity.py` says of its fields."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Any

import pytest

import sld.tables
from sld.citation import Citation, Citations
from sld.quantity import Given, Rating
from sld.ratings.symbol import Symbol
from sld.tables.table import table
from sld.words import Phrase

WORD = re.compile(r"(?<![A-Za-z,_])[a-z]{3,}")
"""A word, not the end of a letter symbol."""

FUNCTIONS = {"cmax", "cmin", "kgroup", "max", "min", "floor", "ceil", "exp", "cosφ", "sinφ", "cos", "sin"}
"""Functions and letter symbols of small letters, the same in every language."""


def is_the_same_everywhere(text: str) -> bool:
    """Return whether a text holds letter symbols, numbers and codes only; what holds words is a phrase."""
    return not set(WORD.findall(text)) - FUNCTIONS


@cache
def references() -> tuple[str, ...]:
    """Return how each row of each table is cited."""
    stems = sorted(path.stem for path in Path(sld.tables.__file__).parent.glob("*.csv"))
    rows = [row for stem in stems for row in table(stem)]
    return tuple(str(each) for row in rows for each in (row.reference, *map(row.reference_of, row.seen)))


@cache
def cites_a_row(text: str) -> bool:
    return any(text.startswith(reference) for reference in references())


def is_sayable(said: object) -> bool:
    return hasattr(said, "said") and not isinstance(said, str)


def check_given(given: Given) -> None:
    assert isinstance(given.symbol, Phrase) or is_the_same_everywhere(given.symbol), given
    assert given.name, given
    if isinstance(given.value, str):
        assert is_the_same_everywhere(given.value), given
    else:
        assert isinstance(given.value, int | float) or is_sayable(given.value), given
        # what has words for its value has words for its name: "method = D1", not "D1 = method"
        assert isinstance(given.value, int | float) or isinstance(given.symbol, Phrase), given
    assert isinstance(given.unit, str), given
    assert is_sayable(given.origin), given


def check_rating(rating: Rating) -> None:
    assert isinstance(rating.symbol, Symbol), rating
    assert rating.unit == rating.symbol.unit, f"{rating.symbol.name} is in {rating.symbol.unit}, not {rating.unit}"
    assert isinstance(rating.value, int | float), rating
    assert is_sayable(rating.formula) or is_the_same_everywhere(rating.formula), rating
    assert isinstance(rating.given, tuple), rating
    assert all(isinstance(each, Given) for each in rating.given), rating
    assert isinstance(rating.clause, Citation | Citations), rating
    assert str(rating.clause), rating
    assert not cites_a_row(str(rating.clause)), f"the clause is a row of a table: {rating}"
    assert is_sayable(rating.table_row), rating
    row = str(rating.table_row)
    assert not row or cites_a_row(row), f"not a row of a table: {row}"
    assert isinstance(rating.assumptions, tuple), rating
    assert all(is_sayable(each) for each in rating.assumptions), rating


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
