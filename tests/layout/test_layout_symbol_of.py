"""Which symbol a device has where that depends on more than its kind: what it is joined to. Symbols: IEC 60617."""

from __future__ import annotations

from typing import Any

import pytest

from sld.layout.diagram.symbol_of import symbol_of
from sld.model.build import build
from sld.model.system import System
from sld.spec.document import Spec

TYPES = {
    "modules": {
        "plain": {
            "rated_power": "400 W", "open_circuit_voltage": "37 V", "short_circuit_current": "13 A",
            "mpp_voltage": "31 V", "mpp_current": "12.9 A",
        }
    },
    "inverters": {
        "plain": {
            "rated_power": "3 kW", "phases": 1, "dc_voltage_max": "1000 V", "mpp_voltage_min": "100 V",
            "mpp_voltage_max": "850 V", "inputs": [{"current_max": "26 A", "short_circuit_current_max": "40 A"}],
        }
    },
}  # fmt: skip
UNIT = {
    "type": "plain", "connected_to": "main", "inputs": [{"strings": [{"module": "plain", "modules_in_series": 10}]}],
}  # fmt: skip


def system_of(phases: int, **blocks: Any) -> System:
    """An installation with one inverter of one phase, and what the blocks add. The data are invented."""
    supply = {"phases": phases, "voltage": "400 V" if phases == 3 else "230 V", "earthing_system": "TN-S"}
    spec = {"project": {"title": "Mill"}, "site": {"temperature_min": "-10 °C", "temperature_max": "30 °C"},
            "supply": supply, "types": TYPES, "boards": {"main": {}}, "inverters": {"roof": UNIT}}  # fmt: skip
    return build(Spec.model_validate({**spec, **blocks}))


@pytest.mark.parametrize(
    ("phases", "board", "symbol"),
    [
        (3, "main", "reversible_converter_3ph"),
        (3, "side", "reversible_converter_1ph"),  # a board of one phase
        (1, "main", "reversible_converter_1ph"),
    ],
)
def test_a_converter_has_the_phases_that_it_is_connected_to(phases: int, board: str, symbol: str) -> None:
    cells = {"voltage_min": "40 V", "voltage_max": "58 V", "short_circuit_current": "4 kA"}
    store = {**cells, "connected_to": board, "converter_power": "4 kVA", "dc_circuit": [{"kind": "fuse"}]}
    boards = {"main": {}, "side": {"fed_from": "main", "phases": 1, "line": "L1", "circuit": [{"kind": "breaker"}]}}
    system = system_of(phases, boards=boards, batteries={"store": store})
    assert symbol_of(system.devices["batteries.store"], system) == symbol
    assert symbol_of(system.devices["batteries.store.cells"], system) == "battery"


@pytest.mark.parametrize(
    ("from_", "to", "medium", "radios"),
    [
        ("one", "other", "wireless", {"one", "other"}),
        ("one", "log", "wireless", {"one"}),
        ("log", "one", "wireless", {"one"}),
        ("one", "log", "ethernet", set()),
    ],
)
def test_a_module_is_a_radio_where_a_link_without_cable_ends_at_it(
    from_: str, to: str, medium: str, radios: set[str]
) -> None:
    module = {"kind": "module"}
    data = {
        "devices": {"one": module, "other": module, "log": {"kind": "logger"}},
        "links": [{"from": from_, "to": to, "medium": medium}],
    }
    system = system_of(3, data=data)
    names = {name: symbol_of(system.devices[system.names[name][0]], system) for name in ("one", "other", "log")}
    assert {name for name, symbol in names.items() if symbol == "wireless"} == radios
