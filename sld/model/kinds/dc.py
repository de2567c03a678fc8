"""The kinds of apparatus and cable of DC circuits. Letters and words as in `ac.py`."""

from __future__ import annotations

from sld.model.kinds.role import (
    AS_STATED,
    CARRYING,
    CONVERSION,
    ISOLATION,
    MEASURING,
    OVERCURRENT_PROTECTION,
    POLES,
    REVERSE_BLOCKING,
    SURGE_PROTECTION,
    SWITCHING,
    SWITCHING_ON_COMMAND,
    TRIPPING,
)
from sld.model.kinds.row import Form, Kind
from sld.spec.blocks import circuit, dc_breaker, dc_path, optimiser
from sld.spec.blocks.cable import DcCable
from sld.words import counted, phrase

__all__ = [
    "BLOCKING_DIODE",
    "BRANCH_CONNECTOR",
    "DC_BREAKER",
    "DC_CABLE",
    "DC_FUSE",
    "DC_ISOLATOR",
    "DC_SURGE_PROTECTION",
    "DISCONNECTOR",
    "INSULATION_MONITOR",
    "OPTIMISER",
    "PLUG_CONNECTOR",
    "RAPID_SHUTDOWN",
]

DC_ISOLATOR: Kind[circuit.DcIsolator] = Kind(
    "isolator", "QB", phrase("DC isolator"), "switch_disconnector", circuit.DcIsolator,
    several=counted("{count} DC isolator", "{count} DC isolators", 0),
    roles=frozenset({ISOLATION, SWITCHING, CARRYING, POLES}),
)  # fmt: skip
DC_FUSE: Kind[circuit.DcFuse] = Kind(
    "fuse", "FC", phrase("string fuse"), "fuse", circuit.DcFuse,
    several=counted("{count} string fuse", "{count} string fuses", 0),
    roles=frozenset({OVERCURRENT_PROTECTION}),
    family="gPV",
)  # fmt: skip
"""In the circuit of an input it is called an array fuse: see `device_word`."""

DC_BREAKER: Kind[dc_breaker.DcBreaker] = Kind(
    "breaker", "FC", phrase("DC circuit-breaker"), "circuit_breaker", dc_breaker.DcBreaker,
    several=counted("{count} DC circuit-breaker", "{count} DC circuit-breakers", 0),
    roles=frozenset({OVERCURRENT_PROTECTION, TRIPPING, SWITCHING, POLES, AS_STATED}),
    forms=(
        Form("isolating", True, more_roles=frozenset({ISOLATION})),
        Form(
            "construction", "moulded_case",
            word=phrase("DC moulded-case circuit-breaker"),
            several=counted("{count} DC moulded-case circuit-breaker", "{count} DC moulded-case circuit-breakers", 0),
            symbol="moulded_case_breaker",
        ),
    ),
)  # fmt: skip

DC_SURGE_PROTECTION: Kind[circuit.DcSurgeProtection] = Kind(
    "surge_protection", "FA", phrase("DC surge protective device"), "surge_protection_2", circuit.DcSurgeProtection,
    several=counted("{count} DC surge protective device", "{count} DC surge protective devices", 0),
    roles=frozenset({SURGE_PROTECTION}),
    forms=(
        Form("test_class", "1", symbol="surge_protection_1"),
        Form("test_class", "1+2", symbol="surge_protection_1_2"),
    ),
)  # fmt: skip
BLOCKING_DIODE: Kind[circuit.BlockingDiode] = Kind(
    "diode", "RA", phrase("blocking diode"), "blocking_diode", circuit.BlockingDiode,
    several=counted("{count} blocking diode", "{count} blocking diodes", 0),
    roles=frozenset({REVERSE_BLOCKING, CARRYING}),
)  # fmt: skip
DISCONNECTOR: Kind[dc_path.DcDisconnector] = Kind(
    "disconnector", "QB", phrase("DC disconnector"), "disconnector", dc_path.DcDisconnector,
    several=counted("{count} DC disconnector", "{count} DC disconnectors", 0),
    roles=frozenset({ISOLATION, CARRYING, AS_STATED}),
)  # fmt: skip
OPTIMISER: Kind[optimiser.Optimiser] = Kind(
    "optimiser", "TA", phrase("power optimiser"), "optimiser", optimiser.Optimiser,
    several=counted("{count} power optimiser", "{count} power optimisers", 0),
    roles=frozenset({CONVERSION}),
)  # fmt: skip
PLUG_CONNECTOR: Kind[dc_path.PlugConnector] = Kind(
    "plug_connector", "XD", phrase("plug connector"), "plug_connector", dc_path.PlugConnector,
    several=counted("{count} plug connector", "{count} plug connectors", 0),
    roles=frozenset({CARRYING, AS_STATED}),
)  # fmt: skip
BRANCH_CONNECTOR: Kind[dc_path.BranchConnector] = Kind(
    "branch_connector", "XD", phrase("branch connector"), "branch_connector", dc_path.BranchConnector,
    several=counted("{count} branch connector", "{count} branch connectors", 0),
    roles=frozenset({CARRYING, AS_STATED}),
)  # fmt: skip
RAPID_SHUTDOWN: Kind[dc_path.RapidShutdown] = Kind(
    "rapid_shutdown", "QA", phrase("rapid shutdown device"), "rapid_shutdown", dc_path.RapidShutdown,
    several=counted("{count} rapid shutdown device", "{count} rapid shutdown devices", 0),
    roles=frozenset({SWITCHING_ON_COMMAND, CARRYING, AS_STATED}),
)  # fmt: skip
INSULATION_MONITOR: Kind[dc_path.InsulationMonitor] = Kind(
    "insulation_monitor", "BU", phrase("insulation monitoring device"), "insulation_monitor", dc_path.InsulationMonitor,
    several=counted("{count} insulation monitoring device", "{count} insulation monitoring devices", 0),
    roles=frozenset({MEASURING, AS_STATED}),
)  # fmt: skip
DC_CABLE: Kind[DcCable] = Kind("cable", "WD", phrase("cable"), block=DcCable)
