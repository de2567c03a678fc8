"""What is only planned is told apart from what is there or is being built."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TypeVar

from sld.model.device import BatteryUnit, Device, InputTerminal, InverterUnit, StringGroup
from sld.model.system import System
from sld.model.walk import PLANNED

__all__ = ["feeding", "is_planned", "leaves_out_planned", "without_planned"]

AnyDevice = TypeVar("AnyDevice", bound=Device)


def is_planned(system: System, device: Device) -> bool:
    """Return whether a device is only planned: itself, the inverter that it belongs to, or all strings of an input."""
    owner = system.devices.get(device.owner)
    if device.status == PLANNED or (isinstance(owner, InverterUnit) and owner.status == PLANNED):
        return True
    if not isinstance(device, InputTerminal):
        return False
    strings = [each for each in system.downstream(device.key) if isinstance(each, StringGroup)]
    return bool(strings) and all(each.status == PLANNED for each in strings)


def without_planned(system: System, devices: Iterable[AnyDevice]) -> list[AnyDevice]:
    """Return those that are not only planned; all where nothing else is there."""
    found = list(devices)
    if not system.walked.has_planned:
        return found
    return [each for each in found if not is_planned(system, each)] or found


def feeding(system: System) -> list[InverterUnit | BatteryUnit]:
    """Return what feeds the AC side: inverters, and batteries with a converter of their own."""
    sources = system.whole.among(InverterUnit, BatteryUnit)
    return [each for each in sources if isinstance(each, InverterUnit | BatteryUnit) and not each.dc]


def leaves_out_planned(system: System, devices: Iterable[Device]) -> bool:
    """Return whether `without_planned` leaves one out."""
    found = list(devices)
    return len(without_planned(system, found)) < len(found)
