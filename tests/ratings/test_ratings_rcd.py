"""Residual current devices: type, leakage, window of the rated residual current."""

from __future__ import annotations

import pytest

from sld.ratings.rcd import (
    chosen_residual_current,
    direct_residual_current,
    least_residual_current,
    residual_current_type,
)


@pytest.mark.parametrize(
    ("separation", "declared_ma", "letter"),
    [
        (False, None, "B"),  # https://www.segen.co.uk/rcds-to-b-or-not-to-b/
        (True, None, "A"),
        (False, 0, "A"),
        (False, 6, "A"),
        (False, 6.001, "F"),
        (False, 10, "F"),
        (False, 10.001, "B"),
        (True, 20, "B"),  # what the maker declares overrules the separation
    ],
)
def test_residual_current_type(separation: bool, declared_ma: float | None, letter: str) -> None:
    # IEC 60364-7-712:2017 712.531.3.5.1; IEC 60364-5-53:2019 531.3.3 (from memory)
    assert residual_current_type(separation, declared_ma).letter == letter


def test_a_silent_maker_is_an_assumption() -> None:
    assert residual_current_type(False).assumptions
    assert not residual_current_type(False, 3).assumptions
    with pytest.raises(ValueError, match="declared_dc_ma"):
        residual_current_type(False, -1)


@pytest.mark.parametrize(
    ("declared_ma", "sum_ma", "letter"),
    [
        ((6.0,), 6, "A"),
        ((2.0, 2.0, 2.0), 6, "A"),
        ((6.0, 4.0), 10, "F"),
        ((6.0, 6.0, 6.0, 6.0, 6.0), 30, "B"),
        ((0.0, 0.0), 0, "A"),
    ],
)
def test_direct_currents_of_several_converters_add_in_one_rcd(
    declared_ma: tuple[float, ...], sum_ma: float, letter: str
) -> None:
    # the 6 mA and 10 mA of types A and F are limits of the current in the device: IEC 62423 (from memory)
    found = direct_residual_current(declared_ma)
    assert (found.value, found.unit) == (sum_ma, "mA")
    assert residual_current_type(False, found.value).letter == letter
    with pytest.raises(ValueError, match="declared_dc_ma"):
        direct_residual_current((6, -1))


@pytest.mark.parametrize(
    ("leakage_ma", "r_a_ohm", "additional", "i_delta_n_ma"),
    [
        (9, None, True, 30),  # 9 / 0.3 = 30 exactly
        (9.001, None, True, None),
        (5, None, False, 100),  # 30 mA only where it is needed
        (30, None, False, 100),
        (30.01, None, False, 300),
        (72.3, None, False, 300),
        (5, 500, False, 100),
        (5, 501, False, 30),  # the electrode is too poor for 100 mA
        (5, 1666, False, 30),
        (5, 1667, False, None),  # 50.01 V
        (72.3, 200, False, None),  # 241 mA wanted, at most 250 mA allowed: no device between
        (301, None, False, None),
    ],
)
def test_window_of_the_residual_current(
    leakage_ma: float, r_a_ohm: float | None, additional: bool, i_delta_n_ma: float | None
) -> None:
    # IEC 60364-4-41:2005+A1:2017 411.5.3 and 415.1; leakage share 0.3 of IEC 60364-5-53:2019 531.3.2 (from memory)
    chosen = chosen_residual_current(leakage_ma, r_a_ohm, additional)
    assert (None if chosen is None else chosen.value) == i_delta_n_ma


def test_lower_end_of_the_window() -> None:
    assert least_residual_current(30).value == pytest.approx(100)
