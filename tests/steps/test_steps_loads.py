"""Loads where their circuits join: diversity, load management, and what flows for three hours; worked by hand."""

from __future__ import annotations

import json
from typing import Any

import pytest
from rated_specs import BREAKER, changed, rated, rated_data, value

from sld.ratings.symbol import Symbol
from sld.spec.document import Spec
from sld.spec.references import dangling
from sld.steps.line_sums import by_line

FEEDER = "boards.flat.circuit.0"


def _two(first: dict[str, Any], second: dict[str, Any], **more: Any) -> dict[str, Any]:
    """Return the base with a sub-board on a breaker of 32 A that feeds two loads."""
    return {
        "boards.flat": {"fed_from": "main", "circuit": [{**BREAKER, "rated_current": "32 A"}]},
        "inverters.roof.connected_to": "main",
        "loads": {
            "heater": {"connected_to": "flat", "current": "25 A", "circuit": [BREAKER], **first},
            "cooker": {"connected_to": "flat", "current": "25 A", "circuit": [BREAKER], **second},
        },
        **more,
    }


def _managed(current: str, *loads: str) -> dict[str, Any]:
    return {
        "data": {"devices": {"ems": {"kind": "energy_manager", "load_limit": {"current": current, "loads": loads}}}}
    }


@pytest.mark.parametrize(
    ("first", "second", "more", "sum_a"),
    [
        ({}, {}, {}, 50),
        # IEC 60364-1 311: the highest currents times the share that flows at the same time
        ({"diversity_factor": 0.6}, {}, {}, 0.6 * 25 + 25),
        ({"diversity_factor": 0.6}, {"diversity_factor": 0.4}, {}, 15 + 10),
        # the sum of the managed loads stays below the limit; one that is not managed comes on top
        ({}, {}, _managed("32 A", "heater", "cooker"), 32),
        ({}, {}, _managed("20 A", "heater"), 20 + 25),
        ({}, {}, _managed("63 A", "heater", "cooker"), 50),
        ({"diversity_factor": 0.6}, {}, _managed("32 A", "heater", "cooker"), 32),
    ],
)
def test_what_two_loads_draw_together(first, second, more, sum_a) -> None:
    ratings = rated(_two(first, second, **more))
    assert value(ratings, FEEDER, Symbol.IB) == pytest.approx(sum_a)
    own = [value(ratings, f"loads.{name}.circuit.0", Symbol.IB) for name in ("heater", "cooker")]
    assert own == [25, 25], "its own circuit carries the highest current of a load"


def test_a_load_alone_behind_a_device_has_no_diversity() -> None:
    changes = _two({"diversity_factor": 0.5}, {"diversity_factor": 0.5})
    del changes["loads"]["cooker"]
    assert value(rated(changes), FEEDER, Symbol.IB) == 25


def test_a_factor_that_nobody_gave_is_said_to_be_one() -> None:
    def said(first: dict[str, Any], second: dict[str, Any]) -> bool:
        rating = rated(_two(first, second)).get(FEEDER, Symbol.IIMPORT)
        assert rating is not None
        return any("diversity factor at 1" in str(text) for text in rating.assumptions)

    assert said({}, {})
    assert said({"diversity_factor": 1}, {})
    assert not said({"diversity_factor": 1}, {"diversity_factor": 1})


def test_what_loads_draw_is_limited_by_the_device_in_series_with_a_main_switch() -> None:
    """Loads of 150 A behind a service fuse of 100 A ask for a switch of 100 A: the fuse melts (IEC 60364-4-43 433)."""
    changes = _two({"current": "75 A"}, {"current": "75 A"})
    assert value(rated(changes), "boards.main.circuit.0", Symbol.IN_MIN) == 100


NEC = {"profile": "NEC 690", "supply.voltage": "208 V", "supply.frequency": "60 Hz"}


@pytest.mark.parametrize(
    ("first", "second", "least_a"),
    [
        # NEC 210.20(A), 215.3: 125 % of continuous loads and 100 % of the others
        ({}, {}, 50),
        ({"continuous": True}, {}, 1.25 * 25 + 25),
        ({"continuous": True}, {"continuous": True}, 1.25 * 50),
        # 625.42: charging counts as continuous
        ({"charging_point": True}, {}, 1.25 * 25 + 25),
        ({"charging_point": True, "continuous": False}, {}, 50),
    ],
)
def test_continuous_loads_count_more_under_the_national_electrical_code(first, second, least_a) -> None:
    ratings = rated({**_two(first, second), **NEC})
    assert value(ratings, FEEDER, Symbol.IMAX_125) == pytest.approx(least_a)


def test_a_source_beside_loads_counts_for_three_hours() -> None:
    """1.25 · 16 A of the inverter is less than a load of 25 A that is not continuous; 1.25 · 25 A is more (705.30)."""
    changes = {**_two({}, {}), **NEC, "inverters.roof.connected_to": "flat"}
    del changes["loads"]["cooker"]
    assert value(rated(changes), FEEDER, Symbol.IMAX_125) == pytest.approx(25)
    changes["types.inverters.t.current_max"] = "25 A"
    assert value(rated(changes), FEEDER, Symbol.IMAX_125) == pytest.approx(1.25 * 25)


def test_a_load_that_does_not_exist_is_not_managed() -> None:
    spec = Spec.model_validate_json(json.dumps(changed(_two({}, {}, **_managed("32 A", "heatr")))))
    assert [(each.code, each.at[-1]) for each in dangling(spec)] == [("SP51", 0)]


def test_currents_between_different_lines_add_as_phasors() -> None:
    """10 A between L1 and L2, 10 A between L2 and L3, at unity power factor: 60° apart in L2, 10 · √3 = 17.32 A."""
    between = {"power": "4 kW"}
    system, _ = rated_data(
        changed({"loads.one": {**between, "line": "L1-L2"}, "loads.two": {**between, "line": "L2-L3"}})
    )
    units = [system.devices["loads.one"], system.devices["loads.two"]]
    found = by_line(system, units, {"loads.one": 10.0, "loads.two": 10.0})
    assert found == pytest.approx({"L1": 10.0, "L2": 17.3205, "L3": 10.0}, rel=1e-5)


def _of_sockets(rated: str, **more: Any) -> dict[str, Any]:
    circuit = [{"kind": "rcd"}, {**BREAKER, "rated_current": rated}, {"kind": "cable", "length": "20 m"}]
    return {"loads": {"one": {"power": "5 kW", "circuit": circuit, **more}}}


@pytest.mark.parametrize(
    ("rated_current", "supplies", "second"),
    [
        # IEC 60364-4-41 Table 41.1, TN, 230 V: 0.4 s for final circuits, 411.3.2.3: 5 s for others
        ("32 A", "fixed_equipment", 0.4),
        ("40 A", "fixed_equipment", 5),
        ("40 A", "luminaires", 5),
        ("40 A", "socket_outlets", 0.4),  # 411.3.2.2: with socket-outlets up to 63 A
        ("63 A", "socket_outlets", 0.4),
        ("80 A", "socket_outlets", 5),
    ],
)
def test_the_time_in_which_a_circuit_of_socket_outlets_is_switched_off(rated_current, supplies, second) -> None:
    ratings = rated(_of_sockets(rated_current, supplies=supplies))
    assert value(ratings, "loads.one.circuit.1", Symbol.T_MAX) == second


@pytest.mark.parametrize(
    ("building", "supplies", "milliampere"),
    [
        # 415.1.1: additional protection has 30 mA; else 100 mA is the smallest above it
        ("dwelling", "socket_outlets", 30), ("other_building", "socket_outlets", 30),
        ("dwelling", "luminaires", 30), ("other_building", "luminaires", 100), ("dwelling", "fixed_equipment", 100),
    ],
)  # fmt: skip
def test_the_residual_current_that_is_chosen(building, supplies, milliampere) -> None:
    ratings = rated({**_of_sockets("16 A", supplies=supplies), "site.building": building})
    assert value(ratings, "loads.one.circuit.0", Symbol.IDN) == milliampere
