"""Insulation test values and functional earth."""

from __future__ import annotations

import pytest

from sld.ratings.insulation import (
    functional_earth_fuse_max,
    group_power_max,
    resistance_min_at_test,
    resistance_min_by_power,
    resistance_min_inverter,
    voltage_at_test,
)
from sld.ratings.string import uoc_max_by_table
from sld.tables.table import NoRow

GUIDELINE = "https://mwitty.com/content.php?id=5905340"
MAKER = "https://esmanual.top/manual/130699/Aros-10000P.html?page=102"


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
    assert voltage_at_test(uoc_stc, 1500).value == test_v, GUIDELINE
    assert resistance_min_at_test(uoc_stc).value == resistance, GUIDELINE


@pytest.mark.parametrize(
    ("uoc_stc", "limit", "test_v"),
    [
        (900, 1500, 1500),  # 1125 V, modules and cables for 1500 V
        (900, 1499, 1000),  # not above the highest system voltage of the modules
        (900, 1000, 1000),
        (700, 999, 500),
        (700, 600, 500),
        (90, 250, 250),
    ],
)
def test_what_is_tested_is_never_overstressed(uoc_stc: float, limit: float, test_v: float) -> None:
    """The test voltage stays below the highest system voltage of the modules (manual of an inverter maker, MAKER)."""
    test = voltage_at_test(uoc_stc, limit)
    assert test.value == test_v, MAKER
    assert (test.value < voltage_at_test(uoc_stc, 1500).value) == any(each.name == "asked for" for each in test.given)


def test_group_of_strings() -> None:
    assert group_power_max().value == 10  # IEC 62446-1:2016 6.7.3 (from memory)


def test_no_test_voltage_is_low_enough() -> None:
    with pytest.raises(NoRow):
        voltage_at_test(50, 249)


def test_the_highest_test_voltage_is_marked() -> None:
    assert "from memory" in str(voltage_at_test(900, 1500).table_row)
    assert "from memory" not in str(voltage_at_test(700, 1500).table_row)


def test_a_negative_voltage_is_refused() -> None:
    with pytest.raises(ValueError, match="must not be negative"):
        voltage_at_test(-1, 1500)


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
