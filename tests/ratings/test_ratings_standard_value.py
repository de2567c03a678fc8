"""The choice from a series of standard values, at a member and a hair beyond it."""

from __future__ import annotations

import pytest

from sld.citation import cited
from sld.quantity import Given
from sld.ratings.standard_value import smallest_standard
from sld.ratings.symbol import Symbol
from sld.tables.table import NoRow
from sld.words import phrase

CLAUSE = cited("IEC 60228:2004")
FORMULA = phrase("smallest standard S ≥ S,min")


@pytest.mark.parametrize(
    ("least_mm2", "chosen_mm2"),
    # nominal sections of IEC 60228: https://www.etechnik-synergie.com/technical_information/condutor-resistance/
    [(1.0, 1.5), (16.0, 16.0), (16.001, 25.0), (240.0, 240.0)],
)
def test_the_smallest_that_is_not_below(least_mm2: float, chosen_mm2: float) -> None:
    chosen = smallest_standard(Symbol.S, "section_mm2", Given("S,min", least_mm2, "mm²"), CLAUSE, FORMULA)
    assert chosen is not None
    assert (chosen.value, chosen.unit, chosen.formula) == (chosen_mm2, "mm²", FORMULA)
    assert [given.value for given in chosen.given] == [least_mm2]


def test_none_above_the_series() -> None:
    assert smallest_standard(Symbol.S, "section_mm2", Given("S,min", 10_000.0, "mm²"), CLAUSE, FORMULA) is None


def test_an_unknown_series() -> None:
    with pytest.raises(NoRow):
        smallest_standard(Symbol.S, "no such series", Given("S,min", 1.0, "mm²"), CLAUSE, FORMULA)
