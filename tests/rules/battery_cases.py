"""Failing and passing cases of the rules about batteries, worked by hand.

The battery is invented: 46 to 57.6 V, 6 kA at its terminals, on a charge converter of 5 kW, so that Ib = 5000 W / 46 V
= 108.7 A. Two copper conductors of 35 mm² with PVC insulation, method B1, 30 °C: Iz 125 A (BS 7671 Table 4D1A column 4
as IEC 60364-5-52 Table B.52.2). 3 m: IEC 60364-4-43 434.2.1, from memory.
"""

from __future__ import annotations

from typing import Any

from rule_cases import ADVICE, DANGER, NC, Case
from systems import Changes

__all__ = ["AT_THE_LIMIT", "CABLE", "FAILING", "FUSE", "STORE", "battery"]

Data = dict[str, Any]
KEY = "batteries.store"
FUSE: Data = {
    "kind": "fuse", "rated_current": "125 A", "rated_voltage": "80 V", "breaking_capacity": "20 kA", "switch": True,
}  # fmt: skip
BREAKER: Data = {
    "kind": "breaker", "rated_current": "125 A", "rated_voltage": "80 V", "breaking_capacity": "10 kA",
    "isolating": True, "polarized": False,
}  # fmt: skip
CABLE: Data = {"kind": "cable", "length": "1.5 m", "section": "35 mm2"}
STORE: Data = {
    "inverter": "roof", "charge_converter_power": "5 kW", "energy": "9.8 kWh", "rated_voltage": "51.2 V",
    "voltage_min": "46 V", "voltage_max": "57.6 V", "short_circuit_current": "6 kA",
}  # fmt: skip


def battery(*circuit: Data, **given: Any) -> Changes:
    """Return the change of the base that adds the battery; None leaves a key out."""
    data = {**STORE, **given, "dc_circuit": list(circuit)}
    return {KEY: {key: value for key, value in data.items() if value is not None}}


PROTECTED = (CABLE, FUSE, CABLE)

FAILING = (
    Case("BA01", NC, battery(*PROTECTED, voltage_max=None), KEY, ("-GB1",), "`voltage_max`"),
    Case("BA01", NC, battery(*PROTECTED, short_circuit_current=None), KEY, ("-GB1",), "`short_circuit_current`"),
    Case("BA01", NC, battery(*PROTECTED, voltage_min=None), KEY, ("-GB1",), "`current_max`"),
    Case("BA02", DANGER, battery(CABLE, {"kind": "isolator"}, CABLE), KEY, ("-GB1", "short circuit"), "`fuse`"),
    # 1.5 m + 1.6 m ahead of the fuse
    Case("BA03", NC, battery(CABLE, {**CABLE, "length": "1.6 m"}, FUSE), f"{KEY}.dc_circuit.2",
         ("-GB1-FC1", "3.1 m", "3 m"), "ahead of the cable"),
    Case("BA04", DANGER, battery(CABLE, {**FUSE, "breaking_capacity": "5 kA"}), f"{KEY}.dc_circuit.1",
         ("-GB1-FC1", "5 kA", "6 kA"), "at least 6 kA"),
    Case("BA04", DANGER, battery(CABLE, {**BREAKER, "breaking_capacity": "5.9 kA"}), f"{KEY}.dc_circuit.1",
         ("battery circuit-breaker", "5.9 kA", "6 kA"), "at least 6 kA"),
    Case("BA05", NC, battery(CABLE, {**FUSE, "breaking_capacity": None}), f"{KEY}.dc_circuit.1",
         ("no DC breaking capacity", "6 kA"), "at direct voltage"),
    Case("BA06", DANGER, battery(CABLE, {**FUSE, "rated_voltage": "48 V"}), f"{KEY}.dc_circuit.1",
         ("48 V", "57.6 V"), "at least 57.6 V"),
    Case("BA06", DANGER, battery(CABLE, FUSE, {"kind": "isolator", "rated_voltage": "48 V"}), f"{KEY}.dc_circuit.2",
         ("battery isolator -GB1-QB1", "48 V", "57.6 V"), "at least 57.6 V"),
    Case("BA06", DANGER, {**battery({**CABLE, "type": "thin"}, FUSE), "types.cables.thin": {"rated_voltage": "300 V"},
                          f"{KEY}.voltage_max": "400 V", f"{KEY}.rated_voltage": "350 V",
                          f"{KEY}.voltage_min": "320 V"},
         f"{KEY}.dc_circuit.0", ("cable -GB1-WD1", "300 V", "400 V"), "at least 400 V"),
    Case("BA07", NC, battery(CABLE, {**FUSE, "rated_current": "100 A"}), f"{KEY}.dc_circuit.1",
         ("100 A", "109 A"), "at least 109 A"),
    # 25 mm²: 101 A; the fuse lets 125 A through
    Case("BA08", DANGER, battery(CABLE, FUSE, {**CABLE, "section": "25 mm2"}), f"{KEY}.dc_circuit.2",
         ("cable -GB1-WD1", "101 A", "125 A"), "smaller device"),
    # at 40 °C 0.87 · 125 A = 108.75 A (Table B.52.14)
    Case("BA08", DANGER, battery({**CABLE, "ambient_temperature": "40 °C"}, FUSE), f"{KEY}.dc_circuit.0",
         ("109 A", "125 A"), "smaller device"),
    Case("BA08", DANGER, battery(CABLE, {"kind": "isolator"}, protection_rated_current="160 A"), f"{KEY}.dc_circuit.0",
         ("125 A", "160 A"), "smaller device"),
    Case("BA09", NC, battery(CABLE, {**FUSE, "switch": False}), KEY, ("-GB1", "under load"), "`isolator`"),
    Case("BA09", NC, battery(CABLE, {**FUSE, "switch": False}, {"kind": "isolator", "utilization_category": "DC-20B"}),
         KEY, ("-GB1", "under load"), "`isolator`"),
    Case("BA10", DANGER, battery(CABLE, {**BREAKER, "polarized": True}), f"{KEY}.dc_circuit.1",
         ("-GB1-FC1", "one direction"), "not polarized"),
    Case("BA09", NC, battery(CABLE, {**FUSE, "poles": 1}), KEY, ("-GB1", "under load"), "`isolator`"),
    Case("BA11", DANGER, battery(CABLE, {**FUSE, "poles": 1}), f"{KEY}.dc_circuit.1",
         ("battery fuse-switch-disconnector -GB1-FC1", "one pole", "no pole is earthed"), "both poles"),
    Case("BA11", DANGER, battery(CABLE, {**BREAKER, "poles": 1}), f"{KEY}.dc_circuit.1",
         ("battery circuit-breaker", "one pole"), "both poles"),
    Case("BA12", ADVICE, {KEY: STORE}, KEY, ("nothing is said", "battery -GB1"), "`dc_circuit`"),
    Case("DC46", DANGER, battery(CABLE, FUSE, {"kind": "isolator", "poles": 1}), f"{KEY}.dc_circuit.2",
         ("battery isolator", "1 pole"), "2 poles"),
)  # fmt: skip

AT_THE_LIMIT: tuple[tuple[str, Changes], ...] = (
    ("BA01", battery(*PROTECTED, voltage_min=None, current_max="100 A")),
    ("BA02", battery(CABLE, {"kind": "isolator"}, protection_rated_current="125 A")),
    ("BA03", battery(CABLE, CABLE, FUSE)),  # 3 m
    ("BA03", battery(CABLE, CABLE, CABLE, {"kind": "isolator"}, protection_rated_current="125 A")),
    ("BA04", battery(CABLE, {**FUSE, "breaking_capacity": "6 kA"})),
    ("BA06", battery(CABLE, {**FUSE, "rated_voltage": "57.6 V"})),
    ("BA07", battery(CABLE, FUSE, current_max="125 A")),
    ("BA08", battery(*PROTECTED)),
    ("BA09", battery(CABLE, BREAKER)),
    ("BA09", battery(CABLE, {**FUSE, "switch": False}, isolator_built_in=True)),
    ("BA10", battery(CABLE, BREAKER)),
    ("BA11", battery(CABLE, {**FUSE, "poles": 1}, earthed_pole="minus")),
    ("BA11", battery(CABLE, {**FUSE, "poles": 1}, protection_rated_current="125 A")),
    *((f"BA{number:02}", battery(*PROTECTED)) for number in range(1, 13)),
    ("BA12", battery()),
    ("BA12", {KEY: {"converter_power": "5 kVA"}}),
    *((f"BA{number:02}", {KEY: {key: value for key, value in STORE.items() if key != "voltage_max"}})
      for number in range(1, 12)),  # nothing is said of its circuit
)  # fmt: skip
