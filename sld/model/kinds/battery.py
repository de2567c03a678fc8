"""The kinds of apparatus and cable between a battery and its converter. Letters and words as in `ac.py`."""

from __future__ import annotations

from sld.model.kinds.role import AT_BATTERY, CARRYING, ISOLATION, OVERCURRENT_PROTECTION, POLES, SWITCHING, TRIPPING
from sld.model.kinds.row import Form, Kind
from sld.spec.blocks import battery_circuit
from sld.words import counted, phrase

__all__ = ["BATTERY_BREAKER", "BATTERY_CABLE", "BATTERY_FUSE", "BATTERY_ISOLATOR"]

BATTERY_FUSE: Kind[battery_circuit.BatteryFuse] = Kind(
    "fuse", "FC", phrase("battery fuse"), "fuse", battery_circuit.BatteryFuse,
    several=counted("{count} battery fuse", "{count} battery fuses", 0),
    roles=frozenset({AT_BATTERY, OVERCURRENT_PROTECTION}),
    forms=(
        Form(
            "switch", True,
            word=phrase("battery fuse-switch-disconnector"),
            several=counted("{count} battery fuse-switch-disconnector", "{count} battery fuse-switch-disconnectors", 0),
            symbol="fuse_switch_disconnector",
            more_roles=frozenset({ISOLATION, POLES, SWITCHING}),
        ),
    ),
)  # fmt: skip
BATTERY_BREAKER: Kind[battery_circuit.BatteryBreaker] = Kind(
    "breaker", "FC", phrase("battery circuit-breaker"), "circuit_breaker", battery_circuit.BatteryBreaker,
    several=counted("{count} battery circuit-breaker", "{count} battery circuit-breakers", 0),
    roles=frozenset({AT_BATTERY, OVERCURRENT_PROTECTION, TRIPPING, SWITCHING, POLES}),
    forms=(
        Form("isolating", True, more_roles=frozenset({ISOLATION})),
        Form("construction", "moulded_case", symbol="moulded_case_breaker"),
    ),
)  # fmt: skip
BATTERY_ISOLATOR: Kind[battery_circuit.BatteryIsolator] = Kind(
    "isolator", "QB", phrase("battery isolator"), "switch_disconnector", battery_circuit.BatteryIsolator,
    several=counted("{count} battery isolator", "{count} battery isolators", 0),
    roles=frozenset({AT_BATTERY, ISOLATION, SWITCHING, CARRYING, POLES}),
)  # fmt: skip
BATTERY_CABLE: Kind[battery_circuit.BatteryCable] = Kind(
    "cable", "WD", phrase("cable"), block=battery_circuit.BatteryCable
)
