"""Strings with power optimisers: number of units, voltage, current."""

from __future__ import annotations

import pytest

from sld.ratings.optimiser import operating_current, string_voltage_max, units_count

RULES = "IEC 62548-1:2023 and NEC 2023 690.7(B) (from memory): as the maker declares, else the sum of the outputs"


@pytest.mark.parametrize(("modules", "per_unit", "units"), [(18, 1, 18), (18, 2, 9), (19, 2, 10), (3, 4, 1)])
def test_units(modules: int, per_unit: int, units: int) -> None:
    assert units_count(modules, per_unit).value == units


@pytest.mark.parametrize(("declared_v", "voltage_v"), [(None, 1080.0), (900.0, 900.0)])
def test_highest_voltage_of_the_string(declared_v: float | None, voltage_v: float) -> None:
    assert string_voltage_max(units_count(18, 1), 60.0, declared_v).value == voltage_v, RULES


@pytest.mark.parametrize(("power_w", "current_a"), [(7380.0, 10.543), (12000.0, 15.0)])
def test_current_at_the_fixed_voltage(power_w: float, current_a: float) -> None:
    # P / U of 700 V, at most the 15 A of a unit
    assert operating_current(power_w, 700.0, 15.0) == pytest.approx(current_a, abs=5e-4)
