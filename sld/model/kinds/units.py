"""The kinds of what circuits serve and are made of: sources, boards, converters, loads, earthing, data devices.

Letters are classes of IEC 81346-2:2009 (from memory); GA (network, generator) and EZ (load) are our choice, no example
of the standard was seen.
"""

from __future__ import annotations

from typing import Any

from sld.model.kinds.role import CONVERSION, STORAGE, TRANSFORMATION
from sld.model.kinds.row import Kind
from sld.words import phrase

__all__ = [
    "BATTERY",
    "BATTERY_CONVERTER",
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

NETWORK: Kind[Any] = Kind("network", "GA", phrase("supply"), "network")
TRANSFORMER: Kind[Any] = Kind(
    "transformer", "TA", phrase("transformer"), "transformer", roles=frozenset({TRANSFORMATION})
)
BOARD: Kind[Any] = Kind("board", "UC", phrase("board"), "busbar")
TRUNK: Kind[Any] = Kind("trunk", "WC", phrase("AC trunk cable"), "busbar")
JUNCTION_BOX: Kind[Any] = Kind("junction_box", "XD", phrase("junction box"))
INVERTER: Kind[Any] = Kind("inverter", "TB", phrase("inverter"), roles=frozenset({CONVERSION}))
INPUT: Kind[Any] = Kind("input", "XD", phrase("input"), "terminal")
STRING: Kind[Any] = Kind("string", "GC", phrase("string"))
BATTERY: Kind[Any] = Kind("battery", "GB", phrase("battery"), roles=frozenset({STORAGE}))
BATTERY_CONVERTER: Kind[Any] = Kind(
    "battery_converter", "TB", phrase("battery converter"), roles=frozenset({CONVERSION})
)
"""Where the spec gives the circuit between it and the battery, so that both are drawn."""

CHARGE_CONVERTER: Kind[Any] = Kind(
    "charge_converter", "TA", phrase("charge converter"), "charge_converter", roles=frozenset({CONVERSION})
)
GENERATOR: Kind[Any] = Kind("generator", "GA", phrase("generator"), "generator")
LOAD: Kind[Any] = Kind("load", "EZ", phrase("load"), "load")
CHARGING_POINT: Kind[Any] = Kind("charging_point", "EZ", phrase("charging point"), "charge_point")
EARTH_CONDUCTOR: Kind[Any] = Kind("earth_conductor", "WE", phrase("earth conductor"))
EARTH_TERMINAL: Kind[Any] = Kind("earth_terminal", "XE", phrase("earth terminal"))
DATA_CABLE: Kind[Any] = Kind("data_cable", "WF", phrase("data cable"))
LOGGER: Kind[Any] = Kind("logger", "KF", phrase("data logger"), "logger")
ENERGY_MANAGER: Kind[Any] = Kind("energy_manager", "KF", phrase("energy manager"), "energy_manager")
COMMUNICATION_MODULE: Kind[Any] = Kind("module", "TF", phrase("communication module"), "communication_module")
ROUTER: Kind[Any] = Kind("router", "TF", phrase("router"), "router")
