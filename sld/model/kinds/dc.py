"""The kinds of apparatus and cable of DC circuits. Letters and words as in `ac.py`."""

from __future__ import annotations

from sld.model.kinds.role import (
    AS_STATED,
    CARRYING,
    ISOLATION,
    MEASURING,
    OVERCURRENT_PROTECTION,
    POLES,
    REVERSE_BLOCKING,
    SURGE_PROTECTION,
    SWITCHING,
    SWITCHING_ON_COMMAND,
)
from sld.model.kinds.row import Form, Kind
from sld.spec.blocks import circuit, dc_path
from sld.spec.blocks.cable import DcCable

__all__ = [
    "BLOCKING_DIODE",
    "DC_CABLE",
    "DC_FUSE",
    "DC_ISOLATOR",
    "DC_SURGE_PROTECTION",
    "DISCONNECTOR",
    "INSULATION_MONITOR",
    "PLUG_CONNECTOR",
    "RAPID_SHUTDOWN",
]

DC_ISOLATOR: Kind[circuit.DcIsolator] = Kind(
    "isolator", "QB", "DC isolator", "switch_disconnector", circuit.DcIsolator,
    roles=frozenset({ISOLATION, SWITCHING, CARRYING, POLES}),
)  # fmt: skip
DC_FUSE: Kind[circuit.DcFuse] = Kind(
    "fuse", "FC", "string fuse", "fuse", circuit.DcFuse,
    roles=frozenset({OVERCURRENT_PROTECTION}),
    family="gPV",
)  # fmt: skip
"""In the circuit of an input it is called an array fuse: see `device_word`."""

DC_SURGE_PROTECTION: Kind[circuit.DcSurgeProtection] = Kind(
    "surge_protection", "FA", "DC surge protective device", "surge_protection_2", circuit.DcSurgeProtection,
    roles=frozenset({SURGE_PROTECTION}),
    forms=(
        Form("test_class", "1", symbol="surge_protection_1"),
        Form("test_class", "1+2", symbol="surge_protection_1_2"),
    ),
)  # fmt: skip
BLOCKING_DIODE: Kind[circuit.BlockingDiode] = Kind(
    "diode", "RA", "blocking diode", "blocking_diode", circuit.BlockingDiode,
    roles=frozenset({REVERSE_BLOCKING, CARRYING}),
)  # fmt: skip
DISCONNECTOR: Kind[dc_path.DcDisconnector] = Kind(
    "disconnector", "QB", "DC disconnector", "disconnector", dc_path.DcDisconnector,
    roles=frozenset({ISOLATION, CARRYING, AS_STATED}),
)  # fmt: skip
PLUG_CONNECTOR: Kind[dc_path.PlugConnector] = Kind(
    "plug_connector", "XD", "plug connector", "plug_connector", dc_path.PlugConnector,
    roles=frozenset({CARRYING, AS_STATED}),
)  # fmt: skip
RAPID_SHUTDOWN: Kind[dc_path.RapidShutdown] = Kind(
    "rapid_shutdown", "QA", "rapid shutdown device", "rapid_shutdown", dc_path.RapidShutdown,
    roles=frozenset({SWITCHING_ON_COMMAND, CARRYING, AS_STATED}),
)  # fmt: skip
INSULATION_MONITOR: Kind[dc_path.InsulationMonitor] = Kind(
    "insulation_monitor", "BU", "insulation monitoring device", "insulation_monitor", dc_path.InsulationMonitor,
    roles=frozenset({MEASURING, AS_STATED}),
)  # fmt: skip
DC_CABLE: Kind[DcCable] = Kind("cable", "WD", "cable", block=DcCable)
