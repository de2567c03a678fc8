"""Line currents with units between two lines, against circuit theory."""

from __future__ import annotations

from math import sqrt

import pytest

from sld.ratings.line_currents import between_lines, phasors

PAIRS = (("L1", "L2"), ("L2", "L3"), ("L3", "L1"))
ALL = ("L1", "L2", "L3")


@pytest.mark.parametrize(
    ("units", "lines_a", "neutral_a", "rise_a"),
    [
        ([(PAIRS[0], 10.0)], (10, 10, 0), 0, 20 / sqrt(3)),
        # balanced delta: √3 in every line, no neutral
        ([(pair, 10.0) for pair in PAIRS], (10 * sqrt(3),) * 3, 0, 10 * sqrt(3)),
        ([(ALL, 10.0)], (10, 10, 10), 0, 10),
        ([(("L1",), 10.0)], (10, 0, 0), 10, 10 / sqrt(3)),
        ([(("L1",), 10.0), (("L2",), 10.0)], (10, 10, 0), 10, 10),
        # open delta: the shared line carries √3
        ([(PAIRS[0], 10.0), (PAIRS[1], 10.0)], (10, 10 * sqrt(3), 10), 0, None),
    ],
)
def test_lines_neutral_and_rise(units, lines_a, neutral_a, rise_a) -> None:
    found = phasors(units)
    assert [abs(current) for current in found.values()] == pytest.approx(lines_a, abs=1e-9)
    neutral, rise = between_lines(found)
    assert neutral.value == pytest.approx(neutral_a, abs=1e-9)
    if rise_a is not None:
        assert rise.value == pytest.approx(rise_a)
