"""Currents of strings in parallel."""

from __future__ import annotations

import pytest

from sld.ratings.array import dc_ac_ratio, impp_total, isc_max, isc_total, reverse_current, terminal_current
from sld.ratings.string_fuse import array_window
from sld.tables.profiles import PROFILE_NAMES, profile

CREDENTIAL = "http://greencredential.com/nabcep-sample-exam-questions/"
FUSE_NEWS = "https://aitefuse.com/news/how-to-choose-the-right-ampers-current-dc-circuit-breaker-or-pv-fuse-for-your-solar-system"
FORUM = "http://www.altestore.com/forums/index.php/topic,974.0/prev_next,next.html"


def test_mpp_current_of_two_strings() -> None:
    assert impp_total(2, 5.02).value == pytest.approx(10.04), CREDENTIAL
    assert isc_total(3, 9.5).value == pytest.approx(28.5)


@pytest.mark.parametrize("name", PROFILE_NAMES)
def test_isc_max_has_the_factor_1_25_once_in_every_profile(name: str) -> None:
    assert isc_max(1, 8.5, profile(name)).value == pytest.approx(10.625), FUSE_NEWS
    assert isc_max(2, 8.5, profile(name)).value == pytest.approx(21.25)


@pytest.mark.parametrize(
    ("strings", "published"),
    [(2, 5.34), (3, 8.75)],  # FORUM: fuse of the combined circuit plus the other strings, 7 A allowed
)
def test_reverse_current_with_backfeed(strings: int, published: float) -> None:
    nec = profile("NEC 690")
    backfeed = array_window(isc_total(strings, 1.22).value, nec).lower.value
    reverse = reverse_current(strings, 1.22, nec, backfeed).value
    assert reverse == pytest.approx(published, abs=0.02), FORUM
    assert (reverse <= 7) == (strings == 2)


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
