"""One feeder from inverter to board, every AC formula on it together.

Own computation, with the fault currents and the rise checked with the general library of tests/reference (IEC 60909):
20 kW, 400 V, cosφ 1, 60 m of 5 × 10 mm² copper XLPE clipped direct, 40 °C, three circuits in a layer,
400 kVA 4 % transformer.
"""

from __future__ import annotations

from math import sqrt

import pytest

from sld.ratings.ac_cable import ambient_factor, corrected_capacity, grouping_factor, tabulated_capacity
from sld.ratings.breaker import (
    conventional_tripping_current,
    instantaneous_tripping_current,
    overload_limit,
    smallest_rated_current,
)
from sld.ratings.conductor import resistance
from sld.ratings.disconnection import largest_loop_impedance
from sld.ratings.inverter import current_at_low_voltage, design_current
from sld.ratings.voltage_change import change_percent, voltage_rise

NOMINAL = design_current(3, 400, s_max_va=20_000)
LIBRARY_IK1_MIN_A = 724.6
LIBRARY_RISE_PERCENT = 1.3534
LIBRARY_CURRENT_A = 28.466


def test_capacity_and_overload() -> None:
    it = tabulated_capacity("Cu", "XLPE", 3, "C", 10)
    iz = corrected_capacity(
        it, [ambient_factor(40, "XLPE"), grouping_factor("single_layer_wall_floor_unperforated_C", 3)]
    )
    breaker = smallest_rated_current("MCB", current_at_low_voltage(NOMINAL.value).value)
    assert breaker is not None
    assert breaker.value == 40
    assert iz.value == pytest.approx(51.0, abs=0.05)
    assert NOMINAL.value <= breaker.value <= iz.value
    tripping = conventional_tripping_current("MCB", 40)
    assert (tripping.value, overload_limit(iz.value).value) == (pytest.approx(58.0), pytest.approx(74.0, abs=0.05))


@pytest.mark.parametrize(("temperature_c", "percent"), [(20, 1.37), (70, 1.64), (90, 1.75)])
def test_rise_by_conductor_temperature(temperature_c: float, percent: float) -> None:
    rise = voltage_rise(3, NOMINAL.value, 60, resistance("Cu", 10, temperature_c).value, 0.08)
    assert change_percent(rise, 400).value == pytest.approx(percent, abs=0.005)


def test_rise_of_the_library_at_the_real_current() -> None:
    rise = change_percent(voltage_rise(3, LIBRARY_CURRENT_A, 60, 1.83, 0.08), 400)
    assert rise.value == pytest.approx(LIBRARY_RISE_PERCENT, abs=2e-4)
    at_nominal = change_percent(voltage_rise(3, NOMINAL.value, 60, 1.83, 0.08), 400)
    assert at_nominal.value > LIBRARY_RISE_PERCENT  # the linear formula errs to the cautious side


@pytest.mark.parametrize(("curve", "trips"), [("B", True), ("C", True), ("D", False)])
def test_the_least_earth_fault_trips_the_breaker(curve: str, trips: bool) -> None:
    assert (instantaneous_tripping_current(curve, 40).value <= LIBRARY_IK1_MIN_A) is trips


def test_largest_loop_of_the_breaker() -> None:
    trip = instantaneous_tripping_current("C", 40)
    assert largest_loop_impedance(230, trip.value).value == pytest.approx(0.546, abs=5e-4)
    assert sqrt(3) * NOMINAL.value == pytest.approx(50)
