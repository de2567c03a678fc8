"""Rise and drop of voltage against published worked examples, right and wrong ones."""

from __future__ import annotations

from math import sqrt

import pytest

from sld.ratings.voltage_change import (
    change_percent,
    longest_length,
    voltage_at_inverter,
    voltage_drop,
    voltage_rise,
    voltage_rise_sum,
)

KFT_M = 304.8
FOOT_M = 0.3048
BASICS = "http://ecmweb.com/content/basics-calculating-voltage-drop"


@pytest.mark.parametrize(
    ("ohm_per_kft", "feet", "printed_v"),
    [
        (1.7, 200, 11.8),  # 12 AWG
        (1.7, 500, 29.4),  # prints 29; 29.4 recomputed
    ],
)
def test_three_phase_drop_of_a_trade_article(ohm_per_kft: float, feet: float, printed_v: float) -> None:
    # BASICS: √3 · 20 A · R · L
    drop = voltage_drop(3, 20, feet * FOOT_M, ohm_per_kft / KFT_M * 1000)
    assert drop.value == pytest.approx(printed_v, abs=0.05)


@pytest.mark.parametrize(
    ("feet", "printed_v", "right_v"),
    [
        (200, 7.7, 7.62),  # the page's own line gives 7.62 and rounds to 7.7
        (500, 18.0, 19.05),  # inconsistent with the page's own 200 ft example
    ],
)
def test_wrong_in_print_drop(feet: float, printed_v: float, right_v: float) -> None:
    # BASICS, 10 AWG, 1.1 Ω/kft, 20 A, three phases
    drop = voltage_drop(3, 20, feet * FOOT_M, 1.1 / KFT_M * 1000)
    assert drop.value == pytest.approx(right_v, abs=0.01)
    assert drop.value != pytest.approx(printed_v, abs=0.05)


INSTALLER = (
    "https://www.autarco.com/blog/2022/02/15/calculating-the-cable-connection-of-an-inverter-to-the-electricity-grid/"
)
RHO_COLD = 0.0175  # the page's Ω·mm²/m, cold copper


def test_single_phase_rise_of_a_supplier_page() -> None:
    # INSTALLER: 1 kW at 230 V, 43 m of 2.5 mm²: 2.6 V, 1.1 %
    rise = voltage_rise(1, 1000 / 230, 43, 1000 * RHO_COLD / 2.5)
    assert rise.value == pytest.approx(2.6, abs=0.05)
    assert change_percent(rise, 230).value == pytest.approx(1.1, abs=0.05)


@pytest.mark.parametrize(("section_mm2", "printed_m"), [(4, 69), (6, 105), (10, 171)])
def test_longest_single_phase_length_of_a_supplier_page(section_mm2: float, printed_m: float) -> None:
    # INSTALLER: the same percentage as 43 m of 2.5 mm²
    limit = 100 * 43 * 2 * 1000 / 230 * RHO_COLD / 2.5 / 230
    per_metre = voltage_rise(1, 1000 / 230, 1, 1000 * RHO_COLD / section_mm2)
    longest = longest_length(limit, 230, per_metre)
    assert longest is not None
    assert longest.value == pytest.approx(printed_m, rel=0.02)


@pytest.mark.parametrize(("section_mm2", "printed_m", "right_m"), [(4, 53, 73.1), (6, 80, 109.7)])
def test_wrong_in_print_three_phase_length(section_mm2: float, printed_m: float, right_m: float) -> None:
    # INSTALLER: 5 kW, 400 V, 1 %: printed 27 % shorter than its own single-phase method gives
    per_metre = voltage_rise(3, 5000 / (sqrt(3) * 400), 1, 1000 * RHO_COLD / section_mm2)
    longest = longest_length(1, 400, per_metre)
    assert longest is not None
    assert longest.value == pytest.approx(right_m, abs=0.1)
    assert longest.value != pytest.approx(printed_m, rel=0.2)


def test_misprinted_length_of_a_makers_brief() -> None:
    # https://studylib.net/doc/18453723/circuit-calculations-for-the-s280-microinverter: 6 AWG (0.491 Ω/kft), six units
    # of 1.125 A, 1 % of 240 V: printed 392 ft, 69 of its 70 cells agree within 1 ft, this one is 362 ft
    per_metre = voltage_rise(1, 6 * 1.125, 1, 0.491 / KFT_M * 1000)
    longest = longest_length(1, 240, per_metre)
    assert longest is not None
    assert longest.value / FOOT_M == pytest.approx(362, abs=1)
    assert longest.value / FOOT_M != pytest.approx(392, abs=1)


def test_drop_from_millivolts_per_ampere_and_metre() -> None:
    # https://docest.com/doc/258161/cables-conduits-and-trunking: 6 kW, 240 V, 16 m, 11 mV/A/m: 1.83 %
    drop = voltage_drop(1, 6000 / 240, 16, 11 / 2)
    assert change_percent(drop, 240).value == pytest.approx(1.83, abs=0.005)


@pytest.mark.parametrize(
    ("flow", "reactive", "expected_v"),
    [
        # P = 0.8 S and Q = 0.6 S, 100 A, 1 km, R 0.2, X 0.1 Ω/km: 2 · 100 · (0.16 ± 0.06)
        (voltage_rise, "supplied", 44.0),
        (voltage_rise, "absorbed", 20.0),
        (voltage_drop, "absorbed", 44.0),
        (voltage_drop, "supplied", 20.0),
    ],
)
def test_sign_of_reactive_power(flow: object, reactive: str, expected_v: float) -> None:
    # ΔU = (R·P ± X·Q) / U, any textbook of power systems
    assert callable(flow)
    assert flow(1, 100, 1000, 0.2, 0.1, 0.8, reactive).value == pytest.approx(expected_v)


def test_absorbing_enough_turns_a_rise_into_a_fall() -> None:
    assert voltage_rise(3, 100, 100, 0.05, 0.1, 0.8, "absorbed").value < 0


@pytest.mark.parametrize(
    ("changes"),
    [
        {"phase_count": 2},
        {"i_a": -1.0},
        {"length_m": -1.0},
        {"cos_phi": 1.001},
        {"cos_phi": -0.001},
        {"reactive": "leading"},
        {"r_ohm_per_km": float("nan")},
    ],
)
def test_refused_inputs(changes: dict[str, object]) -> None:
    inputs: dict[str, object] = {"phase_count": 1, "i_a": 10.0, "length_m": 10.0, "r_ohm_per_km": 1.0}
    with pytest.raises(ValueError, match=r"must|reactive"):
        voltage_rise(**{**inputs, **changes})  # type: ignore[arg-type]


def test_no_longest_length_where_nothing_rises() -> None:
    assert longest_length(1, 230, voltage_rise(1, 10, 1, 0)) is None


def test_sum_of_the_way_and_its_base() -> None:
    # AS/NZS 4777.1:2016 3.3.3: the whole path counts,
    # https://worksafe.nt.gov.au/forms-and-resources/news-and-events/technical-updates/archive/voltage-rise-determination-in-solar-pv-installation-is-required-to-be-less-than-2
    parts = [change_percent(voltage_rise(1, 10, 10, r), 230) for r in (1.0, 2.0)]
    assert voltage_rise_sum(parts).value == pytest.approx(100 * (2 + 4) / 10 / 230)
    with pytest.raises(ValueError, match="percent"):
        voltage_rise_sum([voltage_rise(1, 10, 10, 1)])
    with pytest.raises(ValueError, match="at least one"):
        voltage_rise_sum([])


def test_voltage_at_the_inverter() -> None:
    # EN 50160: 253 V is the upper limit on a 230 V network; 244 V and 2 % stay below, 250 V and 2 % do not
    assert voltage_at_inverter(244, 2).value == pytest.approx(248.88)
    assert voltage_at_inverter(250, 2).value > 253


def test_purely_reactive_current_changes_the_voltage_by_reactance_alone() -> None:
    # 2 · 10 A · 0.1 km · 0.08 Ω/km, whatever the resistance (Ohm's law)
    assert voltage_rise(1, 10, 100, 1.0, 0.08, 0.0).value == pytest.approx(0.16)
