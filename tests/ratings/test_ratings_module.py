"""Coefficients, hottest cell, design short-circuit current."""

from __future__ import annotations

import pytest

from sld.ratings.module import (
    coefficient_percent_per_k,
    design_short_circuit_current,
    hottest_cell_by_mounting,
    hottest_cell_by_noct,
    umpp_coefficient,
)
from sld.ratings.symbol import Symbol
from sld.tables.table import NoRow


@pytest.mark.parametrize(
    ("per_k", "stc", "percent"),
    [
        # Rows 7955, 6235, 10455, 17149, 10650 of the module list of the California Energy Commission (2019-03-05): V/K
        # and V, percent by division.
        (-0.0814, 22.00, -0.370),
        (-0.1361, 37.80, -0.360),
        (-0.1292, 49.40, -0.262),
        (-0.1999, 70.10, -0.285),
        (-0.1299, 48.30, -0.269),
    ],
)
def test_volts_per_kelvin_become_percent_per_kelvin(per_k: float, stc: float, percent: float) -> None:
    assert coefficient_percent_per_k(per_k, stc).value == pytest.approx(percent, abs=0.0006)


def test_amperes_per_kelvin_become_percent_per_kelvin() -> None:
    alpha = coefficient_percent_per_k(0.005, 10.0, Symbol.ALPHA, "A")  # definition
    assert (alpha.symbol, alpha.value) == (Symbol.ALPHA, pytest.approx(0.05))
    assert alpha.input("Isc,STC") == 10.0
    assert coefficient_percent_per_k(-0.003, 0.6).value == pytest.approx(-0.5)  # one cell
    assert coefficient_percent_per_k(-0.003, 0.6).input("Uoc,STC") == 0.6


@pytest.mark.parametrize("stc", [0.0, -37.8])
def test_a_coefficient_of_nothing_is_refused(stc: float) -> None:
    with pytest.raises(ValueError, match="must be above 0 V"):
        coefficient_percent_per_k(-0.1, stc)


def test_umpp_coefficient_is_the_makers_or_power_less_current() -> None:
    # CEC file row 10455: gamma -0.355, alpha 0.034 %/K.
    assert umpp_coefficient(-0.355, 0.034).value == pytest.approx(-0.389)
    assert umpp_coefficient(-0.355, 0.034).assumptions
    assert umpp_coefficient(-0.355, 0.034, kappa_percent_per_k=-0.37).value == -0.37
    assert not umpp_coefficient(-0.355, 0.034, kappa_percent_per_k=-0.37).assumptions


@pytest.mark.parametrize(("mounting", "hottest"), [("flush", 70), ("rack", 65), ("free", 60)])
def test_hottest_cell_by_mounting(mounting: str, hottest: float) -> None:
    # Australian guideline, from memory: 35, 30 and 25 K above air; training sheets use 70 to 75 °C for roofs.
    rating = hottest_cell_by_mounting(35, mounting)
    assert rating.value == hottest
    assert "from memory" in str(rating.table_row)


def test_an_unknown_mounting_lists_the_known_ones() -> None:
    with pytest.raises(NoRow, match="flush, rack, free"):
        hottest_cell_by_mounting(35, "floating")


@pytest.mark.parametrize(
    ("t_air", "noct", "irradiance", "hottest"),
    [
        (20, 45, 800, 45),  # the definition of NOCT itself: 800 W/m², air 20 °C
        (20, 47.3, 800, 47.3),
        (40, 45, 1000, 71.25),  # own calculation: 40 + 25/800·1000
        (40, 45, 0, 40),  # no sun, no rise
    ],
)
def test_hottest_cell_by_noct(t_air: float, noct: float, irradiance: float, hottest: float) -> None:
    assert hottest_cell_by_noct(t_air, noct, irradiance).value == pytest.approx(hottest)
    if irradiance == 1000:
        assert hottest_cell_by_noct(t_air, noct).value == pytest.approx(hottest)


@pytest.mark.parametrize(
    ("bifaciality", "rear", "current"),
    [
        (0.0, 0.0, 10.0),
        (0.0, 0.2, 10.0),
        (0.7, 0.0, 10.0),
        (0.7, 0.135, 10.945),  # IEC TS 60904-1-2 (from memory): 1000 + 135·φ W/m² on a one-sided equivalent
        (0.7, 0.3, 12.1),  # IEC 61215-2:2021 stress condition (from memory): 1000 + 300·φ W/m²
    ],
)
def test_design_current_with_rear_gain(bifaciality: float, rear: float, current: float) -> None:
    assert design_short_circuit_current(10.0, bifaciality, rear).value == pytest.approx(current)


def test_a_gain_needs_both_factors() -> None:
    assert design_short_circuit_current(10.0, bifaciality_factor=0.7).value == 10
    assert design_short_circuit_current(10.0, rear_irradiance_factor=0.2).value == 10
    assert design_short_circuit_current(10.0, 1.0, 0.1).value == pytest.approx(11)


@pytest.mark.parametrize(("bifaciality", "rear"), [(70, 0.1), (1.001, 0.1), (-0.1, 0.1), (0.7, -0.1)])
def test_factors_out_of_range_are_refused(bifaciality: float, rear: float) -> None:
    with pytest.raises(ValueError, match="must be 0 to 1"):
        design_short_circuit_current(10.0, bifaciality, rear)
