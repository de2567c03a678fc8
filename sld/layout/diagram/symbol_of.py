"""Which symbol of the catalogue a device is drawn with."""

from __future__ import annotations

from functools import singledispatch

from sld.model.conductors import cores
from sld.model.device import (
    Apparatus,
    BatteryUnit,
    Busbar,
    Cable,
    ChargeConverter,
    Consumer,
    DataNode,
    Device,
    GeneratorUnit,
    InputTerminal,
    InverterUnit,
    Network,
    StringGroup,
    Transformer,
)
from sld.model.system import System
from sld.spec.blocks.circuit import AcSurgeProtection, Breaker, DcSurgeProtection, Fuse, Meter

__all__ = ["OWNERSHIP_BOUNDARY", "symbol_of"]

OWNERSHIP_BOUNDARY = "ownership_boundary"
"""Symbol that is no device: it has no designation, so that no mark could name it."""

_BY_KIND = {
    "rcd": "rcd",
    "rcbo": "rcbo",
    "isolator": "switch_disconnector",
    "main_switch": "switch_disconnector",
    "contactor": "contactor",
    "interface_protection": "interface_protection",
    "diode": "blocking_diode",
    "disconnector": "disconnector",
    "plug_connector": "plug_connector",
    "rapid_shutdown": "rapid_shutdown",
    "insulation_monitor": "insulation_monitor",
    "fuse": "fuse",
    "service_fuse": "fuse",
    "logger": "logger",
    "energy_manager": "energy_manager",
    "router": "router",
    "module": "wireless",
    "load": "load",
    "charging_point": "charge_point",
}


@singledispatch
def _symbol(device: Device, system: System) -> str:
    raise TypeError(f"no symbol for {device.kind}")


def symbol_of(device: Device, system: System) -> str:
    """Return the name of the device's symbol. Raises TypeError for a class of device that has none."""
    return _symbol(device, system)


@_symbol.register
def _(device: Network, system: System) -> str:
    return "network"


@_symbol.register
def _(device: Transformer, system: System) -> str:
    return "transformer"


@_symbol.register
def _(device: Busbar, system: System) -> str:
    return "busbar"


@_symbol.register
def _(device: InverterUnit, system: System) -> str:
    if device.type.micro:
        return "microinverter_3ph" if device.type.phases == 3 else "microinverter"
    phases = "3ph" if device.type.phases == 3 else "1ph"
    return f"inverter_{phases}_isolated" if device.type.galvanic_separation else f"inverter_{phases}"


@_symbol.register
def _(device: InputTerminal, system: System) -> str:
    return "terminal"


@_symbol.register
def _(device: StringGroup, system: System) -> str:
    if device.given.count > 1:
        return "pv_array"
    return "pv_string" if device.given.modules_in_series > 1 else "pv_module"


@_symbol.register
def _(device: Consumer, system: System) -> str:
    return _BY_KIND[device.kind]


@_symbol.register
def _(device: BatteryUnit, system: System) -> str:
    return "battery" if device.dc else "battery_converter"


@_symbol.register
def _(device: ChargeConverter, system: System) -> str:
    return "charge_converter"


@_symbol.register
def _(device: GeneratorUnit, system: System) -> str:
    return "generator"


@_symbol.register
def _(device: DataNode, system: System) -> str:
    return _BY_KIND[device.kind]


@_symbol.register
def _(device: Cable, system: System) -> str:
    return f"cable_{cores(system, device)}"


@_symbol.register
def _(device: Apparatus, system: System) -> str:
    given = device.given
    if isinstance(given, AcSurgeProtection | DcSurgeProtection):
        return f"surge_protection_{given.test_class.replace('+', '_')}"
    if isinstance(given, Breaker):
        return "circuit_breaker" if given.construction == "miniature" else "moulded_case_breaker"
    if isinstance(given, Fuse) and given.switch:
        return "fuse_switch_disconnector"
    if isinstance(given, Meter):
        if given.connection == "ct":
            return "meter_ct"
        return "meter_bidirectional" if given.bidirectional else "meter"
    return _BY_KIND[device.kind]
