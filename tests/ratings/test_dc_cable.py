"""Currents, capacities, resistance, voltage drop and section of DC cables."""

from __future__ import annotations

import pytest

from sld.ratings.dc_cable import (
    array_current_min,
    corrected_capacity,
    resistance,
    string_current_min,
    sub_array_current_min,
    tinned_resistance_20,
    umpp_at_inverter,
    uncorrected_current_min,
    voltage_drop,
    voltage_drop_percent,
)
from sld.ratings.dc_section import Drop, FreeAir, smallest_section
from sld.ratings.string import umpp_min
from sld.tables.profiles import profile
from sld.tables.table import NoRow

IEC = profile("IEC 62548-1")
HOT = FreeAir("two_touching", 70, 3)
SECTIONS = (
    "http://photovoltaique.guidenr.fr/informations_techniques/dimensionnement-photovoltaique-continu/"
    "exemple-calcul-section-cable-cc.php"
)
CABLE_SHEET = (
    "https://www.yongbencable.com/products/Electric-Wires/solar-cable-pv1-f-tinned-copper-photovoltaic-cable.html"
)
CABLE_RULES = "http://www.solarsaarthi.com/selection-and-sizing-of-dc-string-cables-for-solar-pv-rooftop-projects/2/"


@pytest.mark.parametrize(
    ("strings", "fuse", "downstream", "current", "why"),
    [
        (4, 20.0, 0.0, 20.0, "fused: In"),
        (4, 10.0, 0.0, 12.5, "a fuse below 1.25·Isc does not lower the need"),
        (1, None, 0.0, 12.5, "one string: 1.25·Isc"),
        (1, None, 30.0, 12.5, "one string: nothing feeds back"),
        (2, None, 0.0, 12.5, "two unfused: the other one"),
        (3, None, 0.0, 25.0, "three unfused: the other two"),
        (3, None, 20.0, 45.0, "three unfused behind a 20 A fuse"),
    ],
)
def test_string_cable(strings: int, fuse: float | None, downstream: float, current: float, why: str) -> None:
    # Circuit-current rules of IEC 62548:2016 as restated in CABLE_RULES, Isc 10 A, own calculation
    assert string_current_min(strings, 10.0, IEC, fuse, downstream).value == pytest.approx(current), (why, CABLE_RULES)


@pytest.mark.parametrize(
    ("strings", "downstream", "backfeed", "current"),
    [
        (1, 0.0, 5.0, 12.5),  # its own current is the larger
        (1, 0.0, 20.0, 20.0),
        (3, 0.0, 5.0, 30.0),  # 25 A of the others and 5 A
        (3, 20.0, 60.0, 45.0),  # the fuse cuts the backfeed off
    ],
)
def test_backfeed_of_the_inverter_counts(strings: int, downstream: float, backfeed: float, current: float) -> None:
    # IEC 62548:2016 6.5: a source behind the array feeds a fault too (from memory), Isc 10 A, own calculation
    found = string_current_min(strings, 10.0, IEC, None, downstream, backfeed)
    assert found.value == pytest.approx(current)


def test_the_drop_is_taken_off_the_lowest_voltage() -> None:
    lowest = umpp_min(18, 31.0, -0.39, 69.0)  # 462.2 V
    assert umpp_at_inverter(lowest, 4.5).value == pytest.approx(lowest.value - 4.5)  # Ohm's law


@pytest.mark.parametrize(("fuse", "current"), [(None, 50.0), (63.0, 63.0), (40.0, 50.0)])
def test_array_cable(fuse: float | None, current: float) -> None:
    assert array_current_min(4, 10.0, IEC, fuse).value == pytest.approx(current)  # IEC 62548:2016 (from memory)


@pytest.mark.parametrize(("fuse", "backfeed", "current"), [(None, 20.0, 50.0), (None, 60.0, 60.0), (40.0, 60.0, 50.0)])
def test_backfeed_into_an_array_cable(fuse: float | None, backfeed: float, current: float) -> None:
    # 1.25 · 4 · 10 A; a fuse cuts the backfeed off. IEC 62548:2016 (from memory)
    assert array_current_min(4, 10.0, IEC, fuse, backfeed).value == pytest.approx(current)


@pytest.mark.parametrize(
    ("others", "fuse", "array_fuse", "current"),
    [(20.0, None, 0.0, 50.0), (80.0, None, 0.0, 100.0), (80.0, None, 125.0, 225.0), (80.0, 63.0, 125.0, 63.0)],
)
def test_sub_array_cable(others: float, fuse: float | None, array_fuse: float, current: float) -> None:
    # Sub-array of 40 A at STC; IEC 62548:2016 (from memory), own calculation
    assert sub_array_current_min(40.0, others, IEC, fuse, array_fuse).value == pytest.approx(current)


def test_no_demand_before_corrections_in_the_iec() -> None:
    assert uncorrected_current_min(5, 3.0, IEC) is None


@pytest.mark.parametrize(
    ("section", "arrangement", "t_ambient", "circuits", "capacity"),
    [
        (6, "two_touching", 70, 3, 36.7),  # 57·0.92·0.70, own calculation from EN 50618 and B.52.17
        (4, "two_touching", 70, 3, 28.3),  # 44·0.92·0.70
        (4, "single_in_air", 60, 1, 55.0),
        (4, "single_in_air", 20, 1, 55.0),  # colder than the table: no credit
        (4, "single_in_air", 60.1, 1, 50.6),  # the next hotter row: 55·0.92
        (4, "single_in_air", 90, 1, 41.25),
        (4, "single_in_air", 60, 10, 24.75),  # the next larger group, 12: 55·0.45
    ],
)
def test_corrected_capacity(section: float, arrangement: str, t_ambient: float, circuits: int, capacity: float) -> None:
    rating = corrected_capacity(section, arrangement, t_ambient, circuits)
    assert rating.value == pytest.approx(capacity, abs=0.05)
    assert "EN 50618 capacity" in str(rating.table_row)


@pytest.mark.parametrize(("t_ambient", "factor"), [(60, 0.7071), (70, 0.5774), (80, 0.4082), (20, 0.7071)])
def test_conductor_held_to_90_degrees(t_ambient: float, factor: float) -> None:
    # Heat balance sqrt((90 - Ta)/60), own calculation
    assert corrected_capacity(4, "single_in_air", t_ambient, 1, 90).value == pytest.approx(55 * factor, rel=2e-4)


@pytest.mark.parametrize(("t_ambient", "t_conductor"), [(90, 90), (75, 75)])
def test_conductor_temperatures_without_an_answer(t_ambient: float, t_conductor: float) -> None:
    with pytest.raises(ValueError, match="conductor"):
        corrected_capacity(4, "single_in_air", t_ambient, 1, t_conductor)


@pytest.mark.parametrize(
    ("section", "arrangement", "t_ambient", "circuits"),
    [(5, "single_in_air", 60, 1), (4, "in_soil", 60, 1), (4, "single_in_air", 90.1, 1), (4, "single_in_air", 60, 21)],
)
def test_capacity_outside_the_tables_is_a_miss(
    section: float, arrangement: str, t_ambient: float, circuits: int
) -> None:
    with pytest.raises(NoRow):
        corrected_capacity(section, arrangement, t_ambient, circuits)


@pytest.mark.parametrize(
    ("section", "at_70", "at_90"), [(4, 6.09, 6.49), (6, 4.06, 4.32), (10, 2.33, 2.49), (25, 0.951, 1.01)]
)
def test_resistance_hot(section: float, at_70: float, at_90: float) -> None:
    # IEC 60287 with 0.00393 1/K: 1.1965 times at 70 °C and 1.2751 at 90 °C, own calculation on the printed R20
    r_20 = tinned_resistance_20(section).value
    assert resistance(r_20, 70).value == pytest.approx(at_70, abs=0.005)
    assert resistance(r_20, 90).value == pytest.approx(at_90, abs=0.005)
    assert resistance(r_20, 20).value == r_20


def test_aluminium_has_its_own_coefficient() -> None:
    assert resistance(1.0, 70, alpha_per_k=0.00403).value == pytest.approx(1.2015)


@pytest.mark.parametrize(("length", "current", "published"), [(28, 9.18, 0.97), (33, 9.18, 1.14), (53, 18.36, 3.66)])
def test_drop_of_published_sections(length: float, current: float, published: float) -> None:
    # SECTIONS: 16 modules of 25.6 V, 3 %, ρ = 0.02314 Ω·mm²/m; the sections are printed with two decimals
    drop = voltage_drop(length, current, 1000 * 0.02314 / published)
    assert voltage_drop_percent(drop.value, 16 * 25.6).value == pytest.approx(3, rel=0.006), SECTIONS


def test_drop_of_the_length_misprinted_in_the_source() -> None:
    # SECTIONS prints "92 m" out and back beside 3.66 mm²; the answer belongs to 106 m.
    drop = voltage_drop(46, 18.36, 1000 * 0.02314 / 3.66)
    assert voltage_drop_percent(drop.value, 409.6).value == pytest.approx(2.6, abs=0.01)


def test_cables_with_nothing_downstream() -> None:
    assert string_current_min(2, 10.0, IEC).value == pytest.approx(12.5)
    assert sub_array_current_min(40.0, 40.0, IEC).value == pytest.approx(50.0)


def test_a_drop_exactly_at_the_limit_is_within_it() -> None:
    drop = voltage_drop(100, 13.0, resistance(5.09, 90).value)
    limit = voltage_drop_percent(drop.value, 400.0).value
    chosen = smallest_section(HOT, 15.0, Drop(100, 13.0, 400.0, limit))
    assert chosen is not None
    assert chosen.value == 4


def test_voltage_drop_is_out_and_back() -> None:
    assert voltage_drop(50, 10, 5.0).value == pytest.approx(5.0)  # Ohm's law: 100 m of 5 mΩ/m at 10 A
    assert voltage_drop_percent(0.005, 0.5).value == pytest.approx(1)
    with pytest.raises(ValueError, match="above 0 V"):
        voltage_drop_percent(5.0, 0.0)


@pytest.mark.parametrize(
    ("current_min", "drop_max", "length", "section"),
    [
        (30.0, 3.0, 10, 6),  # 28.3 A of 4 mm² is short of 30 A, 36.7 A of 6 mm² is not
        (44 * 0.92 * 0.70, 3.0, 10, 4),  # exactly the capacity of 4 mm²
        (44 * 0.92 * 0.70 + 1e-9, 3.0, 10, 6),  # a hair above it
        (15.0, 3.0, 10, 4),  # never below 4 mm² by default
        (
            15.0,
            1.0,
            100,
            25,
        ),  # own calculation: 2·100·13·1.58/1000 = 4.1 V is over 1 % of 400 V in 16 mm², 25 mm² is not
        (15.0, 4.2188, 100, 4),  # own calculation: 2·100·13·5.09·1.2751/1000 = 16.87 V is 4.2187 % of 400 V
        (15.0, 4.2180, 100, 6),
        (15.0, 1e-6, 100, None),  # no section is enough
        (1e6, 3.0, 10, None),
    ],
)
def test_smallest_section(current_min: float, drop_max: float, length: float, section: float | None) -> None:
    chosen = smallest_section(HOT, current_min, Drop(length, 13.0, 400.0, drop_max))
    assert (chosen.value if chosen else None) == section


def test_smallest_section_may_start_lower_and_refuses_an_unknown_arrangement() -> None:
    chosen = smallest_section(HOT, 15.0, Drop(10, 13.0, 400.0, 3.0), section_from_mm2=1.5)
    assert chosen is not None
    assert chosen.value == 1.5  # 24·0.92·0.70 = 15.5 A
    with pytest.raises(NoRow, match="in_soil"):
        smallest_section(FreeAir("in_soil", 70, 3), 15.0, Drop(10, 13.0, 400.0, 3.0))
