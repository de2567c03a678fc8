"""What a network operator is told of a system, and the sizes that were passed over; worked by hand."""

from __future__ import annotations

import pytest

from sld.quantity import Given
from sld.ratings import notified, passed_over
from sld.ratings.specified import specified
from sld.ratings.symbol import Symbol
from sld.words import phrase

OF_THE_SOURCES = (Given("Pac", 5000.0, "W"), Given("S", 3600.0, "VA"), Given("S", 2400.0, "VA"))


@pytest.mark.parametrize(
    ("three_va", "one_va", "amperes", "formula"),
    [
        # https://www.westernpower.co.uk/connections-landing/g98-connection-procedures: 9,000 / (230 x 3) = 13.04
        (9000, 0, 13.04, "S3 / (3 · U0)"),
        (0, 3680, 16, "S1 / U0"),  # G98: 16 A a phase are 3.68 kW
        (13_800, 4600, 40, "S3 / (3 · U0) + S1 / U0"),  # 13,800 / 690 = 20 and 4600 / 230 = 20
    ],
)
def test_current_of_the_most_loaded_line(three_va: float, one_va: float, amperes: float, formula: str) -> None:
    current = notified.line_current(three_va, one_va, 230)
    assert current.value == pytest.approx(amperes, abs=0.005)
    assert (current.symbol, current.formula) == (Symbol.ILINE, formula)
    inputs = {"S3": three_va, "S1": one_va, "U0": 230}
    assert {each.name: each.value for each in current.given} == {key: each for key, each in inputs.items() if each}
    power = notified.line_power(current, 230)
    assert power.value == pytest.approx(230 * current.value)
    assert (power.symbol, [each.name for each in power.given]) == (Symbol.SLINE, ["Iline", "U0"])


def test_units_between_two_lines_load_both() -> None:
    current = notified.line_current_between({"L1": 20.0, "L2": 35.0, "L3": 15.0})
    assert (current.symbol, current.value) == (Symbol.ILINE, 35)
    assert [(each.name, each.value) for each in current.given] == [("IL1", 20), ("IL2", 35), ("IL3", 15)]


def test_sums_and_the_largest() -> None:
    # by definition: 5000 + 3600 + 2400 = 11,000
    assert (notified.rated_power(OF_THE_SOURCES).value, notified.rated_power(OF_THE_SOURCES).unit) == (11_000, "W")
    total, largest = (make(OF_THE_SOURCES[1:]) for make in (notified.single_phase_sum, notified.largest_single_phase))
    assert (total.symbol, total.value) == (Symbol.S1_SUM, 6000)
    assert (largest.symbol, largest.value) == (Symbol.S1_MAX, 3600)
    assert total.given == largest.given == OF_THE_SOURCES[1:]


@pytest.mark.parametrize(
    ("rated_w", "limit_w", "fed_w"), [(9000, None, 9000), (9000, 6000, 6000), (9000, 9000, 9000), (5000, 6000, 5000)]
)
def test_a_limit_lowers_what_is_fed_in(rated_w: float, limit_w: float | None, fed_w: float) -> None:
    feed = notified.fed_in(rated_w, limit_w)
    assert (feed.symbol, feed.value) == (Symbol.PFEED, fed_w)
    told = [("Psources", rated_w), ("PAV,E", limit_w)]
    assert [(each.name, each.value) for each in feed.given] == [each for each in told if each[1] is not None]


@pytest.mark.parametrize(
    ("line_w", "limit_w", "lines", "fed_w"),
    # 6000 W over three lines alike are 2000 W on each: common practice, no source
    [(3000, None, 3, 3000), (3000, 6000, 3, 2000), (1500, 6000, 3, 1500), (3000, 6000, 1, 3000), (9000, 6000, 1, 6000)],
)
def test_a_limit_holds_for_each_line_alike(line_w: float, limit_w: float | None, lines: int, fed_w: float) -> None:
    feed = notified.fed_into_a_line(line_w, limit_w, lines)
    assert (feed.symbol, feed.value) == (Symbol.PFEED_LINE, fed_w)
    assert len(feed.given) == (1 if limit_w is None else 3)


def test_a_limit_as_a_current() -> None:
    # 13,800 / (3 · 230) = 20 A; on one line 4600 / 230 = 20 A
    assert notified.limit_current(13_800, 3, 230).value == notified.limit_current(4600, 1, 230).value == 20
    given = notified.limit_current(13_800, 3, 230).given
    assert [(each.name, each.value) for each in given] == [("PAV,E", 13_800), ("n", 3), ("U0", 230)]


def test_what_was_passed_over_is_told_from_the_nearest() -> None:
    # ratings of IEC 60059: 10, 16, 20, 25 A
    below = passed_over.below((10.0, 16.0, 20.0, 25.0), 20.0, "A")
    assert list(map(str, below)) == ["16 A: below 20 A", "10 A: below 20 A"]
    below = passed_over.below((10.0, 16.0, 20.0, 25.0), 20.1, "A")
    assert list(map(str, below)) == ["20 A: below 20.1 A", "16 A: below 20.1 A"]
    assert passed_over.below((10.0,), 10.0, "A") == ()
    assert passed_over.nearest(("1.5", "2.5", "4")) == ("4", "2.5")
    assert passed_over.nearest(()) == ()


def test_why_a_section_does_not_do() -> None:
    carried, changed = specified(Symbol.IZ, 24, "A"), specified(Symbol.DU_RISE, 1.3, "%")
    assert str(passed_over.too_small(2.5, carried, "Ib")) == "2.5 mm²: Iz = 24 A, below Ib"
    assert str(passed_over.too_small(2.5, changed, "ΔU,max")) == "2.5 mm²: Δu rise = 1.3 %, above ΔU,max"
    assert str(passed_over.outgrown(6, phrase("disconnection"))) == "6 mm²: disconnection asks for more"
