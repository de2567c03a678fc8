"""Radial installations made up by number, as spec text for the tool and as tables for pandapower.

pandapower (https://pandapower.readthedocs.io, BSD licence) solves the load flow by Newton's method and the short
circuits by IEC 60909. A network is written twice from the same plain numbers, so that neither side reads the other.
"""

from __future__ import annotations

import copy
import json
import random
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from math import sqrt
from pathlib import Path
from typing import Any

import pandapower
from pandapower import shortcircuit

from sld import model, spec
from sld.model.system import System
from sld.steps import Ratings, rate

R_20_OHM_PER_KM = {
    2.5: 7.41, 4: 4.61, 6: 3.08, 10: 1.83, 16: 1.15, 25: 0.727, 35: 0.524, 50: 0.387, 70: 0.268, 95: 0.193,
    120: 0.153, 150: 0.124, 185: 0.0991, 240: 0.0754,
}  # fmt: skip
"""IEC 60228 class 2 copper: https://www.uecables.com/471-power-copper-conductors-according-to-iec-60228.html"""
PROTECTIVE_MM2 = {6: 6, 10: 10, 16: 16, 25: 16, 35: 16, 70: 35, 95: 50, 120: 70, 150: 95}
"""IEC 60364-5-54 Table 54.2, rounded up: https://panelcraft.eu/content/839-knowledge-earthing-pe-conductor-sizing"""
X_OHM_PER_KM = (
    0.08  # http://www.electrical-installation.org/enwiki/Calculation_of_voltage_drop_in_steady_load_conditions
)
HOT_C, AIR_C = 70.0, 30.0  # PVC at full load, and the air of the capacities
CAPACITY_A = {
    1: {6: 46, 10: 63, 16: 85, 25: 112, 35: 138, 50: 168, 70: 213, 95: 258, 120: 299, 150: 344},
    3: {6: 41, 10: 57, 16: 76, 25: 96, 35: 119, 50: 144, 70: 184, 95: 223, 120: 259, 150: 299},
}
"""By phases: IEC 60364-5-52:2009 Tables B.52.2 and B.52.4, copper, PVC, method C (from memory)."""
PER_K_LOAD_FLOW = 0.00393
C_MAX, C_MIN = 1.10, 0.95
U_LINE_V, U_PHASE_V = 400.0, 230.0
PRIMARY_KV = 20.0


@dataclass(frozen=True)
class Cable:
    """A copper cable with PVC insulation; its protective conductor is by PROTECTIVE_MM2."""

    length_m: float
    section_mm2: float


@dataclass(frozen=True)
class Transformer:
    """A transformer at 20 kV, and the short-circuit power in front of it."""

    kva: float
    uk_percent: float
    losses_w: float
    fault_mva: float


@dataclass(frozen=True)
class Board:
    """A board fed from an earlier one; the first has neither feeder nor cable."""

    name: str
    fed_from: str = ""
    cable: Cable | None = None


@dataclass(frozen=True)
class Unit:
    """An inverter at the end of its own cable."""

    name: str
    board: str
    power_w: float
    cable: Cable


@dataclass(frozen=True)
class Network:
    """An installation of one or three phases. fault_ka and loop_ohm without transformer only."""

    number: int
    phases: int
    unit_phases: int
    transformer: Transformer | None
    fault_ka: float
    loop_ohm: float
    boards: tuple[Board, ...]
    units: tuple[Unit, ...]


UNITS = (1, 1, 1, 2, 2, 3, 3, 4, 5, 6, 8, 8, 10, 12, 15, 18, 20, 24, 28, 32, 36, 40, 45, 50)
"""Inverters in each network."""


def made(number: int) -> Network:
    """Return a network; the same number gives the same one."""
    draw = random.Random(number)
    phases = 1 if number % 4 == 1 else 3
    at_transformer = phases == 3 and number % 2 == 0
    count = UNITS[number]
    boards = [Board("main")]
    for place in range(min(draw.randint(0, 4), count - 1)):
        feeder = draw.choice(boards).name
        boards.append(Board(f"sub {place + 1}", feeder, Cable(draw.randint(5, 60), draw.choice([70, 95, 120, 150]))))
    powers = [3000, 4600] if phases == 1 else [5000, 10_000, 15_000, 25_000]
    sections = [6, 10, 16, 25, 35]
    units = tuple(
        Unit(
            f"inverter {place + 1}",
            draw.choice(boards).name,
            draw.choice(powers if count < 20 else powers[:2]),
            Cable(draw.randint(3, 40), draw.choice(sections)),
        )
        for place in range(count)
    )
    kva = draw.choice([250, 400, 630, 1000])
    losses_w = {250: 3250, 400: 4600, 630: 6500, 1000: 10_500}[kva]
    transformer = Transformer(kva, draw.choice([4, 6]), losses_w, draw.choice([50, 150, 500]))
    return Network(
        number,
        phases,
        phases,
        transformer if at_transformer else None,
        draw.choice([3.0, 6.0, 16.0]),
        draw.choice([0.10, 0.35, 0.80]),
        tuple(boards),
        units,
    )


# -- as a spec for the tool ---------------------------------------------------------------------------------------


def _cable_block(cable: Cable) -> dict[str, Any]:
    return {
        "kind": "cable",
        "length": f"{cable.length_m} m",
        "method": "C",
        "section": f"{cable.section_mm2} mm2",
        "protective_section": f"{PROTECTIVE_MM2[cable.section_mm2]} mm2",
    }


def _types(network: Network) -> dict[str, Any]:
    module = {
        "rated_power": "400 W", "open_circuit_voltage": "37 V", "short_circuit_current": "13.5 A",
        "mpp_voltage": "31 V", "mpp_current": "12.9 A",
    }  # fmt: skip
    inverters = {
        f"{power_w} W": {
            "rated_power": f"{power_w} W", "phases": network.unit_phases, "dc_voltage_max": "1000 V",
            "mpp_voltage_min": "200 V", "mpp_voltage_max": "850 V",
            "inputs": [{"current_max": "60 A", "short_circuit_current_max": "90 A"}],
        }
        for power_w in sorted({unit.power_w for unit in network.units})
    }  # fmt: skip
    return {"modules": {"m": module}, "inverters": inverters}


def _supply(network: Network) -> dict[str, Any]:
    supply: dict[str, Any] = {
        "earthing_system": "TN-S",
        "phases": network.phases,
        "voltage": f"{U_LINE_V if network.phases == 3 else U_PHASE_V} V",
        "service_fuse": "100 A",
    }
    feed = network.transformer
    if feed is None:
        return supply | {
            "prospective_fault_current": f"{network.fault_ka} kA",
            "loop_impedance": f"{network.loop_ohm} ohm",
        }
    return supply | {
        "transformer": {
            "rated_power": f"{feed.kva} kVA",
            "primary_voltage": f"{PRIMARY_KV} kV",
            "short_circuit_voltage": f"{feed.uk_percent} %",
            "load_losses": f"{feed.losses_w} W",
            "network_fault_power": f"{feed.fault_mva} MVA",
        }
    }


def spec_text(network: Network) -> str:
    """Return the network as a spec; JSON is YAML."""
    boards = {
        board.name: {"circuit": [{"kind": "main_switch"}]}
        if board.cable is None
        else {"fed_from": board.fed_from, "circuit": [{"kind": "breaker"}, _cable_block(board.cable)]}
        for board in network.boards
    }
    strings = [{"module": "m", "modules_in_series": 12}]
    inverters = {
        unit.name: {
            "type": f"{unit.power_w} W",
            "connected_to": unit.board,
            "circuit": [{"kind": "breaker"}, _cable_block(unit.cable)],
            "inputs": [{"strings": strings}],
        }
        for unit in network.units
    }
    return json.dumps(
        {
            "project": {"title": f"network {network.number}"},
            "site": {"temperature_min": "-10 °C", "temperature_max": "35 °C"},
            "supply": _supply(network),
            "types": _types(network),
            "boards": boards,
            "inverters": inverters,
        },
        ensure_ascii=False,
        indent=1,
    )


def rated(network: Network, folder: Path) -> tuple[System, Ratings]:
    """Write the spec, read it as any other, and rate it."""
    path = folder / f"network-{network.number}.yaml"
    path.write_text(spec_text(network), encoding="utf-8")
    _, parsed = spec.load(path)
    system = model.build(parsed)
    return system, rate(system)


# -- as a network of the library ----------------------------------------------------------------------------------


@dataclass(frozen=True)
class Answers:
    """What the library says of each board and inverter: rise above the main board in percent, currents in A.

    level_max_percent: the highest voltage of the network in percent of nominal, all inverters at full power. Greatest
    currents: cables at 20 °C, c 1.10, return by a neutral like the line conductor. Least currents: cables hot, c 0.95,
    return by the protective conductor. Inverters do not feed a fault.
    """

    level_max_percent: float
    rise_percent: Mapping[str, float]
    max_3ph_a: Mapping[str, float]
    max_1ph_a: Mapping[str, float]
    min_3ph_a: Mapping[str, float]
    min_1ph_a: Mapping[str, float]


def _line_kv(network: Network) -> float:
    return (U_LINE_V if network.phases == 3 else sqrt(3) * U_PHASE_V) / 1000


def _add_cables(net: Any, network: Network) -> dict[str, int]:
    """Create buses and lines and return the bus of each board and inverter.

    A single-phase installation is one phase of three alike; the voltage between lines is √3 times its own.
    """
    cables = [(board.fed_from, board.name, board.cable) for board in network.boards if board.cable]
    cables += [(unit.board, unit.name, unit.cable) for unit in network.units]
    names = [network.boards[0].name, *(end for _, end, _ in cables)]
    buses = dict(zip(names, pandapower.create_buses(net, len(names), vn_kv=_line_kv(network)), strict=True))
    pandapower.create_lines_from_parameters(
        net, [buses[begin] for begin, _, _ in cables], [buses[end] for _, end, _ in cables],
        [cable.length_m / 1000 for _, _, cable in cables], r_ohm_per_km=0, x_ohm_per_km=0, c_nf_per_km=0,
        max_i_ka=1, endtemp_degree=HOT_C, r0_ohm_per_km=0, x0_ohm_per_km=0, c0_nf_per_km=0,
    )  # fmt: skip
    net.line["section_mm2"] = [cable.section_mm2 for _, _, cable in cables]
    return buses


def _temperatures_c(network: Network) -> list[float]:
    """Return the temperature of each line under the current of all units behind it: BS 7671:2018 Appendix 4 6.1."""
    behind = {board.name: [unit for unit in network.units if unit.board == board.name] for board in network.boards}
    for board in reversed(network.boards[1:]):
        behind[board.fed_from] += behind[board.name]
    lines = [(behind[board.name], board.cable) for board in network.boards if board.cable]
    lines += [([unit], unit.cable) for unit in network.units]
    volts = sqrt(3) * U_LINE_V if network.phases == 3 else U_PHASE_V
    loading = [
        sum(unit.power_w for unit in units) / volts / CAPACITY_A[network.phases][cable.section_mm2]
        for units, cable in lines
    ]
    return [HOT_C - (1 - share**2) * (HOT_C - AIR_C) for share in loading]


def _set_lines(net: Any, temperature_factor: float | list[float], protective: bool, out_and_back: bool = False) -> None:
    """Set the impedances of all lines; the zero-sequence one is Z1 + 3·Z of the return conductor.

    out_and_back: the neutral currents of single-phase circuits do not cancel, so that both conductors count.
    """
    way = 2 if out_and_back else 1
    r = net.line.section_mm2.map(R_20_OHM_PER_KM)
    back = net.line.section_mm2.map(PROTECTIVE_MM2).map(R_20_OHM_PER_KM) if protective else r
    net.line["r_ohm_per_km"] = way * r * temperature_factor
    net.line["x_ohm_per_km"] = way * X_OHM_PER_KM
    net.line["r0_ohm_per_km"] = r + 3 * back
    net.line["x0_ohm_per_km"] = 4 * X_OHM_PER_KM


def _add_supply(net: Any, network: Network, main: int) -> None:
    feed = network.transformer
    if feed is None:
        resistive = 1e6  # the tool's loop impedance of the supply has no angle and is taken as resistance
        pandapower.create_ext_grid(
            net, main, s_sc_max_mva=sqrt(3) * _line_kv(network) * network.fault_ka, rx_max=0, x0x_max=1, r0x0_max=0,
            s_sc_min_mva=C_MIN * _line_kv(network) ** 2 / network.loop_ohm, rx_min=resistive, x0x_min=1,
            r0x0_min=resistive,
        )  # fmt: skip
        return
    primary = pandapower.create_bus(net, vn_kv=PRIMARY_KV)
    pandapower.create_ext_grid(
        net, primary, s_sc_max_mva=feed.fault_mva, rx_max=0.1, x0x_max=1, r0x0_max=0.1,
        # the tool has one short-circuit power and takes cmax for both runs; the library takes cmin 1.0 for the least
        s_sc_min_mva=feed.fault_mva / C_MAX, rx_min=0.1, x0x_min=1, r0x0_min=0.1,
    )  # fmt: skip
    resistive_percent = feed.losses_w / (1000 * feed.kva) * 100
    pandapower.create_transformer_from_parameters(
        net, primary, main, sn_mva=feed.kva / 1000, vn_hv_kv=PRIMARY_KV, vn_lv_kv=U_LINE_V / 1000,
        vk_percent=feed.uk_percent, vkr_percent=resistive_percent, pfe_kw=0, i0_percent=0, vector_group="Dyn",
        vk0_percent=feed.uk_percent, vkr0_percent=resistive_percent, mag0_percent=100, mag0_rx=0, si0_hv_partial=0.9,
    )  # fmt: skip


@cache
def _empty() -> Any:
    return pandapower.create_empty_network(f_hz=50.0)


@cache
def answers(network: Network) -> Answers:
    """Return the library's answers."""
    net = copy.deepcopy(_empty())
    buses = _add_cables(net, network)
    _add_supply(net, network, buses["main"])

    def currents_a(case: str, fault: str) -> dict[str, float]:
        shortcircuit.calc_sc(net, case=case, fault=fault, lv_tol_percent=10 if case == "max" else 6)
        return {name: 1000 * float(net.res_bus_sc.ikss_ka[bus]) for name, bus in buses.items()}

    _set_lines(net, 1.0, protective=False)
    greatest = [currents_a("max", fault) for fault in ("3ph", "1ph")]
    _set_lines(net, 1.0, protective=True)
    least = [currents_a("min", fault) for fault in ("3ph", "1ph")]
    warm = [1 + PER_K_LOAD_FLOW * (each - 20) for each in _temperatures_c(network)]
    _set_lines(net, warm, protective=True, out_and_back=network.phases == 1)
    lines = 1 if network.phases == 3 else 3
    pandapower.create_sgens(
        net, [buses[unit.name] for unit in network.units], [lines * unit.power_w / 1e6 for unit in network.units]
    )
    pandapower.runpp(net, numba=False, tolerance_mva=1e-9)
    levels = net.res_bus.vm_pu
    rises = {name: 100 * float(levels[bus] - levels[buses["main"]]) for name, bus in buses.items()}
    return Answers(100 * float(levels.max()), rises, *greatest, *least)
