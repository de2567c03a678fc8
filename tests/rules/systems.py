"""A complete small installation that breaks no rule, and small changes of it. All makes and data are invented."""

from __future__ import annotations

import copy
import json
from functools import cache
from typing import Any

from sld.finding import Finding
from sld.model.build import build, systems
from sld.model.system import System
from sld.rules import review, review_all
from sld.spec.document import Spec
from sld.spec.references import dangling
from sld.steps import Ratings, rate

__all__ = ["BASE", "Changes", "changed", "findings_of", "neighboured", "rated", "reviewed_parts"]

Changes = dict[str, Any]
"""Dotted path of the spec -> new value, or `REMOVED`."""

REMOVED = object()

BASE: dict[str, Any] = {
    "project": {"title": "House with an invented array"},
    "site": {
        "temperature_min": "-12 °C",
        "temperature_max": "34 °C",
        "lightning_density": 1.0,
        "building": "dwelling",
    },
    "supply": {
        "earthing_system": "TN-S",
        "service_fuse": "35 A",
        "prospective_fault_current": "5 kA",
        "loop_impedance": 0.3,
        "voltage_rise_limit": 2,
    },
    "types": {
        "modules": {
            "mono": {
                "rated_power": "410 W",
                "open_circuit_voltage": "37 V",
                "short_circuit_current": "13.9 A",
                "mpp_voltage": "31 V",
                "mpp_current": "13 A",
                "voltage_coefficient": "-0.26 %/K",
                "current_coefficient": "0.05 %/K",
                "power_coefficient": "-0.34 %/K",
                "series_fuse_max": "25 A",
            },
            "other": {
                "rated_power": "400 W",
                "open_circuit_voltage": "37 V",
                "short_circuit_current": "13.9 A",
                "mpp_voltage": "31 V",
                "mpp_current": "13 A",
                "voltage_coefficient": "-0.26 %/K",
                "series_fuse_max": "25 A",
            },
        },
        "inverters": {
            "twelve": {
                "rated_power": "12 kW",
                "phases": 3,
                "dc_voltage_max": "1000 V",
                "start_voltage": "250 V",
                "mpp_voltage_min": "200 V",
                "mpp_voltage_max": "850 V",
                "inputs": [{"count": 2, "current_max": "26 A", "short_circuit_current_max": "40 A", "strings_max": 2}],
                "dc_residual_current": "6 mA",
                "leakage_current": "9 mA",
                "bus": {"units_max": 5, "distance_max": "50 m", "length_max": "500 m", "exclusive": ["ethernet"]},
            }
        },
        "cables": {
            "data": {"marking": "2x2x0.5", "shielded": True},
            "bare": {"marking": "2x0.5"},
            "rubber": {"insulation": "XLPE", "rated_voltage": "700 V"},
        },
    },
    "boards": {
        "main": {
            "rated_current": "63 A",
            "circuit": [
                {"kind": "meter", "purpose": "supply", "current_max": "60 A"},
                {"kind": "main_switch", "rated_current": "40 A", "poles": 4},
                {
                    "kind": "surge_protection",
                    "test_class": "1+2",
                    "continuous_voltage": "275 V",
                    "protection_level": "1.5 kV",
                    "backup_fuse_max": "125 A",
                    "lead_length": "0.5 m",
                },
            ],
        }
    },
    "inverters": {
        "roof": {
            "type": "twelve",
            "circuit": [
                {"kind": "breaker", "rated_current": "20 A", "curve": "C", "breaking_capacity": "6 kA", "poles": 4},
                {
                    "kind": "rcd",
                    "rated_current": "25 A",
                    "residual_current": "100 mA",
                    "sensitivity": "A",
                    "poles": 4,
                },
                {"kind": "cable", "length": "15 m", "section": "4 mm2"},
                {"kind": "isolator", "rated_current": "25 A", "poles": 4},
            ],
            "inputs": [
                {
                    "strings": [
                        {
                            "module": "mono",
                            "modules_in_series": 18,
                            "count": 2,
                            "orientation": "south",
                            "cable": {"length": "20 m", "section": "4 mm2"},
                        }
                    ],
                    "circuit": [
                        {
                            "kind": "surge_protection",
                            "continuous_voltage": "1000 V",
                            "protection_level": "3.5 kV",
                            "discharge_current": "20 kA",
                        },
                        {
                            "kind": "isolator",
                            "rated_voltage": "1000 V",
                            "rated_current": "40 A",
                            "utilization_category": "DC-PV2",
                        },
                    ],
                }
            ],
        }
    },
    "earthing": {
        "electrode": {"kind": "foundation", "resistance": 20},
        "conductor": {"section": "16 mm2"},
        "bonding": [
            {"to": "module frames", "purpose": "array_frame", "section": "6 mm2"},
            {"to": "water pipe", "section": "10 mm2"},
        ],
    },
    "data": {
        "devices": {"log": {"kind": "logger"}},
        "chains": {
            "bus": {
                "cable": "data",
                "shield_earthed_at": ["log"],
                "devices": [
                    {"device": "log", "terminated": True},
                    {"device": "roof", "address": 1, "length": "3 m", "terminated": True},
                ],
            }
        },
    },
}


PLAIN_MODULE = {
    "rated_power": "400 W",
    "open_circuit_voltage": "37 V",
    "short_circuit_current": "13 A",
    "mpp_voltage": "31 V",
    "mpp_current": "12.9 A",
}
PLAIN_INVERTER = {
    "rated_power": "3 kW",
    "phases": 1,
    "dc_voltage_max": "1000 V",
    "mpp_voltage_min": "100 V",
    "mpp_voltage_max": "850 V",
    "inputs": [{"current_max": "26 A", "short_circuit_current_max": "40 A"}],
}
SPARE = {
    "type": "plain",
    "connected_to": "main",
    "line": "L1",
    "inputs": [{"strings": [{"module": "plain", "modules_in_series": 10}]}],
}


def _chain(logger: str, inverter: str) -> dict[str, Any]:
    return {
        "cable": "data",
        "shield_earthed_at": [logger],
        "devices": [
            {"device": logger, "terminated": True},
            {"device": inverter, "address": 1, "length": "3 m", "terminated": True},
        ],
    }


@cache
def neighboured() -> dict[str, Any]:
    """Return the base with more inverters on its board: two as complete as its own, two of which
    little is given. The complete ones are on data chains of their own."""
    base = copy.deepcopy(BASE)
    own = base["inverters"]["roof"]
    own["connected_to"] = "main"
    units = {"spare": SPARE, "fore": own, "roof": own, "rear": own, "last": SPARE}
    base["inverters"] = {name: copy.deepcopy(unit) for name, unit in units.items()}
    base["data"]["devices"]["log_one"] = base["data"]["devices"]["log_two"] = {"kind": "logger"}
    chains = {"first": {"protocol": "SunSpeak", **_chain("log_one", "fore")}, "second": _chain("log_two", "rear")}
    base["data"]["chains"] = {**chains, **base["data"]["chains"]}
    base["types"]["modules"] = {"plain": PLAIN_MODULE, **base["types"]["modules"]}
    base["types"]["inverters"] = {"plain": PLAIN_INVERTER, **base["types"]["inverters"]}
    return base


def changed(changes: Changes, base: dict[str, Any] = BASE) -> dict[str, Any]:
    """Return a copy of the base with values set or removed; a number in a path is a place in a list, `+` appends."""
    spec = copy.deepcopy(base)
    for path, value in changes.items():
        *way, last = path.split(".")
        place: Any = spec
        for part in way:
            place = place[int(part)] if isinstance(place, list) else place.setdefault(part, {})
        if isinstance(place, list):
            if last == "+":
                place.append(copy.deepcopy(value))
            elif value is REMOVED:
                del place[int(last)]
            else:
                place[int(last)] = copy.deepcopy(value)
        elif value is REMOVED:
            del place[last]
        else:
            place[last] = copy.deepcopy(value)
    return spec


def rated(changes: Changes, base: dict[str, Any] = BASE) -> tuple[System, Ratings]:
    """Return the system and ratings of the changed base, whose references are good; both are frozen, and made once."""
    return _rated(json.dumps(changed(changes, base)))


@cache
def _rated(text: str) -> tuple[System, Ratings]:
    spec = Spec.model_validate_json(text)
    assert not dangling(spec), [str(finding.message) for finding in dangling(spec)]
    system = build(spec)
    return system, rate(system)


def findings_of(changes: Changes) -> tuple[Finding, ...]:
    """Return the findings of the changed base."""
    return tuple(finding for _, found in reviewed_parts(changes) for finding in found)


def reviewed_parts(changes: Changes) -> list[tuple[System, tuple[Finding, ...]]]:
    """Return the system behind each supply point of the changed base with what is told of it, reviewed once."""
    return _reviewed(json.dumps(changed(changes)), any(path.startswith("further_supplies") for path in changes))


@cache
def _reviewed(text: str, several: bool) -> list[tuple[System, tuple[Finding, ...]]]:
    if not several:
        system, ratings = _rated(text)
        return [(system, review(system, ratings))]
    spec = Spec.model_validate_json(text)
    assert not dangling(spec), [str(finding.message) for finding in dangling(spec)]
    parts = tuple((system, rate(system)) for system in systems(spec))
    return [(system, found) for (system, _), found in zip(parts, review_all(parts), strict=True)]
