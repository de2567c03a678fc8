"""Specs as data and the ratings they come to, and strategies that make valid specs with much left out."""

from __future__ import annotations

import copy
import json
from functools import cache
from pathlib import Path
from typing import Any

from hypothesis import strategies as st

from sld import model, spec
from sld.model import System
from sld.spec.document import Spec
from sld.spec.references import dangling
from sld.steps import Ratings, rate

ROOT = Path(__file__).resolve().parents[2]

MODULE = {
    "rated_power": "400 W",
    "open_circuit_voltage": "37 V",
    "short_circuit_current": "13.5 A",
    "mpp_voltage": "31 V",
    "mpp_current": "12.9 A",
    "voltage_coefficient": "-0.26 %/K",
    "power_coefficient": "-0.34 %/K",
    "current_coefficient": "0.05 %/K",
    "series_fuse_max": "25 A",
}
THREE_PHASE = {
    "rated_power": "10 kW",
    "phases": 3,
    "current_max": "16 A",
    "dc_voltage_max": "1000 V",
    "mpp_voltage_min": "200 V",
    "mpp_voltage_max": "850 V",
    "inputs": [{"count": 3, "current_max": "60 A", "short_circuit_current_max": "90 A"}],
}
SINGLE_PHASE = {**THREE_PHASE, "rated_power": "4 kW", "phases": 1, "current_max": "20 A"}
BREAKER, ISOLATOR = {"kind": "breaker"}, {"kind": "isolator"}
CABLE = {"kind": "cable", "length": "20 m"}
UNIT = {
    "type": "t",
    "circuit": [BREAKER, CABLE, ISOLATOR],
    "inputs": [{"strings": [{"module": "m", "modules_in_series": 18}], "circuit": [ISOLATOR]}],
}
BASE: dict[str, Any] = {
    "project": {"title": "a roof"},
    "site": {"temperature_min": "-12 °C", "temperature_max": "34 °C"},
    "supply": {"earthing_system": "TN-S", "voltage": "400 V", "service_fuse": "100 A"},
    "types": {"modules": {"m": MODULE}, "inverters": {"t": THREE_PHASE, "s": SINGLE_PHASE}},
    "boards": {"main": {"circuit": [{"kind": "main_switch"}]}},
    "inverters": {"roof": UNIT},
}
STRING = "inverters.roof.inputs.0.strings.0"
AC_CABLE = "inverters.roof.circuit.1"


def changed(changes: dict[str, Any]) -> dict[str, Any]:
    """Return the data of the base with values set by dotted path; numbers index lists, None removes."""
    data = copy.deepcopy(BASE)
    for path, value in changes.items():
        *way, last = [int(step) if step.isdigit() else step for step in path.split(".")]
        here: Any = data
        for step in way:
            here = here.setdefault(step, {}) if isinstance(here, dict) else here[step]
        if value is None:
            del here[last]
        else:
            here[last] = copy.deepcopy(value)
    return data


def rated_data(data: dict[str, Any]) -> tuple[System, Ratings]:
    """Return system and ratings of a spec given as data whose names are good."""
    parsed = Spec.model_validate_json(json.dumps(data))
    assert dangling(parsed) == []
    system = model.build(parsed)
    return system, rate(system)


def rated(changes: dict[str, Any] | None = None) -> Ratings:
    """Return the ratings of the base, changed."""
    return rated_data(changed(changes or {}))[1]


def value(ratings: Ratings, key: str, symbol: str) -> float:
    """Return one rating's value; fails where there is none, with the reason."""
    rating = ratings.get(key, symbol)
    assert rating is not None, f"{key} has no {symbol}: {ratings.unanswered.get((key, symbol), 'never made')}"
    return rating.value


@cache
def village_hall() -> tuple[System, Ratings]:
    """Return system and ratings of the shipped example of one inverter."""
    _, parsed = spec.load(ROOT / "specs" / "village-hall.yaml")
    system = model.build(parsed)
    return system, rate(system)


def _maybe(**fields: st.SearchStrategy[Any]) -> st.SearchStrategy[dict[str, Any]]:
    return st.fixed_dictionaries({}, optional=fields)


def _block(needed: dict[str, Any], **optional: st.SearchStrategy[Any]) -> st.SearchStrategy[dict[str, Any]]:
    fixed = {key: each if isinstance(each, st.SearchStrategy) else st.just(each) for key, each in needed.items()}
    return st.fixed_dictionaries(fixed, optional=optional)


def number(least: float, most: float) -> st.SearchStrategy[float]:
    """Return numbers between two bounds, both included."""
    return st.floats(least, most, allow_nan=False, allow_infinity=False).map(lambda value: round(value, 6))


AMPERES = number(0.1, 5000)
SECTIONS = st.sampled_from([1.5, 2.5, 4, 6, 7, 10, 16, 25, 95, 300, 1000])
AC_DEVICES = st.one_of(
    _block(
        {"kind": "breaker"},
        rated_current=AMPERES,
        curve=st.sampled_from("BCD"),
        construction=st.sampled_from(["miniature", "moulded_case"]),
        trip_factor=number(1.5, 20),
        breaking_capacity=number(0.1, 200),
        service_breaking_capacity=number(0.01, 0.1),
    ),
    _block({"kind": "fuse"}, rated_current=AMPERES, switch=st.booleans()),
    _block(
        {"kind": "rcd"},
        rated_current=AMPERES,
        residual_current=number(1, 3000),
        selective=st.booleans(),
        delay=number(0, 5),
    ),
    _block({"kind": "rcbo"}, rated_current=AMPERES, residual_current=number(1, 3000), curve=st.sampled_from("BCD")),
    _block({"kind": "isolator"}, rated_current=AMPERES),
    _block({"kind": "main_switch"}, rated_current=AMPERES),
    _block({"kind": "surge_protection"}, continuous_voltage=number(1, 2000), protection_level=number(1, 9000)),
    _block(
        {"kind": "meter", "purpose": st.sampled_from(["supply", "generation", "feed_in_limit"])},
        connection=st.sampled_from(["direct", "ct"]),
        current_max=AMPERES,
        ct_primary=AMPERES,
        ct_secondary=number(0.1, 5),
    ),
    _block({"kind": "contactor"}, rated_current=AMPERES),
    _block({"kind": "network_separation"}, rated_current=AMPERES, poles=st.integers(2, 4)),
    _block({"kind": "interface_protection"}, rated_current=AMPERES),
    _block({"kind": "interface_relay"}, settings=st.just("set A")),
    _block(
        {"kind": "cable", "length": number(0, 3000)},
        type=st.sampled_from(["al", "x", "flex"]),
        section=SECTIONS,
        protective_section=SECTIONS,
        neutral_section=SECTIONS,
        protective_conductor=st.sampled_from(["core", "separate", "separate_protected"]),
        cores=st.integers(2, 5),
        parallel=st.integers(1, 8),
        method=st.sampled_from(["A1", "A2", "B1", "B2", "C", "D1", "D2", "E", "F"]),
        ambient_temperature=number(-40, 100),
        grouped_circuits=st.integers(1, 20),
    ),
)
BOARD_DEVICES = st.one_of(
    AC_DEVICES,
    _block(
        {"kind": "changeover", "second_source": "set"},
        rated_current=AMPERES,
        poles=st.integers(2, 4),
        neutral_earth_link=st.booleans(),
    ),
)
"""A change-over switch stands in the circuit of a board alone."""

DC_DEVICES = st.one_of(
    _block({"kind": "isolator"}, rated_voltage=number(1, 3000), rated_current=AMPERES),
    _block({"kind": "fuse"}, rated_voltage=number(1, 3000), rated_current=AMPERES),
    _block({"kind": "surge_protection"}, continuous_voltage=number(1, 3000), discharge_current=number(1, 100)),
    _block({"kind": "breaker"}, rated_voltage=number(1, 3000), rated_current=AMPERES, breaking_capacity=number(1, 100)),
    _block({"kind": "diode"}, rated_voltage=number(1, 3000)),
    _block({"kind": "disconnector"}, rated_voltage=number(1, 3000), rated_current=AMPERES),
    _block({"kind": "plug_connector"}, rated_voltage=number(1, 3000), rated_current=AMPERES),
    _block({"kind": "rapid_shutdown"}, rated_voltage=number(1, 3000), rated_current=AMPERES),
    _block({"kind": "insulation_monitor"}, rated_voltage=number(1, 3000), alarm_resistance=number(0, 1e6)),
    _block({"kind": "cable", "length": number(0, 3000)}, section=SECTIONS, ambient_temperature=number(-40, 120)),
)
STRING_DEVICES = st.one_of(
    _block({"kind": "breaker"}, rated_voltage=number(1, 3000), rated_current=AMPERES, breaking_capacity=number(1, 100)),
    _block({"kind": "diode"}, rated_voltage=number(1, 3000), rated_current=AMPERES),
    _block({"kind": "optimiser"}, output_voltage_max=number(1, 300), output_current_max=number(1, 40)),
    _block({"kind": "branch_connector"}, rated_voltage=number(1, 3000), rated_current=AMPERES),
)
BATTERY_DEVICES = st.one_of(
    _block({"kind": "fuse"}, rated_voltage=number(1, 3000), rated_current=AMPERES, breaking_capacity=number(1, 100)),
    _block({"kind": "breaker"}, rated_voltage=number(1, 3000), rated_current=AMPERES, breaking_capacity=number(1, 100)),
    _block({"kind": "isolator"}, rated_voltage=number(1, 3000), rated_current=AMPERES),
    _block(
        {"kind": "cable", "length": number(0, 300)},
        type=st.sampled_from(["al", "x", "flex"]),
        section=SECTIONS,
        parallel=st.integers(1, 8),
        method=st.sampled_from(["A1", "A2", "B1", "B2", "C", "E"]),
        ambient_temperature=number(-40, 100),
        grouped_circuits=st.integers(1, 20),
    ),
)


def _evened(string: dict[str, Any]) -> dict[str, Any]:
    """Give a string entry one optimiser at most, first, and as many strings as its branch connectors join evenly."""
    devices = sorted(string.get("circuit", ()), key=lambda each: each["kind"] != "optimiser")
    joined = 2 ** sum(each["kind"] == "branch_connector" for each in devices)
    kept = [each for place, each in enumerate(devices) if place == 0 or each["kind"] != "optimiser"]
    return {**string, "count": joined * string.get("count", 1), "circuit": kept}


AC_CIRCUITS = st.lists(AC_DEVICES, max_size=5)


def _one_switch(circuit: list[dict[str, Any]]) -> bool:
    return sum(device["kind"] == "changeover" for device in circuit) <= 1


STRINGS = _block(
    {"module": st.sampled_from(["m", "bare"]), "modules_in_series": st.integers(1, 60)},
    count=st.integers(1, 12),
    cable=_block({"length": number(0, 2000)}, section=SECTIONS, grouped_circuits=st.integers(1, 20)),
    circuit=st.lists(STRING_DEVICES, max_size=2),
).map(_evened)
INPUTS = _block(
    {"strings": st.lists(STRINGS, min_size=1, max_size=2)},
    circuit=st.lists(DC_DEVICES, max_size=3),
    string_fuses=_maybe(rated_current=AMPERES, rated_voltage=number(1, 3000)),
)
INVERTERS = _block(
    {"type": st.sampled_from(["t", "s", "hybrid"]), "inputs": st.lists(INPUTS, min_size=1, max_size=3)},
    circuit=AC_CIRCUITS,
    line=st.sampled_from(["L1", "L2", "L3"]),
    power_factor=number(0.1, 1),
    count=st.integers(1, 3),
    connected_to=st.sampled_from(["main", "barn"]),
)
BARE_MODULE = {key: each for key, each in MODULE.items() if "coefficient" not in key and key != "series_fuse_max"}
HYBRID = {**THREE_PHASE, "inputs_independent": False, "leakage_current": 30, "backfeed_current": "9 A"}
HYBRID.pop("current_max")
SUPPLIES = _block(
    {"earthing_system": st.sampled_from(["TN-S", "TN-C-S", "TT", "IT"])},
    phases=st.sampled_from([1, 3]),
    voltage=st.sampled_from([120, 208, 230, 400, 415, 480, 690, 1200]),
    service_fuse=AMPERES,
    prospective_fault_current=number(0.01, 200),
    loop_impedance=number(0, 3000),
    voltage_rise_limit=number(0.01, 20),
    transformer=_block(
        {"rated_power": number(1000, 5e6), "primary_voltage": "10 kV", "short_circuit_voltage": number(0.1, 20)},
        load_losses=number(1, 1e5),
        network_fault_power=number(1e5, 1e9),
    ),
)
SPECS = _block(
    {
        "project": {"title": "any"},
        "site": _block(
            {"temperature_min": number(-60, 10), "temperature_max": number(11, 60)},
            mounting=st.sampled_from(["roof_parallel", "roof_tilted", "free_standing"]),
            lightning_density=number(0, 80),
            rear_irradiance=number(0, 100),
        ),
        "supply": SUPPLIES,
        "types": {
            "modules": {"m": {**MODULE, "bifaciality": 70}, "bare": BARE_MODULE},
            "inverters": {"t": THREE_PHASE, "s": SINGLE_PHASE, "hybrid": HYBRID},
            "cables": {
                "al": {"conductor": "aluminium"},
                "x": {"insulation": "XLPE"},
                "flex": {"strands": "class 5", "conductor": "aluminium"},
            },
        },
        "boards": st.fixed_dictionaries(
            {
                "main": _maybe(circuit=AC_CIRCUITS, rated_current=AMPERES),
                "barn": _block(
                    {"fed_from": "main"},
                    circuit=st.lists(BOARD_DEVICES, max_size=5).filter(_one_switch),
                    phases=st.just(1),
                ),
            }
        ),
        "inverters": st.dictionaries(st.sampled_from(["north", "south"]), INVERTERS, min_size=1),
    },
    generators=st.just({"set": {"power": "20 kVA", "changeover": "interlocked", "connected_to": "main"}}),
    profile=st.sampled_from(["cautious", "IEC 62548-1", "IEC 60364-7-712", "BS 7671"]),
    loads=_maybe(
        oven=_block(
            {"connected_to": "barn"},
            power=number(1, 1e6),
            current=AMPERES,
            line=st.sampled_from(["L1", "L2-L3"]),
            charging_point=st.booleans(),
            circuit=AC_CIRCUITS,
        )
    ),
    batteries=_maybe(
        store=_block(
            {"connected_to": "main"},
            converter_power=number(1, 1e6),
            converter_phases=st.sampled_from([1, 3]),
            circuit=AC_CIRCUITS,
            voltage_min=number(10, 40),
            voltage_max=number(40, 1500),
            current_max=AMPERES,
            short_circuit_current=number(0.1, 100),
            protection_rated_current=AMPERES,
            isolator_built_in=st.booleans(),
            dc_circuit=st.lists(BATTERY_DEVICES, max_size=4),
        )
    ),
    earthing=_maybe(
        electrode=_maybe(resistance=number(0, 5000)),
        conductor=_maybe(buried=st.booleans(), mechanically_protected=st.booleans(), corrosion_protected=st.booleans()),
        lightning_protection=_block({"separation_kept": st.booleans()}),
    ),
)
"""Valid specs of every shape the blocks allow, most of them such as nobody builds."""


def named(data: dict[str, Any]) -> dict[str, Any]:
    """Return the data with a board named for every inverter, which two boards require."""
    for inverter in data["inverters"].values():
        inverter.setdefault("connected_to", "main")
    if any(device["kind"] == "changeover" for device in data["boards"]["barn"].get("circuit", [])):
        data["generators"] = {"set": {"power": "20 kVA", "neutral_earthed": True}}
    return data
