"""What feeds a board besides inverters of its own: micro-inverters on an AC trunk cable, generators, batteries."""

from __future__ import annotations

import pytest
from pydantic import ValidationError
from small_specs import UNIT, spec, system

from sld.model.device import ChargeConverter, GeneratorUnit
from sld.model.wording import device_word
from sld.ratings.symbol import Symbol
from sld.steps import rate

SUPPLY = {"supply": {"earthing_system": "TN-S", "phases": 1, "voltage": "230 V", "loop_impedance": 0.3}}
CIRCUIT = [{"kind": "breaker", "rated_current": "16 A"}, {"kind": "cable", "length": "9 m"}]
EAST = {
    "trunk": True,
    "fed_from": "main",
    "circuit": CIRCUIT,
}
MICRO = {
    **SUPPLY,
    "types.inverters.t.phases": 1,
    "types.inverters.t.rated_power": "700 W",
    "types.inverters.t.micro": True,
    "boards": {
        "main": {},
        "east": EAST,
    },
    "inverters.roof": {**UNIT, "count": 4, "connected_to": "east", "circuit": []},
}
GENSET = {"power": "15 kVA", "changeover": "four-pole change-over switch"}


def test_currents_of_micro_inverters_are_summed_on_their_trunk() -> None:
    # 4 · 700 W / 230 V = 12.17 A; the trunk carries what its breaker lets through: IEC 60364-4-43 433.1 (from memory)
    made = system(MICRO)
    ratings = rate(made)
    for key in ("boards.east", "boards.east.circuit.0", "boards.east.circuit.1"):
        current = ratings.get(key, Symbol.IB)
        assert current is not None
        assert current.value == pytest.approx(4 * 700 / 230)
    least = ratings.get("boards.east", Symbol.INA_LEAST)
    assert least is not None
    assert least.value == 16.0
    assert ratings.get("boards.east", Symbol.INA) is None


def test_a_trunk_is_no_enclosure() -> None:
    made = system({**MICRO, "boards": {"main": {}, "east": {**EAST, "circuit": [*CIRCUIT, {"kind": "isolator"}]}}})
    assert made.devices["boards.east.circuit.2"].enclosure == ""
    trunk = made.devices["boards.east"]
    assert trunk.designation == "-WC2"
    assert str(device_word(trunk)) == "AC trunk cable"
    assert "boards.east" not in made.enclosures
    assert made.devices["boards.east.circuit.0"].enclosure == "boards.main"
    assert made.devices["inverters.roof-1"].parent == "boards.east"


@pytest.mark.parametrize(
    ("changes", "current_a"),
    [
        ({}, 15000 / (3**0.5 * 400)),
        ({"generators.standby.phases": 1}, 15000 / 230),
        ({"generators.standby.current_max": "20 A"}, 20.0),
    ],
)
def test_current_of_a_generator_flows_in_its_own_circuit_alone(changes: dict[str, object], current_a: float) -> None:
    without = rate(system({"boards": {"main": {}}}))
    made = system({"boards": {"main": {}}, "generators.standby": GENSET, **changes})
    ratings = rate(made)
    assert isinstance(made.devices["generators.standby"], GeneratorUnit)
    for key in ("generators.standby", "generators.standby.circuit.0"):
        current = ratings.get(key, Symbol.IB)
        assert current is not None
        assert current.value == pytest.approx(current_a)
    assert ratings.get("boards.main", Symbol.IB) == without.get("boards.main", Symbol.IB)


def test_a_generator_renumbers_nothing_and_its_limits_are_said() -> None:
    made = system({"generators.standby": GENSET})
    assert made.devices["supply"].designation == "-GA1"
    assert made.devices["generators.standby"].designation == "-GA2"
    assert any("fault currents are not computed" in str(each.what) for each in made.assumptions)


def test_a_charge_converter_stands_between_battery_and_inverter() -> None:
    made = system({"batteries.store": {"inverter": "roof", "charge_converter_power": "5 kW"}})
    battery = made.devices["batteries.store"]
    converter = made.devices[battery.parent]
    assert isinstance(converter, ChargeConverter)
    assert converter.parent == "inverters.roof"
    assert converter.designation.startswith(battery.designation)


def test_a_charge_converter_needs_an_inverter() -> None:
    with pytest.raises(ValidationError, match="no `inverter` is given"):
        spec({"batteries.store": {"charge_converter_power": "5 kW"}})


@pytest.mark.parametrize(
    ("changes", "family"),
    [
        ({}, "IEC"),
        ({"drawing.symbols": "ANSI"}, "ANSI"),
        ({"profile": "BS 7671"}, "IEC"),
        ({"profile": "NEC 690"}, "ANSI"),
        ({"profile": "NEC 690", "drawing.symbols": "IEC"}, "IEC"),
        ({"profile": "BS 7671", "drawing.symbols": "ANSI"}, "ANSI"),
    ],
)
def test_family_of_symbols(changes: dict[str, object], family: str) -> None:
    assert system(changes).symbols == family
