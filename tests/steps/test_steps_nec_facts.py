"""Small systems under the National Electrical Code with one thing in them to be worked out, and what stays open.

Tables as in `test_steps_nec_designs.py`; the arithmetic is the tests' own.
"""

from __future__ import annotations

from math import hypot, sqrt
from typing import Any

import pytest
from rated_specs import CABLE, STRING, changed, rated_data, value

from sld.ratings.symbol import Symbol
from sld.steps import Ratings
from sld.steps.unanswered import UNKNOWN_CURRENT, WITHOUT_FUSE, Why
from sld.wire_size import name_of

NEC = {
    "profile": "NEC 690",
    "supply": {"phases": 1, "split_phase": True, "voltage": "240 V", "earthing_system": "TN-C-S"},
    "types.inverters.t.phases": 1,
    "types.inverters.t.rated_power": "7.6 kW",
    "types.inverters.t.current_max": "32 A",
}
UNIT, TAIL, MAIN = "inverters.roof", "inverters.roof.circuit.1", "boards.main"
BREAKER, WIRE = {"kind": "breaker"}, {"kind": "cable", "length": "9 m"}


BONDED = {"electrode": {"kind": "foundation"}, "conductor": {}, "bonding": [{"to": "water pipe"}]}
HOT = {"length": 9, "ambient_temperature": "95 °C"}
DEAD = {"boards.spare": {"fed_from": "main", "circuit": [BREAKER, {"kind": "isolator"}]}}
SPARE = {"boards.spare": {"fed_from": "main", "circuit": [WIRE]}}


def nec(changes: dict[str, Any] | None = None) -> Ratings:
    return rated_data(changed({**NEC, **(changes or {})}))[1]


def load(current_a: float, **more: Any) -> dict[str, Any]:
    return {"current": f"{current_a} A", "circuit": [BREAKER], **more}


# -- what an overcurrent device is rated for -----------------------------------------------------------------------


@pytest.mark.parametrize(
    ("loads", "least_a"),
    [
        # 40 A for a while on one line, 36 A for hours on the other: 1.25 · 36 A = 45 A
        ({"a": load(40, line="L1"), "b": load(36, line="L2", continuous=True)}, 45),
        ({"a": load(40, line="L1"), "b": load(31, line="L2", continuous=True)}, 40),
        # nothing but the export lasts: 1.25 · 32 A
        ({"a": load(10)}, 40),
        ({"a": load(44)}, 44),
    ],
)
def test_the_line_with_the_greatest_duty_decides(loads, least_a) -> None:
    """215.2(A)(1), 705.28(A): 125 % of what flows for three hours or more, and the rest as it is."""
    boards = {"main": {}, "sub": {"fed_from": "main", "circuit": [BREAKER, WIRE]}}
    on_sub = {name: {**each, "connected_to": "sub"} for name, each in loads.items()}
    ratings = nec({"boards": boards, "loads": on_sub, f"{UNIT}.connected_to": "sub"})
    assert value(ratings, "boards.sub.circuit.0", Symbol.IMAX_125) == pytest.approx(least_a)


@pytest.mark.parametrize(("device_a", "least_a"), [(None, 40), (40, 40), (70, 70)])
def test_a_switch_stands_the_device_ahead(device_a, least_a) -> None:
    """1.25 · 32 A = 40 A, and never less than the device in series with it (690.13(E), 705.20, from memory)."""
    breaker = {**BREAKER, **({"rated_current": f"{device_a} A"} if device_a else {})}
    ratings = nec({f"{UNIT}.circuit": [breaker, WIRE, {"kind": "isolator"}]})
    assert value(ratings, f"{UNIT}.circuit.2", Symbol.IN_MIN) == least_a


def test_a_spare_circuit_is_sized_by_its_device() -> None:
    """60 A with nothing behind it: 6 AWG of 60 °C carries 55 A, for which 60 A is the next device (240.4(B))."""
    spare = {"fed_from": "main", "circuit": [{**BREAKER, "rated_current": "60 A"}, WIRE]}
    ratings = nec({"boards.spare": spare, f"{UNIT}.connected_to": "main"})
    assert name_of(value(ratings, "boards.spare.circuit.1", Symbol.S)) == "6 AWG"
    assert ratings.get("boards.spare.circuit.1", Symbol.IMAX_125) is None


# -- what stays open, and why --------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("changes", "key", "symbol", "why"),
    [
        ({f"{MAIN}.circuit": [WIRE]}, f"{MAIN}.circuit.0", Symbol.S, WITHOUT_FUSE),
        ({**SPARE, f"{UNIT}.connected_to": "main"}, "boards.spare.circuit.0", Symbol.S,
         UNKNOWN_CURRENT),
        ({f"{MAIN}.circuit": [BREAKER]}, MAIN, Symbol.INA, WITHOUT_FUSE),
        ({f"{MAIN}.circuit": [BREAKER]}, f"{MAIN}.circuit.0", Symbol.IN, WITHOUT_FUSE),
        ({f"{MAIN}.circuit": [{"kind": "main_switch"}]}, f"{MAIN}.circuit.0", Symbol.IN, WITHOUT_FUSE),
        ({**DEAD, f"{UNIT}.connected_to": "main"}, "boards.spare.circuit.0", Symbol.IN, UNKNOWN_CURRENT),
        ({**DEAD, f"{UNIT}.connected_to": "main"}, "boards.spare.circuit.1", Symbol.IN, UNKNOWN_CURRENT),
    ],
)  # fmt: skip
def test_why_a_size_or_a_board_is_not_told(changes, key, symbol, why) -> None:
    assert nec(changes).unanswered[key, symbol] == why


@pytest.mark.parametrize(
    ("changes", "key", "symbol", "words", "why"),
    [
        # no factor in 95 °C for insulation of 90 °C or less
        ({f"{STRING}.cable": HOT}, f"{STRING}.cable", Symbol.S, "as laid", None),
        ({f"{TAIL}.ambient_temperature": "95 °C"}, TAIL, Symbol.S, "as laid", None),
        ({f"{TAIL}.ambient_temperature": "95 °C"}, TAIL, Symbol.IZ, "insulation for 75 °C", None),
        ({f"{UNIT}.circuit": [{**WIRE, "section": "8 AWG"}]}, f"{UNIT}.circuit.0", Symbol.SPE, "overcurrent device",
         Why.SILENT_SPEC),
        ({}, "", Symbol.IPF, "available at the service", Why.SILENT_SPEC),
        ({f"{TAIL}.cores": 2}, TAIL, Symbol.SPE, "no protective conductor", Why.NO_CORE),
        # 7 mm² is no size, so that neither its ampacity is known nor what fault current is left behind it
        ({"supply.prospective_fault_current": "10 kA", f"{TAIL}.section": "7 mm2"}, UNIT, Symbol.IK_MAX, "WD", None),
        ({f"{TAIL}.section": "7 mm2"}, TAIL, Symbol.IZ, "10 AWG, 8 AWG", None),
        ({f"{TAIL}.section": "7 mm2"}, TAIL, Symbol.IZ, "is tabulated for 7 mm²", None),
        # a circuit without an overcurrent device on a board that counts them
        ({f"{MAIN}.source_connection": "sum_of_devices", f"{UNIT}.circuit": [WIRE]}, MAIN, Symbol.INA, "no overcurrent",
         None),
        ({f"{MAIN}.source_connection": "power_control"}, MAIN, Symbol.INA, "power control", None),
    ],
)  # fmt: skip
def test_what_stays_open_says_why(changes, key, symbol, words, why) -> None:
    found = nec(changes).unanswered[key, symbol]
    assert words in str(found)
    assert why is None or found.why is why


def test_a_battery_cable_in_too_warm_a_place_has_no_ampacity() -> None:
    store = {
        "inverter": "roof", "energy": "10 kWh", "voltage_min": "45 V", "voltage_max": "58 V",
        "charge_converter_power": "5 kW",
        "dc_circuit": [{"kind": "cable", "length": "2 m", "section": "1/0 AWG", "ambient_temperature": "95 °C"}],
    }  # fmt: skip
    ratings = nec({"batteries": {"wall": store}})
    assert "as laid" in str(ratings.unanswered["batteries.wall.dc_circuit.0", Symbol.IZ])
    assert name_of(value(ratings, "batteries.wall.dc_circuit.0", Symbol.S)) == "1/0 AWG"


@pytest.mark.parametrize(
    ("circuit", "more", "least_a"),
    [
        # 408.36: whatever is set or tapped ahead, the busbar stands its main
        ([{**BREAKER, "rated_current": "150 A"}], {"source_connection": "supply_side"}, 150),
        ([{**BREAKER, "rated_current": "150 A"}],
         {"source_connection": "power_control", "power_control_current": "125 A"}, 150),
        ([{**BREAKER, "rated_current": "100 A"}],
         {"source_connection": "power_control", "power_control_current": "125 A"}, 125),
        ([{**BREAKER, "rated_current": "100 A"}], {"source_connection": "power_control"}, None),
        ([BREAKER], {"source_connection": "supply_side"}, None),
    ],
)  # fmt: skip
def test_what_a_busbar_must_stand(circuit, more, least_a) -> None:
    found = nec({MAIN: {"circuit": circuit, **more}}).get(MAIN, Symbol.INA_LEAST)
    assert (None if found is None else found.value) == least_a


def test_a_board_that_is_chosen_says_by_what() -> None:
    """100 A + 1.25 · 32 A = 140 A: 150 A."""
    chosen = nec({MAIN: {"circuit": [{**BREAKER, "rated_current": "100 A"}]}})[MAIN, Symbol.INA]
    assert chosen.value == 150
    assert "smallest usual" in str(chosen.formula)
    assert "705.12(B)(1)" in str(chosen.clause)


# -- faults --------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("metres", [0.3, 40])
def test_a_circuit_of_two_lines_on_a_star(metres) -> None:
    """208Y/120 V, 20 kA of all lines: Z = 208 / √3 / 20 kA = 6.00 mΩ. 8 AWG 0.778 and 0.065 Ω/kft, at 20 °C 0.822.

    To neutral 120 V through one line of the source, between lines 208 V through two; near the board the first is the
    greater, far from it the second.
    """
    supply = {"phases": 3, "voltage": "208 V", "earthing_system": "TN-C-S", "prospective_fault_current": "20 kA"}
    circuit = [BREAKER, {**CABLE, "section": "8 AWG", "length": f"{metres} m"}, {"kind": "isolator"}]
    ratings = nec({"supply": supply, f"{UNIT}.line": "L1-L2", f"{UNIT}.circuit": circuit})
    kft = metres / 304.8
    r, x, source = 0.778 * (1 - 0.00323 * 55) * kft, 0.065 * kft, 208 / sqrt(3) / 20_000
    to_neutral = 208 / sqrt(3) / hypot(2 * r, source + 2 * x)
    between = 208 / hypot(2 * r, 2 * source + 2 * x)
    assert (between > to_neutral) is (metres == 40)
    assert value(ratings, UNIT, Symbol.IK_MAX) == pytest.approx(max(to_neutral, between) / 1000, rel=1e-6)
    assert value(ratings, MAIN, Symbol.IK_MAX) == pytest.approx(20)
    assert value(ratings, "", Symbol.IPF) == 20


def test_a_transformer_that_limits_nothing_is_told() -> None:
    supply = {
        "phases": 3, "voltage": "480 V", "earthing_system": "TN-C-S",
        "transformer": {"rated_power": "500 kVA", "primary_voltage": "12.47 kV", "short_circuit_voltage": "5 %",
                        "network_fault_power": "100 MVA"},
    }  # fmt: skip
    # Z of the network 480² / 100 MVA = 2.304 mΩ, of the transformer 23.04 mΩ
    expected = 480 / sqrt(3) / (0.002304 + 0.02304) / 1000
    changes = {"supply": supply, "types.inverters.t.phases": 3}
    assert value(nec(changes), MAIN, Symbol.IK_MAX) == pytest.approx(expected)


# -- grounding -----------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("service", "electrode", "jumper"),
    [
        # Table 250.66 and 250.102(C)(1): two sets of 3/0 are 335.6 kcmil, one is 167.8; to a
        # concrete-encased electrode never more than 4 AWG (250.66(B))
        ({"section": "3/0 AWG", "parallel": 2}, "4 AWG", "2 AWG"),
        ({"section": "3/0 AWG"}, "4 AWG", "4 AWG"),
        ({"section": "2 AWG"}, "8 AWG", "8 AWG"),
    ],
)
def test_parallel_sets_of_the_service_are_added(service, electrode, jumper) -> None:
    circuit = [{**WIRE, **service}, {**BREAKER, "rated_current": "100 A"}]
    ratings = nec({f"{MAIN}.circuit": circuit, "earthing": BONDED})
    assert name_of(value(ratings, "earth.electrode", Symbol.S_MIN)) == electrode
    assert name_of(value(ratings, "earth.bonding.0", Symbol.S_MIN)) == jumper


@pytest.mark.parametrize(
    ("given", "size"),
    [({"kind": "foundation"}, "4 AWG"), ({"kind": "ring"}, "2 AWG"), ({"kind": "rod"}, "6 AWG"), ({}, "2 AWG")],
)
def test_only_a_stated_kind_of_electrode_limits_its_conductor(given, size) -> None:
    """Two sets of 3/0 are 335.6 kcmil: 2 AWG by Table 250.66, and less by the kind alone (250.66(A), (B), (C))."""
    circuit = [{**WIRE, "section": "3/0 AWG", "parallel": 2}, {**BREAKER, "rated_current": "100 A"}]
    ratings = nec({f"{MAIN}.circuit": circuit, "earthing": {**BONDED, "electrode": given}})
    least = ratings.get("earth.electrode", Symbol.S_MIN)
    assert name_of(least.value) == size
    assert ("kind not stated" in str(least.trace())) == (not given)


def test_a_service_without_cable_is_taken_for_copper_of_its_device() -> None:
    """350 A: 400 kcmil 335 A, 500 kcmil 380 A at 75 °C; Table 250.102(C)(1), up to 600 kcmil: 1/0."""
    ratings = nec({f"{MAIN}.circuit": [{**BREAKER, "rated_current": "350 A"}], "earthing": BONDED})
    assert name_of(value(ratings, "earth.bonding.0", Symbol.S_MIN)) == "1/0 AWG"
    assert "350 A" in str(ratings["earth.bonding.0", Symbol.S_MIN].assumptions[0])


@pytest.mark.parametrize(("count", "least", "exposed"), [(2, "10 AWG", True), (4, "8 AWG", True), (5, "6 AWG", False)])
def test_the_conductor_to_the_frames(count, least, exposed) -> None:
    """690.45: 1.5625 · 13.5 A a string: 42 A, 84 A, 105 A; Table 250.122; 6 AWG where exposed (250.120(C))."""
    frames = {"bonding": [{"to": "module frames", "purpose": "array_frame"}]}
    ratings = nec({"inverters.roof.inputs.0.strings.0.count": count, "earthing": frames})
    assert name_of(value(ratings, "earth.bonding.0", Symbol.S_MIN)) == least
    chosen = ratings["earth.bonding.0", Symbol.S]
    assert name_of(chosen.value) == "6 AWG"
    assert ("exposed" in str(chosen.formula)) is exposed


def test_what_is_said_of_strings_that_lie_together() -> None:
    """Two strings on one way are four conductors, 0.80 (310.15(C)(1)); of one string nothing lies beside it."""
    strings = [{"module": "m", "modules_in_series": 18, "count": count, "cable": {"length": 9}} for count in (1, 2)]
    ratings = nec({"inverters.roof.inputs.0.strings": strings})
    for place, words in ((0, "not bunched"), (1, "2 strings bunched")):
        carries = ratings[f"inverters.roof.inputs.0.strings.{place}.cable", Symbol.IZ]
        assert any(words in str(each) for each in carries.assumptions)


@pytest.mark.parametrize(("insulation", "rated", "carries_a"), [("PVC", None, 40), ("XLPE", None, 50), ("PVC", 75, 50)])
def test_insulation_without_a_rating_is_of_60_or_90(insulation, rated, carries_a) -> None:
    """8 AWG: 40, 50, 55 A in the columns of 60, 75, 90 °C; terminals of 75 °C."""
    kind = {"insulation": insulation, **({"temperature_rating": rated} if rated else {})}
    cable = {**WIRE, "type": "x", "section": "8 AWG", "terminal_temperature": 75, "ambient_temperature": 30}
    ratings = nec({"types.cables": {"x": kind}, TAIL: cable})
    assert value(ratings, TAIL, Symbol.IZ) == carries_a


# -- devices of the DC side ----------------------------------------------------------------------------------------


def test_what_a_surge_protective_device_states_is_kept() -> None:
    device = {
        "kind": "surge_protection", "test_class": "2", "continuous_voltage": "1000 V", "discharge_current": "15 kA",
        "protection_level": "3.8 kV",
    }  # fmt: skip
    ratings = nec({"inverters.roof.inputs.0.circuit": [device, {"kind": "isolator"}]})
    key = "inverters.roof.inputs.0.circuit.0"
    found = [value(ratings, key, each) for each in (Symbol.UCPV, Symbol.IN_SURGE, Symbol.UP_RATING)]
    assert found == [1000, 15, 3800]
    # 18 modules of 37 V at -12 °C: 1 + 0.26 % · 37
    assert value(ratings, key, Symbol.UCPV_MIN) == pytest.approx(18 * 37 * (1 + 0.0026 * 37))
    assert name_of(value(ratings, key, Symbol.SPE)) == "14 AWG"


def test_a_fuse_that_one_string_has_alone_lets_nothing_else_through() -> None:
    strings = [{"module": "m", "modules_in_series": 18, "count": 3, "cable": {"length": 9}}]
    ratings = nec({"inverters.roof.inputs.0.strings": strings, "inverters.roof.inputs.0.string_fuses": {}})
    least = ratings[f"{STRING}.cable", Symbol.IZ_MIN]
    assert least.value == pytest.approx(1.25 * 13.5)
    given = {each.name: each.value for each in least.given}
    assert (given["Ifed"], given["Np,others"]) == (0, 0)


def test_a_rating_that_two_books_give_is_cited_by_the_code_alone() -> None:
    ratings = nec({"inverters.roof.inputs.0.circuit": [{"kind": "plug_connector"}, {"kind": "isolator"}]})
    assert str(ratings["inverters.roof.inputs.0.circuit.0", Symbol.IN_MIN].clause) == "NEC 2023 690.8(A)(1)"


def test_a_conductor_of_an_array_that_names_no_type_is_pv_wire_for_90_degrees() -> None:
    """UL 4703: photovoltaic wire, 90 °C wet (from memory)."""
    system, _ = rated_data(changed({**NEC, f"{STRING}.cable": WIRE}))
    assert system.devices[f"{STRING}.cable"].type.temperature_rating_c == 90
