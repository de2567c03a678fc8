"""A building with an earth electrode of its own on a TN supply: which loop, time and touch voltage hold where.

Worked by hand: R20 of IEC 60228 (1.83 and 4.61 Ω/km for 10 and 4 mm²), 70 °C by 1 + 0.00393 · 50; IEC 60364-4-41 Table
41.1, 411.3.2.3, 411.3.2.4 and 411.5.3.
"""

from __future__ import annotations

import pytest
from rated_specs import changed, rated_data

from sld.model import System
from sld.ratings.symbol import Symbol
from sld.steps import Ratings

HOT = 1 + 0.00393 * 50
FEEDER_OHM, OWN_OHM = 0.030 * 1.83 * HOT, 0.015 * 4.61 * HOT
BARN = {
    "fed_from": "main", "earthing_system": "TT", "electrode": {"kind": "rod", "resistance": 80},
    "circuit": [
        {"kind": "breaker", "rated_current": "32 A", "curve": "C"},
        {"kind": "cable", "length": "30 m", "section": "10 mm2", "method": "C"},
        {"kind": "rcd", "rated_current": "40 A", "residual_current": "300 mA", "sensitivity": "B"},
    ],
}  # fmt: skip
CHANGES = {
    "supply.loop_impedance": 0.3,
    "boards.barn": BARN,
    "inverters.roof.connected_to": "barn",
    "inverters.roof.circuit": [
        {"kind": "breaker", "rated_current": "20 A", "curve": "C"},
        {"kind": "rcd", "rated_current": "25 A", "residual_current": "100 mA", "sensitivity": "B"},
        {"kind": "cable", "length": "15 m", "section": "4 mm2", "method": "C"},
        {"kind": "isolator"},
    ],
}


@pytest.fixture(scope="module")
def house() -> tuple[System, Ratings]:
    return rated_data(changed(CHANGES))


@pytest.mark.parametrize(
    ("key", "system"),
    [
        ("boards.main.circuit.0", "TN-S"),
        ("boards.barn.circuit.0", "TN-S"),  # the feeder belongs to the house
        ("boards.barn.circuit.1", "TN-S"),
        ("boards.barn.circuit.2", "TT"),  # what follows its last cable to the barn
        ("boards.barn", "TT"),
        ("inverters.roof.circuit.2", "TT"),
        ("inverters.roof", "TT"),
    ],
)
def test_earthing_system_of_the_place(house: tuple[System, Ratings], key: str, system: str) -> None:
    here = house[0]
    assert here.earthing_at(key) == system
    assert here.electrode_path(key)[:2] == (("boards", "barn") if system == "TT" else ("earthing", "electrode"))


@pytest.mark.parametrize(
    ("key", "loop_ohm", "time_s"),
    [
        ("boards.barn.circuit.0", 0.3 + 2 * FEEDER_OHM, 5.0),  # a distribution circuit, though of 32 A
        ("inverters.roof.circuit.0", 0.3 + FEEDER_OHM + 80 + 2 * OWN_OHM, 0.2),
    ],
)
def test_loop_and_time(house: tuple[System, Ratings], key: str, loop_ohm: float, time_s: float) -> None:
    ratings = house[1]
    assert ratings[key, Symbol.ZS].value == pytest.approx(loop_ohm, rel=1e-3)
    assert ratings[key, Symbol.T_MAX].value == time_s


@pytest.mark.parametrize(("key", "idn_a"), [("boards.barn.circuit.2", 0.3), ("inverters.roof.circuit.1", 0.1)])
def test_touch_voltage_at_the_end_of_the_longest_way(house: tuple[System, Ratings], key: str, idn_a: float) -> None:
    longest_ohm = 0.3 + FEEDER_OHM + 80 + 2 * OWN_OHM
    assert house[1][key, Symbol.UT].value == pytest.approx(longest_ohm * idn_a, rel=1e-3)


def test_touch_voltage_where_no_loop_is_stated() -> None:
    # RA and the protective conductor of the inverter's cable alone
    _, ratings = rated_data(changed({key: value for key, value in CHANGES.items() if key != "supply.loop_impedance"}))
    assert ratings["inverters.roof.circuit.1", Symbol.UT].value == pytest.approx((80 + OWN_OHM) * 0.1, rel=1e-4)


def test_break_time_of_the_residual_device(house: tuple[System, Ratings]) -> None:
    # 0.95 · 230 V / 80.5 Ω = 2.7 A, 27 times 100 mA: IEC 61008-1 Table 1, general type
    assert house[1]["inverters.roof.circuit.0", Symbol.T_RCD].value == 0.04


def test_break_time_of_the_residual_device_of_the_board(house: tuple[System, Ratings]) -> None:
    # it alone sees a fault in the board: 2.7 A, nine times 300 mA: IEC 61008-1 Table 1, general type
    assert house[1]["boards.barn.circuit.2", Symbol.T_RCD].value == 0.04


def test_break_time_of_a_selective_rcbo() -> None:
    # 27 times 100 mA: IEC 61008-1 Table 1, type S
    rcbo = {"kind": "rcbo", "rated_current": "20 A", "curve": "C", "residual_current": "100 mA", "selective": True}
    cable = {"kind": "cable", "length": "15 m", "section": "4 mm2", "method": "C"}
    changes = {**CHANGES, "inverters.roof.circuit": [rcbo, cable, {"kind": "isolator"}]}
    _, ratings = rated_data(changed({**changes, "boards.barn": {**BARN, "circuit": BARN["circuit"][:2]}}))
    assert ratings["inverters.roof.circuit.0", Symbol.T_RCD].value == 0.15


MILL = {
    "connected_to": "main", "current": "160 A",
    "circuit": [{"kind": "breaker", "construction": "moulded_case", "rated_current": "160 A"},
                {"kind": "cable", "length": "8 m", "section": "70 mm2", "method": "C"}],
}  # fmt: skip


@pytest.mark.parametrize(
    ("own", "least_mm2"),
    [
        # IEC 60364-5-54 544.1.1: half of the largest protective conductor, at least 6 mm²; the barn has but 4 mm²
        (True, 6),
        # on the earth of the house the cable of the mill counts: 70 mm² PVC, method C, three loaded carries 184 A
        # (IEC 60364-5-52 Table B.52.4; 50 mm² 144 A), its protective conductor is 35 mm² (543.1.2): 17.5, next 25 mm²
        (False, 25),
    ],
)
def test_main_bonding_of_another_building(own, least_mm2) -> None:
    barn = {**BARN, "bonding": [{"to": "water pipe"}]}
    if not own:
        barn = {key: value for key, value in barn.items() if key not in ("earthing_system", "electrode")}
    system, ratings = rated_data(changed({**CHANGES, "boards.barn": barn, "loads.mill": MILL}))
    (conductor,) = system.bonding_at("boards.barn")
    assert ratings.get(conductor.key, Symbol.S_MIN).value == pytest.approx(least_mm2)
    assert system.bonding_at("") == ()
