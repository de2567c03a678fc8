"""Surge protective devices on the AC side. All values IEC 60364-5-53:2019 534, from memory, if not said otherwise."""

from __future__ import annotations

import pytest

from sld.ratings.ac_surge import (
    calculated_risk_level,
    largest_protection_level,
    least_discharge_current,
    least_operating_voltage,
    surge_device_type,
)
from sld.tables.table import NoRow


@pytest.mark.parametrize(
    ("earthing", "mode", "uc_v"),
    [
        ("TN-S", "L-PE", 253),
        ("TN-C-S", "L-N", 253),
        ("TN-C", "L-PEN", 253),
        ("TT", "L-N", 253),
        ("TT", "N-PE", 230),
        ("IT", "L-PE", 440),
    ],
)
def test_least_operating_voltage(earthing: str, mode: str, uc_v: float) -> None:
    assert least_operating_voltage(earthing, mode, 230, 400).value == pytest.approx(uc_v)


def test_no_neutral_to_earth_device_on_a_combined_conductor() -> None:
    with pytest.raises(NoRow):
        least_operating_voltage("TN-C", "N-PE", 230, 400)


@pytest.mark.parametrize(
    ("lightning", "overhead", "device_type"), [(False, False, 2), (True, False, 1), (False, True, 1), (True, True, 1)]
)
def test_device_type(lightning: bool, overhead: bool, device_type: int) -> None:
    # https://cld.bz/bookdata/zrrcP5i/basic-html/page-27.html (type 1 where lightning current can enter)
    assert surge_device_type(lightning, overhead).value == device_type


@pytest.mark.parametrize(("device_type", "level", "current_ka"), [(2, "none", 5), (1, "III/IV", 12.5), (1, "I", 25)])
def test_discharge_current(device_type: int, level: str, current_ka: float) -> None:
    assert least_discharge_current(device_type, level).value == current_ka


@pytest.mark.parametrize(("level", "peak_ka"), [("III/IV", 100), ("II", 150), ("I", 200)])
def test_impulse_current_is_the_share_of_one_of_four_conductors(level: str, peak_ka: float) -> None:
    """IEC 62305-1:2010 Table 3 (peak), Annex E (half of it to the services); from memory."""
    assert least_discharge_current(1, level).value == 0.5 * peak_ka / 4


def test_no_discharge_current() -> None:
    with pytest.raises(NoRow):
        least_discharge_current(1, "none")


def test_protection_level() -> None:
    assert largest_protection_level().value == 1.5
    assert largest_protection_level(sensitive_electronics=False).value == 2.5
    # IEC 60364-4-44 Table 443.2 (from memory): 277/480 V in the row of 230/400 V, then 400/690 V and 1000 V
    levels = [largest_protection_level(False, volts).value for volts in (480, 600, 690, 800, 1000)]
    assert levels == [2.5, 4, 4, 6, 6]


@pytest.mark.parametrize(
    ("surroundings", "length_m", "density", "level"),
    [("rural", 2000, 1, 42.5), ("suburban", 500, 0.5, 340), ("urban", 1000, 0.85, 1000)],
)
def test_calculated_risk_level(surroundings: str, length_m: float, density: float, level: float) -> None:
    # fenv / (LP · Ng): https://www.eca.co.uk/ECAApplications/SPDCalculator/index.html; fenv 85 and 850 from memory
    assert calculated_risk_level(surroundings, length_m, density).value == pytest.approx(level)


@pytest.mark.parametrize(("length_m", "density"), [(0, 1), (1000, 0)])
def test_no_risk_level_without_line_or_lightning(length_m: float, density: float) -> None:
    with pytest.raises(ValueError, match="must be"):
        calculated_risk_level("rural", length_m, density)
