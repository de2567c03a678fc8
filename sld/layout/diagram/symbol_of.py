"""Which symbol of the catalogue a device is drawn with: the one of its kind, but for a few that depend on more."""

from __future__ import annotations

from functools import singledispatch

from sld.model.conductors import cores, phases
from sld.model.device import (
    BatteryCells,
    BatteryUnit,
    Cable,
    DataNode,
    Device,
    InverterUnit,
    StringGroup,
)
from sld.model.kinds.units import BATTERY_CONVERTER, COMMUNICATION_MODULE
from sld.model.system import System

__all__ = ["OWNERSHIP_BOUNDARY", "symbol_of"]

OWNERSHIP_BOUNDARY = "ownership_boundary"
"""Symbol that is no device: it has no designation, so that no mark could name it."""


@singledispatch
def _symbol(device: Device, system: System) -> str:
    return device.kind.symbol_of(device.given)


def symbol_of(device: Device, system: System) -> str:
    """Return the name of the device's symbol: that of its kind, or where it depends on more than that, as below."""
    return _symbol(device, system)


@_symbol.register
def _(device: InverterUnit, system: System) -> str:
    if device.type.micro:
        return "microinverter_3ph" if device.type.phases == 3 else "microinverter"
    phases = "3ph" if device.type.phases == 3 else "1ph"
    return f"inverter_{phases}_isolated" if device.type.galvanic_separation else f"inverter_{phases}"


@_symbol.register
def _(device: StringGroup, system: System) -> str:
    if device.given.count > 1:
        return "pv_array"
    return "pv_string" if device.given.modules_in_series > 1 else "pv_module"


@_symbol.register
def _(device: BatteryUnit, system: System) -> str:
    if device.kind is BATTERY_CONVERTER:
        return "reversible_converter_3ph" if phases(system, device.key) == 3 else "reversible_converter_1ph"
    return "battery" if device.dc else "battery_converter"


@_symbol.register
def _(device: DataNode, system: System) -> str:
    links = [link for link in system.links if link.medium == "wireless"]
    ends = {key for link in links for name in (link.from_device, link.to_device) for key in system.names[name]}
    is_radio = device.kind is COMMUNICATION_MODULE and device.key in ends
    return "wireless" if is_radio else device.kind.symbol_of(device.given)


@_symbol.register
def _(device: BatteryCells, system: System) -> str:
    return "battery"


@_symbol.register
def _(device: Cable, system: System) -> str:
    return f"cable_{cores(system, device)}"
