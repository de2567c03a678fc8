"""A battery as one with its converter, or both apart; what a breaker or fuse is by its values. Our own rules."""

from __future__ import annotations

from typing import Any

import pytest
from small_specs import system

from sld.model.battery_side import is_battery_checked
from sld.model.kinds import ac, battery, dc
from sld.model.kinds.role import AT_BATTERY, ISOLATION, OVERCURRENT_PROTECTION, SWITCHING
from sld.model.kinds.role import Role as DeviceRole
from sld.model.kinds.row import Kind

STORE = {"converter_phases": 3, "converter_power": "5 kVA"}
CELLS = {"voltage_min": "40 V", "voltage_max": "58 V", "short_circuit_current": "4 kA"}
APART = {**STORE, **CELLS, "dc_circuit": [{"kind": "fuse"}, {"kind": "cable", "length": "2 m"}]}


def test_a_battery_without_a_circuit_is_one_with_its_converter() -> None:
    made = system({"batteries": {"store": STORE}})
    (store,) = [key for key in made.devices if key.startswith("batteries.store") and "circuit" not in key]
    assert not made.devices[store].dc
    assert not is_battery_checked(made.devices[store])


def test_a_battery_with_a_circuit_stands_behind_its_converter_and_belongs_to_no_array() -> None:
    made = system({"batteries": {"store": APART}})
    behind = {device.key: device for device in made.downstream("batteries.store")}
    assert list(behind) == ["batteries.store.dc_circuit.1", "batteries.store.dc_circuit.0", "batteries.store.cells"]
    assert all(device.dc for device in behind.values())
    assert not any(device.in_array for key, device in behind.items() if "dc_circuit" in key)
    assert is_battery_checked(made.devices["batteries.store"])
    strings = made.downstream("inverters.roof.inputs.0")
    assert strings
    assert all(device.in_array for device in strings)
    assert not made.devices["inverters.roof.circuit.0"].in_array


def of_kind(name: str, values: dict[str, Any]) -> tuple[Kind[Any], object]:
    """The row of a kind, and a device of it with these values."""
    kind = next(vars(room)[name] for room in (ac, dc, battery) if name in vars(room))
    return kind, kind.block.model_validate({"kind": kind.name, **values})


@pytest.mark.parametrize(
    ("name", "values", "role", "has"),
    [
        ("BREAKER", {"isolating": True}, ISOLATION, True),
        ("BREAKER", {"isolating": False}, ISOLATION, False),
        ("BREAKER", {}, ISOLATION, False),
        ("DC_BREAKER", {"isolating": True}, ISOLATION, True),
        ("DC_BREAKER", {"isolating": False}, ISOLATION, False),
        ("DC_BREAKER", {}, OVERCURRENT_PROTECTION, True),
        ("BATTERY_BREAKER", {"isolating": True}, ISOLATION, True),
        ("BATTERY_BREAKER", {"isolating": False}, ISOLATION, False),
        ("BATTERY_BREAKER", {}, AT_BATTERY, True),
        ("BATTERY_FUSE", {"switch": True}, ISOLATION, True),
        ("BATTERY_FUSE", {"switch": True}, SWITCHING, True),
        ("BATTERY_FUSE", {}, ISOLATION, False),
        ("BATTERY_ISOLATOR", {}, OVERCURRENT_PROTECTION, False),
        ("DC_ISOLATOR", {}, ISOLATION, True),
        ("DC_FUSE", {}, SWITCHING, False),
    ],
)
def test_roles(name: str, values: dict[str, Any], role: DeviceRole[Any], has: bool) -> None:
    kind, given = of_kind(name, values)
    assert kind.has(role, given) is has


@pytest.mark.parametrize(
    ("name", "values", "symbol"),
    [
        ("DC_BREAKER", {}, "circuit_breaker"),
        ("DC_BREAKER", {"construction": "moulded_case"}, "moulded_case_breaker"),
        ("BATTERY_BREAKER", {"construction": "moulded_case"}, "moulded_case_breaker"),
        ("BATTERY_FUSE", {"switch": True}, "fuse_switch_disconnector"),
        ("BATTERY_FUSE", {}, "fuse"),
        ("BREAKER", {}, "circuit_breaker"),
    ],
)
def test_symbols_by_values(name: str, values: dict[str, Any], symbol: str) -> None:
    kind, given = of_kind(name, values)
    assert kind.symbol_of(given) == symbol


@pytest.mark.parametrize(
    ("changes", "frequency_hz"),
    [
        ({}, 50.0),
        ({"profile": "NEC 690", "supply.voltage": "480 V"}, 60.0),
        ({"supply.country": "US"}, 60.0),
        ({"supply.country": "DE"}, 50.0),
        ({"supply.country": "JP", "supply.grid_rules": "generic"}, 50.0),
    ],
)
def test_the_frequency_is_that_of_the_continent(changes: dict[str, Any], frequency_hz: float) -> None:
    """50 Hz in Europe, 60 Hz in North America (IEC 60038, table 1)."""
    assert system(changes).supply.frequency_hz == frequency_hz
