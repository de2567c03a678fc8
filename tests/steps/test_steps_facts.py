"""Small systems with one thing in them to be worked out: the arithmetic is the tests' own, sources beside numbers."""

from __future__ import annotations

from cmath import rect
from math import pi, sqrt

import pytest
from rated_specs import AC_CABLE, BREAKER, CABLE, ISOLATOR, STRING, UNIT, rated, value

from sld.ratings.symbol import Symbol, Word
from sld.steps import Ratings

IN1 = "inverters.roof.inputs.0"
U0_V = 230  # to neutral of a 400 V system (IEC 60038)


def single(line: str | None) -> dict:
    return {**UNIT, "type": "s", **({"line": line} if line else {})}


FEEDER = {
    "main": {"circuit": [ISOLATOR]},
    "pv": {"fed_from": "main", "circuit": [BREAKER, {**CABLE, "section": "10 mm2"}]},
}


def on_feeder(*lines: str | None) -> Ratings:
    units = {f"u{place}": {**single(line), "connected_to": "pv"} for place, line in enumerate(lines, start=1)}
    return rated({"boards": FEEDER, "inverters": units})


# -- single-phase inverters on a three-phase feeder ----------------------------------------------------------------


@pytest.mark.parametrize(
    ("lines", "line_a", "neutral_a"),
    [
        (("L1",), 20, 20),
        (("L1", "L2"), 20, 20),
        (("L1", "L2", "L3"), 20, 0),
        (("L1", "L1", "L2"), 40, sqrt(40**2 + 20**2 - 800)),
        ((None, None), 40, 40),
    ],
)
def test_line_and_neutral_current_by_phasors(lines, line_a, neutral_a) -> None:
    """Each inverter feeds 20 A in phase with its line; the neutral takes what is left over."""
    ratings = on_feeder(*lines)
    angle = {"L1": 0.0, "L2": -2 * pi / 3, "L3": 2 * pi / 3, None: 0.0}
    assert abs(sum(rect(20, angle[line]) for line in lines)) == pytest.approx(neutral_a, abs=1e-9)
    assert value(ratings, "boards.pv.circuit.1", Symbol.IEXPORT) == pytest.approx(line_a)
    neutral = ratings.get("boards.pv.circuit.1", Symbol.I_NEUTRAL)
    assert (neutral.value if neutral else 0) == pytest.approx(neutral_a, abs=1e-9)


def _warm_ohm_per_km(current_a: float) -> float:
    """10 mm² copper, 46 A by method B2: 70 − (1 − I²/46²) · 40 °C (BS 7671 Appendix 4 6.1), 1.83 Ω/km at 20 °C."""
    return 1.83 * (1 + 0.00393 * (70 - (1 - (current_a / 46) ** 2) * 40 - 20))


@pytest.mark.parametrize("lines", [("L1",), ("L1", "L2"), ("L1", "L2", "L3"), ("L1", "L1", "L3"), (None, None)])
def test_rise_of_the_most_loaded_line_by_phasors(lines) -> None:
    """The line's own drop and the neutral's, projected on the line's voltage; 10 mm² copper, 46 A in Table B.52.4."""
    r_ohm = 0.02 * _warm_ohm_per_km(20 * max(lines.count(line) for line in lines))
    angle = {"L1": 0.0, "L2": -2 * pi / 3, "L3": 2 * pi / 3, None: 0.0}
    neutral = sum(rect(20, angle[line]) for line in lines)
    rises = []
    for turned in (0.0, -2 * pi / 3, 2 * pi / 3):
        own_a = 20 * sum(angle[line] == turned for line in lines)
        rises.append(r_ohm * (own_a + (neutral / rect(1, turned)).real))
    rise = value(on_feeder(*lines), "boards.pv.circuit.1", Symbol.DU_RISE)
    balanced = lines == ("L1", "L2", "L3")
    base_v = 400 / sqrt(3) if balanced else U0_V  # where all lines carry alike the percentage is of 400 V
    assert rise == pytest.approx(100 * max(rises) / base_v, rel=1e-6)


def test_one_single_phase_inverter_raises_its_feeder_twice_as_much_as_three_do() -> None:
    """Out and back through line and neutral, against the line alone where the three currents cancel."""
    alone, three = on_feeder("L1"), on_feeder("L1", "L2", "L3")
    key = "boards.pv.circuit.1"
    # one in percent of 230 V, the other of 400 V: their nominal ratio is not quite √3
    by_name = 400 / sqrt(3) / 230
    assert value(alone, key, Symbol.DU_RISE) == pytest.approx(2 * by_name * value(three, key, Symbol.DU_RISE))


def test_a_three_phase_inverter_on_a_single_phase_supply_is_reckoned_single_phase() -> None:
    changes = {
        "supply": {"earthing_system": "TN-S", "phases": 1, "voltage": "230 V"},
        "types.inverters.t.current_max": None,
    }
    ratings = rated(changes)
    assert value(ratings, "inverters.roof", Symbol.IB) == pytest.approx(10_000 / 230)


# -- overload protection of cables ---------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("device", "least_iz_a"),
    [
        ({"kind": "breaker", "rated_current": "20 A"}, 20),
        ({"kind": "breaker", "rated_current": "250 A", "construction": "moulded_case"}, 250),
        ({"kind": "fuse", "rated_current": "63 A"}, 1.6 * 63 / 1.45),
        ({"kind": "fuse", "rated_current": "16 A"}, 1.6 * 16 / 1.45),
        ({"kind": "fuse", "rated_current": "10 A"}, 16),  # below its design current: the 16 A of the inverter count
    ],
)
def test_least_capacity_behind_a_protective_device(device, least_iz_a) -> None:
    """IEC 60364-4-43:2008 433.1: Ib <= In <= Iz and I2 <= 1.45 Iz; I2 of gG 1.6 In (IEC 60269-1, from memory)."""
    ratings = rated({"inverters.roof.circuit.0": device})
    assert value(ratings, AC_CABLE, Symbol.IZ_MIN) == pytest.approx(least_iz_a)


def test_a_fuse_below_16_a_trips_at_1_9_times_its_current() -> None:
    """IEC 60269-1 (from memory): If = 1.9 In between 4 A and 16 A, so Iz >= 1.31 In."""
    fuse = {"kind": "fuse", "rated_current": "12 A"}
    ratings = rated({"inverters.roof.circuit.0": fuse, "types.inverters.t.current_max": "5 A"})
    assert value(ratings, AC_CABLE, Symbol.IZ_MIN) == pytest.approx(1.9 * 12 / 1.45)


def test_the_service_fuse_protects_the_cable_to_the_main_board() -> None:
    ratings = rated({"supply.service_fuse": "63 A", "boards.main.circuit": [CABLE, {"kind": "main_switch"}]})
    assert value(ratings, "boards.main.circuit.0", Symbol.IZ_MIN) == pytest.approx(1.6 * 63 / 1.45)
    assert value(ratings, "boards.main.circuit.1", Symbol.IN) == 63


def test_the_service_fuse_protects_a_circuit_without_a_device_of_its_own() -> None:
    ratings = rated({"supply.service_fuse": "100 A", "inverters.roof.circuit": [ISOLATOR, CABLE]})
    assert value(ratings, AC_CABLE, Symbol.IZ_MIN) == pytest.approx(1.6 * 100 / 1.45)


@pytest.mark.parametrize(
    ("cable", "iz_a"),
    [
        # IEC 60364-5-52:2009 Table B.52.4 (copper, PVC, three loaded): 10 mm² B2 46 A, C 57 A, E 60 A
        ({"section": "10 mm2"}, 46),
        ({"section": "10 mm2", "method": "C"}, 57),
        ({"section": "10 mm2", "method": "E"}, 60),
        # Table B.52.14: PVC at 45 °C 0.79; Table B.52.17: three circuits bunched 0.70
        ({"section": "10 mm2", "ambient_temperature": "45 °C"}, 46 * 0.79),
        ({"section": "10 mm2", "grouped_circuits": 3}, 46 * 0.70),
        # two in parallel are two circuits of the group (523.7, from memory): 0.80; three such circuits are six: 0.57
        ({"section": "10 mm2", "parallel": 2}, 2 * 46 * 0.80),
        ({"section": "10 mm2", "parallel": 2, "grouped_circuits": 3}, 2 * 46 * 0.57),
        # two in parallel beside two single cables are four cables: 0.65
        ({"section": "10 mm2", "parallel": 2, "grouped_circuits": 3, "grouped_cables": 4}, 2 * 46 * 0.65),
        # D1 50 A, D2 54 A at 2.5 K·m/W; Table B.52.16: 1 K·m/W 1.18 and 1.50, 3 K·m/W 0.96 and 0.90
        ({"section": "10 mm2", "method": "D1"}, 50),
        ({"section": "10 mm2", "method": "D2", "soil_resistivity": 1}, 54 * 1.50),
        ({"section": "10 mm2", "method": "D1", "soil_resistivity": "2.6 K·m/W"}, 50 * 0.96),
        # REBT ITC-BT-07: 0.98 at 0.9 m, 0.97 at 1 m; between rows the deeper one
        ({"section": "10 mm2", "method": "D2", "depth": "1 m"}, 54 * 0.97),
        ({"section": "10 mm2", "method": "D1", "depth": "0.9 m"}, 50 * 0.98),
        # Table B.52.18 (direct, from memory): two circuits touching 0.75, 0.25 m apart 0.90; B.52.19: ducts 0.5 m 0.95
        ({"section": "10 mm2", "method": "D2", "grouped_circuits": 2}, 54 * 0.75),
        ({"section": "10 mm2", "method": "D2", "grouped_circuits": 2, "spacing": "0.3 m"}, 54 * 0.90),
        ({"section": "10 mm2", "method": "D1", "grouped_circuits": 2, "spacing": "0.5 m"}, 50 * 0.95),
        # three ducts (from memory): 0.95 from 1 m on, below it the value of 0.5 m
        ({"section": "10 mm2", "method": "D1", "grouped_circuits": 3, "spacing": "1 m"}, 50 * 0.95),
        ({"section": "10 mm2", "method": "D1", "grouped_circuits": 3, "spacing": "0.99 m"}, 50 * 0.90),
        ({"section": "10 mm2", "capacity_factor": 0.5, "capacity_factor_reason": "thermal insulation"}, 46 * 0.5),
    ],
)
def test_capacity_of_an_ac_cable_as_laid(cable, iz_a) -> None:
    assert value(rated({AC_CABLE: {**CABLE, **cable}}), AC_CABLE, Symbol.IZ) == pytest.approx(iz_a)


@pytest.mark.parametrize(
    ("site", "cable", "iz_a"),
    [
        # Table B.52.15: PVC in the ground at 30 °C 0.89; the cable's own values go before those of the site
        ({"soil_temperature": "30 °C"}, {"method": "D1"}, 50 * 0.89),
        ({"soil_temperature": "30 °C"}, {"method": "D1", "ambient_temperature": "20 °C"}, 50),
        ({"soil_temperature": "30 °C"}, {"method": "B2"}, 46),
        ({"soil_resistivity": 1.5}, {"method": "D2"}, 54 * 1.28),
        ({"soil_resistivity": 1.5}, {"method": "D2", "soil_resistivity": 2}, 54 * 1.12),
    ],
)
def test_soil_of_the_site(site, cable, iz_a) -> None:
    changes = {f"site.{key}": each for key, each in site.items()}
    ratings = rated({**changes, AC_CABLE: {**CABLE, "section": "10 mm2", **cable}})
    assert value(ratings, AC_CABLE, Symbol.IZ) == pytest.approx(iz_a)


def test_soil_that_is_not_given_is_said() -> None:
    said = rated({AC_CABLE: {**CABLE, "section": "10 mm2", "method": "D2"}}).get(AC_CABLE, Symbol.IZ).assumptions
    assert "soil of 2.5 K·m/W around AC cables in the ground" in [str(each) for each in said]
    assert "AC cables in the ground at most 0.8 m deep" in [str(each) for each in said]


@pytest.mark.parametrize("beyond", [{"depth": "3.1 m"}, {"soil_resistivity": 3.1}, {"grouped_cables": 21}])
def test_ground_beyond_the_tables_has_no_capacity(beyond) -> None:
    ratings = rated({AC_CABLE: {**CABLE, "section": "10 mm2", "method": "D2", **beyond}})
    assert ratings.get(AC_CABLE, Symbol.IZ) is None
    assert "no correction factor" in str(ratings.unanswered[AC_CABLE, Symbol.IZ])


# -- strings in parallel -------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("count", "profile", "word"),
    [
        # Isc 13.5 A, largest series fuse 25 A. IEC 62548:2016 6.5: (Np - 1) · 13.5 A > 25 A from three strings on
        (1, "cautious", "not needed"),
        (2, "cautious", "not needed"),
        (3, "cautious", "needed"),
        # IEC 60364-7-712:2017 (from memory): (Np - 1) · 1.25 · 13.5 A > 1.35 · 25 A = 33.75 A, which three meet exactly
        (3, "IEC 60364-7-712", "not needed"),
        (4, "IEC 60364-7-712", "needed"),
    ],
)
def test_need_of_string_fuses(count, profile, word) -> None:
    assert str(rated({f"{STRING}.count": count, "profile": profile}).told(IN1, Word.STRING_FUSES)) == word


def three_inputs(**type_changes) -> dict:
    inputs = [{"strings": [{"module": "m", "modules_in_series": 18, "cable": {"length": "20 m"}}]} for _ in range(3)]
    found: dict = {"inverters.roof.inputs": inputs}
    return found | {f"types.inverters.t.{key}": each for key, each in type_changes.items()}


@pytest.mark.parametrize(("independent", "word", "reverse_a"), [(True, "not needed", 0), (False, "needed", 27)])
def test_strings_of_inputs_that_are_not_independent_feed_one_fault(independent, word, reverse_a) -> None:
    """IEC 60364-7-712:2017 712.431.101 Note 1: counted over the inverter where current can flow between inputs."""
    ratings = rated(three_inputs(inputs_independent=independent))
    assert str(ratings.told(IN1, Word.STRING_FUSES)) == word
    assert value(ratings, IN1, Symbol.IREV_TEST) == pytest.approx(reverse_a)


def test_the_strongest_of_the_joined_strings_counts() -> None:
    """Two more inputs with modules of 18 A feed a fault in the string of 13.5 A: 36 A, not 27 A."""
    strong = {"rated_power": "400 W", "open_circuit_voltage": "27 V", "short_circuit_current": "18 A",
              "mpp_voltage": "23.5 V", "mpp_current": "17.02 A", "voltage_coefficient": "-0.26 %/K"}  # fmt: skip
    changes = three_inputs(inputs_independent=False) | {"types.modules.s": strong}
    for place in (1, 2):
        changes["inverters.roof.inputs"][place]["strings"][0]["module"] = "s"
    ratings = rated(changes)
    assert value(ratings, IN1, Symbol.IREV_TEST) == pytest.approx(36)
    assert value(ratings, f"{STRING}.cable", Symbol.IZ_MIN) == pytest.approx(1.25 * 36)


@pytest.mark.parametrize(("backfeed", "word"), [("0 A", "not needed"), ("11 A", "not needed"), ("12 A", "needed")])
def test_what_the_inverter_feeds_back_is_added(backfeed, word) -> None:
    """IEC 62548:2016 6.5 (from memory): 13.5 A of the other string and 12 A of the inverter are more than 25 A."""
    ratings = rated({f"{STRING}.count": 2, "types.inverters.t.backfeed_current": backfeed})
    assert str(ratings.told(IN1, Word.STRING_FUSES)) == word


def test_an_undeclared_backfeed_with_a_battery_is_said() -> None:
    ratings = rated({"batteries": {"store": {"inverter": "roof"}}})
    reverse = ratings.get(IN1, Symbol.IREV)
    assert reverse is not None
    assert any("battery" in str(text) for text in reverse.assumptions)


@pytest.mark.parametrize(
    ("circuit", "least_iz_a"),
    [
        ([CABLE, ISOLATOR], 1.25 * 3 * 13.5),
        ([CABLE, {"kind": "fuse", "rated_current": "80 A"}, ISOLATOR], 80),
        ([CABLE, {"kind": "fuse", "rated_current": "50 A"}, ISOLATOR], 1.25 * 3 * 13.5),
    ],
)
def test_the_cable_of_joined_strings(circuit, least_iz_a) -> None:
    """IEC 62548:2016 circuit-current table: 1.25 times the sum, and at least the fuse that protects it."""
    ratings = rated({f"{STRING}.count": 3, f"{IN1}.circuit": circuit})
    assert value(ratings, f"{IN1}.circuit.0", Symbol.IZ_MIN) == pytest.approx(least_iz_a)


def test_joined_strings_of_other_inputs_feed_a_fault_in_the_array_cable() -> None:
    """IEC 62548:2016 circuit-current table: the other sub-arrays, four strings of 13.5 A, are more than the own two."""
    inputs = [
        {"strings": [{"module": "m", "modules_in_series": 18, "count": 2}], "circuit": [CABLE, ISOLATOR]}
        for _ in range(3)
    ]
    ratings = rated({"inverters.roof.inputs": inputs, "types.inverters.t.inputs_independent": False})
    assert value(ratings, f"{IN1}.circuit.0", Symbol.IZ_MIN) == pytest.approx(1.25 * 4 * 13.5)


def test_a_blocking_diode_stands_twice_the_voltage() -> None:
    """IEC 62548:2016 (clause from memory): 2 · Uoc,max and 1.4 · Isc. 18 · 37 V · (1 + 0.0026 · 37) = 730.07 V."""
    ratings = rated({f"{IN1}.circuit": [{"kind": "diode"}, ISOLATOR]})
    assert value(ratings, f"{IN1}.circuit.0", Symbol.UN_MIN) == pytest.approx(2 * (666 + 666 * 0.0026 * 37))
    assert value(ratings, f"{IN1}.circuit.0", Symbol.IN_MIN) == pytest.approx(1.4 * 13.5)


# -- faults, disconnection, metering -------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("earthing_system", "voltage", "seconds"),
    [("TN-S", 400, 0.4), ("TN-S", 415, 0.2), ("TN-S", 208, 0.8), ("TN-C-S", 690, 0.2), ("TT", 400, 0.2)],
)
def test_time_to_disconnect_by_the_named_voltage_to_earth(earthing_system, voltage, seconds) -> None:
    """IEC 60364-4-41:2017 Table 41.1: TN up to 120 V 0.8 s, up to 230 V 0.4 s, up to 400 V 0.2 s; TT up to 230 V 0.2 s.

    A 400 V system is one of 230 V to earth (IEC 60038), though 400/√3 is 230.9; 415 V is one of 240 V.
    """
    ratings = rated({"supply": {"earthing_system": earthing_system, "voltage": voltage}})
    assert value(ratings, "inverters.roof.circuit.0", Symbol.T_MAX) == seconds


@pytest.mark.parametrize(("electrode_ohm", "loop_ohm"), [(0, 5), (40, 45), (200, 205)])
def test_in_tt_the_electrode_is_part_of_the_loop(electrode_ohm, loop_ohm) -> None:
    """IEC 60364-4-41:2017 411.5: the fault returns through the installation's electrode and the earth."""
    changes = {
        "supply": {"earthing_system": "TT", "voltage": 400, "loop_impedance": "5 ohm"},
        "earthing": {"electrode": {"resistance": electrode_ohm}},
        "inverters.roof.circuit": [BREAKER, ISOLATOR],
    }
    assert value(rated(changes), "inverters.roof.circuit.0", Symbol.ZS) == pytest.approx(loop_ohm)


def test_in_it_no_loop_is_claimed() -> None:
    """IEC 60364-4-41:2017 411.6: a first fault need not be switched off, a second one depends on the network."""
    ratings = rated({"supply.earthing_system": "IT"})
    assert ratings.get("inverters.roof.circuit.0", Symbol.ZS) is None
    assert ratings.get("inverters.roof.circuit.0", Symbol.IK1_MIN) is None


def test_a_flexible_cable_has_the_larger_loop() -> None:
    """IEC 60228:2004: 4 mm² class 5 has 4.95 Ω/km, class 2 4.61 Ω/km; both conductors at 70 °C, 0.4 %/K."""
    changes = {"types.cables": {"flex": {"strands": "class 5"}}, "supply.loop_impedance": "0.3 ohm"}
    cable = {**CABLE, "type": "flex", "section": "4 mm2"}
    loop = value(rated({**changes, AC_CABLE: cable}), "inverters.roof.circuit.0", Symbol.ZS)
    assert loop == pytest.approx(0.3 + 2 * 0.02 * 4.95 * 1.2, rel=1e-3)


def test_fault_current_behind_a_transformer() -> None:
    """IEC 60909-0, 100 kVA, 4 %, no network impedance: In 144.3 A, Ik = 1.1 · In / 4 % / KT, KT 1.045 / (1 + 0.024)."""
    transformer = {"rated_power": "100 kVA", "primary_voltage": "10 kV", "short_circuit_voltage": 4}
    ratings = rated({"supply.transformer": transformer})
    kt = 0.95 * 1.1 / (1 + 0.6 * 0.04)
    by_hand_ka = 0.1443376 / 0.04 * 1.1 / kt
    assert value(ratings, "boards.main", Symbol.IK_MAX) == pytest.approx(by_hand_ka, rel=1e-5)


def test_a_meter_where_nothing_is_generated() -> None:
    circuit = [{"kind": "breaker", "rated_current": "32 A"}, {"kind": "meter", "purpose": "supply"}]
    ratings = rated({"loads": {"oven": {"power": "3 kW", "circuit": circuit}}})
    needed = ratings.get("loads.oven.circuit.1", Symbol.IM)
    assert needed is not None
    assert needed.value == 32
    assert [given.symbol for given in needed.given] == ["In"]


def test_an_inverter_with_a_battery_takes_what_it_gives() -> None:
    ratings = rated({"batteries": {"store": {"inverter": "roof"}}})
    assert value(ratings, "boards.main", Symbol.IIMPORT) == value(ratings, "boards.main", Symbol.IEXPORT) == 16


@pytest.mark.parametrize(("set_to", "taken_a"), [("10 A", 10), ("16 A", 16), ("20 A", 16), ("0 A", None)])
def test_an_inverter_takes_what_it_is_set_to_charge_with(set_to: str, taken_a: float | None) -> None:
    ratings = rated({"batteries": {"store": {"inverter": "roof"}}, "inverters.roof.charging_current_max": set_to})
    found = ratings.get("boards.main", Symbol.IIMPORT)
    assert (found.value if found else None) == taken_a


@pytest.mark.parametrize(("leakage", "least_mm2"), [(10, None), (11, 10)])
def test_reinforced_protective_conductor_above_10_ma(leakage, least_mm2) -> None:
    """IEC 60364-5-54:2011 543.7 (from memory): more than 10 mA of protective conductor current needs 10 mm² copper."""
    rating = rated({"types.inverters.t.leakage_current": leakage}).get(AC_CABLE, Symbol.SPE_LEAK)
    assert (rating.value if rating else None) == least_mm2


@pytest.mark.parametrize(
    ("factors", "worst"), [((1.0, 1.0), 1.0), ((1.0, 0.8), 1.0), ((0.8, 0.8), 0.8)], ids=["unity", "mixed", "low"]
)
def test_the_power_factor_that_raises_most_counts(factors, worst) -> None:
    """10 mm² at 49 °C: 2.04 Ω/km against 0.08 Ω/km, so unity raises more than 0.8 at the same current."""
    units = {f"u{n}": {**UNIT, "connected_to": "pv", "power_factor": factor} for n, factor in enumerate(factors)}
    ratings = rated({"boards": FEEDER, "inverters": units})
    per_km = _warm_ohm_per_km(32) * worst + 0.08 * sqrt(1 - worst**2)
    by_hand = 100 * sqrt(3) * 32 * 0.02 * per_km / 400
    assert value(ratings, "boards.pv.circuit.1", Symbol.DU_RISE) == pytest.approx(by_hand, rel=1e-6)


@pytest.mark.parametrize(
    ("reactive", "sign"), [({}, 1), ({"reactive_power": "supplied"}, 1), ({"reactive_power": "absorbed"}, -1)]
)
def test_absorbed_reactive_power_lowers_the_rise(reactive, sign) -> None:
    """ΔU = √3 · I · L · (R · cosφ ± X · sinφ): supplied reactive power lifts the voltage, absorbed lowers it."""
    ratings = rated(
        {"boards": FEEDER, "inverters": {"u": {**UNIT, "connected_to": "pv", "power_factor": 0.8, **reactive}}}
    )
    per_km = _warm_ohm_per_km(16) * 0.8 + sign * 0.08 * 0.6
    rise = ratings.get("boards.pv.circuit.1", Symbol.DU_RISE)
    assert rise is not None
    assert rise.value == pytest.approx(100 * sqrt(3) * 16 * 0.02 * per_km / 400, rel=1e-6)
    assert any("reactive power" in str(text) for text in rise.assumptions) is not bool(reactive)


# -- what an inspector compares on site -----------------------------------------------------------------------------


ROOF = "inverters.roof"
ROOF_BREAKER = f"{ROOF}.circuit.0"


def test_loop_to_be_read_on_site() -> None:
    """IEC 60364-6 Annex D (from memory): 2/3 · U0 / Ia; BS 7671 Appendix 3: 0.8 · 0.95 · U0 / Ia, curve C of 20 A."""
    breaker = {**BREAKER, "rated_current": "20 A", "curve": "C"}
    for profile, ohm in (("cautious", 2 / 3 * 230 / 200), ("BS 7671", 0.8 * 0.95 * 230 / 200)):
        ratings = rated({"profile": profile, ROOF_BREAKER: breaker})
        assert value(ratings, ROOF_BREAKER, Symbol.ZS_MEAS) == pytest.approx(ohm)


def test_table_value_that_a_cable_needs() -> None:
    """IEC 60364-5-52:2009 523: 25 A by method B2 at 45 °C (0.79, PVC) and three circuits bunched (0.70)."""
    breaker = {**BREAKER, "rated_current": "25 A"}
    cable = {**CABLE, "ambient_temperature": "45 °C", "grouped_circuits": 3}
    ratings = rated({ROOF_BREAKER: breaker, AC_CABLE: cable})
    assert value(ratings, AC_CABLE, Symbol.IT_NEEDED) == pytest.approx(25 / 0.79 / 0.70)


def test_longest_cable_within_the_rise() -> None:
    """A cable of that length uses its whole limit: the rise is linear in the length."""
    cable = {**CABLE, "section": "10 mm2"}
    longest_m = value(rated({AC_CABLE: cable}), AC_CABLE, Symbol.LMAX_CABLE)
    assert value(rated({AC_CABLE: {**cable, "length": longest_m}}), ROOF, Symbol.DU_AC) == pytest.approx(1.0)


@pytest.mark.parametrize(("current", "low_a"), [({}, 10_000 / (400 * 3**0.5) / 0.9), ({"current_max": "16 A"}, None)])
def test_current_at_ninety_percent_of_the_voltage(current, low_a) -> None:
    """EN 50549-1:2019 (from memory): the power is held down to 0.9 Un; a declared greatest current holds it already."""
    ratings = rated(
        {"types.inverters.t.current_max": None, **{f"types.inverters.t.{k}": v for k, v in current.items()}}
    )
    rating = ratings.get(ROOF, Symbol.IB_LOW)
    assert (rating.value if rating else None) == (pytest.approx(low_a) if low_a else None)


def test_voltage_at_the_inverter() -> None:
    """EN 50160: the rise in percent on top of the highest voltage of the supply."""
    ratings = rated({"supply.voltage_max": "430 V", AC_CABLE: {**CABLE, "section": "10 mm2"}})
    rise_percent = value(ratings, ROOF, Symbol.DU_AC)
    assert value(ratings, ROOF, Symbol.UINVERTER) == pytest.approx(430 * (1 + rise_percent / 100))


@pytest.mark.parametrize(
    ("meter", "burden_va"),
    [
        # I² · 2 · L · R: 2.5 mm² 7.41 Ω/km, 1.5 mm² 12.1 Ω/km (IEC 60228)
        ({"ct_secondary": "5 A"}, 25 * 2 * 0.010 * 7.41),
        ({"ct_secondary": "1 A", "ct_lead_section": "1.5 mm2"}, 2 * 0.010 * 12.1),
    ],
)
def test_burden_of_transformer_leads(meter, burden_va) -> None:
    block = {"kind": "meter", "purpose": "supply", "connection": "ct", "ct_lead_length": "10 m", **meter}
    ratings = rated({"boards.main.circuit": [block, {"kind": "main_switch"}]})
    assert value(ratings, "boards.main.circuit.0", Symbol.SLEAD) == pytest.approx(burden_va)


@pytest.mark.parametrize(
    ("lines", "difference_va"), [(("L1", "L2"), 4000), (("L1", "L1"), 8000), (("L1", None), 8000), (("L1",), 4000)]
)
def test_difference_between_the_lines(lines, difference_va) -> None:
    """Arithmetic: 4 kVA an inverter, nothing on L3."""
    unit = {"type": "s", "inputs": [{"strings": [{"module": "m", "modules_in_series": 18}]}]}
    units = {f"u{n}": {**unit, **({"line": line} if line else {})} for n, line in enumerate(lines)}
    ratings = rated({"inverters": units})
    assert value(ratings, "", Symbol.DS_LINE) == difference_va


@pytest.mark.parametrize(
    ("changes", "type_"),
    [
        ({}, 2),
        ({"supply.overhead": True}, 2),
        ({"supply.overhead": True, "supply.direct_strokes": True}, 1),
        ({"earthing": {"lightning_protection": {"separation_kept": True}}}, 1),
    ],
)
def test_type_of_surge_protection_at_the_origin(changes, type_) -> None:
    """IEC 60364-5-53:2019 534.4 (from memory): type 1 where lightning current may enter."""
    assert value(rated(changes), "boards.main", Symbol.SPD_TYPE) == type_
