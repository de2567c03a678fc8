"""Currents of strings in parallel."""

from __future__ import annotations

import pytest

from sld.ratings.array import dc_ac_ratio, impp_total, isc_max, isc_total, reverse_current, terminal_current
from sld.tables.profiles import PROFILE_NAMES, profile


def test_currents_of_strings_add_up() -> None:
    assert impp_total(3, 9.0).value == pytest.approx(27)
    assert isc_total(3, 9.5).value == pytest.approx(28.5)


@pytest.mark.parametrize("name", PROFILE_NAMES)
def test_isc_max_has_the_factor_1_25_once_in_every_profile(name: str) -> None:
    assert isc_max(2, 8.0, profile(name)).value == pytest.approx(20)


def test_one_string_has_no_reverse_current_of_its_own() -> None:
    assert reverse_current(1, 10.0, profile("cautious")).value == 0
    assert reverse_current(2, 10.0, profile("cautious")).value == pytest.approx(12.5)
    assert reverse_current(1, 10.0, profile("cautious"), backfeed_a=2.0).value == 2
    with pytest.raises(ValueError, match="at least one string"):
        reverse_current(0, 10.0, profile("cautious"))


def test_dc_ac_ratio() -> None:
    assert dc_ac_ratio(12_000, 10_000).value == pytest.approx(1.2)  # definition
    with pytest.raises(ValueError, match="must be above 0 W"):
        dc_ac_ratio(12_000, 0)


@pytest.mark.parametrize(("strings", "current"), [(1, 17.375), (2, 34.75)])
def test_current_of_one_pair_of_terminals(strings: int, current: float) -> None:
    # https://www.easymanua.ls/fronius/symo-gen24-12-0-sc/manual?p=74 has a limit for one pair; 1.25 · n · 13.9 A
    assert terminal_current(strings, 13.9, profile("cautious")).value == pytest.approx(current)
