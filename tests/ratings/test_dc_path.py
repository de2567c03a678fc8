"""Least ratings of plug connectors, disconnectors and shutdown devices."""

from __future__ import annotations

import pytest

from sld.citation import cited
from sld.quantity import Rating
from sld.ratings.dc_path import current_min, voltage_min
from sld.ratings.symbol import Symbol
from sld.tables.profiles import profile
from sld.words import phrase


@pytest.mark.parametrize(
    ("name", "strings", "isc_a", "least_a"),
    [("cautious", 1, 8.0, 10.0), ("IEC 62548-1", 2, 10.0, 25.0), ("BS 7671", 3, 13.9, 52.125)],
)
def test_current_is_1_25_times_the_short_circuit_current(name: str, strings: int, isc_a: float, least_a: float) -> None:
    # IEC 62548:2016: circuits are designed for 1.25·Isc of their strings (from memory, as in tests of the DC isolator)
    assert current_min(strings, isc_a, profile(name)).value == pytest.approx(least_a)


def test_voltage_is_that_of_the_cold_string() -> None:
    # IEC 62548:2016 7.3: components rated for the highest voltage of the array (from memory)
    coldest = Rating(
        Symbol.UOC_MAX, 812.0, "V", "N · Uoc", (), cited("IEC 62548:2016 7.2"), assumptions=(phrase("cold"),)
    )
    least = voltage_min(coldest)
    assert (least.symbol, least.value, least.unit, least.assumptions) == (Symbol.UN_MIN, 812.0, "V", (phrase("cold"),))
