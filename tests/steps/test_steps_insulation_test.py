"""The insulation test of strings by hand: 1.25 · N · Uoc at STC (37 V a module), IEC 62446-1:2016 6.7."""

from __future__ import annotations

from typing import Any

import pytest
from rated_specs import changed, rated_data

from sld.documents.drawing.insulation_test import insulation_test
from sld.ratings.symbol import Symbol

INPUT = "inverters.roof.inputs.0"
COUNT = f"{INPUT}.strings.0.modules_in_series"
SURGE = {"kind": "surge_protection", "continuous_voltage": "1000 V"}
FOR_1500_V = {"types.modules.m.system_voltage_max": "1500 V"}
CABLE_1000_V = {
    "types.cables": {"solar": {"insulation": "EN 50618", "rated_voltage": "1000 V"}},
    f"{INPUT}.strings.0.cable": {"type": "solar", "length": "9 m"},
}


@pytest.mark.parametrize(
    ("changes", "test_v"),
    [
        ({COUNT: 10}, 500),  # 462.5 V
        ({COUNT: 18}, 1000),  # 832.5 V
        ({COUNT: 22}, 1000),  # 1017.5 V asks for 1500 V, the modules are for 1000 V
        ({COUNT: 22, **FOR_1500_V}, 1500),
        ({COUNT: 22, **FOR_1500_V, **CABLE_1000_V}, 1000),
    ],
)
def test_voltage(changes: dict[str, Any], test_v: float) -> None:
    _, ratings = rated_data(changed(changes))
    assert ratings[INPUT, Symbol.UTEST].value == test_v
    assert ratings["", Symbol.UTEST].value == test_v


def test_modules_below_every_test_voltage_have_no_test() -> None:
    """And no second finding: that the modules are too weak is told of itself."""
    system, ratings = rated_data(changed({"types.modules.m.system_voltage_max": "200 V"}))
    assert ratings.get(INPUT, Symbol.UTEST) is None
    assert insulation_test(system, ratings).paragraphs == ()


def told(changes: dict[str, Any]) -> list[str]:
    return [str(each) for each in insulation_test(*rated_data(changed(changes))).paragraphs]


def test_surge_protection_of_1000_v_is_taken_off_before_1500_v() -> None:
    """With the inverter, as makers of testers ask for: https://www.easymanua.ls/ht/pvchecks-pro/manual?p=25."""
    isolator = {"kind": "isolator", "rated_voltage": "1500 V"}
    first, *_, values = told({COUNT: 22, **FOR_1500_V, f"{INPUT}.circuit": [isolator, SURGE]})
    assert first == (
        "Take off first: inverters -TB1 and surge protective devices -TB1-FA1. "
        "Source: IEC 62446-1:2016 6.7 (clause from memory)."
    )
    assert values.startswith("-TB1-GC1: 1500 V, ≥ 1 MΩ, by ")
    assert "from memory" in values


@pytest.mark.parametrize(
    ("circuit", "named"),
    [
        ([{"kind": "isolator", "rated_voltage": "800 V"}], "than the test voltage -TB1-QB2"),
        ([{"kind": "isolator", "rated_voltage": "1000 V"}], ""),
        ([{"kind": "insulation_monitor", "rated_voltage": "1500 V"}], "monitoring and shutdown devices -TB1-BU1"),
        ([{"kind": "rapid_shutdown", "rated_voltage": "1500 V"}], "monitoring and shutdown devices -TB1-QA1"),
    ],
)
def test_what_else_is_taken_off(circuit: list[dict[str, str]], named: str) -> None:
    first, *_ = told({f"{INPUT}.circuit": circuit})
    assert named in first
    if not named:
        assert "QB" not in first


def test_a_functional_earth_is_undone() -> None:
    assert "functional earth -TB1-XD1" in told({f"{INPUT}.functional_earth": True})[0]


@pytest.mark.parametrize(
    ("strings_count", "words"),
    [(1, "the array of one inverter, which is not above 10 kWp"), (2, "together up to 10 kWp")],
)
def test_test_object(strings_count: int, words: str) -> None:
    """One string of 18 · 400 W is 7.2 kWp, two are 14.4 kWp (IEC 62446-1:2016 6.7.3, from memory)."""
    text = told({f"{INPUT}.strings.0.count": strings_count})[1]
    assert words in text
    assert "6.7.3 (from memory)" in text


def test_a_lower_voltage_than_the_table_asks_for_is_said() -> None:
    *_, values = told({COUNT: 22})
    assert values.endswith("; the table asks for 1500 V, above the rated voltage of module or cable.")
