"""The kinds of apparatus and cable of AC circuits.

Letters are classes of IEC 81346-2:2009 (from memory; FA, FB and FC seen in open teaching sources), words are terms of
IEC 60050-441, -442 and -826 (from memory).
"""

from __future__ import annotations

from sld.model.kinds.role import (
    BACKED_UP,
    CARRYING,
    DIRECTED,
    INTERFACE,
    ISOLATION,
    MEASURING,
    METERING,
    OVERCURRENT_PROTECTION,
    POLES,
    RESIDUAL_PROTECTION,
    SURGE_PROTECTION,
    SWITCHING,
    SWITCHING_ON_COMMAND,
    TRIPPING,
)
from sld.model.kinds.row import Form, Kind
from sld.spec.blocks import circuit
from sld.spec.blocks.cable import AcCable
from sld.spec.blocks.interface_relay import InterfaceRelay
from sld.words import counted, phrase

__all__ = [
    "AC_CABLE",
    "AC_SURGE_PROTECTION",
    "BREAKER",
    "CHANGEOVER",
    "CONTACTOR",
    "FUSE",
    "INTERFACE_PROTECTION",
    "INTERFACE_RELAY",
    "ISOLATOR",
    "MAIN_SWITCH",
    "METER",
    "NETWORK_SEPARATION",
    "RCBO",
    "RCD",
    "SERVICE_FUSE",
]

BREAKER: Kind[circuit.Breaker] = Kind(
    "breaker", "FC", phrase("circuit-breaker"), "circuit_breaker", circuit.Breaker,
    several=counted("{count} circuit-breaker", "{count} circuit-breakers", 0),
    roles=frozenset({BACKED_UP, OVERCURRENT_PROTECTION, TRIPPING, SWITCHING, POLES, DIRECTED}),
    family="MCB",
    forms=(
        Form("isolating", True, more_roles=frozenset({ISOLATION})),
        Form(
            "construction", "moulded_case",
            word=phrase("moulded-case circuit-breaker"),
            several=counted("{count} moulded-case circuit-breaker", "{count} moulded-case circuit-breakers", 0),
            symbol="moulded_case_breaker", family="MCCB",
        ),
    ),
)  # fmt: skip
FUSE: Kind[circuit.Fuse] = Kind(
    "fuse", "FC", phrase("fuse"), "fuse", circuit.Fuse,
    several=counted("{count} fuse", "{count} fuses", 0),
    roles=frozenset({OVERCURRENT_PROTECTION}),
    family="gG",
    forms=(
        Form(
            "switch", True,
            word=phrase("fuse-switch-disconnector"),
            several=counted("{count} fuse-switch-disconnector", "{count} fuse-switch-disconnectors", 0),
            symbol="fuse_switch_disconnector",
            more_roles=frozenset({ISOLATION, SWITCHING}),
        ),
    ),
)  # fmt: skip
SERVICE_FUSE: Kind[circuit.Fuse] = Kind(
    "service_fuse", "FC", phrase("service fuse"), "fuse", circuit.Fuse,
    several=counted("{count} service fuse", "{count} service fuses", 0),
    roles=frozenset({OVERCURRENT_PROTECTION}),
    family="gG",
)  # fmt: skip
"""The fuse of the network operator at the supply point: the spec names its current, and it stands in no circuit."""

RCD: Kind[circuit.Rcd] = Kind(
    "rcd", "FB", phrase("RCD"), "rcd", circuit.Rcd,
    several=counted("{count} RCD", "{count} RCDs", 0),
    roles=frozenset({BACKED_UP, RESIDUAL_PROTECTION, SWITCHING, CARRYING, POLES, DIRECTED}),
)  # fmt: skip
RCBO: Kind[circuit.Rcbo] = Kind(
    "rcbo", "FB", phrase("RCBO"), "rcbo", circuit.Rcbo,
    several=counted("{count} RCBO", "{count} RCBOs", 0),
    roles=frozenset({BACKED_UP, RESIDUAL_PROTECTION, OVERCURRENT_PROTECTION, TRIPPING, SWITCHING, POLES, DIRECTED}),
    family="MCB",
    forms=(Form("isolating", True, more_roles=frozenset({ISOLATION})),),
)  # fmt: skip
ISOLATOR: Kind[circuit.Isolator] = Kind(
    "isolator", "QB", phrase("isolator"), "switch_disconnector", circuit.Isolator,
    several=counted("{count} isolator", "{count} isolators", 0),
    roles=frozenset({BACKED_UP, ISOLATION, SWITCHING, CARRYING, POLES}),
)  # fmt: skip
MAIN_SWITCH: Kind[circuit.MainSwitch] = Kind(
    "main_switch", "QB", phrase("main switch"), "switch_disconnector", circuit.MainSwitch,
    several=counted("{count} main switch", "{count} main switches", 0),
    roles=frozenset({BACKED_UP, ISOLATION, SWITCHING, CARRYING, POLES}),
)  # fmt: skip
AC_SURGE_PROTECTION: Kind[circuit.AcSurgeProtection] = Kind(
    "surge_protection", "FA", phrase("surge protective device"), "surge_protection_2", circuit.AcSurgeProtection,
    several=counted("{count} surge protective device", "{count} surge protective devices", 0),
    roles=frozenset({SURGE_PROTECTION}),
    forms=(
        Form("test_class", "1", symbol="surge_protection_1"),
        Form("test_class", "1+2", symbol="surge_protection_1_2"),
    ),
)  # fmt: skip
METER: Kind[circuit.Meter] = Kind(
    "meter", "PG", phrase("meter"), "meter", circuit.Meter,
    several=counted("{count} meter", "{count} meters", 0),
    roles=frozenset({METERING, MEASURING}),
    forms=(Form("connection", "ct", symbol="meter_ct"), Form("bidirectional", True, symbol="meter_bidirectional")),
)  # fmt: skip
CONTACTOR: Kind[circuit.Contactor] = Kind(
    "contactor", "QA", phrase("contactor"), "contactor", circuit.Contactor,
    several=counted("{count} contactor", "{count} contactors", 0),
    roles=frozenset({SWITCHING_ON_COMMAND, CARRYING, POLES}),
)  # fmt: skip
INTERFACE_PROTECTION: Kind[circuit.InterfaceProtection] = Kind(
    "interface_protection", "BU", phrase("interface protection"), "interface_protection", circuit.InterfaceProtection,
    several=counted("{count} interface protection", "{count} interface protection", 0),
    roles=frozenset({MEASURING, INTERFACE, SWITCHING_ON_COMMAND, CARRYING}),
)  # fmt: skip
INTERFACE_RELAY: Kind[InterfaceRelay] = Kind(
    "interface_relay", "BU", phrase("interface protection relay"), "interface_relay", InterfaceRelay,
    several=counted("{count} interface protection relay", "{count} interface protection relays", 0),
    roles=frozenset({MEASURING, INTERFACE}),
)  # fmt: skip
CHANGEOVER: Kind[circuit.Changeover] = Kind(
    "changeover", "QA", phrase("change-over switch"), "changeover", circuit.Changeover,
    several=counted("{count} change-over switch", "{count} change-over switches", 0),
    roles=frozenset({SWITCHING_ON_COMMAND, CARRYING, POLES}),
    forms=(Form("operation", "manual", more_roles=frozenset({SWITCHING})),),
)  # fmt: skip
NETWORK_SEPARATION: Kind[circuit.NetworkSeparation] = Kind(
    "network_separation", "QA", phrase("network separation switch"), "contactor", circuit.NetworkSeparation,
    several=counted("{count} network separation switch", "{count} network separation switches", 0),
    roles=frozenset({SWITCHING_ON_COMMAND, CARRYING, POLES}),
)  # fmt: skip
AC_CABLE: Kind[AcCable] = Kind("cable", "WD", phrase("cable"), block=AcCable)
