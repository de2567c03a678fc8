"""What a battery with its own converter and a generator bring into the sums and fault currents, and TT earthing."""

from __future__ import annotations

import pytest
from rated_specs import changed, rated_data

from sld.model.kinds.ac import BREAKER
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.steps import Ratings

STORE = {"batteries.store": {"connected_to": "main", "converter_power": "5 kVA", "converter_phases": 3}}
GENERATOR = {
    "generators.set": {
        "connected_to": "main",
        "power": "20 kVA",
        "changeover": "four-pole change-over switch",
        "circuit": [{"kind": "breaker", "rated_current": "32 A"}, {"kind": "cable", "length": "10 m"}],
    }
}
FAULT_SYMBOLS = (Symbol.ZS, Symbol.ZS_MAX, Symbol.ZS_MEAS, Symbol.IK1_MIN, Symbol.IS)


def _rated(changes: dict[str, object]) -> tuple[System, Ratings]:
    return rated_data(changed(changes))


def test_a_battery_with_its_own_converter_counts_in_the_apparent_power() -> None:
    # 10 kVA of the inverter and 5 kVA of the converter (definition: sum of what can feed in at once)
    _, ratings = _rated(STORE)
    power = ratings.get("", Symbol.SAC)
    assert power is not None
    assert power.value == 15_000
    assert [each.value for each in power.given] == [10_000, 5_000]


def test_a_future_battery_is_not_counted() -> None:
    _, ratings = _rated({"batteries.store": {**STORE["batteries.store"], "status": "future"}})
    power = ratings.get("", Symbol.SAC)
    assert power is not None
    assert power.value == 10_000


def test_nothing_of_a_generator_is_rated_with_the_loop_of_the_network() -> None:
    # never in parallel with the network: the network drives no fault current behind the open change-over
    system, ratings = _rated(GENERATOR)
    (breaker,) = [each for each in system.devices.values() if each.owner == "generators.set" and each.kind is BREAKER]
    assert [ratings.get(breaker.key, symbol) for symbol in FAULT_SYMBOLS] == [None] * len(FAULT_SYMBOLS)
    assert ratings.get(breaker.key, Symbol.IK_MAX) is not None, "its board end is on the busbar"


@pytest.mark.parametrize(
    ("section", "behind", "earthing_system", "least_mm2"),
    [
        # IEC 60364-5-54 Table 54.2: S/2 above 35 mm²; in TT no more than 25 mm² of copper
        # (http://dev.blinckers-groups.com/BBoux/Elektron/terre5.php)
        # each behind a device that needs its section: 99, 118 and 149 A are tabulated (IEC 60364-5-52 Table B.52.4, B2)
        ("50 mm2", "110 A", "TT", 25),
        ("70 mm2", "140 A", "TT", 25),
        ("70 mm2", "140 A", "IT", 35),
        ("35 mm2", "90 A", "TT", 16),
    ],
)
def test_no_earthing_conductor_in_tt_is_larger_than_25_mm2(
    section: str, behind: str, earthing_system: str, least_mm2: float
) -> None:
    changes = {"supply.earthing_system": earthing_system, "inverters.roof.circuit.1.section": section}
    changes |= {"inverters.roof.circuit.0": {"kind": "breaker", "rated_current": behind}}
    changes |= {"earthing.electrode": {"kind": "rod", "resistance": 20}, "earthing.conductor": {"buried": False}}
    system, ratings = _rated(changes)
    (conductor,) = [
        each for each in system.earth_conductors if each.purpose == "earthing" and each.key != "earth.supply"
    ]
    least = ratings.get(conductor.key, Symbol.S_MIN)
    assert least is not None
    assert least.value == least_mm2
    assert any("independent" in str(said) for said in least.assumptions) == (
        section == "70 mm2" and earthing_system == "TT"
    )
