"""The largest room that a diagram leaves within itself, on a grid of 2.5 mm. Our own rules, worked by hand."""

from __future__ import annotations

import pytest

from sld.sheet.hollow import hollow
from sld.symbols.stroke import Box

WITHIN = Box(10.0, 20.0, 110.0, 70.0)
"""100 mm wide and 50 mm high: 40 by 20 steps."""


@pytest.mark.parametrize(
    ("taken", "found"),
    [
        pytest.param([], WITHIN, id="all of it"),
        pytest.param([WITHIN], None, id="nothing"),
        pytest.param([Box(10.0, 20.0, 110.0, 40.0)], Box(10.0, 40.0, 110.0, 70.0), id="below what is at the top"),
        pytest.param([Box(50.0, 40.0, 55.0, 42.0)], Box(55.0, 20.0, 110.0, 70.0), id="beside it, 55 by 50"),
        pytest.param([Box(50.0, 60.0, 55.0, 62.0)], Box(10.0, 20.0, 110.0, 60.0), id="over it, 100 by 40"),
        pytest.param([Box(9.0, 19.0, 11.0, 70.0)], Box(12.5, 20.0, 110.0, 70.0), id="from the next step on"),
        pytest.param([Box(0.0, 0.0, 5.0, 5.0), Box(120.0, 0.0, 130.0, 90.0)], WITHIN, id="what is outside"),
        pytest.param([Box(60.0, 20.0, 65.0, 70.0)], Box(10.0, 20.0, 60.0, 70.0), id="the larger of two"),
        pytest.param([Box(10.0, 42.5, 110.0, 47.5)], Box(10.0, 20.0, 110.0, 42.5), id="the upper one of equals"),
    ],
)
def test_the_largest_room(taken: list[Box], found: Box | None) -> None:
    assert hollow(taken, WITHIN, 10.0, 10.0) == found


@pytest.mark.parametrize(
    ("least_mm", "is_enough"),
    [((100.0, 50.0), True), ((100.1, 50.0), False), ((100.0, 50.1), False)],
)
def test_less_room_than_asked_for_is_none(least_mm: tuple[float, float], is_enough: bool) -> None:
    assert (hollow([], WITHIN, *least_mm) is not None) == is_enough
