"""The disconnecting means on the ways to a source: on the AC side, at the source, and at boxes and the roof."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TypeGuard

from sld.model.device import Apparatus, BatteryUnit, Busbar, Cable, Device, GeneratorUnit, InverterUnit
from sld.model.kinds.ac import MAIN_SWITCH
from sld.model.kinds.role import ISOLATION, SWITCHING
from sld.model.planned import is_planned
from sld.model.system import System

__all__ = ["Source", "ac_side", "at_boxes", "at_source", "main_switches", "sources"]

Source = InverterUnit | BatteryUnit | GeneratorUnit


def sources(system: System) -> list[Source]:
    """Return every source that is there or being built, existing ones too; what is only planned is not there."""
    return [
        device
        for device in system.devices.values()
        if isinstance(device, InverterUnit | BatteryUnit | GeneratorUnit) and not is_planned(system, device)
    ]


def main_switches(system: System) -> list[Apparatus]:
    """Return the main switches towards the network; one of a board behind a backup output opens another source."""
    return [
        each
        for each in system.apparatus(MAIN_SWITCH)
        if not any(isinstance(device, InverterUnit) for device in system.upstream(each.key))
    ]


def ac_side(system: System, source: Device) -> list[Apparatus]:
    """Return what opens the AC side between a source and its board, the nearest to the supply first."""
    return [] if isinstance(source, BatteryUnit) and source.dc else _ahead(system, source)


def _ahead(system: System, source: Device) -> list[Apparatus]:
    """Return what opens the way from a source to its board, or to the inverter that it is behind."""
    found: list[Apparatus] = []
    for device in system.upstream(source.key):
        if isinstance(device, Busbar | InverterUnit):
            break
        if _opens(device):
            found.insert(0, device)
    return found


def at_source(system: System, source: Device) -> list[Device]:
    """Return what opens the DC side at a source: before the first cable; the inverter itself for a switch built in."""
    own: list[Device] = [source] if isinstance(source, InverterUnit) and source.type.dc_switch else []
    return own + [device for device, far in _dc_side(system, source) if not far]


def at_boxes(system: System, source: Device) -> list[Apparatus]:
    """Return what opens the DC side further away: behind a cable, in boxes or at the array."""
    return [device for device, far in _dc_side(system, source) if far]


def _opens(device: Device) -> TypeGuard[Apparatus]:
    return isinstance(device, Apparatus) and device.has(ISOLATION, SWITCHING)


def _dc_side(system: System, source: Device) -> Iterator[tuple[Apparatus, bool]]:
    """Yield what opens the DC side of a source, each with whether a cable is before it; another source ends the way."""
    if isinstance(source, BatteryUnit) and source.dc:
        yield from ((device, False) for device in _ahead(system, source))
    waiting = [(key, False) for key in reversed(system.children.get(source.key, ()))]
    while waiting:
        key, far = waiting.pop()
        device = system.devices[key]
        if not device.dc or isinstance(device, Busbar | InverterUnit | GeneratorUnit):
            continue  # an AC circuit behind the source, such as that of a backed-up board
        if _opens(device):
            yield device, far
        far = far or isinstance(device, Cable)
        waiting.extend((child, far) for child in reversed(system.children.get(key, ())))
