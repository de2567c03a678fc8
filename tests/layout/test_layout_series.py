"""What is said of several devices that differ in values alone: the least and the greatest, with one unit."""

from __future__ import annotations

import pytest

from sld.layout.diagram.series import measured_in, spanning
from sld.quantity import Rating
from sld.ratings.symbol import Symbol
from sld.words import ENGLISH, Sayable, amount, phrase, sequence, verbatim


def rating(value: float, trade_name: str = "") -> Rating:
    return Rating(Symbol.IB, value, "A", "", (), "", trade_name=trade_name)


def length(value_m: float) -> Sayable:
    return phrase("{length} to the first overcurrent device", length=amount(value_m, "m"))


@pytest.mark.parametrize(
    ("every", "said"),
    [
        ([rating(6.0), rating(9.0), rating(8.0)], "6…9 A"),
        ([rating(9.0), rating(6.0)], "6…9 A"),  # in whichever order they stand
        ([rating(6.0), rating(6.0)], "6 A"),
        ([rating(5.26, "10 AWG"), rating(5.26, "10 AWG")], "10 AWG"),  # a name of the trade is no number
        ([amount(7.0, "m"), amount(12.5, "m")], "7…12.5 m"),
        ([length(3.0), length(5.0)], "3…5 m to the first overcurrent device"),
        ([sequence([rating(a), amount(b, "m")]) for a, b in ((6.0, 20.0), (8.0, 20.0), (7.0, 20.0))], "6…8 A, 20 m"),
        ([sequence([rating(a), amount(b, "m")]) for a, b in ((6.0, 20.0), (8.0, 11.0))], "6…8 A, 11…20 m"),
        ([verbatim("on the roof")] * 2, "on the roof"),
    ],
)
def test_of_several_values_the_two_ends_are_said(every: list[Sayable], said: str) -> None:
    assert ENGLISH.say(spanning(every)).replace("\u00a0", " ") == said


@pytest.mark.parametrize(
    ("said", "ends"),
    [
        (rating(6.0), [(6.0, "A")]),
        (rating(5.26, "10 AWG"), []),
        (sequence([rating(6.0), amount(20.0, "m")]), [(6.0, "A"), (20.0, "m")]),
        (verbatim("6 A"), []),
    ],
)
def test_a_value_with_a_unit_is_measured_and_a_name_of_the_trade_is_not(
    said: Sayable, ends: list[tuple[float, str]]
) -> None:
    assert [(each.least.value, each.least.unit) for each in measured_in(said)] == ends
