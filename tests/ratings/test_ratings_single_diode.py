"""The single-diode model against nameplates; tests/reference compares it with a general library."""

from __future__ import annotations

from dataclasses import replace
from math import isclose

import pytest

from sld.ratings.single_diode import (
    SingleDiodeData,
    modified_ideality,
    open_circuit_voltage_v,
    translated,
    uoc_by_single_diode,
)
from sld.ratings.symbol import Symbol

# Rows of the module list of the California Energy Commission (file of 2019-03-05): IL, I0, Rs, Rsh, a, alpha in A/K,
# Adjust in %, Uoc on the nameplate
CEC = {
    7955: (8.219244, 1.561437e-09, 0.198807, 176.576614, 0.98351, 0.004926, 11.725062, 22.0),
    6235: (9.317927, 6.098899e-10, 0.25903, 602.153625, 1.612427, 0.005424, 5.323345, 37.8),
    10455: (10.520922, 1.971184e-11, 0.275767, 265.385742, 1.830625, 0.003573, 9.435455, 49.4),
    17149: (6.604403, 1.726423e-11, 0.360284, 539.995911, 2.630367, 0.002297, 3.030361, 70.1),
    10650: (9.873218, 1.574149e-11, 0.298873, 916.74292, 1.778403, 0.004441, 4.792374, 48.3),
    4690: (2.549376, 6.406525e-13, 6.075649, 1645.852417, 7.545239, 0.001397, -13.452864, 218.5),
}


def _data(row: int) -> tuple[SingleDiodeData, float]:
    photocurrent, saturation, series, shunt, ideality, alpha, adjust, *_ = CEC[row]
    return SingleDiodeData(photocurrent, saturation, series, shunt, ideality), alpha * (1 - adjust / 100)


@pytest.mark.parametrize("row", CEC)
def test_the_model_meets_the_nameplate_at_25_degrees(row: int) -> None:
    """The parameters are fitted to Uoc on the nameplate, which is a number of the maker."""
    data, alpha = _data(row)
    nameplate_v = CEC[row][7]
    assert open_circuit_voltage_v(data) == pytest.approx(nameplate_v, rel=1e-6)
    assert uoc_by_single_diode(20, data, alpha, 25).value == pytest.approx(20 * nameplate_v, rel=1e-6)


def test_voltage_over_temperature_is_straight() -> None:
    """Voc is straight to 0.1 % from 25 to -10 °C over the 20 946 crystalline modules of that file (own count)."""
    for row in (7955, 6235, 10455, 17149, 10650):
        data, alpha = _data(row)
        at = {t: open_circuit_voltage_v(translated(data, t, alpha)) for t in (24, 25, 26, -10)}
        slope = (at[26] - at[24]) / 2
        assert isclose(at[-10], at[25] - 35 * slope, rel_tol=2e-3)


def test_what_sets_the_voltage() -> None:
    """By the equation: no series resistance at no current, less through a smaller shunt."""
    data, alpha = _data(6235)
    assert open_circuit_voltage_v(replace(data, series_resistance_ohm=5.0)) == open_circuit_voltage_v(data)
    assert open_circuit_voltage_v(replace(data, shunt_resistance_ohm=20.0)) < open_circuit_voltage_v(data)
    wider = replace(data, band_gap_ev=1.475, band_gap_per_k_factor=-0.0003)
    assert open_circuit_voltage_v(translated(wider, -10, alpha)) > open_circuit_voltage_v(translated(data, -10, alpha))


def test_saturation_current_goes_with_the_band_gap() -> None:
    """De Soto, Klein, Beckman 2006, equations 8 to 10, worked by hand at 65 °C for silicon.

    Eg = 1.121 · (1 − 0.0002677 · 40) = 1.108996 eV; 1.121 / 298.15 − 1.108996 / 338.15 = 0.00048025 eV/K, over
    k = 8.617333e-5 eV/K (CODATA 2018) 5.5731; (338.15 / 298.15)³ = 1.45893; the product with e^5.5731 is 384.1.
    """
    data, alpha = _data(6235)
    hot = translated(data, 65, alpha)
    assert hot.saturation_current_a / data.saturation_current_a == pytest.approx(384.1, rel=1e-3)
    assert hot.modified_ideality_v / data.modified_ideality_v == pytest.approx(338.15 / 298.15)


def test_modified_ideality() -> None:
    # kT/q = 25.69 mV at 25 °C (CODATA 2018); 60 cells of ideality 1.05
    assert modified_ideality(60, 1.05).value == pytest.approx(60 * 1.05 * 0.0256926, rel=1e-5)
    assert modified_ideality(1, 1.0, 26.85).value == pytest.approx(0.02585, abs=5e-6)  # 300 K, handbook value


def test_what_cannot_be_is_refused() -> None:
    data, alpha = _data(6235)
    with pytest.raises(ValueError, match="irradiance"):
        translated(data, 25, alpha, 0)
    with pytest.raises(ValueError, match="saturation current"):  # e^2490 is no number of a computer
        translated(replace(data, band_gap_per_k_factor=-1.0), 90, alpha)
    with pytest.raises(ValueError, match="current_ratio"):
        open_circuit_voltage_v(replace(data, saturation_current_a=1e-310))
    with pytest.raises(ValueError, match="photocurrent"):
        uoc_by_single_diode(1, data, 1.0, -40)


def test_what_the_rating_says() -> None:
    data, alpha = _data(6235)
    hot = uoc_by_single_diode(2, data, alpha, 70, Symbol.UOC_HOT, "Tc,max")
    assert (hot.symbol, hot.input("Tc,max")) == (Symbol.UOC_HOT, 70)
    assert str(hot.formula).endswith("at Tc,max")
    # at 25 °C as on the list: 6.098899e-10 A are 609.9 pA
    assert uoc_by_single_diode(2, data, alpha, 25).input("I0") == pytest.approx(609.8899)
