"""How a message begins: the word for the device and its designation."""

from __future__ import annotations

from sld.model.device import Device
from sld.model.system import System

__all__ = ["designation_of", "named"]

_WORDS = {
    "breaker": "circuit-breaker",
    "service_fuse": "service fuse",
    "rcd": "RCD",
    "rcbo": "RCBO",
    "main_switch": "main switch",
    "surge_protection": "surge protective device",
    "interface_protection": "interface protection",
    "charging_point": "charging point",
    "energy_manager": "energy manager",
    "busbar": "board",
    "network": "supply",
}


def named(device: Device) -> str:
    """Return the word for a device and its designation: `string -TB1-GC1`."""
    return f"{_WORDS.get(device.kind, device.kind)} {device.designation}"


def designation_of(system: System, key: str) -> str:
    """Return the designation behind the key of a finding: of a device, a data chain or an earthing conductor."""
    if key in system.devices:
        return system.devices[key].designation
    for chain in system.chains:
        if chain.key == key:
            return chain.designation
    for conductor in system.earth_conductors:
        if conductor.key == key:
            return conductor.designation
    return ""
