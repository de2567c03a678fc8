"""Several supply points in a spec: what is refused, and where. Two connections to the network are never joined."""

from __future__ import annotations

import copy
from typing import Any

import pytest

from sld.spec import Unusable, load_mapping

MODULE = {
    "rated_power": "400 W", "open_circuit_voltage": "37 V", "short_circuit_current": "13.5 A", "mpp_voltage": "31 V",
    "mpp_current": "12.9 A",
}  # fmt: skip
INVERTER = {
    "rated_power": "10 kW", "phases": 3, "dc_voltage_max": "1000 V", "mpp_voltage_min": "200 V",
    "mpp_voltage_max": "850 V", "inputs": [{"current_max": "30 A", "short_circuit_current_max": "40 A"}],
    "backup": {"power": "5 kVA"},
}  # fmt: skip
UNIT = {"type": "t", "inputs": [{"strings": [{"module": "m", "modules_in_series": 18}]}]}
FARM: dict[str, Any] = {
    "project": {"title": "Farm"},
    "site": {"temperature_min": -10, "temperature_max": 35},
    "supply": {"earthing_system": "TN-S"},
    "further_supplies": {"well": {"supply": {"earthing_system": "TT"}}},
    "types": {"modules": {"m": MODULE}, "inverters": {"t": INVERTER}},
    "boards": {"main": {}, "pump": {"fed_from": "well"}},
    "inverters": {"roof": {**UNIT, "connected_to": "main"}, "barn": {**UNIT, "connected_to": "pump"}},
}


def farm(path: str = "", value: Any = None) -> dict[str, Any]:
    """Return the farm with a value at a dotted path."""
    data = copy.deepcopy(FARM)
    here = data
    *way, last = path.split(".")
    for step in way:
        here = here.setdefault(step, {})
    if path:
        here[last] = value
    return data


CHAIN = {"devices": {"log": {"kind": "logger"}},
         "chains": {"bus": {"devices": [{"device": "log"}, {"device": "roof"}, {"device": "barn"}]}}}  # fmt: skip
REFUSED = [
    ("supply", [{"earthing_system": "TN-S"}] * 2, "supply", "further_supplies"),
    ("boards.pump.fed_from", ["main", "well"], "boards.pump.fed_from", "changeover"),
    ("boards.pump.fed_from", "wel", "boards.pump.fed_from", "well"),
    ("boards.pump.fed_from", "main", "further_supplies.well", "fed_from: well"),
    ("boards.third", {"fed_from": "well"}, "boards.third", "at no other"),
    ("boards.third", {}, "boards.third", "name the feeding board"),
    ("boards.pump.earthing_system", "TT", "boards.pump.earthing_system", "under its `earthing`"),
    ("boards.pump.circuit", [{"kind": "changeover", "second_source": "well"}], "boards.pump.circuit.0.second_source",
     "one supply point"),
    ("boards.pump.circuit", [{"kind": "changeover", "second_source": "roof"}], "boards.pump.circuit.0.second_source",
     "behind the same supply point"),
    ("boards.pump.circuit", [{"kind": "main_switch", "enclosure": "main"}], "boards.pump.circuit.0.enclosure",
     "behind the same supply point"),
    ("data", CHAIN, "data.chains.bus.devices.2.device", "behind the same supply point"),
    ("further_supplies.roof", {"supply": {"earthing_system": "TT"}}, "inverters.roof", "its own name"),
    ("further_supplies.well.supply.ownership_boundary", "service_fuse",
     "further_supplies.well.supply.ownership_boundary", "service_fuse"),
    ("further_supplies.well.supply.frequency", 16.7, "further_supplies.well.supply.frequency", "SP41"),
    ("types.inverters.t.rated_voltage", "690 V", "types.inverters.t.rated_voltage", "SP41"),
]  # fmt: skip


@pytest.mark.parametrize(
    ("path", "value", "at", "remedy"), REFUSED, ids=[f"{row[0]}-{number}" for number, row in enumerate(REFUSED)]
)
def test_is_refused_at_its_place(path: str, value: Any, at: str, remedy: str) -> None:
    with pytest.raises(Unusable) as unusable:
        load_mapping(farm(path, value))
    told = [each for each in unusable.value.findings if ".".join(map(str, each.at)) == at]
    assert any(remedy in str(each.remedy) for each in told), [str(each) for each in unusable.value.findings]


TAKEN = [
    ("", None),
    ("boards.third", {"fed_from": "pump"}),
    ("boards.third", {"fed_from_backup": "barn"}),
    ("data", {**CHAIN, "chains": {"bus": {"devices": [{"device": "log"}, {"device": "barn"}]}}}),
    ("batteries", {"store": {"inverter": "barn", "voltage_max": "58 V"}}),
]  # fmt: skip


@pytest.mark.parametrize(("path", "value"), TAKEN)
def test_is_taken(path: str, value: Any) -> None:
    load_mapping(farm(path, value))
