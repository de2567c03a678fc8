"""Supply, protective conductors, sections chosen for disconnection and heat: worked by hand, sources beside numbers."""

from __future__ import annotations

from math import exp, sqrt

import pytest
from rated_specs import AC_CABLE, BREAKER, CABLE, ISOLATOR, changed, rated, rated_data, value

from sld.quantity import Rating
from sld.ratings.symbol import Symbol
from sld.steps import STEPS
from sld.steps.ledger import Ledger
from sld.steps.protective_conductors import Demand, enlarge, protective_conductors
from sld.words import NOTHING, phrase

IN1 = "inverters.roof.inputs.0"

# -- the supply: fault currents, voltage to earth, what is not known ------------------------------------------------

SUPPLY = {"earthing_system": "TN-S", "voltage": "400 V", "service_fuse": "100 A"}


@pytest.mark.parametrize(
    ("voltage", "phases", "to_earth_v"),
    [
        # IEC 60038:2009 Table 1: 120/208, 230/400, 277/480, 347/600, 400/690; exact division elsewhere
        (208, 3, 120), (400, 3, 230), (480, 3, 277), (600, 3, 347), (690, 3, 400), (230, 1, 230),
        (500, 3, 500 / sqrt(3)), (1000, 3, 1000 / sqrt(3)),
    ],
)  # fmt: skip
def test_voltage_to_earth_by_name(voltage, phases, to_earth_v) -> None:
    data = changed({"supply": {**SUPPLY, "voltage": voltage, "phases": phases}})
    assert rated_data(data)[0].voltage_to_earth_v == pytest.approx(to_earth_v)


@pytest.mark.parametrize("supply", [SUPPLY, {**SUPPLY, "phases": 1, "voltage": "230 V"}], ids=["three", "one"])
def test_the_stated_fault_current_comes_back_at_the_supply_point(supply) -> None:
    """IEC 60909-0:2016 6.2 (from memory): the source impedance holds the same c as the current behind it."""
    ratings = rated({"supply": {**supply, "prospective_fault_current": "6 kA"}})
    rating = ratings.get("boards.main", Symbol.IK_MAX)
    assert rating is not None
    assert rating.value == pytest.approx(6)
    assert rating.input("cmax") == 1.10
    assert value(ratings, "", Symbol.ZK) == pytest.approx(1.1 * 230.94 / 6000, rel=5e-3)


FEEDING_TRANSFORMER = {
    "rated_power": "400 kVA", "primary_voltage": "20 kV", "short_circuit_voltage": 4, "load_losses": "4600 W",
    "network_fault_power": "500 MVA",
}  # fmt: skip


@pytest.mark.parametrize(("vector_group", "board_ka"), [(None, 15.3266), ("Dyn11", 15.3266), ("Yyn0", 15.2208)])
def test_fault_current_behind_a_cable_by_an_independent_library(vector_group, board_ka) -> None:
    """400 kVA 4 % behind 500 MVA, 60 m of 10 mm² copper (1.83 + j0.08 Ω/km at 20 °C), c 1.10.

    By the general library of tests/reference, IEC 60909. At the board 15.3266 kA from line to earth behind a delta
    winding and 15.2208 kA three-phase; behind the cable 2.1823 kA three-phase is the greater. Only a delta winding
    keeps the network out of the zero-sequence impedance.
    """
    transformer = {**FEEDING_TRANSFORMER, "vector_group": vector_group}
    cable = {**CABLE, "length": "60 m", "section": "10 mm2"}
    ratings = rated({"supply": {**SUPPLY, "transformer": transformer}, AC_CABLE: cable})
    assert value(ratings, "boards.main", Symbol.IK_MAX) == pytest.approx(board_ka, rel=1e-4)
    assert value(ratings, "inverters.roof", Symbol.IK_MAX) == pytest.approx(2.1823, rel=1e-4)


@pytest.mark.parametrize(
    ("key", "symbol"),
    [("boards.main", Symbol.INA), ("boards.main.circuit.0", Symbol.IN), ("boards.main.circuit.1", Symbol.IMAX)],
)
def test_nothing_at_the_supply_point_is_chosen_by_the_generation_alone(key, symbol) -> None:
    circuit = [{"kind": "main_switch"}, {"kind": "meter", "purpose": "supply"}]
    changes = {"supply.service_fuse": None, "boards.main.circuit": circuit}
    silent = rated(changes)
    assert silent.get(key, symbol) is None
    assert str(silent.unanswered[key, symbol]) == "it cannot be told without `service_fuse`"
    for known in ({"supply.service_fuse": "63 A"}, {"loads": {"oven": {"power": "20 kW"}}}):
        assert rated({**changes, **known}).get(key, symbol) is not None


def test_a_generation_meter_needs_no_service_fuse() -> None:
    circuit = [BREAKER, {"kind": "meter", "purpose": "generation"}, CABLE]
    ratings = rated({"supply.service_fuse": None, "inverters.roof.circuit": circuit})
    needed = ratings.get("inverters.roof.circuit.1", Symbol.IM)
    assert needed is not None
    assert [given.symbol for given in needed.given] == ["Ib"]
    assert needed.value == 16


# -- conductors of a cable, and what governs them -------------------------------------------------------------------

LEAKS = {"types.inverters.t.leakage_current": "12 mA"}


@pytest.mark.parametrize(
    ("changes", "section_mm2", "protective_mm2", "governed_by"),
    [
        # IEC 60364-5-54:2011 543.7 (from memory): 10 mm² copper above 10 mA; section chosen, so its cores are 10 mm²
        ({**LEAKS}, 10, 10, "line conductors"),
        # the cores are given, so a conductor beside them is taken
        ({**LEAKS, f"{AC_CABLE}.section": "4 mm2"}, 4, 10, "leakage"),
        ({**LEAKS, f"{AC_CABLE}.section": "4 mm2", f"{AC_CABLE}.protective_section": "4 mm2"}, 4, 4, None),
        ({f"{AC_CABLE}.section": "4 mm2"}, 4, 4, "line conductors"),
        # Table 54.2: half of 70 mm²
        ({f"{AC_CABLE}.section": "70 mm2"}, 70, 35, "line conductors"),
    ],
)
def test_protective_conductor_and_its_demand(changes, section_mm2, protective_mm2, governed_by) -> None:
    ratings = rated({"supply.loop_impedance": "0.2 ohm", **changes})
    assert value(ratings, AC_CABLE, Symbol.S) == section_mm2
    protective = ratings.get(AC_CABLE, Symbol.SPE)
    assert protective is not None
    assert protective.value == protective_mm2
    if governed_by:
        assert str(protective.input("governed by")) == governed_by


def test_the_section_chosen_for_the_leakage_says_so() -> None:
    rating = rated(LEAKS).get(AC_CABLE, Symbol.S)
    assert rating is not None
    assert str(rating.input("governed by")) == "leakage"


@pytest.mark.parametrize(("curve", "length_m"), [("B", 100), ("C", 100), ("C", 40)])
def test_a_chosen_section_lets_its_breaker_trip(curve, length_m) -> None:
    """IEC 60364-4-41:2017 411.4.4 with 0.95: Zs <= 0.95 · 230 V / (5 or 10 · 20 A); the next smaller section has more.

    Loop of the cable by hand: two conductors of IEC 60228 copper at 70 °C, 0.4 %/K, and 0.08 Ω/km.
    """
    changes = {
        "supply": {**SUPPLY, "loop_impedance": "0.8 ohm", "voltage_rise_limit": "20 %"},
        "inverters.roof.circuit.0": {**BREAKER, "curve": curve, "rated_current": "20 A"},
        f"{AC_CABLE}.length": length_m,
    }
    ratings = rated(changes)
    most_ohm = 0.95 * 230 / (20 * {"B": 5, "C": 10}[curve])
    r_ohm_per_km = {1.5: 12.1, 2.5: 7.41, 4: 4.61, 6: 3.08, 10: 1.83, 16: 1.15, 25: 0.727}
    sections = list(r_ohm_per_km)
    chosen = value(ratings, AC_CABLE, Symbol.S)

    def loop_ohm(section_mm2: float) -> float:
        one = complex(r_ohm_per_km[section_mm2] * 1.2, 0.08) * length_m / 1000
        return abs(0.8 + 2 * one)

    assert chosen >= 4  # 20 A by method B2
    assert loop_ohm(chosen) <= most_ohm
    smaller = sections[sections.index(chosen) - 1]
    assert smaller < 4 or loop_ohm(smaller) > most_ohm


def test_a_loop_that_no_section_mends_leaves_the_section_as_it_was() -> None:
    """0.95 · 230 V / (20 · 20 A) = 0.546 Ω is below the 0.8 Ω of the supply itself."""
    breaker = {**BREAKER, "curve": "D", "rated_current": "20 A"}
    changes = {"supply.loop_impedance": "0.8 ohm", "inverters.roof.circuit.0": breaker}
    with_rcd = {**changes, "inverters.roof.circuit": [breaker, {"kind": "rcd"}, CABLE, ISOLATOR]}
    without = rated({**changes, "inverters.roof.circuit": [breaker, CABLE, ISOLATOR]})
    assert value(without, AC_CABLE, Symbol.S) == value(rated(with_rcd), "inverters.roof.circuit.2", Symbol.S)


@pytest.mark.parametrize(("rated_a", "opens_a", "length_m"), [(20, 130, 160), (32, 220, 220), (63, 320, 200)])
def test_section_chosen_so_that_a_fuse_opens_in_time(rated_a, opens_a, length_m) -> None:
    """BS 7671 Table 41.2(a) at 0.4 s up to 32 A, IEC 60269-1 Table 3 at 5 s above; 0.95 · 230 V / Ia (411.4.4)."""
    fuse = {"kind": "fuse", "rated_current": rated_a}
    cable = {**CABLE, "length": length_m}
    supply = {"supply.loop_impedance": "0.3 ohm", "supply.voltage_rise_limit": 20, "profile": "BS 7671"}
    ratings = rated({**supply, "inverters.roof.circuit": [fuse, cable, ISOLATOR]})
    assert value(ratings, "inverters.roof.circuit.0", Symbol.ZS) <= 0.95 * 230 / opens_a
    chosen = {symbol: ratings.get(AC_CABLE, symbol) for symbol in (Symbol.S, Symbol.SPE)}
    assert "disconnection" in [str(rating.input("governed by")) for rating in chosen.values()]
    symbol = Symbol.SPE if chosen[Symbol.SPE].value < chosen[Symbol.S].value else Symbol.S
    sections = [1.5, 2.5, 4, 6, 10, 16, 25, 35]
    smaller = sections[sections.index(chosen[symbol].value) - 1]
    protective = {"section": chosen[Symbol.S].value, "protective_section": smaller}
    thin = {**cable, **(protective if symbol is Symbol.SPE else {"section": smaller})}
    thinner = rated({**supply, "inverters.roof.circuit": [fuse, thin, ISOLATOR]})
    assert value(thinner, "inverters.roof.circuit.0", Symbol.ZS) > 0.95 * 230 / opens_a


def test_a_larger_line_conductor_keeps_the_protective_conductor_that_disconnection_asked_for() -> None:
    """Table 54.2 asks for 16 mm² beside 35 mm² of line conductor; 25 mm² were taken before for the loop."""
    system, _ = rated_data(changed({"types.inverters.t.current_max": "85 A", f"{AC_CABLE}.length": "5 m"}))
    ledger = Ledger()
    for step in STEPS[: STEPS.index(protective_conductors) + 1]:
        step(system, ledger)
    cable = system.devices[AC_CABLE]
    limit = Rating(Symbol.ZS_MAX, 1.0, "Ω", "", (), NOTHING)
    words = phrase("larger")
    demand = Demand(words, lambda symbol: words, limit, NOTHING, words)
    before_mm2 = ledger.value(AC_CABLE, Symbol.S)
    assert before_mm2 > 16
    while ledger.value(AC_CABLE, Symbol.SPE) < ledger.value(AC_CABLE, Symbol.S):
        enlarge(system, ledger, cable, cable.given, demand)
    assert ledger.value(AC_CABLE, Symbol.S) == before_mm2
    assert enlarge(system, ledger, cable, cable.given, demand)
    assert ledger.value(AC_CABLE, Symbol.S) > before_mm2
    assert ledger.value(AC_CABLE, Symbol.SPE) >= before_mm2


@pytest.mark.parametrize(
    ("phases", "cores", "earthing_system", "claimed"),
    [(3, 5, "TN-S", True), (3, 4, "TN-S", True), (3, 3, "TN-S", False), (1, 3, "TN-S", True), (1, 2, "TN-S", False)],
)
def test_no_protective_conductor_is_claimed_that_the_cores_do_not_hold(phases, cores, earthing_system, claimed) -> None:
    changes = {"types.inverters.t.phases": phases, f"{AC_CABLE}.cores": cores}
    ratings = rated(changes)
    assert (ratings.get(AC_CABLE, Symbol.SPE) is not None) is claimed
    assert (ratings.get("inverters.roof.circuit.0", Symbol.ZS) is not None) is claimed


@pytest.mark.parametrize(
    ("earthing_system", "cores", "protective_mm2"),
    [("TN-C-S", 4, 10), ("TN-C-S", 5, 10), ("TT", 4, None), ("TT", 5, 10), ("TN-S", 5, 10), ("TN-S", 3, None)],
)
def test_the_cable_from_the_network(earthing_system, cores, protective_mm2) -> None:
    """In TN-C-S the PEN is a core, in TT none comes with the lines (IEC 60364-1 312.2, from memory)."""
    cable = {**CABLE, "section": "10 mm2", "cores": cores}
    circuit = [cable, {"kind": "main_switch"}]
    ratings = rated({"supply.earthing_system": earthing_system, "boards.main.circuit": circuit})
    rating = ratings.get("boards.main.circuit.0", Symbol.SPE)
    assert (rating.value if rating else None) == protective_mm2


@pytest.mark.parametrize(
    ("place", "block", "least_mm2"),
    [
        (f"{IN1}.circuit", {"kind": "surge_protection"}, 6),
        (f"{IN1}.circuit", {"kind": "surge_protection", "test_class": "1+2"}, 16),
        ("boards.main.circuit", {"kind": "surge_protection", "test_class": "2"}, 6),
        ("boards.main.circuit", {"kind": "surge_protection", "test_class": "1"}, 16),
    ],
)
def test_protective_conductor_of_a_surge_protective_device(place, block, least_mm2) -> None:
    """IEC 60364-5-53 534.4.8 and IEC 61643-32 (from memory): 6 mm² copper for type 2, 16 mm² for type 1."""
    assert value(rated({place: [block, ISOLATOR]}), f"{place}.0", Symbol.SPE) == least_mm2


@pytest.mark.parametrize(
    ("supply_phases", "type_", "symbol"), [(3, "t", Symbol.IK3_MAX), (3, "s", Symbol.IK1_MAX), (1, "s", Symbol.IK1_MAX)]
)
def test_a_single_phase_unit_has_no_three_phase_fault(supply_phases, type_, symbol) -> None:
    """IEC 60909-0:2016: Ik3 = c · Un / (√3 · Z), a line-to-neutral fault Ik1 = c · (Un/√3) / (Z and its return)."""
    voltage = "400 V" if supply_phases == 3 else "230 V"
    supply = {**SUPPLY, "phases": supply_phases, "voltage": voltage, "prospective_fault_current": "5 kA"}
    cable = {**CABLE, "section": "4 mm2", "length": "20 m"}
    ratings = rated({"supply": supply, "inverters.roof.type": type_, AC_CABLE: cable})
    rating = ratings.get("inverters.roof", Symbol.IK_MAX)
    line = complex(4.61, 0.08) * 0.020
    u0_v = 230 if supply_phases == 1 else 400 / sqrt(3)
    back = 1 if symbol is Symbol.IK3_MAX else 2
    assert rating.symbol == symbol
    assert rating.value == pytest.approx(1.1 * u0_v / abs(1j * 1.1 * u0_v / 5000 + back * line) / 1000)


AT_5_KA_OHM = 1.1 * 400 / sqrt(3) / 5000


@pytest.mark.parametrize(
    ("type_", "cores", "earthing", "voltage_v", "ahead_ohm", "ways"),
    [
        ("t", 5, "TN-S", 230, 0.4, 2),  # the loop of the supply holds its neutral
        ("s", 3, "TN-S", 230, 0.4, 2),
        ("t", 5, "TT", 230, 2j * AT_5_KA_OHM, 2),  # no loop through the neutral is known: as long back as out
        ("t", 4, "TN-S", 400 / 2, 1j * AT_5_KA_OHM, 1),
    ],
    ids=["line to neutral", "one phase", "line to neutral in TT", "between lines"],
)
def test_least_short_circuit_current_between_live_conductors(
    type_, cores, earthing, voltage_v, ahead_ohm, ways
) -> None:
    """Ik1 = c · U0 / Z and Ik2 = c · Un / (2 · Z) (IEC 60909-0:2016), conductors at 70 °C, c 0.95 (BS 7671 411.4.4)."""
    cable = {**CABLE, "section": "4 mm2", "length": "60 m", "cores": cores}
    supply = {**SUPPLY, "earthing_system": earthing, "prospective_fault_current": "5 kA", "loop_impedance": "0.4 ohm"}
    ratings = rated({"supply": supply, "inverters.roof.type": type_, AC_CABLE: cable})
    z_ohm = abs(ahead_ohm + ways * complex(4.61 * 1.2, 0.08) * 0.060)
    assert value(ratings, "inverters.roof.circuit.0", Symbol.IK_MIN) == pytest.approx(0.95 * voltage_v / z_ohm)


@pytest.mark.parametrize(
    ("supply", "peak_ka"),
    [
        ({"prospective_fault_current": "8 kA"}, 8 * 1.7),  # IEC 61439-1 Table 7
        # uk 4 %, losses 1 %: X = √(16 − 1) % = 3.873 times R; κ = 1.02 + 0.98 · e^(−3/3.873)
        ({"transformer": {"rated_power": "100 kVA", "primary_voltage": "20 kV", "short_circuit_voltage": 4,
                          "load_losses": "1 kW"}}, None),
    ],
)  # fmt: skip
def test_peak_current_at_a_board(supply, peak_ka) -> None:
    ratings = rated({"supply": {**SUPPLY, **supply}})
    by_angle = (1.02 + 0.98 * exp(-3 / sqrt(15))) * sqrt(2) * value(ratings, "boards.main", Symbol.IK_MAX)
    assert value(ratings, "boards.main", Symbol.IP) == pytest.approx(peak_ka or by_angle)


# -- heat of a fault ------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("breaker", "cable", "ik_ka", "least_mm2"),
    [
        # √55 000 / 115 (copper, PVC; C above 16 A), √35 000 / 115 (B up to 16 A), √55 000 / 143 (XLPE)
        ({"curve": "C", "rated_current": "20 A"}, {}, 5, 55_000**0.5 / 115),
        ({"curve": "B", "rated_current": "16 A"}, {}, 5, 35_000**0.5 / 115),
        ({"curve": "C", "rated_current": "32 A"}, {"type": "x"}, 5, 55_000**0.5 / 143),
    ],
)
def test_section_by_let_through_energy(breaker, cable, ik_ka, least_mm2) -> None:
    """IEC 60364-4-43:2008 434.5.2: k²S² >= I²t; I²t of class 3 at 6 kA, EN 60898-1 Annex ZA (from memory)."""
    changes = {
        "supply.prospective_fault_current": f"{ik_ka} kA",
        "types.cables": {"x": {"insulation": "XLPE"}},
        "inverters.roof.circuit.0": {**BREAKER, **breaker},
        AC_CABLE: {**CABLE, "section": "6 mm2", **cable},
    }
    assert value(rated(changes), AC_CABLE, Symbol.S_THERMAL) == pytest.approx(least_mm2)


@pytest.mark.parametrize(
    ("breaker", "length_m", "least_mm2", "chosen_mm2"),
    [
        # 8 A and 2 m ask for 1.5 mm²; a fault through a B16 of class 3 for √35 000 / 115 = 1.63 mm²
        ({"curve": "B", "rated_current": "16 A"}, 2, 35_000**0.5 / 115, 2.5),
        ({"curve": "C", "rated_current": "16 A"}, 2, 42_000**0.5 / 115, 2.5),
    ],
)
def test_a_chosen_section_withstands_the_let_through_energy(breaker, length_m, least_mm2, chosen_mm2) -> None:
    """IEC 60364-4-43:2008 434.5.2 as above; method E of Table B.52.10: 18.5 A for 1.5 mm², enough for 16 A."""
    changes = {
        "supply.prospective_fault_current": "5 kA",
        "types.inverters.t.current_max": "8 A",
        "inverters.roof.circuit.0": {**BREAKER, **breaker},
        AC_CABLE: {**CABLE, "length": f"{length_m} m", "method": "E", "ambient_temperature": "30 °C"},
    }
    ratings = rated(changes)
    assert value(ratings, AC_CABLE, Symbol.S_THERMAL) == pytest.approx(least_mm2)
    assert value(ratings, AC_CABLE, Symbol.S) == value(ratings, AC_CABLE, Symbol.SPE) == chosen_mm2
    assert str(ratings.get(AC_CABLE, Symbol.S).input("governed by")) == "fault"


def test_section_by_what_a_fuse_lets_through() -> None:
    """80 A gG opens within 5 s at 425 A (IEC 60269-1 Table 3): √(425² · 5) / 115, as 0.95 · 230 V / 0.3 Ω < 1100 A."""
    fuse = {"kind": "fuse", "rated_current": "80 A"}
    changes = {"supply.loop_impedance": "0.3 ohm", "inverters.roof.circuit": [fuse, {**CABLE, "section": 25}, ISOLATOR]}
    assert value(rated(changes), AC_CABLE, Symbol.S_THERMAL) == pytest.approx(425 * sqrt(5) / 115)


# -- earthing -------------------------------------------------------------------------------------------------------

WATER = {"bonding": [{"to": "water pipe"}]}
BEHIND_90_A = {"inverters.roof.circuit.0": {"kind": "breaker", "rated_current": "90 A"}}
"""IEC 60364-5-52 Table B.52.4, method B2: 25 mm² carry 80 A, 35 mm² carry 99 A."""


@pytest.mark.parametrize(
    ("changes", "key", "least_mm2"),
    [
        # IEC 60364-5-54 544.1: half of the largest protective conductor, 6 to 25 mm²
        ({"earthing": WATER, f"{AC_CABLE}.section": "35 mm2", **BEHIND_90_A}, "earth.bonding.0", 10),
        # 16 A need 2.5 mm²: what is larger for the voltage does not count; nor does what is laid larger
        ({"earthing": WATER, f"{AC_CABLE}.section": "35 mm2"}, "earth.bonding.0", 6),
        ({"earthing": {**WATER, "conductor": {"section": "95 mm2"}}}, "earth.bonding.0", 6),
        # Table 54.8, neutral of the supply up to 35 mm²
        ({"earthing": WATER, "supply.earthing_system": "TN-C-S", "profile": "BS 7671"}, "earth.bonding.0", 10),
        ({"earthing": WATER, "supply.earthing_system": "TN-C-S"}, "earth.bonding.0", 6),
        # in TT the fifth core of 25 mm² from a fuse of 63 A, which needs it: half of 16 mm²
        (
            {
                "earthing": WATER,
                "supply.earthing_system": "TT",
                "supply.service_fuse": "63 A",
                "boards.main.circuit": [{**CABLE, "section": "25 mm2", "cores": 5}, {"kind": "main_switch"}],
            },
            "earth.bonding.0",
            10,
        ),
        # the conductor to the earthing point of the supply is a protective conductor: as the largest of them
        (
            {"earthing": {"conductor": {"section": "6 mm2"}}, f"{AC_CABLE}.section": "35 mm2", **BEHIND_90_A},
            "earth.supply",
            16,
        ),
    ],
)
def test_least_conductor_at_the_main_earthing_terminal(changes, key, least_mm2) -> None:
    assert value(rated(changes), key, Symbol.S_MIN) == least_mm2


# -- lines ----------------------------------------------------------------------------------------------------------

SPLIT = {"supply.phases": 1, "supply.split_phase": True, "supply.voltage": "240 V"}
LAMP = {"power": "1.2 kW", "circuit": [BREAKER]}


@pytest.mark.parametrize(
    ("changes", "key", "ampere"),
    [
        # P / U by hand: 1.2 kW over 240 V between the lines, over 120 V from one of them
        (SPLIT | {"loads.lamp": LAMP}, "loads.lamp", 5),
        (SPLIT | {"loads.lamp": {**LAMP, "line": "L1"}}, "loads.lamp", 10),
        ({"loads.lamp": {**LAMP, "line": "L1"}}, "loads.lamp", 1200 / 230),
        ({"loads.lamp": {**LAMP, "line": "L1-L2"}}, "loads.lamp", 3),
        ({"loads.lamp": LAMP}, "loads.lamp", 1200 / 400 / sqrt(3)),
        # a board of one phase gives its loads one; on different lines they do not add up
        ({"boards.shed": {"fed_from": "main", "phases": 1}, "loads.lamp": {**LAMP, "connected_to": "shed"},
          "inverters.roof.connected_to": "main"}, "loads.lamp", 1200 / 230),
        ({"boards.shed": {"fed_from": "main", "line": "L2"}, "loads.lamp": {**LAMP, "connected_to": "shed"},
          "loads.oven": {**LAMP, "connected_to": "main", "line": "L1"}, "inverters.roof.connected_to": "main"},
         "boards.main.circuit.0", 16),
        ({"loads.lamp": {**LAMP, "current": "40 A", "line": "L2"},
          "loads.oven": {**LAMP, "current": "30 A", "line": "L1"}}, "boards.main.circuit.0", 40),
        (SPLIT | {"loads.lamp": {**LAMP, "current": "40 A", "line": "L1"},
                  "loads.oven": {**LAMP, "current": "30 A", "line": "L2"}}, "boards.main.circuit.0", 40),
        (SPLIT | {"loads.lamp": {**LAMP, "current": "40 A"}, "loads.oven": {**LAMP, "current": "30 A", "line": "L2"}},
         "boards.main.circuit.0", 70),
    ],
)  # fmt: skip
def test_current_of_loads_by_their_lines(changes, key, ampere) -> None:
    assert value(rated(changes), key, Symbol.IB) == pytest.approx(ampere)


# -- armour and smaller neutrals ------------------------------------------------------------------------------------

STEEL = {
    "types.cables": {"swa": {"insulation": "XLPE"}},
    AC_CABLE: {**CABLE, "type": "swa", "section": 25, "protective_conductor": "armour", "armour_section": 76},
    "supply.loop_impedance": "0.2 ohm",
}


def test_loop_through_an_armour() -> None:
    """R1 of 25 mm² copper 0.727 Ω/km (IEC 60228), R2 = 1.1 · 138 / 76 Ω/km, both at 90 °C (0.004/K), 0.08 Ω/km each.

    20 m: line 18.6 mΩ, armour 51.1 mΩ and 2 · 1.6 mΩ, behind 0.2 Ω.
    """
    hot = 1 + 0.004 * 70
    r_ohm = (0.727 + 1.1 * 138 / 76) * 0.02 * hot
    loop = value(rated(STEEL), "inverters.roof.circuit.0", Symbol.ZS)
    assert loop == pytest.approx(0.2 + r_ohm, abs=0.005)


def test_smaller_neutral_lowers_the_least_current() -> None:
    """35 mm² copper 0.524 Ω/km, 16 mm² 1.15 Ω/km, 20 m at 70 °C: 15 mΩ more than a full neutral."""
    changes = {AC_CABLE: {**CABLE, "section": 35}, "supply.loop_impedance": "0.2 ohm"}
    full = value(rated(changes), "inverters.roof.circuit.0", Symbol.IK_MIN)
    less = value(rated(changes | {AC_CABLE: {**CABLE, "section": 35, "neutral_section": 16}}),
                 "inverters.roof.circuit.0", Symbol.IK_MIN)  # fmt: skip
    more_ohm = (1.15 - 0.524) * 0.02 * 1.2
    assert 0.95 * 230 / less - 0.95 * 230 / full == pytest.approx(more_ohm, rel=0.05)


@pytest.mark.parametrize(
    ("neutral", "bonding_mm2"),
    [
        # BS 7671:2018 Table 54.8: 10 mm² up to a neutral of 35 mm², 16 mm² up to 50 mm², 25 mm² up to 95 mm²
        ({}, 16),
        ({"neutral_section": 35}, 10),
        ({"neutral_section": 35, "parallel": 2}, 25),
    ],
)
def test_bonding_goes_by_the_neutral_of_the_cable_from_the_supply(neutral, bonding_mm2) -> None:
    cable = {**CABLE, "section": 50, **neutral}
    found = rated({
        "profile": "BS 7671",
        "supply.earthing_system": "TN-C-S",
        "boards.main.circuit": [cable, {"kind": "main_switch"}],
        "earthing": {"bonding": [{"to": "water pipe"}]},
    })  # fmt: skip
    assert value(found, "earth.bonding.0", Symbol.S_MIN) == bonding_mm2


@pytest.mark.parametrize(("risk_length", "level"), [({}, 212.5), ({"supply.risk_length": "1 km"}, 425)])
def test_a_supply_line_that_is_not_known_counts_as_one_of_two_kilometres(risk_length, level) -> None:
    """IEC 60364-4-44 443.5 (from memory): 850 / (LP · Ng) in towns; 1 km of low-voltage overhead line counts twice."""
    found = rated({"site.surroundings": "urban", "site.lightning_density": 2, **risk_length})
    assert value(found, "boards.main", Symbol.CRL) == pytest.approx(level)
