"""Between a battery and its converter: facts worked by hand.

Definition of power and Ohm's law; IEC 60364-4-43 433.1 (Ib <= In <= Iz); 3 m by 434.2.1, from memory.
"""

from __future__ import annotations

import pytest

from sld.citation import Mark, marks
from sld.ratings import battery
from sld.ratings.specified import specified
from sld.ratings.symbol import Symbol


@pytest.mark.parametrize(
    ("power_w", "voltage_min_v", "current_a"),
    [(5000, 46, 108.696), (5000, 50, 100), (10_000, 400, 25)],
)
def test_current_is_highest_at_the_lowest_voltage(power_w: float, voltage_min_v: float, current_a: float) -> None:
    assert battery.design_current(power_w, voltage_min_v).value == pytest.approx(current_a, abs=1e-3)


def test_losses_left_out_are_said() -> None:
    assert any("losses" in str(said) for said in battery.design_current(5000, 50).assumptions)


def test_devices_stand_the_voltage_at_the_end_of_charging() -> None:
    least = battery.voltage_min(57.6)
    assert (least.symbol, least.value) == (Symbol.UN_MIN, 57.6)
    assert marks(least.clause) == {Mark.FROM_MEMORY}


@pytest.mark.parametrize(
    ("ib_a", "in_a", "least_a"), [(109, 125, 125), (130, 125, 130), (109, None, 109), (None, 125, 125)]
)
def test_a_cable_carries_the_current_and_what_the_fuse_lets_through(
    ib_a: float | None, in_a: float | None, least_a: float
) -> None:
    design = specified(Symbol.IB, ib_a, "A") if ib_a is not None else None
    least = battery.capacity_min(design, in_a)
    assert least is not None
    assert least.value == least_a


def test_without_current_and_fuse_nothing_is_known() -> None:
    assert battery.capacity_min(None, None) is None


def test_cable_ahead_of_the_protection_is_summed() -> None:
    length, most = battery.length_to_protection([0.8, 1.5])
    assert length.value == pytest.approx(2.3)
    assert most.value == 3


def test_voltage_drop_goes_there_and_back() -> None:
    # 2 · 5 m · 100 A · 0.5 Ω/km = 0.5 V; of 50 V 1 %; two in parallel half of it
    drop, percent = battery.voltage_drop(5, 100, 0.5, 1, 50)
    assert (drop.value, percent.value) == pytest.approx((0.5, 1.0))
    halved, _ = battery.voltage_drop(5, 100, 0.5, 2, 50)
    assert halved.value == pytest.approx(0.25)
