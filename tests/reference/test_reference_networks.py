"""The tool's voltage rises and fault currents against a load flow and IEC 60909 of pandapower, on made-up networks."""

from __future__ import annotations

from dataclasses import replace
from math import sqrt

import pytest
from _pytest.mark.structures import ParameterSet

pytest.importorskip("pandapower", reason="pandapower is not installed: pip install -e '.[test]'")

from networks import (
    C_MAX,
    C_MIN,
    HOT_C,
    R_20_OHM_PER_KM,
    U_LINE_V,
    U_PHASE_V,
    UNITS,
    X_OHM_PER_KM,
    Cable,
    Network,
    answers,
    made,
    rated,
)

from sld.ratings.fault import cable_impedance, three_phase_current
from sld.ratings.impedance import Impedance
from sld.ratings.source_impedance import impedance_from_short_circuit_power, voltage_factor
from sld.ratings.symbol import Symbol
from sld.ratings.transformer import transformer_impedance

# pandapower 3.5 fills gaps in its tables in a way that pandas 2 announces the end of
pytestmark = [
    pytest.mark.filterwarnings("ignore:Downcasting object dtype arrays:FutureWarning:pandapower.build_branch"),
    pytest.mark.filterwarnings("ignore:Downcasting object dtype arrays:FutureWarning:pandapower.pd2ppc_zero"),
]

NETWORKS = [made(number) for number in range(len(UNITS))]


def some(networks: list[Network]) -> list[ParameterSet]:
    """Return the networks as cases, of which the default run takes every third."""
    return [
        pytest.param(network, id=f"{network.number}", marks=[pytest.mark.whole] if place % 3 else [])
        for place, network in enumerate(networks)
    ]


EACH = pytest.mark.parametrize("network", some(NETWORKS))
THREE_PHASE = some([network for network in NETWORKS if network.phases == 3])


def test_the_networks_are_of_every_kind() -> None:
    assert len(NETWORKS) >= 20
    assert {len(network.units) for network in NETWORKS} >= {1, 50}
    assert {(network.phases, network.transformer is None) for network in NETWORKS} == {
        (1, True), (3, True), (3, False),
    }  # fmt: skip
    assert any(board.fed_from not in ("", "main") for network in NETWORKS for board in network.boards)
    assert max(answers(network).level_max_percent for network in NETWORKS[::3]) > 103


@EACH
def test_the_linear_rise_is_above_the_load_flow_by_no_more_than_the_rise_itself(network, tmp_path) -> None:
    """The tool sums I·R·L with the current at nominal voltage; an inverter at a higher voltage feeds less current.

    The real current is lower by at most the share by which the highest voltage is above nominal, so ours is above by
    that share. Reactance turns the voltage without raising it; with X/R at most 0.54 (150 mm², hot) the square of the
    angle takes less than half as much again off the real rise. Never is ours below: the cautious side.
    """
    _, ratings = rated(network, tmp_path)
    library = answers(network)
    over = 1.5 * (library.level_max_percent / 100 - 1)
    for unit in network.units:
        rise = ratings.get(f"inverters.{unit.name}", Symbol.DU_AC)
        assert rise is not None
        assert 0 <= rise.value / library.rise_percent[unit.name] - 1 <= over, unit.name


@EACH
def test_the_greatest_fault_current_is_that_of_iec_60909(network, tmp_path) -> None:
    """Three-phase or line to neutral, whichever is greater; in a radial network the closed form is the whole method."""
    _, ratings = rated(network, tmp_path)
    library = answers(network)
    keys = {board.name: f"boards.{board.name}" for board in network.boards}
    keys |= {unit.name: f"inverters.{unit.name}" for unit in network.units}
    for name, key in keys.items():
        current = ratings.get(key, Symbol.IK_MAX)
        assert current is not None
        kinds = [library.max_1ph_a[name]] + ([library.max_3ph_a[name]] if network.phases == 3 else [])
        assert 1000 * current.value == pytest.approx(max(kinds), rel=1e-4), name


@pytest.mark.parametrize("network", THREE_PHASE)
def test_the_greatest_fault_current_of_single_phase_circuits(network, tmp_path) -> None:
    """Single-phase inverters on the same three-phase boards: line to neutral, equal to the library's."""
    _, ratings = rated(replace(network, unit_phases=1), tmp_path)
    library = answers(network)
    for unit in network.units:
        current = ratings.get(f"inverters.{unit.name}", Symbol.IK_MAX)
        assert current is not None
        assert 1000 * current.value == pytest.approx(library.max_1ph_a[unit.name], rel=1e-4), unit.name


def test_the_voltage_factors_are_those_of_the_library() -> None:
    """The library has its own table of c; with it the currents above and below agree for ±10 % and ±6 %."""
    assert voltage_factor(10, "max").value == C_MAX
    assert voltage_factor(6, "min").value == C_MIN


def test_behind_a_delta_winding_the_fault_to_earth_is_the_greater() -> None:
    """Z0 holds no network there, so that (2·Z1 + Z0)/3 is less than Z1: by more, the weaker the network."""
    for network in NETWORKS:
        if network.transformer is not None:
            library = answers(network)
            assert library.max_1ph_a["main"] > library.max_3ph_a["main"]


@EACH
def test_the_earth_fault_loop_is_not_below_that_of_iec_60909(network, tmp_path) -> None:
    """Equal without a transformer. With one the tool counts the network in front of it in full, which is cautious.

    Behind a delta winding two thirds of that network count, so ours is above by at most its third. The least current
    is 0.95 · U0 over the loop, with 230 V where the library has 400 V/√3.
    """
    _, ratings = rated(network, tmp_path)
    library = answers(network)
    u_0_v = U_LINE_V / sqrt(3) if network.phases == 3 else U_PHASE_V
    most_ohm = _network_in_front(network).magnitude_ohm / 3
    keys = {unit.name: f"inverters.{unit.name}.circuit.0" for unit in network.units}
    keys |= {board.name: f"boards.{board.name}.circuit.0" for board in network.boards if board.cable}
    for name, key in keys.items():
        loop, current = ratings.get(key, Symbol.ZS), ratings.get(key, Symbol.IK1_MIN)
        library_ohm = C_MIN * u_0_v / library.min_1ph_a[name]
        assert loop is not None
        assert library_ohm * (1 - 1e-4) <= loop.value <= library_ohm * (1 + 1e-4) + most_ohm, name
        if current is not None:  # a board without a rated protective device has none
            assert current.value == pytest.approx(C_MIN * U_PHASE_V / loop.value)
    assert all(ratings.get(f"inverters.{unit.name}.circuit.0", Symbol.IK1_MIN) for unit in network.units)


def _network_in_front(network: Network) -> Impedance:
    """Return the network in front of the transformer as the tool counts it, nothing without one."""
    if network.transformer is None:
        return Impedance(0.0, 0.0)
    return impedance_from_short_circuit_power(network.transformer.fault_mva, U_LINE_V, C_MAX)


@pytest.mark.parametrize("network", THREE_PHASE)
def test_the_least_three_phase_current_by_our_formulas(network) -> None:
    """The tool has no use for this current; `sld.ratings.fault` gives it: c 0.95, hot cables, ZT uncorrected."""
    library = answers(network)
    feed = network.transformer
    if feed is None:
        source = Impedance(network.loop_ohm, 0.0)
    else:
        resistive_percent = feed.losses_w / (10 * feed.kva)
        source = _network_in_front(network)
        source += transformer_impedance(feed.kva, U_LINE_V, feed.uk_percent, resistive_percent)
    at = {"main": source}
    for board in network.boards:
        if board.cable:
            at[board.name] = at[board.fed_from] + _hot(board.cable)
    for unit in network.units:
        at[unit.name] = at[unit.board] + _hot(unit.cable)
    for name, z in at.items():
        current = three_phase_current(U_LINE_V, z, C_MIN, "min")
        assert current.value == pytest.approx(library.min_3ph_a[name], rel=1e-4), name


def _hot(cable: Cable) -> Impedance:
    return cable_impedance(R_20_OHM_PER_KM[cable.section_mm2], X_OHM_PER_KM, cable.length_m, HOT_C)


def test_reactance_over_resistance_is_what_the_bound_of_the_rise_takes() -> None:
    largest = max(section for network in NETWORKS for each in (*network.boards, *network.units)
                  if each.cable and (section := each.cable.section_mm2))  # fmt: skip
    hot_ohm_per_km = R_20_OHM_PER_KM[largest] * (1 + 0.00393 * (HOT_C - 20))
    assert X_OHM_PER_KM / hot_ohm_per_km < 0.54
