"""The devices a rule looks at: those of one kind, of one circuit, on the way from an input to its strings."""

from __future__ import annotations

from collections.abc import Iterator

from sld.model.device import Apparatus, Busbar, Cable, Device, InputTerminal, StringGroup
from sld.model.system import System
from sld.spec.blocks.circuit import AcCable, DcFuse, DcSurgeProtection
from sld.steps.dc_devices import is_string_fuse
from sld.steps.protection import has_residual_device, overcurrent_devices

__all__ = [
    "ac_cables",
    "apparatus",
    "devices_of_input",
    "has_dc_surge_protection",
    "has_residual_device",
    "overcurrent_devices",
    "own_circuit",
    "string_fuse_of",
]


def apparatus(system: System, *blocks: type[object]) -> Iterator[Apparatus]:
    """Yield the apparatus that was given as one of the blocks, in the order of the tree."""
    for device in system.of(Apparatus):
        if isinstance(device.given, blocks):
            yield device


def ac_cables(system: System) -> Iterator[Cable]:
    """Yield the AC cables."""
    for cable in system.of(Cable):
        if isinstance(cable.given, AcCable):
            yield cable


def own_circuit(system: System, key: str) -> list[Device]:
    """Return the devices of the AC circuit that serves a unit or a busbar, the nearest first.

    The circuit of an AC trunk cable is that of every micro-inverter on it.
    """
    found = []
    for device in system.upstream(key):
        if isinstance(device, Busbar) and device.given.trunk:
            key = device.key
            continue
        if device.owner != key:
            break
        found.append(device)
    return found


def devices_of_input(system: System, terminal: InputTerminal, *blocks: type[object]) -> list[Apparatus]:
    """Return the apparatus of one input, from the inverter to the strings, that was given as one of the blocks."""
    found = (device for device in system.downstream(terminal.key) if isinstance(device, Apparatus))
    return [device for device in found if isinstance(device.given, blocks)]


def has_dc_surge_protection(system: System, terminal: InputTerminal) -> bool:
    """Return whether an input has surge protection: in its circuit, or built into the inverter."""
    built_in = system.inverter_of(terminal).type.dc_surge_protection != "none"
    return built_in or bool(devices_of_input(system, terminal, DcSurgeProtection))


def string_fuse_of(system: System, group: StringGroup) -> Apparatus | None:
    """Return the fuse that each string of a group, or each few of them that are joined, has to itself, or None."""
    for device in system.upstream(group.key):
        if not device.dc:
            return None
        if isinstance(device, Apparatus) and isinstance(device.given, DcFuse):
            return device if is_string_fuse(system, device) else None
    return None
