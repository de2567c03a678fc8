"""Rise and drop of voltage: signs, sums, refused inputs; worked examples are in tests/examples."""

from __future__ import annotations

import pytest

from sld.ratings.voltage_change import (
    change_percent,
    longest_length,
    voltage_at_inverter,
    voltage_drop,
    voltage_rise,
    voltage_rise_sum,
)


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


def test_a_percentage_says_from_which_current_length_and_resistance_it_comes() -> None:
    # IEC 60364-5-52:2009 Annex G: a reader must be able to work it again from what is printed
    rise = change_percent(voltage_rise(3, 19.2, 14, 5.516, 0.08), 400)
    assert str(rise.formula) == "100 · ΔU / U, ΔU = √3 · I · L · (R · cosφ + X · sinφ)"
    printed = {each.symbol: float(each.value) for each in rise.given}
    again = 3**0.5 * printed["I"] * printed["L"] / 1000 * printed["R"] * printed["cosφ"]
    assert 100 * again / printed["U"] == pytest.approx(rise.value)
