"""The circuit between a battery and its converter: what is rated of it, on the DC side of an inverter and by itself."""

from __future__ import annotations

import pytest
from rated_specs import changed, rated_data, value

from sld.model.kinds.units import BATTERY, BATTERY_CONVERTER
from sld.ratings.symbol import Symbol

CELLS = {"voltage_min": "40 V", "voltage_max": "58 V", "short_circuit_current": "4 kA"}
FUSE = {"kind": "fuse", "rated_current": "125 A"}
CABLE = {"kind": "cable", "length": "2 m"}
KEY = "batteries.store"


def _store(*circuit: dict[str, object], **given: object) -> dict[str, object]:
    return changed({KEY: {**CELLS, "dc_circuit": list(circuit), **given}})


def test_a_battery_by_itself_is_a_converter_and_its_cells() -> None:
    system, ratings = rated_data(_store(FUSE, CABLE, converter_power="4 kVA"))
    converter, cells = system.devices[KEY], system.devices[f"{KEY}.cells"]
    assert (converter.kind, cells.kind) == (BATTERY_CONVERTER, BATTERY)
    assert (converter.designation, cells.designation) == ("-GB1-TB1", "-GB1")
    assert [device.key for device in system.upstream(cells.key)][:3] == [
        f"{KEY}.dc_circuit.0", f"{KEY}.dc_circuit.1", KEY,
    ]  # fmt: skip
    # 4000 VA at 40 V on the DC side, 4000 / (√3 · 400 V) on the AC side
    assert value(ratings, cells.key, Symbol.IB) == 100
    assert value(ratings, KEY, Symbol.IB) == pytest.approx(5.77, abs=0.01)


def test_at_an_inverter_its_power_counts_unless_a_charge_converter_has_less() -> None:
    _, ratings = rated_data(_store(FUSE, inverter="roof"))
    assert value(ratings, KEY, Symbol.IB) == 250  # 10 kW at 40 V
    _, ratings = rated_data(_store(FUSE, inverter="roof", charge_converter_power="3 kW"))
    assert value(ratings, KEY, Symbol.IB) == 75
    _, ratings = rated_data(_store(FUSE, inverter="roof", current_max="90 A"))
    assert value(ratings, KEY, Symbol.IB) == 90


def test_the_smallest_section_that_carries_the_fuse_is_chosen() -> None:
    # two loaded copper conductors with PVC, B1: 25 mm² 101 A, 35 mm² 125 A (BS 7671 Table 4D1A); at 40 °C times 0.87
    _, ratings = rated_data(_store(FUSE, CABLE, inverter="roof", current_max="90 A"))
    assert value(ratings, f"{KEY}.dc_circuit.1", Symbol.S) == 35
    hot = {**CABLE, "ambient_temperature": "40 °C"}
    _, ratings = rated_data(_store(FUSE, hot, inverter="roof", current_max="90 A"))
    assert value(ratings, f"{KEY}.dc_circuit.1", Symbol.S) == 50


def test_two_in_parallel_carry_twice_less_the_grouping() -> None:
    # 2 · 125 A · 0.8 (two circuits bunched, Table B.52.17) = 200 A
    pair = {**CABLE, "section": "35 mm2", "parallel": 2}
    _, ratings = rated_data(_store(FUSE, pair, inverter="roof", current_max="90 A"))
    assert value(ratings, f"{KEY}.dc_circuit.1", Symbol.IZ) == pytest.approx(200)


def test_without_a_circuit_nothing_of_it_is_rated() -> None:
    _, ratings = rated_data(changed({KEY: {**CELLS, "inverter": "roof"}}))
    assert ratings.of(KEY) == ()
