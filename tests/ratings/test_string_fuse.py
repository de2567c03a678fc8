"""Need, window and choice of the string fuse, profile by profile."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sld.ratings.string_fuse import (
    array_window,
    breaking_current,
    carried_current,
    current_when_hot,
    fusing_current,
    grouped_window,
    need,
    smallest_rating,
    unfused_strings_max,
    window,
)
from sld.tables.profiles import PROFILE_NAMES, profile
from sld.tables.table import series

F1, F2, NEC = "IEC 62548-1", "IEC 60364-7-712", "NEC 690"


@pytest.mark.parametrize(
    ("name", "strings", "isc", "ocpr", "needed", "source"),
    [
        (F1, 3, 10.0, 20, False, "exactly at OCPR"),
        (F1, 3, 10.0001, 20, True, "a hair above OCPR"),
        (F1, 2, 20.1, 20, True, "two strings whose one Isc is above OCPR"),
        (F1, 1, 20.1, 20, False, "one string has no other to feed it"),
        (F2, 2, 30.0, 20, False, "712.431.101: none for two strings"),
        (F2, 3, 10.8, 20, False, "exactly at 1.35·OCPR: 2·1.25·10.8 = 27"),
        (F2, 3, 10.8001, 20, True, "a hair above 1.35·OCPR"),
        (F1, 3, 18.5, 35, True, "the standards disagree: 37 > 35"),
        (F2, 3, 18.5, 35, False, "the standards disagree: 46.25 < 47.25"),
        ("cautious", 3, 18.5, 35, True, "the stricter of both"),
        (NEC, 2, 16.0, 20, False, "exactly at OCPR: 1.25·16"),
        (NEC, 2, 16.0001, 20, True, "a hair above OCPR"),
    ],
)
def test_need(name: str, strings: int, isc: float, ocpr: float, needed: bool, source: str) -> None:
    assert need(strings, isc, ocpr, profile(name)).needed is needed, source


def test_need_gives_both_sides() -> None:
    # IEC 60364-7-712:2017 (from memory): (4 - 1)·1.25·10 A against 1.35·20 A
    sides = need(4, 10, 20, profile(F2))
    assert (sides.reverse.value, sides.withstand.value) == (pytest.approx(37.5), pytest.approx(27))


# Fuse window demonstration, own calculation from the rules (no published table); series with 15, 30 and 35 A.
DEMO = [
    (9.5, 20, 14.25, [15, 16, 20], 15, 3, 3),
    (11.5, 20, 17.25, [20], 20, 2, 2),
    (13.9, 25, 20.85, [25], 25, 2, 2),
    (14.0, 20, 21.0, [], None, 2, 2),
    (18.5, 35, 27.75, [30, 32, 35], 30, 2, 3),
]


@pytest.mark.parametrize(("isc", "ocpr", "lower", "allowed", "nec_choice", "unfused_f1", "unfused_f2"), DEMO)
def test_window_demonstration(
    isc: float,
    ocpr: float,
    lower: float,
    allowed: list[float],
    nec_choice: float | None,
    unfused_f1: int,
    unfused_f2: int,
) -> None:
    found = window(isc, ocpr, profile(F1))
    assert found.lower.value == pytest.approx(lower)
    assert [i_n for i_n in series("gpv_fuse_a") if found.holds(i_n)] == allowed
    choice = smallest_rating(found)
    assert (choice.value if choice else None) == (allowed[0] if allowed else None)
    nec = smallest_rating(window(isc, ocpr, profile(NEC)))
    assert (nec.value if nec else None) == nec_choice
    assert unfused_strings_max(isc, ocpr, profile(F1)).value == unfused_f1
    assert unfused_strings_max(isc, ocpr, profile(F2)).value == unfused_f2


@pytest.mark.parametrize(
    ("name", "isc", "ocpr", "i_n", "holds", "why"),
    [
        (F1, 10.0, 30, 15.0, False, "1.5·Isc itself is outside"),
        (F1, 10.0, 30, 15.0001, True, "a hair above 1.5·Isc"),
        (F1, 10.0, 30, 24.0, False, "2.4·Isc itself is outside"),
        (F1, 10.0, 30, 23.9999, True, "a hair below 2.4·Isc"),
        (F1, 10.0, 20, 20.0, True, "OCPR itself is inside"),
        (F1, 10.0, 20, 20.0001, False, "a hair above OCPR"),
        (F1, 10.0, 24, 24.0, False, "OCPR at 2.4·Isc: the stricter end holds"),
        (F2, 8.0, 20, 11.0, True, "1.1·1.25·Isc itself is inside"),
        (F2, 8.0, 20, 10.9999, False, "a hair below"),
        (F2, 8.0, 40, 40.0, True, "no upper factor"),
        (NEC, 16.0, 30, 25.0, True, "1.5625·Isc itself is inside"),
        (NEC, 16.0, 30, 24.9999, False, "a hair below"),
    ],
)
def test_window_ends(name: str, isc: float, ocpr: float, i_n: float, holds: bool, why: str) -> None:
    assert window(isc, ocpr, profile(name)).holds(i_n) is holds, why


@pytest.mark.parametrize(
    ("name", "isc", "ocpr", "empty"),
    [
        (F1, 14.0, 20, True),
        (F1, 10.0, 15.0, True),  # both ends meet where one is outside
        (F1, 10.0, 15.001, False),
        (F2, 8.0, 11.0, False),  # both ends meet and belong
        (F2, 8.0, 10.999, True),
        (NEC, 14.0, 20, True),
    ],
)
def test_empty_window(name: str, isc: float, ocpr: float, empty: bool) -> None:
    assert window(isc, ocpr, profile(name)).is_empty is empty


def test_a_window_without_a_standard_rating_has_no_answer() -> None:
    found = window(11.0, 17, profile(F1))  # 16.5 < In <= 17
    assert not found.is_empty
    assert smallest_rating(found) is None
    assert smallest_rating(found, (17.0, 16.0)) is not None


def test_a_choice_from_given_ratings_is_the_smallest_and_unsorted_input_does_not_matter() -> None:
    choice = smallest_rating(window(9.5, 20, profile(F1)), (20.0, 12.0, 16.0))
    assert choice is not None
    assert choice.value == 16


def test_a_fuse_that_never_clears() -> None:
    # Three strings of 10 A behind 20 A fuses: 20 to 25 A of reverse current, below 1.35 or 1.45 times In.
    assert fusing_current(20).value == pytest.approx(29)  # IEC 60269-6 (from memory)
    assert need(3, 12.5, 20, profile(F1)).reverse.value < fusing_current(20).value


def test_grouped_strings_seldom_fit() -> None:
    # IEC 62548:2016 6.5 (from memory): 1.5·2·Isc < In < OCPR - Isc
    usual = grouped_window(9.5, 20, 2, profile(F1))
    assert (usual.lower.value, usual.upper.value) == (pytest.approx(28.5), pytest.approx(10.5))
    assert usual.is_empty
    small = grouped_window(2.0, 20, 2, profile(F1))
    assert [i_n for i_n in series("gpv_fuse_a") if small.holds(i_n)] == [8, 10, 12, 15, 16]
    with pytest.raises(ValueError, match="at least two strings"):
        grouped_window(2.0, 20, 1, profile(F1))


def test_array_window() -> None:
    # IEC 62548:2016 6.5 (from memory): 1.25·Isc < In <= 2.4·Isc
    found = array_window(40.0, profile(F1))
    assert [found.holds(i_n) for i_n in (50.0, 50.001, 96.0, 96.001)] == [False, True, True, False]
    nec = array_window(40.0, profile(NEC))
    assert [nec.holds(i_n) for i_n in (62.4999, 62.5, 1000.0)] == [False, True, True]


@pytest.mark.parametrize("name", PROFILE_NAMES)
@given(isc=st.floats(0.5, 25), ocpr=st.floats(1, 60))
def test_the_unfused_count_is_the_last_without_need(name: str, isc: float, ocpr: float) -> None:
    count = int(unfused_strings_max(isc, ocpr, profile(name)).value)
    assert not need(count, isc, ocpr, profile(name)).needed
    sides = need(count + 1, isc, ocpr, profile(name))
    assert sides.reverse.value >= sides.withstand.value
    assert need(count + 2, isc, ocpr, profile(name)).needed


@pytest.mark.parametrize(
    ("name", "isc", "ocpr", "count"),
    [
        (F1, 10.0, 20, 3),  # exactly at OCPR
        (F1, 10.0001, 20, 2),
        (F1, 20.0, 20, 2),
        (F1, 20.0001, 20, 1),
        (F2, 10.8, 20, 3),  # exactly at 1.35·OCPR
        (F2, 10.8001, 20, 2),
        (F2, 30.0, 20, 2),  # two strings never
        (NEC, 8.0, 20, 3),
        (NEC, 8.0001, 20, 2),
    ],
)
def test_unfused_strings_on_the_limit_and_a_hair_beyond(name: str, isc: float, ocpr: float, count: int) -> None:
    assert unfused_strings_max(isc, ocpr, profile(name)).value == count


@pytest.mark.parametrize(("factor", "carries"), [(None, 17.0), (0.9, 18.0), (1.0, 20.0)])
def test_a_fuse_carries_less_when_hot(factor: float | None, carries: float) -> None:
    # makers print 0.85 to 0.9 at 60 °C (from memory); reference 25 °C
    found = current_when_hot(20, factor)
    assert found.value == pytest.approx(carries)
    assert bool(found.assumptions) is (factor is None)


@pytest.mark.parametrize("factor", [0.0, 1.01])
def test_a_factor_out_of_range_is_refused(factor: float) -> None:
    with pytest.raises(ValueError, match="temperature_factor"):
        current_when_hot(20, factor)


def test_what_a_fuse_carries_and_breaks() -> None:
    # KI 1.25: 1.25 · 2 · 10 A, and 1.25 · 120 A with 30 A of backfeed (definition)
    assert carried_current(10.0, 2, profile(F1)).value == pytest.approx(25)
    assert breaking_current(120.0, profile(F1), 30.0).value == pytest.approx(0.18)


@pytest.mark.parametrize(
    ("carried_a", "rating"),
    [(0, 15), (15, 15), (15.01, 16), (17, 20), (20.01, 15)],  # nothing in the window carries it: the smallest
)
def test_the_choice_carries_the_strings_where_the_window_allows(carried_a: float, rating: float) -> None:
    # Isc 9.5 A, OCPR 20 A: 14.25 < In <= 20 A (IEC 62548:2016 6.5); series 15, 16, 20 A
    choice = smallest_rating(window(9.5, 20, profile(F1)), carried_a=carried_a)
    assert choice is not None
    assert choice.value == rating
    assert str(choice.formula).endswith("In,max, at least Icarry/kT" if rating > 15 else "In,max")
    assert ("Icarry/kT" in [each.symbol for each in choice.given]) == (rating > 15)
