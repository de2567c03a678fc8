"""The kinds of what circuits serve and are made of: sources, boards, converters, loads, earthing, data devices.

Letters are classes of IEC 81346-2:2009 (from memory); GA (network, generator) and EZ (load) are our choice, no example
of the standard was seen.
"""

from __future__ import annotations

from typing import Any

from sld.model.kinds.role import CONVERSION, STORAGE, TRANSFORMATION
from sld.model.kinds.row import Kind

__all__ = [
    "BATTERY",
    "BOARD",
    "CHARGE_CONVERTER",
    "CHARGING_POINT",
    "COMMUNICATION_MODULE",
    "DATA_CABLE",
    "EARTH_CONDUCTOR",
    "EARTH_TERMINAL",
    "ENERGY_MANAGER",
    "GENERATOR",
    "INPUT",
    "INVERTER",
    "JUNCTION_BOX",
    "LOAD",
    "LOGGER",
    "NETWORK",
    "ROUTER",
    "STRING",
    "TRANSFORMER",
    "TRUNK",
]

NETWORK: Kind[Any] = Kind("network", "GA", "supply", "network")
TRANSFORMER: Kind[Any] = Kind("transformer", "TA", "transformer", "transformer", roles=frozenset({TRANSFORMATION}))
BOARD: Kind[Any] = Kind("board", "UC", "board", "busbar")
TRUNK: Kind[Any] = Kind("trunk", "WC", "AC trunk cable", "busbar")
JUNCTION_BOX: Kind[Any] = Kind("junction_box", "XD", "junction box")
INVERTER: Kind[Any] = Kind("inverter", "TB", "inverter", roles=frozenset({CONVERSION}))
INPUT: Kind[Any] = Kind("input", "XD", "input", "terminal")
STRING: Kind[Any] = Kind("string", "GC", "string")
BATTERY: Kind[Any] = Kind("battery", "GB", "battery", roles=frozenset({STORAGE}))
CHARGE_CONVERTER: Kind[Any] = Kind(
    "charge_converter", "TA", "charge converter", "charge_converter", roles=frozenset({CONVERSION})
)
GENERATOR: Kind[Any] = Kind("generator", "GA", "generator", "generator")
LOAD: Kind[Any] = Kind("load", "EZ", "load", "load")
CHARGING_POINT: Kind[Any] = Kind("charging_point", "EZ", "charging point", "charge_point")
EARTH_CONDUCTOR: Kind[Any] = Kind("earth_conductor", "WE", "earth conductor")
EARTH_TERMINAL: Kind[Any] = Kind("earth_terminal", "XE", "earth terminal")
DATA_CABLE: Kind[Any] = Kind("data_cable", "WF", "data cable")
LOGGER: Kind[Any] = Kind("logger", "KF", "data logger", "logger")
ENERGY_MANAGER: Kind[Any] = Kind("energy_manager", "KF", "energy manager", "energy_manager")
COMMUNICATION_MODULE: Kind[Any] = Kind("module", "TF", "communication module", "wireless")
ROUTER: Kind[Any] = Kind("router", "TF", "router", "router")
