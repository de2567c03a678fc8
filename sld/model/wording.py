"""The word for each kind of device and medium, in the one place that schedules, messages and labels read it from."""

from __future__ import annotations

from sld.model.device import Device
from sld.model.kinds.ac import INTERFACE_PROTECTION
from sld.model.kinds.dc import DC_FUSE
from sld.model.system import System
from sld.spec.blocks.inverter import InverterType

__all__ = ["MEDIA", "built_in", "device_word", "plural"]

MEDIA = {"ethernet": "Ethernet", "wireless": "wireless", "pulse": "pulse output"}
"""Words for the media of data links."""


def device_word(device: Device) -> str:
    """Return the word for a device: `circuit-breaker`, `DC isolator`, `RCD`."""
    if device.kind is DC_FUSE and ".circuit." in device.key:
        return "array fuse"
    return device.kind.word_of(device.given)


def plural(word: str, count: int) -> str:
    """Write how many there are of something: `1 RCD`, `2 main switches`."""
    if count == 1 or word.endswith("protection"):
        return f"{count} {word}"
    return f"{count} {word}{'es' if word.endswith(('ch', 's')) else 's'}"


def built_in(system: System, type_: InverterType) -> tuple[str, ...]:
    """Return the functions that are built into an inverter, in words.

    Where the type does not say, interface protection is taken as built in unless the system has it elsewhere.
    """
    elsewhere = INTERFACE_PROTECTION in system.kinds
    protects = type_.interface_protection and ("interface_protection" in type_.model_fields_set or not elsewhere)
    found = ["DC switch"] if type_.dc_switch else []
    found += [
        f"{side} surge protection type {test_class}"
        for side, test_class in (("DC", type_.dc_surge_protection), ("AC", type_.ac_surge_protection))
        if test_class != "none"
    ]
    return (*found, INTERFACE_PROTECTION.word) if protects else tuple(found)
