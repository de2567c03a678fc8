"""Residual current monitoring of inverters without separation, and the leakage of an array."""

from __future__ import annotations

import pytest

from sld.ratings.residual_monitor import array_leakage, monitor_threshold_max


def test_leakage_of_an_array() -> None:
    # 2π · 50 Hz · 1 µF · 230 V = 72 mA (own computation; 50 nF/kWp is common practice, no source)
    assert array_leakage(50, 20, 230, 50).value == pytest.approx(72.3, abs=0.05)


@pytest.mark.parametrize(("power_kva", "current_ma"), [(4, 300), (30, 300), (30.1, 301), (100, 1000)])
def test_monitor(power_kva: float, current_ma: float) -> None:
    # IEC 62109-2:2011 4.8.3.5 (from memory): 300 mA up to 30 kVA, 10 mA/kVA above
    assert monitor_threshold_max(power_kva).value == pytest.approx(current_ma)


def test_no_power() -> None:
    with pytest.raises(ValueError, match="apparent_power_kva"):
        monitor_threshold_max(0)
