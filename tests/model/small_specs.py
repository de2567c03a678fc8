"""A small spec as data, to be changed path by path: `spec({"supply.earthing_system": "TT"})`."""

from __future__ import annotations

import copy
import json
from typing import Any

from sld.model import System, build
from sld.spec.document import Spec
from sld.spec.references import dangling

MODULE = {
    "rated_power": "400 W",
    "open_circuit_voltage": "37 V",
    "short_circuit_current": "13.5 A",
    "mpp_voltage": "31 V",
    "mpp_current": "12.9 A",
    "voltage_coefficient": "-0.26 %/K",
    "series_fuse_max": "25 A",
}
INVERTER = {
    "rated_power": "10 kW",
    "phases": 3,
    "dc_voltage_max": "1000 V",
    "mpp_voltage_min": "200 V",
    "mpp_voltage_max": "850 V",
    "inputs": [{"count": 2, "current_max": "30 A", "short_circuit_current_max": "40 A"}],
}
UNIT = {
    "type": "t",
    "circuit": [{"kind": "breaker"}, {"kind": "cable", "length": "20 m"}, {"kind": "isolator"}],
    "inputs": [{"strings": [{"module": "m", "modules_in_series": 18}], "circuit": [{"kind": "isolator"}]}],
}
BASE: dict[str, Any] = {
    "project": {"title": "a roof"},
    "site": {"temperature_min": "-12 °C", "temperature_max": "34 °C"},
    "supply": {"earthing_system": "TN-S", "voltage": "400 V"},
    "types": {"modules": {"m": MODULE}, "inverters": {"t": INVERTER}},
    "inverters": {"roof": UNIT},
}


def changed(changes: dict[str, Any]) -> dict[str, Any]:
    """Return the data of the small spec with values set by dotted path; numbers index lists, None removes."""
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


def spec(changes: dict[str, Any] | None = None) -> Spec:
    """Return the changed spec, read."""
    return Spec.model_validate_json(json.dumps(changed(changes or {})))


def system(changes: dict[str, Any] | None = None) -> System:
    """Return the system of a changed spec whose names are good."""
    parsed = spec(changes)
    assert dangling(parsed) == []
    return build(parsed)
