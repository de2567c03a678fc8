"""Comparing and writing two numbers. A limit holds at equality; the noise of binary arithmetic is no excess."""

from __future__ import annotations

import pytest
from systems import rated

from sld.model.device import StringGroup
from sld.quantity import Rating
from sld.ratings.symbol import Symbol
from sld.rules.compare import above, below, shortfalls, two, two_sections
from sld.steps import Ratings
from sld.words import ENGLISH

BILLION = 1e9  # of which the noise that is passed over, 1e-9 of the limit, is exactly 1


@pytest.mark.parametrize(
    ("value", "limit", "is_above", "is_below"),
    [
        (30, 30, False, False),
        (1.1 * 3, 3.3, False, False),  # 3.3000000000000003
        (0, 0, False, False),
        (1e-12, 0, True, False),
        (-1e-12, 0, False, True),
        (30.000001, 30, True, False),
        (29.999999, 30, False, True),
        (BILLION + 1, BILLION, False, False),
        (BILLION + 2, BILLION, True, False),
        (BILLION + 1.005, BILLION, True, False),
        (BILLION - 1, BILLION, False, False),
        (BILLION - 2, BILLION, False, True),
        (BILLION - 1.005, BILLION, False, True),
        (-BILLION + 1, -BILLION, False, False),
        (-BILLION + 2, -BILLION, True, False),
        (-BILLION - 2, -BILLION, False, True),
        (40, 30, True, False),
        (20, 30, False, True),
    ],
)
def test_above_and_below(value, limit, is_above, is_below) -> None:
    assert above(value, limit) is is_above
    assert below(value, limit) is is_below


@pytest.mark.parametrize(
    ("left", "right", "unit", "texts"),
    [
        (1000.4, 1000, "V", ("1000.4 V", "1000 V")),
        (100_000, 11_080, "W", ("100 kW", "11.1 kW")),
        (5000, 900, "VA", ("5 kVA", "0.9 kVA")),
        (999, 1, "W", ("999 W", "1 W")),
        (12, 14.5, "", ("12", "14.5")),
        (30, 20, "A", ("30 A", "20 A")),
    ],
)
def test_two(left, right, unit, texts) -> None:
    assert tuple(map(str, two(left, right, unit))) == texts


def section(mm2: float, trade_name: str = "") -> Rating:
    return Rating(Symbol.S, mm2, "mm²", "", (), "IEC 60228", trade_name=trade_name)


@pytest.mark.parametrize(
    ("left", "right", "texts"),
    [
        (section(1.5), section(2.0412), ("1.5 mm²", "2.04 mm²")),
        (section(4.0004), section(4), ("4.0004 mm²", "4 mm²")),
        (section(5.261, "10 AWG"), section(8.367, "8 AWG"), ("10 AWG", "8 AWG")),
        (section(5.261, "10 AWG"), section(6.0004), ("10 AWG", "6 mm²")),
        (section(6.0004), section(8.367, "8 AWG"), ("6 mm²", "8 AWG")),
    ],
)
def test_two_sections(left, right, texts) -> None:
    assert tuple(ENGLISH.say(each) for each in two_sections(left, right)) == texts


def ratings(key: str, values: dict[Symbol, float | None]) -> Ratings:
    made = {symbol: Rating(symbol, value, "A", "", (), "IEC 60364-4-43") for symbol, value in values.items() if value}
    return Ratings({key: made}, {}, {})


@pytest.mark.parametrize(
    ("has_a", "needs_a", "short"),
    [(16, 20, True), (20, 20, False), (25, 20, False), (None, 20, False), (16, None, False), (None, None, False)],
)
def test_shortfalls(has_a, needs_a, short) -> None:
    group = next(rated({})[0].of(StringGroup))
    found = list(
        shortfalls(ratings(group.key, {Symbol.IN: has_a, Symbol.IN_MIN: needs_a}), [group], Symbol.IN, Symbol.IN_MIN)
    )
    assert bool(found) is short
    for device, has, least in found:
        assert (device, has.value, least.value) == (group, has_a, needs_a)
