"""The word for each kind of device and medium, in the one place that schedules, messages and labels read it from."""

from __future__ import annotations

from sld.model.device import Apparatus, Device
from sld.model.system import System
from sld.spec.blocks.circuit import (
    BlockingDiode,
    Breaker,
    DcFuse,
    DcIsolator,
    DcSurgeProtection,
    Fuse,
)
from sld.spec.blocks.inverter import InverterType

__all__ = ["INTERFACE_PROTECTION", "MEDIA", "built_in", "device_word", "plural"]

INTERFACE_PROTECTION = "interface protection"

MEDIA = {"ethernet": "Ethernet", "wireless": "wireless", "pulse": "pulse output"}
"""Words for the media of data links."""

_WORDS = {
    "network": "supply",
    "busbar": "board",
    "trunk": "AC trunk cable",
    "breaker": "circuit-breaker",
    "service_fuse": "service fuse",
    "rcd": "RCD",
    "rcbo": "RCBO",
    "main_switch": "main switch",
    "surge_protection": "surge protective device",
    "interface_protection": INTERFACE_PROTECTION,
    "charging_point": "charging point",
    "disconnector": "DC disconnector",
    "rapid_shutdown": "rapid shutdown device",
    "insulation_monitor": "insulation monitoring device",
    "energy_manager": "energy manager",
    "module": "communication module",
    "logger": "data logger",
}
"""Words by kind where the kind itself is none, in the terms of IEC 60050-442, -461 and -826 (from memory)."""


def device_word(device: Device) -> str:
    """Return the word for a device: `circuit-breaker`, `DC isolator`, `RCD`."""
    given = device.given if isinstance(device, Apparatus) else None
    if isinstance(given, DcIsolator):
        return "DC isolator"
    if isinstance(given, DcFuse):
        return "array fuse" if ".circuit." in device.key else "string fuse"
    if isinstance(given, DcSurgeProtection):
        return "DC surge protective device"
    if isinstance(given, BlockingDiode):
        return "blocking diode"
    if isinstance(given, Fuse) and given.switch:
        return "fuse-switch-disconnector"
    if isinstance(given, Breaker) and given.construction == "moulded_case":
        return "moulded-case circuit-breaker"
    return _WORDS.get(device.kind, device.kind.replace("_", " "))


def plural(word: str, count: int) -> str:
    """Write how many there are of something: `1 RCD`, `2 main switches`."""
    if count == 1 or word.endswith("protection"):
        return f"{count} {word}"
    return f"{count} {word}{'es' if word.endswith(('ch', 's')) else 's'}"


def built_in(system: System, type_: InverterType) -> tuple[str, ...]:
    """Return the functions that are built into an inverter, in words.

    Where the type does not say, interface protection is taken as built in unless the system has it elsewhere.
    """
    elsewhere = "interface_protection" in system.kinds
    protects = type_.interface_protection and ("interface_protection" in type_.model_fields_set or not elsewhere)
    found = ["DC switch"] if type_.dc_switch else []
    found += [
        f"{side} surge protection type {test_class}"
        for side, test_class in (("DC", type_.dc_surge_protection), ("AC", type_.ac_surge_protection))
        if test_class != "none"
    ]
    return (*found, INTERFACE_PROTECTION) if protects else tuple(found)
