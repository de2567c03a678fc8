"""Failing and passing cases of the rules about backup outputs and change-over switches, worked by hand.

The base is a TN-S house on 400/230 V with a three-phase inverter of 12 kW. A board `safe` is fed by its backup output,
or by a generator at a change-over switch. Ia of a 16 A circuit-breaker B: 5 · 16 A = 80 A (IEC 60898-1).
"""

from __future__ import annotations

from typing import Any

from rule_cases import ADVICE, DANGER, MAIN, NC, TWELVE, Case
from systems import REMOVED, Changes

__all__ = ["AT_THE_LIMIT", "FAILING", "generator", "house"]

Data = dict[str, Any]
RCBO: Data = {"kind": "rcbo", "rated_current": "16 A", "curve": "B", "residual_current": "30 mA", "sensitivity": "A",
              "breaking_capacity": "6 kA"}  # fmt: skip
BREAKER: Data = {"kind": "breaker", "rated_current": "16 A", "curve": "B", "breaking_capacity": "6 kA"}
SWITCH: Data = {"kind": "changeover", "second_source": "set", "poles": 4, "interlock": "mechanical",
                "rated_current": "40 A"}  # fmt: skip
SUPPLIED: Data = {"kind": "breaker", "rated_current": "25 A", "curve": "C", "breaking_capacity": "6 kA"}
BACKUP: Data = {"power": "12 kVA", "separates_neutral": True, "neutral_earth_link": True}
LINE: Data = {"kind": "cable", "length": "9 m", "section": "6 mm2"}
SET: Data = {"power": "20 kVA", "neutral_earthed": True, "circuit": [SUPPLIED]}


def house(backup: Data | None = None, device: Data = RCBO, **load: Any) -> Changes:
    """Return the base with a board at the backup output of the inverter, and one load on it."""
    return {
        f"{TWELVE}.backup": {**BACKUP, **(backup or {})},
        "inverters.roof.connected_to": "main",
        "boards.safe": {"fed_from_backup": "roof", "circuit": [{"kind": "main_switch", "rated_current": "40 A"}]},
        "loads.pump": {"connected_to": "safe", "power": "3 kW", "circuit": [device], **load},
    }


def generator(switch: Data | None = None, device: Data = RCBO, **given: Any) -> Changes:
    """Return the base with a board behind a change-over switch, a generator at way II, and one load."""
    return {
        "inverters.roof.connected_to": "main",
        "boards.safe": {"fed_from": "main", "circuit": [SUPPLIED, {**SWITCH, **(switch or {})}]},
        "generators.set": {key: value for key, value in {**SET, **given}.items() if value is not None},
        "loads.pump": {"connected_to": "safe", "power": "3 kW", "circuit": [device]},
    }


def separated(switch: Data | None = None, backup: Data | None = None) -> Changes:
    """Return the base with a switch in the main board that separates all of it from the network."""
    changes: Changes = {f"{MAIN}.circuit.+": {"kind": "network_separation", "rated_current": "40 A", **(switch or {})}}
    return changes if backup is None else {**changes, f"{TWELVE}.backup": {**BACKUP, **backup}}


# the converter of a battery feeds what the switch separates: 3 kW at 400 V are 4.33 A, as many as 3 kVA
CONVERTER: Changes = {**separated({"neutral_earth_link": True}),
                      "batteries.store": {"converter_power": "5 kVA", "backup_power": "3 kVA"}}  # fmt: skip

UNIT, SAFE, PUMP = "inverters.roof", "boards.safe.circuit.1", "loads.pump"
APART = f"{MAIN}.circuit.3"

WITHOUT: Changes = {"supply.neutral": "not_distributed", "supply.voltage": "230 V", "supply.earthing_system": "TT"}

FAILING = (
    # no neutral is distributed: three poles open all, and the source has to have an earthed point of its own
    Case("BU01", DANGER, {**generator({"poles": 3}, neutral_earthed=False), **WITHOUT}, SAFE,
         ("-UC2-QA1", "without an earthed point"), "`neutral_earthed`"),
    Case("BU02", NC, {**generator({"poles": 2}), **WITHOUT}, SAFE, ("-UC2-QA1", "joined"), "`poles`"),
    Case("BU01", DANGER, house({"neutral_earth_link": False}), UNIT, ("inverter -TB1", "without earth"), "link"),
    Case("BU01", DANGER, generator(neutral_earthed=False), SAFE, ("-UC2-QA1", "without earth"), "`neutral_earthed`"),
    Case("BU01", DANGER, separated({}, {"neutral_earth_link": False}), APART, ("-UC1-QA1", "without earth"), "link"),
    Case("BU01", NC, generator({"poles": 3}, neutral_earthed=False), SAFE, ("-UC2-QA1", "relies"), "link"),
    Case("BU02", NC, house({"separates_neutral": False}), UNIT, ("inverter -TB1", "joined"), "opens the neutral"),
    Case("BU02", NC, generator({"poles": 3}), SAFE, ("change-over switch -UC2-QA1", "joined"), "`poles`"),
    Case("BU02", NC, generator({"neutral_earth_link": True}), SAFE, ("-UC2-QA1 links", "does too"), "one of"),
    Case("BU02", NC, separated({"neutral_earth_link": True}, {}), APART, ("-UC1-QA1", "does too"), "one of"),
    Case("BU02", NC, separated({"poles": 3, "neutral_earth_link": True}, {"neutral_earth_link": False}), APART,
         ("network separation switch -UC1-QA1", "joined"), "`poles`"),
    # 30 A from the inverter, 80 A would trip the circuit-breaker
    Case("BU03", DANGER, house({"short_circuit_current": "30 A"}, BREAKER), PUMP, ("-EZ1", "-TB1"), "`rcd`"),
    Case("BU03", DANGER, house({}, BREAKER), PUMP, ("-EZ1", "no RCD"), "`rcd`"),
    Case("BU03", DANGER, generator({}, BREAKER, short_circuit_current="79 A"), PUMP, ("-EZ1", "-GA2"), "`rcd`"),
    # 3 kW at 400 V: 4.33 A; 2.9 kVA: 4.19 A
    Case("BU04", ADVICE, house({"power": "2.9 kVA"}), UNIT, ("-TB1", "4.19 A", "4.33 A"), "fewer loads"),
    Case("BU05", DANGER, generator({"interlock": "none"}), SAFE, ("-UC2-QA1", "nothing"), "`interlock`"),
    Case("BU05", NC, generator({"interlock": None}), SAFE, ("-UC2-QA1", "does not say"), "`interlock`"),
    Case("BU06", NC, separated(), APART, ("-UC1-QA1",), "`backup`"),
    Case("BU06", NC, {**CONVERTER, "batteries.store.backup_power": REMOVED}, APART, ("-UC1-QA1",), "`backup_power`"),
    Case("BU07", NC, {**house(), "earthing.electrode": REMOVED}, UNIT, ("-TB1", "electrode"), "`electrode`"),
    Case("BU07", NC, {**generator(), "earthing.electrode": REMOVED}, SAFE, ("-UC2-QA1", "electrode"), "`electrode`"),
    # the circuit-breaker of the inverter is one for 20 A
    Case("BU08", NC, house({"feed_through_current_max": "19 A"}), "inverters.roof.circuit.0",
         ("-TB1-FC1", "20 A", "19 A"), "at most 19 A"),
    # a device at the board sees nothing of a fault in the cable; B 25 A: 5 · 25 A = 125 A
    Case("BU09", NC, generator(circuit=[SUPPLIED, LINE], residual_protection=True), "generators.set",
         ("-GA2", "overcurrent"), "`breaker`"),
    Case("BU09", DANGER, generator(circuit=[LINE, {**SUPPLIED, "curve": "B"}], short_circuit_current="124 A"),
         "generators.set", ("fault to earth", "-GA2"), "`rcd`"),
    Case("BU09", DANGER, generator(circuit=[SUPPLIED, LINE], protection_rated_current="25 A"), "generators.set",
         ("fault to earth", "-GA2"), "`residual_protection`"),
    # behind a circuit-breaker of 25 A
    Case("AC43", NC, generator({"rated_current": "20 A"}), SAFE, ("change-over switch -UC2-QA1", "20 A", "25 A"),
         "25 A"),
    Case("AC24", NC, generator({"poles": 2}), SAFE, ("change-over switch -UC2-QA1", "3 phases"), "at least 3"),
)  # fmt: skip

AT_THE_LIMIT: tuple[tuple[str, Changes], ...] = (
    ("BU02", {**generator({"poles": 3}), **WITHOUT}),
    ("BU02", {**house({"separates_neutral": False}), **WITHOUT}),
    ("BU01", {**house({"neutral_earth_link": False}), **WITHOUT, "supply.earthing_system": "IT"}),
    *((f"BU{number:02}", house()) for number in range(1, 10)),
    *((f"BU{number:02}", generator()) for number in range(1, 10)),
    *((f"BU{number:02}", CONVERTER) for number in range(1, 10)),
    *((f"BU{number:02}", separated({}, {})) for number in range(1, 10)),
    ("BU01", generator({"neutral_earth_link": True}, neutral_earthed=False)),
    ("BU02", house({"separates_neutral": None})),
    ("BU02", generator({"poles": None})),
    ("BU02", generator({"neutral_earth_link": True}, neutral_earthed=False)),
    ("BU02", separated({"neutral_earth_link": True}, {"neutral_earth_link": False})),
    ("BU02", generator({"poles": 3}, neutral_earthed=False)),  # told as BU01
    ("BU03", house({"short_circuit_current": "80 A"}, BREAKER)),  # exactly Ia
    ("BU03", generator({}, BREAKER, short_circuit_current="80 A")),
    ("BU03", {**house({}, BREAKER), "boards.safe.circuit.+": {**RCBO, "residual_current": "300 mA"}}),
    ("BU04", house({"power": "3 kVA"})),
    ("BU09", generator(circuit=[LINE, {**SUPPLIED, "curve": "B"}], short_circuit_current="125 A")),
    ("BU09", generator(circuit=[LINE, RCBO])),
    ("BU09", generator(circuit=[SUPPLIED, LINE], protection_rated_current="25 A", residual_protection=True)),
    ("BU07", {"earthing.electrode": REMOVED}),
    ("BU08", house({"feed_through_current_max": "20 A"})),
    *(("BU05", generator({"interlock": each})) for each in ("electrical", "key", "three_position")),
    ("AC43", generator({"rated_current": "25 A"})),
)  # fmt: skip
