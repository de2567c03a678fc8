"""Insulation test values and functional earth."""

from __future__ import annotations

import pytest

from sld.ratings.insulation import (
    functional_earth_fuse_max,
    resistance_min_at_test,
    resistance_min_by_power,
    resistance_min_inverter,
    voltage_at_test,
)
from sld.ratings.string import uoc_max_by_table

GUIDELINE = "https://mwitty.com/content.php?id=5905340"


@pytest.mark.parametrize(
    ("uoc_stc", "test_v", "resistance"),
    [
        (95.9, 250, 0.5),
        (96.0, 500, 1),  # system voltage exactly 120 V
        (400.0, 500, 1),  # exactly 500 V
        (400.1, 1000, 1),
        (800.0, 1000, 1),  # exactly 1000 V
        (800.1, 1500, 1),  # this row from memory
    ],
)
def test_insulation_test(uoc_stc: float, test_v: float, resistance: float) -> None:
    assert voltage_at_test(uoc_stc).value == test_v, GUIDELINE
    assert resistance_min_at_test(uoc_stc).value == resistance, GUIDELINE


def test_a_negative_voltage_is_refused() -> None:
    with pytest.raises(ValueError, match="must not be negative"):
        voltage_at_test(-1)


def test_resistance_before_start() -> None:
    # IEC 62109-2:2011 4.8.2 (from memory): 900 V over 30 mA
    assert resistance_min_inverter(uoc_max_by_table(18, 50.0, 25)).value == pytest.approx(30.0)


@pytest.mark.parametrize(
    ("power", "resistance"), [(20, 30), (20.1, 20), (50, 15), (100, 10), (200, 7), (400, 4), (500, 2), (500.1, 1)]
)
def test_resistance_by_power(power: float, resistance: float) -> None:
    assert resistance_min_by_power(power).value == resistance  # IEC 62548:2016 6.4 (from memory)


@pytest.mark.parametrize(("power", "fuse"), [(25, 1), (25.1, 2), (50, 2), (100, 3), (250, 4), (250.1, 5), (9000, 5)])
def test_functional_earth_fuse(power: float, fuse: float) -> None:
    assert functional_earth_fuse_max(power).value == fuse  # IEC 62548:2016 6.4 (from memory)
