"""The one number writer: three digits, every digit before the point, and never more than 12 characters."""

from __future__ import annotations

from math import inf, nan

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sld.quantity import Given, Rating, pair, shown


@pytest.mark.parametrize(
    ("value", "text"),
    [
        (0, "0"),
        (-0.0, "0"),
        (812.4, "812"),
        (0.0125, "0.0125"),
        (2.5, "2.5"),
        (-10.25, "-10.3"),  # halves away from zero
        (123456, "123456"),
        (999999999999, "999999999999"),  # 12 digits have room
        (1234567890123, "1.23e12"),
        (-99999999999, "-99999999999"),
        (-123456789012, "-1.23e11"),
        (0.0000000123, "0.0000000123"),
        (0.00000000123, "1.23e-9"),
        (1.5e28, "1.5e28"),
        (1e308, "1e308"),
        (-1.2345e-300, "-1.23e-300"),
        (5e-324, "5e-324"),
        (inf, "∞"),
        (-inf, "-∞"),
        (nan, "undefined"),
    ],
)
def test_shown(value: float, text: str) -> None:
    assert shown(value) == text


@pytest.mark.parametrize(
    ("value", "digits", "text"),
    [
        (1234.56789012345, 15, "1234.5678901"),
        (0.000000005116, 4, "5.116e-9"),
        (1.23456789e100, 15, "1.2346e100"),
        (-1.23456789e-300, 15, "-1.2346e-300"),
    ],
)
def test_what_has_no_room_loses_digits(value: float, digits: int, text: str) -> None:
    assert shown(value, digits) == text


@settings(derandomize=True, max_examples=300, deadline=None)
@given(st.floats(), st.integers(1, 15))
def test_no_number_is_longer_than_12_characters(value: float, digits: int) -> None:
    assert len(shown(value, digits)) <= 12


@settings(derandomize=True, max_examples=300, deadline=None)
@given(st.floats(-1e300, 1e300))
def test_what_is_written_is_the_number(value: float) -> None:
    assert float(shown(value)) == pytest.approx(value, rel=5e-3, abs=5e-324)


def test_two_that_are_too_large_are_written_all_the_same() -> None:
    assert pair(1.0e28, 1.1e28) == ("1e28", "1.1e28")


def test_a_rating_without_bound_has_a_trace() -> None:
    """In,max where a profile sets no upper end is infinite."""
    assert str(Rating("In", inf, "A", "none", (Given("x", 1e300),), "c").trace()) == "In = ∞ A = none | x = 1e300 | c"
