"""More cases of the rules: a hair beyond each limit, exactly at it, and each reason not to tell.

The limits are those of the clause that each rule names, worked by hand in the comments; "common practice, no source"
where the rule says so. `rule_cases.py` has the spec paths and the first case of every rule.
"""

from __future__ import annotations

from typing import NamedTuple

from battery_cases import CABLE as NEAR_CABLE
from battery_cases import FUSE as BATTERY_FUSE
from battery_cases import STORE as BATTERY
from battery_cases import battery
from island_cases import house
from nec_cases import NEC
from paperwork_cases import ISSUED, PLACES
from rule_cases import (
    AC_SPD,
    ADVICE,
    BOXES,
    BREAKER,
    BUS,
    CABLE,
    CHAIN,
    CHARGER,
    COMBINED,
    COUNTER,
    DANGER,
    ENTRY,
    FEEDER,
    FIVE_BEHIND_ONE,
    FUSE,
    HIGH,
    INPUT,
    ISOLATOR,
    LIMITED,
    LIMITER,
    MAIN,
    MAIN_SWITCH,
    METER,
    MONO,
    NC,
    ONE_INPUT,
    ONE_PHASE,
    OPEN_DATA,
    OUTBUILDING,
    OWN,
    OWN_EARTH,
    PEN,
    PIPED,
    PV_BOARD,
    RCBO_30,
    RCD,
    SECOND,
    SPD,
    STEP,
    STORE,
    STRING,
    SWITCH,
    THREE,
    THREE_POLES,
    THREE_WIRES,
    TRUNK,
    TT,
    TWELVE,
    TWO_HOUSES,
    UNIT,
    charging,
    sockets,
)
from systems import BASE, REMOVED, Changes

from sld.finding import Severity

__all__ = ["SILENT", "TOLD", "Told"]


class Told(NamedTuple):
    """What a rule must tell of a change of the base, as far as it is stated here.

    message: parts in their order. at: dotted place in the spec. also: how many further places, or which. count: how
    many findings of the code. compared: how many ratings. among_others: with the neighbours of `test_rules_in_depth`.
    """

    code: str
    changes: Changes
    message: tuple[str, ...]
    device: str | None = None
    severity: Severity | None = None
    at: str | None = None
    also: int | tuple[str, ...] | None = None
    count: int | None = None
    remedy: str = ""
    compared: int | None = None
    among_others: bool = False


FORE = "inverters.fore"
SPLIT = {**ONE_PHASE, "supply.split_phase": True}
LAMPS = {"profile": "BS 7671", "loads.lamps": {"power": "200 W", "phases": 1, "supplies": "luminaires", "circuit": [
    {"kind": "rcbo", "rated_current": "6 A", "curve": "B", "residual_current": "30 mA", "sensitivity": "A"},
    {"kind": "cable", "length": "10 m", "section": "1 mm2"}]}}  # fmt: skip
ARMOURED = {"kind": "cable", "length": "9 m", "section": "16 mm2", "armour_section": "60 mm2",
            "protective_conductor": "armour"}  # fmt: skip
SECOND_RCD = {"kind": "rcd", "sensitivity": "A"}
PUMP = {"loads.pump": {"power": "2 kW", "connected_to": "pv"}}
BARE_BOARD = {"boards.pv": {"fed_from": "main"}, f"{UNIT}.connected_to": "pv"}
UNTABULATED = {"kind": "cable", "length": "5 m", "section": "7 mm2"}
SWITCH_FUSE = {"kind": "fuse", "rated_current": "40 A", "switch": True}
LONG_FEEDER = {"boards.pv": {"fed_from": "main", "circuit": [
    {"kind": "breaker", "rated_current": "32 A"}, {"kind": "cable", "length": "40 m", "section": "4 mm2"}]},
    f"{UNIT}.connected_to": "pv"}  # fmt: skip
MARKED = {"types.cables.marked": {"marking": "NYY-J 5x25"}, f"{CABLE}.type": "marked", f"{CABLE}.method": "F"}
SINGLE_CORE = {"types.cables.marked": {"marking": "1x25"}, f"{CABLE}.type": "marked", f"{CABLE}.method": "F"}


def transformer(secondary: str) -> Changes:
    """Return a transformer of the customer with a low-voltage side of its own."""
    return {"supply.transformer": {**OWN, "secondary_voltage": secondary}}


AC_TOLD = (
    # no device ahead at all: held to its design current of 17.3 A
    Told("AC02", {f"{CABLE}.section": "1.5 mm2", BREAKER: REMOVED, "supply.service_fuse": REMOVED},
         ("carries 15 A", "its design current of 17.3 A"), also=0),
    Told("AC02", {f"{CABLE}.section": "1.5 mm2"}, ("15 A", "the 20 A of circuit-breaker -TB1-FC1"), CABLE, also=1),
    # a cable that is too weak for its breaker comes first; that is AC02
    Told("AC03", {f"{FORE}.circuit.2.section": "1.5 mm2", BREAKER: FUSE, f"{CABLE}.section": "2.5 mm2"},
         ("20 A", "22.1 A"), CABLE, among_others=True),
    Told("AC04", {f"{FORE}.circuit.0": FUSE, f"{TWELVE}.current_max": "19 A"}, ("95 %",), BREAKER, among_others=True),
    Told("AC04", {f"{TWELVE}.current_max": "20 A"}, ("100 %", "90 %"), BREAKER),
    Told("AC08", {f"{MAIN}.circuit.+": SECOND_RCD, "loads.charger": CHARGER, "loads.second": CHARGER},
         ("RCD -UC1-FB1 of type A is ahead of RCD -EZ1-FB1 of type B",), f"{MAIN}.circuit.3", count=1),
    # an RCD of a load, whose type nothing but the spec says
    Told("AC08", {f"{MAIN}.circuit.+": SECOND_RCD,
                  "loads.drive": {"power": "5 kW", "circuit": [{"kind": "rcbo", "sensitivity": "B"}]}},
         ("ahead of RCBO -EZ1-FB1 of type B",), f"{MAIN}.circuit.3", count=1),
    Told("AC06", {f"{FORE}.circuit.1.sensitivity": "B", f"{TWELVE}.dc_residual_current": REMOVED},
         ("type A", "type B"), RCD, among_others=True),
    # ten times 30 mA of the first; 300 mA / 200 mA = 1.5
    Told("AC37", {f"{MAIN}.circuit.+": {**SECOND_RCD, "residual_current": "300 mA", "selective": True},
                  f"{FORE}.circuit.1.residual_current": "30 mA", f"{RCD}.residual_current": "200 mA"},
         ("1.5 times", "3 times"), RCD, among_others=True),
    Told("AC11", {ISOLATOR: {**SWITCH_FUSE, "switch": False}, RCD: COUNTER, f"{BREAKER}.isolating": False},
         ("no AC isolator",)),
    # a storage converter feeds back as well
    # 2.001 mA of each of three: 6.003 mA
    Told("AC06", {**FIVE_BEHIND_ONE, f"{UNIT}.count": 3, f"{TWELVE}.dc_residual_current": "2.001 mA"},
         ("need type F: 6 mA of smooth direct current together",), f"{MAIN}.circuit.3", compared=1),
    # 2 · 6 mA
    Told("AC06", {**FIVE_BEHIND_ONE, f"{UNIT}.count": 2}, ("type B", "12 mA"), f"{MAIN}.circuit.3", compared=1),
    Told("AC30", {"loads.car": {**charging(residual_current="30 mA", sensitivity="A"), "dc_residual_current": "7 mA"}},
         ("type A", "does not see its currents"), severity=NC),
    Told("AC10", {"batteries.store": {"converter_power": "5 kVA", "connected_to": "main", "circuit": [
        {"kind": "rcbo", "bidirectional": False}]}}, ("RCBO -GB1-FB1 is for one direction",), count=1),
    # a device declared for both directions does not answer for the next one
    Told("AC10", {f"{BREAKER}.bidirectional": True, f"{RCD}.bidirectional": False}, ("RCD -TB1-FB1",), RCD, count=1),
    # the relay in the board opens a breaker, that of the inverter nothing
    Told("AC61", {f"{TWELVE}.interface_protection": False, f"{BREAKER}.id": "k", RCD: {"kind": "interface_relay"},
                  f"{MAIN}.circuit.+": {"kind": "interface_relay", "trips": "k"}}, ("not said",), RCD, count=1),
    # told once, and from two inverters on
    Told("AC50", {**FIVE_BEHIND_ONE, f"{TWELVE}.own_residual_device": True}, ("serves 5 inverters",), count=1),
    Told("AC50", {**FIVE_BEHIND_ONE, f"{UNIT}.count": 2, f"{TWELVE}.own_residual_device": True},
         ("serves 2 inverters",), count=1),
    # two cables of 15 mm in one conduit of 20 mm: 2 · 15² / 20² = 113 %
    Told("AC60", {**PIPED, f"{FORE}.circuit.2.conduit": "p", f"{CABLE}.outside_diameter": "15 mm",
                  f"{FORE}.circuit.2.outside_diameter": "15 mm"}, ("113 %", "31 %"), count=1, among_others=True),
    Told("AC17", {"supply.phases": 1}, ("the supply has 1",), UNIT, also=("supply.phases",)),
    Told("AC17", {**ONE_PHASE, "loads.saw": {"power": "3 kW", "phases": 3}}, ("load -EZ1",), "loads.saw",
         also=("supply.phases",)),
    Told("AC14", {**BARE_BOARD, **PUMP, BREAKER: REMOVED}, ("between it and board -UC2",), UNIT, count=1),
    Told("AC14", {"boards.pv": {"fed_from": "main", "circuit": [{"kind": "cable", "length": "5 m"}]}, **PUMP,
                  f"{UNIT}.connected_to": "pv", BREAKER: REMOVED}, ("between it and board -UC2",), UNIT, count=1),
    Told("AC14", {**PV_BOARD, **PUMP, BREAKER: REMOVED}, ("between it and board -UC2",), UNIT, count=1),
    Told("AC15", {**LONG_FEEDER, "supply.voltage_rise_limit": 0.5}, ("%", "limit of 0.5 %"), UNIT,
         at="boards.pv.circuit.1.section", also=1),
    Told("AC15", {**LONG_FEEDER, "supply.voltage_rise_limit": REMOVED}, ("%", "target of 1 %"), UNIT,
         at="boards.pv.circuit.1.section", also=0),
    # no table has 7 mm²; of what is known the cable of the inverter lifts most
    Told("AC15", {"boards.pv": {"fed_from": "main", "circuit": [{"kind": "breaker"}, UNTABULATED]},
                  f"{UNIT}.connected_to": "pv", "supply.voltage_rise_limit": 0.5}, ("0.573 %", "0.5 %"),
         at=f"{CABLE}.section"),
    # an RCD that leaves the surge protection connected: IEC 60364-4-46 462.1, each installation (from memory)
    Told("AC20", {MAIN_SWITCH: REMOVED, f"{MAIN}.circuit.+": {"kind": "rcd", "poles": 4}}, ("no main switch",)),
    Told("AC20", {MAIN_SWITCH: {**SWITCH_FUSE, "switch": False}}, ("no main switch",)),
    Told("AC24", {f"{BREAKER}.poles": 1}, ("has 1 pole in a circuit of 3 phases",)),
    Told("AC24", {f"{BREAKER}.poles": 2}, ("has 2 poles in a circuit of 3 phases",)),
    Told("AC26", MARKED, ("the marking NYY-J 5x25",)),
    Told("AC26", {"types.cables.marked": {"marking": "1x25"}, f"{FORE}.circuit.2.type": "marked",
                  f"{FORE}.circuit.2.method": "F", f"{CABLE}.method": "F", f"{CABLE}.cores": 5},
         ("5 cores",), CABLE, among_others=True),
    Told("AC27", {"supply.transformer": {**OWN, "rated_power": "11.99 kVA"}}, ("11.99 kVA", "12 kVA")),
    # 10 % above 400 V is 440 V
    Told("AC28", transformer("440.2 V"), ("440 V", "10 %", "400 V")),
    # 10 % above √3 · 230 V = 398.37 V is 438.2 V
    Told("AC28", {**ONE_PHASE, **transformer("438.5 V")}, ("439 V", "398 V")),
    *(Told("AC29", {**ONE_PHASE, "supply.voltage": volt}, (volt, "one phase", "120, 230, 277"))
      for volt in ("107 V", "132.1 V", "305 V")),
    *(Told("AC29", {"supply.voltage": volt}, (volt, "three phases", "208, 400, 480, 600, 690, 1000"))
      for volt in ("229 V", "530 V", "760 V", "1101 V")),
    # 240 V of a split phase, 10 % up and down
    Told("AC29", {**SPLIT, "supply.voltage": "264.5 V"}, ("264.5 V", "split phase", "240")),
    Told("AC29", {**SPLIT, "supply.voltage": "215 V"}, ("215 V", "split phase", "240")),
    Told("AC29", {"supply.neutral": "not_distributed", "supply.voltage": "265 V"}, ("265 V", "230, 240, 208")),
    # L1 L2 L3 PE, and with a neutral asked for by the inverter one more
    Told("AC25", {**THREE_WIRES, f"{CABLE}.cores": 3}, ("4 conductors L1 L2 L3 PE", "no protective"), CABLE, DANGER),
    Told("AC25", {**THREE_POLES, f"{CABLE}.cores": 4, f"{TWELVE}.needs_neutral": True},
         ("4 cores", "5 conductors L1 L2 L3 N PE"), CABLE, NC),
    # one phase of a supply of two lines is in both
    Told("AC24", {**ONE_PHASE, "supply.neutral": "not_distributed", "supply.earthing_system": "IT",
                  f"{BREAKER}.poles": 1}, ("1 pole in a circuit of two line",), BREAKER, NC),
    Told("AC46", {**LAMPS, "loads.lamps.circuit.1.section": "0.995 mm2"}, ("0.995 mm²", "below the 1 mm²"), also=0),
    Told("AC46", {**LAMPS, "profile": "IEC 60364-7-712"}, ("1 mm²", "1.5 mm²")),
    Told("AC46", {**LAMPS, "loads.lamps.supplies": "fixed_equipment"}, ("1 mm²", "1.5 mm²")),
    Told("AC53", {"loads.kitchen": sockets({"kind": "breaker", "rated_current": "32 A"})}, ("socket-outlets",),
         "loads.kitchen", NC, at="loads.kitchen.circuit", also=0, count=1),
    *(Told("AC53", {"loads.kitchen": {**sockets(RCBO_30), "circuit": [
        {"kind": "rcd", "residual_current": "30 mA", **delay}, {"kind": "breaker"}]}}, ("without a delay",), also=1)
      for delay in ({"selective": True}, {"delay": "0.06 s"})),
    Told("AC53", {"loads.kitchen": sockets({**RCBO_30, "selective": True})}, ("without a delay",), also=1),
    Told("AC30", {"loads.car": charging(residual_current="30.2 mA", sensitivity="B")}, ("no RCD of at most 30 mA",)),
    Told("AC32", {**ONE_PHASE, "supply.earthing_system": "IT", f"{BREAKER}.poles": 1},
         ("1 pole and leaves", "in an IT system"), BREAKER, NC),
    Told("AC32", {**TT, f"{BREAKER}.poles": 3}, ("3 poles and leaves", "in a TT system"), BREAKER, ADVICE),
    # an RCBO encloses the neutral as an RCD does, in TN too (IEC 60364-5-53 531.3.1, from memory)
    Told("AC32", {"loads.stove": {"power": "6 kW", "circuit": [{**RCBO_30, "poles": 3}]}}, ("RCBO", "does not pass"),
         "loads.stove.circuit.0", NC),
    Told("AC35", {"boards.aux": {"fed_from": "main", "circuit": [{"kind": "cable", "length": "5 m"}]}, **FEEDER},
         ("2 single-phase",), "boards.sub.circuit.1"),
    # the first feeder has a smaller neutral, which is held to what it carries
    Told("AC35", {"boards.aux": {"fed_from": "main", "circuit": [
        {"kind": "cable", "length": "5 m", "section": "35 mm2", "neutral_section": "16 mm2"}]}, **FEEDER},
         ("2 single-phase",), "boards.sub.circuit.1"),
)  # fmt: skip

AC_SILENT: tuple[tuple[str, Changes], ...] = (
    # 1.5 mm² stands the heat (1.24 mm² asked for) where every fault is off at once: C 20 A opens at 10 · 20 = 200 A,
    # and the loop of 0.3 Ω and the cables lets 364 A through; D 20 A opens at 400 A, but the RCD sees the fault
    ("AC23", {f"{CABLE}.protective_section": "1.5 mm2", RCD: {"kind": "isolator"}}),
    ("AC23", {f"{CABLE}.protective_section": "1.5 mm2", f"{BREAKER}.curve": "D", "supply.loop_impedance": 0.8}),
    ("AC03", {BREAKER: FUSE, f"{CABLE}.section": "1.5 mm2"}),  # carries less than the fuse lets through: AC02
    ("AC04", {f"{TWELVE}.current_max": "20.1 A"}),  # above its rated current: AC01
    ("AC08", {f"{MAIN}.circuit.+": SECOND_RCD}),  # nothing of type B behind it
    ("AC08", {f"{MAIN}.circuit.+": {**SECOND_RCD, "sensitivity": "B"}, "loads.charger": CHARGER}),
    ("AC10", {"loads.pump": {"power": "2 kW", "circuit": [{"kind": "rcbo", "bidirectional": False}]}}),
    ("AC10", {RCD: {"kind": "rcbo", "rated_current": "20 A", "bidirectional": True}}),
    # 2 mA of each of three: 6 mA exactly
    ("AC06", {**FIVE_BEHIND_ONE, f"{UNIT}.count": 3, f"{TWELVE}.dc_residual_current": "2 mA"}),
    ("AC06", {**FIVE_BEHIND_ONE, f"{TWELVE}.dc_residual_current": REMOVED, f"{TWELVE}.galvanic_separation": True}),
    ("AC06", {"batteries.store": {**STORE, "galvanic_separation": True}}),
    ("AC06", {"batteries.store": {**STORE, "dc_residual_current": "6 mA"}}),
    ("AC50", {f"{TWELVE}.own_residual_device": True}),
    ("AC50", FIVE_BEHIND_ONE),
    # the charging point detects 6 mA itself (IEC 62955): type A is enough
    ("AC30", {"loads.car": {**charging(residual_current="30 mA", sensitivity="A"), "dc_residual_current": "6 mA"}}),
    ("AC10", {"profile": "BS 7671", RCD: {"kind": "rcbo", "rated_current": "20 A", "bidirectional": True},
              f"{BREAKER}.bidirectional": True}),
    ("AC10", {RCD: {"kind": "rcbo", "rated_current": "20 A"}}),  # asked under BS 7671 alone
    ("AC11", {ISOLATOR: SWITCH_FUSE, f"{BREAKER}.isolating": False}),
    ("AC11", {ISOLATOR: REMOVED}),  # a miniature circuit-breaker is suitable for isolation by IEC 60898-1
    ("AC11", {ISOLATOR: REMOVED, f"{BREAKER}.construction": "moulded_case", f"{BREAKER}.isolating": True,
              f"{BREAKER}.curve": REMOVED}),
    ("AC14", {"loads.house": {"power": "5 kW"}}),  # a circuit that is not given
    # two loads behind the one breaker of their board
    ("AC14", {**PV_BOARD, f"{UNIT}.connected_to": "main",
              "loads.one": {"power": "2 kW", "connected_to": "pv", "circuit": []},
              "loads.two": {"power": "2 kW", "connected_to": "pv", "circuit": []}}),
    ("AC14", {**PV_BOARD, BREAKER: REMOVED}),  # the breaker of the board protects its one circuit
    ("AC18", {**ONE_PHASE, f"{TWELVE}.rated_power": "5 kW"}),  # a single-phase supply has no other line
    ("AC20", {MAIN_SWITCH: SWITCH_FUSE}),
    # an RCD to IEC 61008-1 is suitable for isolation and emergency switching: BS 7671 Table 537.4 (from memory)
    ("AC20", {MAIN_SWITCH: {"kind": "rcd", "rated_current": "63 A", "residual_current": "300 mA", "poles": 4}}),
    ("AC11", {ISOLATOR: REMOVED, f"{BREAKER}.isolating": False}),  # the RCD of the circuit
    ("AC21", {f"{TWELVE}.interface_protection": False, f"{MAIN}.circuit.+": {"kind": "interface_protection"}}),
    ("AC26", {f"{CABLE}.cores": 5}),
    ("AC26", SINGLE_CORE),
    ("AC28", transformer("440 V")),
    ("AC28", {**ONE_PHASE, **transformer("400 V")}),  # three-phase transformers serve single-phase supplies
    *(("AC29", {**ONE_PHASE, "supply.voltage": volt}) for volt in ("108 V", "132 V", "207 V", "253 V", "304.7 V")),
    *(("AC29", {"supply.voltage": volt}) for volt in ("228.8 V", "528 V", "540 V", "759 V", "900 V", "1100 V")),
    *(("AC29", {**SPLIT, "supply.voltage": volt}) for volt in ("216 V", "264 V")),
    *(("AC29", {"supply.neutral": "not_distributed", "supply.voltage": volt}) for volt in ("230 V", "240 V", "264 V")),
    ("AC29", {"supply.voltage": "230 V"}),  # IEC 60038 Table 1: one value alone is of a system of three wires
    *(("AC32", {**THREE_WIRES, "supply.earthing_system": earthing}) for earthing in ("IT", "TT", "TN-S")),
    ("AC32", {**TT, **THREE_POLES, f"{TWELVE}.needs_neutral": False}),
    ("AC25", {**THREE_WIRES, f"{CABLE}.cores": 4}),
    ("AC32", {"loads.stove": {"power": "6 kW", "circuit": [
        {**RCBO_30, "poles": 3}, {"kind": "cable", "length": "9 m", "cores": 4}]}}),  # three lines and PE alone
    ("AC46", LAMPS),
    ("AC53", {"loads.kitchen": sockets({"kind": "breaker", "rated_current": "40 A"})}),  # for more than 32 A
    ("AC53", {"loads.kitchen": {**sockets({"kind": "breaker", "rated_current": "16 A"}),
                                "supplies": "fixed_equipment"}}),
    ("AC53", {"loads.kitchen": {"power": "3 kW", "circuit": [{"kind": "breaker", "rated_current": "16 A"}]}}),
    ("AC53", {"loads.lamps": {**sockets({"kind": "breaker"}), "supplies": "luminaires"},
              "site.building": "other_building"}),
    # one of 30 mA for all circuits of the board
    ("AC53", {"loads.kitchen": sockets({"kind": "breaker"}),
              f"{MAIN}.circuit.+": {"kind": "rcd", "residual_current": "30 mA", "rated_current": "63 A"}}),
    ("AC25", {**THREE_POLES, f"{CABLE}.cores": 4, f"{TWELVE}.needs_neutral": False}),
    # the RCD stands ahead of the breaker
    ("AC07", {"loads.car": {**CHARGER, "circuit": [{"kind": "rcd", "sensitivity": "AC"}, {"kind": "breaker"}]}}),
    ("AC30", {"loads.car": {**CHARGER, "circuit": [{"kind": "rcd", "sensitivity": "B"}, {"kind": "breaker"}]}}),
    # one of two RCDs is of type B
    ("AC30", {"loads.car": {**CHARGER, "circuit": [
        {"kind": "rcd", "sensitivity": "B", "residual_current": "30 mA"},
        {"kind": "rcd", "sensitivity": "A", "residual_current": "30 mA"}]}}),
    ("AC35", {key: value for key, value in FEEDER.items() if key != "inverters.two"}),  # one inverter alone
    ("AC35", {**FEEDER, "inverters.two": {**FEEDER["inverters.two"], "line": "L1"}}),  # both on one line
    ("AC35", {**FEEDER, "supply.phases": 1, f"{TWELVE}.phases": 1}),  # the neutral carries what the line does
)  # fmt: skip

METERED = {**LIMITED, f"{MAIN}.circuit.+": {**LIMITER, "id": "m9"}}
NEVER = {
    "kind": "breaker",
    "construction": "moulded_case",
    "rated_current": "25 A",
    "short_time_setting": "120 A",
    "short_time_delay": "0.35 s",
}
PUMP_AT_MAIN = {"loads.pump": {"power": "1 kW"}}
SUBURBAN = {"site.surroundings": "suburban", "supply.risk_length": "100 m"}
LPS = {"separation_kept": True}
NEAR = {"separation_kept": False}
SMALL = {
    "types.inverters.small": {
        "rated_power": "3 kW", "phases": 1, "dc_voltage_max": "1000 V", "mpp_voltage_min": "100 V",
        "mpp_voltage_max": "850 V", "inputs": [{"current_max": "26 A", "short_circuit_current_max": "40 A"}],
        "bus": {"units_max": 1, "distance_max": "40 m", "length_max": "40 m"},
    },
    "inverters.side": {
        "type": "small", "line": "L1", "inputs": [{"strings": [{"module": "mono", "modules_in_series": 10}]}],
    },
    f"{CHAIN}.devices.+": {"device": "side", "address": 2, "length": "45 m"},
}  # fmt: skip
LINKED_HOUSES = {**TWO_HOUSES, "data.chains": REMOVED}
NET = {"data.devices.net": {"kind": "router"}}
LONG_LINK = {"from": "log", "to": "net", "medium": "ethernet", "length": "120 m"}


def string(metres: str = "20 m", **values: object) -> dict[str, object]:
    """Return a group of strings with a cable."""
    return {**SECOND, "cable": {"length": metres, "section": "4 mm2"}, **values}


def fused(rated: str, ocpr: str = "25 A") -> Changes:
    """Return three strings with fuses of a rated current, of modules with a largest series fuse."""
    fuses = {"rated_current": rated}
    return {**THREE, f"{MONO}.series_fuse_max": ocpr, f"{INPUT}.string_fuses": fuses}


def array_fuse(rated: str) -> Changes:
    """Return one fuse for both strings."""
    return {f"{INPUT}.circuit.+": {"kind": "fuse", "rated_current": rated}}


def isolator(category: str, count: int = 2) -> Changes:
    """Return a DC isolator of a category for a number of strings."""
    return {SWITCH: {"kind": "isolator", "utilization_category": category}, f"{STRING}.count": count}


DC_TOLD = (
    # 17 · 37 V · 1.0962 = 690 V; NEC 2023 690.7(A)(2): 600 V on dwellings, 1000 V on other buildings
    Told("DC03", {**HIGH, "profile": "NEC 690", f"{STRING}.modules_in_series": 17}, ("690 V", "600 V", "a dwelling")),
    Told("DC09", {f"{UNIT}.inputs.+": {"strings": [string(count=3)]}}, ("3 strings", "terminals for 2"),
         f"{UNIT}.inputs.1"),
    Told("DC10", {f"{INPUT}.strings": [string(), string(), string(modules_in_series=17)]},
         ("17 modules", "18 modules"), at=f"{INPUT}.strings.2.modules_in_series",
         also=(f"{INPUT}.strings.0.modules_in_series",)),
    Told("DC10", {f"{INPUT}.strings": [string(), string(module="other")]}, ("`other`", "`mono`"),
         at=f"{INPUT}.strings.1.module", also=(f"{INPUT}.strings.0.module",)),
    Told("DC11", {f"{INPUT}.strings": [string(), string(orientation="east")]},
         ("-TB1-GC2 faces east, -TB1-GC1 in parallel with it south",), also=(f"{INPUT}.strings.0.orientation",)),
    # IEC 62548:2016 6.5: 1.5 · 13.9 A = 20.85 A < In < 2.4 · 13.9 A = 33.36 A, In <= series fuse of the module
    Told("DC14", fused("20 A"), ("20 A", "below the least allowed 20.9 A")),
    Told("DC14", fused("32 A"), ("32 A", "above the largest allowed 25 A")),
    Told("DC14", fused("20.85 A"), ("and 20.9 A itself is not in the allowed range",)),
    Told("DC14", fused("33.36 A", "40 A"), ("and 33.4 A itself is not in the allowed range",)),
    # of an array: 1.25 · 27.8 A = 34.75 A < In <= 2.4 · 27.8 A = 66.72 A
    Told("DC14", array_fuse("34.75 A"), ("and 34.8 A itself is not in the allowed range",), remedy="leave"),
    Told("DC14", array_fuse("67 A"), ("67 A", "above the largest allowed 66.7 A")),
    Told("DC14", {**fused("25 A"), f"{UNIT}.inputs.+": {"strings": [string(count=3)],
                                                       "string_fuses": {"rated_current": "20 A"}}},
         ("20 A",), f"{UNIT}.inputs.1.strings.0.fuse", count=1),
    Told("DC21", isolator("DC-PV0", 1), ("not to be opened under load",), remedy="category DC-PV1"),
    Told("DC21", isolator("DC-21B"), ("not tested with PV strings",), remedy="category DC-PV2"),
    Told("DC23", {f"{STRING}.cable.type": "rubber"}, ("700 V",), at="types.cables.rubber.rated_voltage"),
    Told("DC25", {f"{STRING}.cable.type": "rubber"}, ("XLPE",), at="types.cables.rubber.insulation"),
    Told("DC24", {f"{INPUT}.strings": [string(), string("90 m")]}, ("2.72 %",), at=f"{INPUT}.strings.1.cable.section"),
    Told("DC24", {f"{INPUT}.strings": [string("90 m"), string()]}, ("2.72 %",), at=f"{INPUT}.strings.0.cable.section"),
    # no table has 7 mm²; 0.61 % along the string, 0.48 % along 20 m of 10 mm² that carry both
    Told("DC24", {f"{INPUT}.circuit": [UNTABULATED,
                                       {"kind": "cable", "length": "20 m", "section": "10 mm2"}]}, ("1.07 %", "1 %"),
         at=f"{STRING}.cable.section"),
    Told("DC26", {f"{MONO}.bifaciality": "70 %", f"{INPUT}.strings.+": string()}, ("10 %",), count=1, compared=1),
    # 14760 W / 9830 W = 1.5015
    Told("DC27", {f"{TWELVE}.rated_power": "9830 W"}, ("1.502", "1.5")),
    # 14760 W / 18.46 kW = 0.7996
    Told("DC27", {f"{TWELVE}.rated_power": "18460 W"}, ("0.7996", "0.8")),
    Told("DC30", {f"{MONO}.series_fuse_max": REMOVED, f"{INPUT}.strings": [string(count=2), string()]},
         ("3 strings",), count=1),
    Told("DC30", {"types.modules.other.series_fuse_max": REMOVED,
                  f"{INPUT}.strings": [string(count=2), string(module="other")]}, ("3 strings",),
         f"{UNIT}.inputs.0.strings.1", count=1),
    Told("DC17", {SWITCH: REMOVED, f"{TWELVE}.micro": True}, ("none built in",), severity=NC),
    Told("DC17", {SWITCH: {"kind": "plug_connector"}}, ("none built in",), severity=NC),
    # the data are of 37.8 V: 1 - 37.8 / 39.80 = 5.03 %
    Told("DC31", {**OPEN_DATA, f"{MONO}.open_circuit_voltage": "39.80 V"}, ("at 25 °C",)),
    Told("DC31", {**OPEN_DATA, f"{MONO}.open_circuit_voltage": "42 V", f"{INPUT}.strings.+": string()},
         ("680 V", "at 25 °C", "756 V"), count=1),
    Told("DC31", {**OPEN_DATA, f"{MONO}.open_circuit_voltage": "42 V", f"{MONO}.voltage_coefficient": REMOVED},
         ("680 V", "at 25 °C", "756 V")),
    # 24 · 40.56 V · 1.03 = 1003 V; the modules bear 1000 V, the inverter more
    Told("DC32", {f"{STRING}.modules_in_series": 24, f"{MONO}.voltage_tolerance": "3 %",
                  f"{TWELVE}.dc_voltage_max": "1100 V"}, ("1003 V", "1000 V")),
    Told("DC35", {f"{TWELVE}.backfeed_current": "5 A"}, ("5 A",), compared=1),
    Told("DC37", {f"{INPUT}.string_fuses": {}, f"{INPUT}.strings": [string(count=2), string(count=1)]}, ("36.3 A",),
         count=1),
    Told("DC45", {"supply.country": "US", f"{UNIT}.inputs.+": {"strings": [string(modules_in_series=12)]}},
         ("730 V", "80 V"), UNIT),
    Told("DC40", {f"{INPUT}.circuit": [{"kind": "plug_connector"}, {"kind": "plug_connector", "mated_with": "Ondry"}]},
         ("Ondry",), f"{UNIT}.inputs.0.circuit.1", count=1),
    Told("DC40", {f"{INPUT}.circuit": [{"kind": "plug_connector", "mated_with": "Ondry"}, {"kind": "plug_connector"}]},
         ("Ondry",), f"{UNIT}.inputs.0.circuit.0", count=1),
)  # fmt: skip

DC_SILENT: tuple[tuple[str, Changes], ...] = (
    ("DC03", {**HIGH, f"{STRING}.modules_in_series": 25, "site.building": "ground_mounted"}),
    ("DC03", {**HIGH, "profile": "NEC 690", f"{STRING}.modules_in_series": 17, "site.building": "other_building"}),
    ("DC14", fused("20.9 A")),
    # IEC 60364-7-712:2017: 1.375 · 13.9 A = 19.1125 A <= In
    ("DC14", {**fused("19.1125 A"), "profile": "IEC 60364-7-712"}),
    ("DC14", fused("33.3 A", "40 A")),
    ("DC14", array_fuse("35 A")),
    ("DC14", array_fuse("66.72 A")),
    ("DC20", isolator("DC-PV0", 1)),
    # 1 - 37.8 / 39.78 = 4.98 %
    ("DC31", {**OPEN_DATA, f"{MONO}.open_circuit_voltage": "39.78 V"}),
    ("DC21", isolator("DC-PV0")),  # DC20 says it
    ("DC21", isolator("DC-PV2")),
    ("DC23", {f"{CABLE}.type": "rubber"}),  # on the AC side
    # 14760 W / 18.45 kW = 0.8
    ("DC27", {f"{TWELVE}.rated_power": "18450 W"}),
)  # fmt: skip

DATA_TOLD = (
    Told("DB01", {f"{STEP}.address": REMOVED}, ("inverter -TB1 on data chain",)),
    Told("DB01", {f"{STEP}.address": REMOVED, f"{UNIT}.count": 2}, ("inverter -TB1 and 1 more on data chain",)),
    Told("DB01", {f"{STEP}.address": REMOVED, f"{UNIT}.count": 3}, ("inverter -TB1 and 2 more on data chain",)),
    # of two loggers neither is known to poll; they need no address
    Told("DB01", {"data.devices.log2": {"kind": "logger"},
                  f"{CHAIN}.devices": [{"device": "log"}, {"device": "roof"}, {"device": "log2"}]},
         ("inverter -TB1 on data chain",), count=1),
    # the router is taken to poll, as the only data device, and needs no address
    Told("DB01", {**NET, f"{CHAIN}.devices": [{"device": "roof"}, {"device": "net"}]}, ("inverter -TB1 on data",)),
    Told("DB02", {f"{STEP}.address": 2, f"{METER}.id": "m1", f"{CHAIN}.devices.+": {"device": "m1", "address": 2}},
         ("address 2",), remedy="example 1"),
    # the limit of the inverter holds at both of its ends
    Told("DB06", {f"{CHAIN}.devices": [{"device": "roof", "address": 1}, {"device": "log", "length": "60 m"}]},
         ("data logger -KF1 is 60 m", "50 m"), "data.devices.log"),
    Told("DB06", SMALL, ("45 m", "40 m"), "inverters.side"),
    Told("DB06", {**SMALL, f"{STEP}.length": REMOVED}, ("45 m", "40 m"), "inverters.side"),
    Told("DB07", SMALL, ("2 inverters", "the 1 "), also=("types.inverters.small.bus.units_max",)),
    Told("DB08", SMALL, ("48 m", "40 m"), also=("types.inverters.small.bus.length_max",)),
    Told("DB09", {f"{STEP}.terminated": True, **SMALL}, ("terminated at -KF1, -TB1", "-KF1 and -TB2"), severity=NC),
    Told("DB09", {**{f"data.chains.first.devices.{place}.terminated": False for place in (0, 1)},
                  **{f"{CHAIN}.devices.{place}.terminated": False for place in (0, 1)}},
         ("no termination",), CHAIN, count=2, among_others=True),
    Told("DB19", {**LINKED_HOUSES, "data.links": [{"from": "log", "to": "roof", "medium": "ethernet"}]},
         ("logger -KF1 in house", "inverter -TB1 in barn"), at="data.links.0"),
    Told("DB15", {**NET, "data.links": [{**LONG_LINK, "length": "100 m"}, LONG_LINK]}, ("120 m", "100 m"), count=1,
         at="data.links.1.length"),
    Told("DB17", {f"{CHAIN}.cable": "bare"}, ("without a shield",), also=("types.cables.bare.shielded",)),
)  # fmt: skip

DATA_SILENT: tuple[tuple[str, Changes], ...] = (
    ("DB06", {f"{STEP}.length": REMOVED}),
    ("DB07", {BUS: REMOVED}),
    ("DB07", {f"{BUS}.units_max": REMOVED}),
    ("DB08", {BUS: REMOVED}),
    ("DB08", {f"{BUS}.length_max": REMOVED}),
    ("DB09", {f"{STEP}.terminated": False, **SMALL,
              f"{CHAIN}.devices.+": {"device": "side", "address": 2, "length": "45 m", "terminated": True}}),
    ("DB15", {**NET, "data.links": [{"from": "log", "to": "net", "medium": "ethernet"}]}),
    ("DB15", {**NET, "data.links": [{**LONG_LINK, "medium": "pulse"}]}),
    ("DB19", {**LINKED_HOUSES, "data.links": [{"from": "log", "to": "roof", "medium": "wireless"}]}),
    ("DB18", {**NET, "data.links": [LONG_LINK]}),
)  # fmt: skip

NEAR_LAST = {
    **PV_BOARD,
    "loads.far": {"connected_to": "pv", "power": "2 kW", "circuit": [
        {"kind": "cable", "length": "100 m", "section": "2.5 mm2"}, {"kind": "breaker", "enclosure": "pv"}]},
    "loads.near": {"connected_to": "pv", "power": "2 kW", "circuit": [{"kind": "breaker"}]},
}  # fmt: skip
BIG_FUSE = {"kind": "fuse", "rated_current": "1600 A"}
WEAK_SPD = {
    "kind": "surge_protection", "lead_length": "1.005 m", "protection_level": "3 kV", "backup_fuse_max": "16 A",
}  # fmt: skip
SECOND_SPD = {**PV_BOARD, "boards.pv.circuit.+": WEAK_SPD, "earthing.lightning_protection": LPS}
WITH_1_AND_2 = {"kind": "surge_protection", "test_class": "1+2", "impulse_current": "7 kA"}
LOOP_200 = {"supply.loop_impedance": 200, f"{FORE}.circuit.1.residual_current": "30 mA",
            f"{RCD}.residual_current": "300 mA"}  # fmt: skip

FAULT_TOLD = (
    # behind 100 m of cable the fault current is lower
    Told("FA02", NEAR_LAST, ("circuit-breaker -EZ2-FC1 states", "5 kA"), "loads.near.circuit.0"),
    Told("FA02", {f"{BREAKER}.breaking_capacity": REMOVED}, ("circuit-breaker -TB1-FC1 states",), BREAKER),
    Told("FA03", {BREAKER: FUSE, RCD: REMOVED, "supply.loop_impedance": 3}, ("opens within 0.4 s",),
         at=f"{BREAKER}.rated_current", remedy="use a lower rated current"),
    Told("FA03", {RCD: REMOVED, "supply.loop_impedance": 1.2}, ("trips at once",), at=f"{BREAKER}.curve",
         remedy="use a lower curve"),
    # a load whose circuit is not given is the installation's; the next one is looked at all the same
    Told("FA04", {**TT, "loads.old": {"power": "1 kW"}, "loads.new": {"circuit": [{"kind": "breaker"}]}},
         ("load -EZ2",), "loads.new", count=1),
    # no cable of the spec feeds the board, so it is asked itself; its own breaker is no cable
    Told("FA04", {**TT, **PV_BOARD}, ("board -UC2 has no RCD ahead",), "boards.pv", count=1),
    # armour ahead of the first RCD: IEC 60364-4-41 411.5.1, exposed parts (from memory)
    Told("FA04", {**TT, f"{MAIN}.circuit": [{"kind": "main_switch"}, ARMOURED]}, ("cable -UC1-WD1 has no RCD ahead",),
         count=1),
    # the first is behind an RCD
    Told("FA08", {f"{FORE}.circuit.0": BIG_FUSE, BREAKER: BIG_FUSE, RCD: REMOVED}, ("5 s",), BREAKER,
         among_others=True),
    # 200 Ω · 300 mA = 60 V, 200 Ω · 30 mA = 6 V
    Told("FA07", LOOP_200, ("60 V", "50 V"), RCD, count=1, among_others=True),
    # RA 80 Ω of the building alone: 0.95 · 230 V / (0.3 Ω + ...) is far below what trips C32; feeder by its PE, TN
    Told("FA04", {**OUTBUILDING, **OWN_EARTH, f"{UNIT}.connected_to": "shed", RCD: REMOVED}, ("no RCD",), UNIT, count=1,
         also=("boards.shed.earthing_system",)),
    # the same feeder with 1 s
    Told("FA20", {**TT, "earthing.electrode.resistance": 80, "boards.shed": {"fed_from": "main", "circuit": [
        {"kind": "rcd", "residual_current": "300 mA", "delay": "1 s", "rated_current": "40 A"},
        {"kind": "breaker", "rated_current": "32 A", "curve": "C"},
        {"kind": "cable", "length": "30 m", "section": "10 mm2"}]}, f"{UNIT}.connected_to": "main"},
         ("RCD -UC2-FB1 may take 1.04 s", "above the 1 s"), "boards.shed.circuit.1", at="boards.shed.circuit.0"),
    # of 3 cores none is for the neutral of three lines: advice
    Told("AC32", {**TT, f"{ISOLATOR}.poles": 3, f"{CABLE}.cores": 4}, ("3 poles",), ISOLATOR, ADVICE),
    # 200 Ω outside and 200 Ω of the electrode at 300 mA
    Told("FA05", {**TT, **LOOP_200, "earthing.electrode.resistance": 200}, ("120 V", "50 V"), RCD, count=1,
         among_others=True),
    Told("FA09", {f"{CABLE}.section": "1.5 mm2", "supply.service_fuse": "100 A"}, ("1.5 mm²", "2.04 mm²"), count=1,
         also=(BREAKER,)),
    Told("FA10", {"supply.service_fuse": "25 A"}, ("1.6 times 20 A",), also=("supply.service_fuse",), compared=2),
)  # fmt: skip

FAULT_SILENT: tuple[tuple[str, Changes], ...] = (
    ("FA04", TT),
    ("FA04", {**OUTBUILDING, "boards.shed.circuit.0": {"kind": "rcbo", "rated_current": "32 A"}, **TT}),
    # a feeder that no metal surrounds, and a board of insulating material: IEC 60364-4-41 412
    ("FA04", {**TT, **OUTBUILDING, "boards.shed.circuit.1.double_insulated": True}),
    ("FA04", {**OUTBUILDING, **OWN_EARTH}),  # the feeder belongs to the TN house
    ("FA04", {**TT, f"{MAIN}.circuit.+": {"kind": "cable", "length": "3 m", "section": "16 mm2"}}),  # service cable
    # type S takes 0.15 s at more than 5 · IΔn, 0.2 s are allowed
    ("FA20", {**TT, "earthing.electrode.resistance": 80, f"{RCD}.selective": True}),
    # 1 s in a feeder: 0.04 s and 0.9 s
    ("FA20", {**TT, "earthing.electrode.resistance": 80, "boards.shed": {"fed_from": "main", "circuit": [
        {"kind": "rcd", "residual_current": "300 mA", "delay": "0.9 s", "rated_current": "40 A"},
        {"kind": "breaker", "rated_current": "32 A", "curve": "C"},
        {"kind": "cable", "length": "30 m", "section": "10 mm2"}]}, f"{UNIT}.connected_to": "main"}),
    ("FA20", {f"{RCD}.delay": "1 s"}),  # TN: the breaker switches off in time itself
    ("FA03", {**OUTBUILDING, **OWN_EARTH, f"{UNIT}.connected_to": "shed"}),  # TT: the RCD does it
    ("AC32", {f"{RCD}.poles": 3, f"{CABLE}.cores": 4}),  # three lines and a protective conductor: no neutral
    ("AC32", {f"{MAIN_SWITCH}.poles": 3}),  # TN-S: the neutral is reliably earthed
    ("AC32", {**TT, f"{ISOLATOR}.poles": 4}),
    ("EA05", {**OUTBUILDING, **OWN_EARTH}),
    ("FA04", {**TT, RCD: REMOVED, f"{MAIN}.circuit.+": {"kind": "rcd", "sensitivity": "B"}}),
    ("FA04", {**TT, "loads.old": {"power": "1 kW"}}),
    ("FA08", {BREAKER: FUSE, RCD: REMOVED}),  # in the table of gG fuses
)  # fmt: skip

OTHER_TOLD = (
    # 3.1 m ahead of the fuse of the second battery; the first has none that is near or far
    Told("BA03", {**battery(NEAR_CABLE), "batteries.second": {**BATTERY, "dc_circuit": [
        NEAR_CABLE, {**NEAR_CABLE, "length": "1.6 m"}, BATTERY_FUSE]}}, ("-GB2-FC1", "3.1 m"), count=1),
    # neither a meter nor ahead of all: that it is no meter comes first
    Told("ME08", {**LIMITED, f"{BREAKER}.id": "m9", **PUMP_AT_MAIN}, ("no meter",), "data.devices.log"),
    Told("ME08", {**LIMITED, f"{MAIN_SWITCH}.id": "m9"}, ("no meter",), "data.devices.log"),
    # the first limiter measures by a meter ahead of all, the second by a breaker
    Told("ME08", {**LIMITED, f"{MAIN}.circuit.+": {**LIMITER, "id": "m9"}, f"{BREAKER}.id": "b9",
                  "data.devices.second": {"kind": "energy_manager",
                                          "feed_in_limit": {"sensor": "b9", "inverters": ["roof"]}}},
         ("no meter",), "data.devices.second", count=1),
    # the first charging point is indoors
    Told("EA14", {"profile": "BS 7671", "supply.earthing_system": "TN-C-S", "loads.bay": {
        **CHARGER, "vehicle_outdoors": False}, "loads.car": {**CHARGER, "vehicle_outdoors": True}}, ("-EZ2",), count=1),
    Told("EA13", {"earthing.bonding.1": REMOVED}, ("-XE1",), at="earthing.bonding"),
    Told("EA13", {"earthing": REMOVED}, ("main bonding",), at="earthing"),
    # where the section of the neutral is given, that is what is too small
    Told("EA12", {**COMBINED, f"{MAIN}.circuit.+": {**PEN, "section": "6 mm2"}}, ("6 mm²",),
         at=f"{MAIN}.circuit.3.section"),
    Told("EA12", {**COMBINED, f"{MAIN}.circuit.+": {**PEN, "section": "16 mm2", "neutral_section": "6 mm2"}},
         ("6 mm²",), at=f"{MAIN}.circuit.3.neutral_section"),
    # an inverter of the other type, which protects its array, comes before it
    Told("NE08", {**NEC, "types.inverters.plain.ground_fault_protection": True,
                  f"{TWELVE}.ground_fault_protection": False}, ("does not protect",), UNIT, among_others=True),
    # the string's own breaker is not polarized, that behind the junction is
    Told("DC51", {f"{STRING}.circuit": [{"kind": "breaker", "polarized": False}],
                  f"{INPUT}.circuit.+": {"kind": "breaker", "polarized": True}}, ("one direction",), count=1),
    Told("DC51", {f"{STRING}.circuit": [{"kind": "breaker", "polarized": True}],
                  f"{INPUT}.circuit.+": {"kind": "breaker", "polarized": False}}, ("one direction",)),
    # one that never opens in time, and behind it one whose loop is too high
    Told("FA03", {f"{FORE}.circuit.0": NEVER, f"{FORE}.circuit.1": {"kind": "isolator"}, RCD: {"kind": "isolator"},
                  "supply.loop_impedance": 1.2}, ("1.37 Ω",), BREAKER, among_others=True),
    # the first inverter states no feed-through current, the second 19 A behind a circuit-breaker of 20 A
    Told("BU08", {**house(), "inverters.annex": {**BASE["inverters"]["roof"], "type": "second", "connected_to": "main"},
                  "types.inverters.second": {**BASE["types"]["inverters"]["twelve"], "backup": {
                      "power": "12 kVA", "feed_through_current_max": "19 A"}},
                  "boards.study": {"fed_from_backup": "annex"}}, ("20 A", "19 A"), "inverters.annex.circuit.0",
         count=1),
    # a storage converter of its own, ahead of the meter
    Told("ME08", {**PV_BOARD, **LIMITED, "boards.pv.circuit.+": {**LIMITER, "id": "m9"},
                  "batteries.store": {"converter_power": "5 kVA", "connected_to": "main"}},
         ("does not see battery",), "data.devices.log"),
    Told("ME03", {f"{METER}.purpose": "generation"}, ("no energy meter",)),
    Told("EA07", {f"{TWELVE}.leakage_current": "12 mA", f"{FORE}.circuit.2.section": REMOVED}, ("4 mm²", "10 mm²"),
         CABLE, among_others=True),
    Told("SU01", {SPD: REMOVED, "site.lightning_density": 6, "earthing.lightning_protection": NEAR}, ("20 m",),
         remedy="type 1 "),
    Told("SU02", {SPD: REMOVED, "earthing.lightning_protection": NEAR}, ("lightning",), remedy="type 1 "),
    Told("SU05", {SPD: REMOVED, f"{TWELVE}.dc_surge_protection": "2", "earthing.lightning_protection": NEAR},
         ("input -TB1-XD1",), f"{UNIT}.inputs.0", at=f"{INPUT}.circuit"),
    Told("SU05", {"earthing.lightning_protection": NEAR}, ("-TB1-FA1", "separation distance", "is not kept"), SPD,
         at=f"{SPD}.test_class"),
    Told("SU10", {f"{AC_SPD}.test_class": "2", "earthing.lightning_protection": LPS}, ("lightning protection",),
         also=("earthing.lightning_protection",)),
    Told("SU10", {f"{AC_SPD}.test_class": "2", "supply.overhead": True, "supply.direct_strokes": True}, ("overhead",),
         also=("supply.direct_strokes",)),
    # IEC 60364-4-44 443.5: 85 / (0.1 km · 0.846 / km² a) = 1004.7 is not below 1000, with 0.86 it is 988
    Told("SU08", {AC_SPD: REMOVED, **SUBURBAN, "site.lightning_density": 0.86}, ("443.4",), MAIN),
    # in a sub-board it protects that, not the main board
    Told("SU08", {**SECOND_SPD, "boards.pv.circuit.+": {**WEAK_SPD, "enclosure": "pv"}, AC_SPD: REMOVED}, ("-UC1",)),
    *(Told(code, SECOND_SPD, parts, "boards.pv.circuit.1", NC) for code, parts in {
        "SU11": ("3 kV", "2.5 kV"), "SU12": ("1.01 m", "above 1 m"), "SU13": ("32 A", "16 A")}.items()),
    Told("SU14", {**BOXES, f"{SPD}.enclosure": "jb1",
                  f"{INPUT}.circuit.+": {"kind": "surge_protection", "enclosure": "jb2"}}, ("`jb2`",),
         f"{INPUT}.circuit.2", count=1),
    Told("SU14", {**BOXES, f"{SPD}.enclosure": "jb2",
                  f"{INPUT}.circuit.+": {"kind": "surge_protection", "enclosure": "jb1"}}, ("`jb2`",), SPD, count=1),
    Told("SU15", {f"{AC_SPD}.test_class": "1+2", f"{AC_SPD}.impulse_current": "25 kA",
                  "earthing.lightning_protection": LPS, f"{MAIN}.circuit.+": WITH_1_AND_2}, ("7 kA", "12.5 kA"),
         f"{MAIN}.circuit.3", count=1),
    Told("SU16", {"earthing.lightning_protection": LPS, f"{STRING}.cable.length": "9 m",
                  f"{INPUT}.circuit.+": {"kind": "cable", "length": "11 m"}}, ("11 m", "inverter", "10 m"), count=1),
    Told("ACC01", {"accept": [{**ENTRY, "code": "XX99"}]}, ("matches no finding, and there is no such code",)),
    Told("RT01", {"loads.x": {"circuit": [{"kind": "breaker"}, {"kind": "cable", "length": "5 m"}]}},
         ("cable -EZ1-WD1 has no S: nothing says",), "loads.x.circuit.1", ADVICE, at="loads.x.circuit.1"),
    Told("RT01", {"supply.service_fuse": "1500 A"}, ("service fuse -FC1 has no I2",),
         severity=NC, at="supply.service_fuse"),
    Told("RT01", {"supply.service_fuse": "1500 A", "supply.earthing_system": "IT"}, ("service fuse -FC1 has no I2",)),
    # the device is assumed, so its block is asked for; what the supply is asked for stays there
    Told("RT01", {"supply.service_fuse": "1500 A", f"{MAIN}.circuit": REMOVED}, ("meter -UC1-PG1 has no Imax",),
         at=MAIN, remedy="give the `circuit` in the spec"),
    Told("RT01", {"supply.service_fuse": REMOVED, f"{MAIN}.circuit": REMOVED}, ("main switch -UC1-QB1 has no In",),
         at="supply", remedy="give `service_fuse`"),
    Told("FA02", {f"{UNIT}.circuit": REMOVED}, ("-TB1-FC1",), at=UNIT, remedy="give the `circuit` in the spec"),
)  # fmt: skip

MAIN_AND_PV = {"boards.pv": {"fed_from": "main", "peak_current": "6 kA", "circuit": [{"kind": "breaker"}]},
               f"{UNIT}.connected_to": "pv"}  # fmt: skip
PLACED_BOXES = {
    **BOXES, "junction_boxes": {"jb1": {"location": "roof"}, "jb2": {"location": "roof"}}, f"{SWITCH}.enclosure": "jb1",
    **ISSUED, f"{MAIN}.location": "meter room", f"{ISOLATOR}.location": "attic",
}  # fmt: skip

LATER_TOLD = (
    # 8 AWG of 75 °C allows 50 A: nothing ahead of the service conductors, the breaker behind them limits their load
    Told("NE03", {**NEC, "supply.service_fuse": REMOVED, f"{MAIN}.circuit": [
        {"kind": "cable", "length": "2 m", "section": "8 AWG", "terminal_temperature": "75 °C"},
        {"kind": "breaker", "rated_current": "60 A", "breaking_capacity": "10 kA", "poles": 3}]},
        ("60 A", "50 A"), f"{MAIN}.circuit.0"),
    # NEC 240.4(D): 30 A for 10 AWG; the isolator between it and the fuse protects no conductor
    Told("NE03", {**NEC, SWITCH: {"kind": "fuse", "rated_current": "40 A", "rated_voltage": "1000 V"},
                  f"{STRING}.cable.ambient_temperature": "30 °C", f"{STRING}.cable.grouped_circuits": 1},
         ("40 A", "30 A"), f"{STRING}.cable"),
    # the fuse of the one string of an input, and a switch between them
    Told("DC13", {f"{STRING}.count": 1, f"{INPUT}.circuit": [
        {"kind": "isolator"}, {"kind": "fuse", "rated_current": "25 A"}]}, ("has string fuses",), INPUT),
    # what isolates the trunk cable does not isolate the circuit of an inverter at a board behind it
    Told("AC11", {**TRUNK, "boards.pv.circuit": [{"kind": "isolator"}], "boards.shed": {"fed_from": "pv"},
                  f"{UNIT}.connected_to": "shed", ISOLATOR: REMOVED, RCD: COUNTER, f"{BREAKER}.isolating": False},
         ("no AC isolator",), UNIT),
    # IEC 61439-1 Table 7: 1.5 · 5 kA = 7.5 kA
    Told("FA11", {f"{MAIN}.peak_current": "6 kA", f"{MAIN}.short_time_current": "4 kA"},
         ("4 kA (Icw)", "greatest fault current of 5 kA"), count=1),
    Told("FA11", {f"{MAIN}.peak_current": "6 kA"}, ("6 kA (Ipk)", "peak fault current of 7.5 kA")),
    Told("FA11", MAIN_AND_PV, ("board -UC2",), "boards.pv", count=1),
    Told("FA11", {**MAIN_AND_PV, f"{MAIN}.conditional_current": "5 kA"}, ("board -UC2",), "boards.pv", count=1),
    Told("FA12", {**TT, f"{CABLE}.length": "140 m", "supply.voltage_rise_limit": 20}, ("200 A",), BREAKER),
    # how much flows at the first board is not known, as no table has its cable; at the next one it is
    Told("FA11", {f"{UNIT}.connected_to": "main",
                  "boards.far": {"fed_from": "main", "circuit": [{"kind": "breaker"}, UNTABULATED]},
                  "boards.near": {"fed_from": "main", "peak_current": "6 kA", "circuit": [{"kind": "breaker"}]}},
         ("board -UC3", "6 kA (Ipk)"), "boards.near", count=1),
    # FA03 tells of the first that its loop is too long, FA12 of the second
    Told("FA12", {f"{FORE}.circuit.2.length": "140 m", f"{FORE}.circuit.2.section": "4 mm2",
                  f"{FORE}.circuit.1": REMOVED, f"{CABLE}.length": "140 m", f"{CABLE}.section": "4 mm2",
                  "supply.voltage_rise_limit": 20}, ("200 A", "118 A"), BREAKER, among_others=True),
    # 730 V / 30 mA = 24.3 kΩ (IEC 62109-2), more than the 20 kΩ of an array above 20 kW
    Told("EA10", {f"{STRING}.count": 4, f"{TWELVE}.insulation_threshold": "22 kohm"}, ("22 kΩ", "24.3 kΩ"), UNIT),
    # two strings need no fuse; 1.45 · 25 A = 36.3 A, 1.45 · 32 A = 46.4 A
    Told("DC37", {f"{FORE}.inputs.0.string_fuses": {"rated_current": "25 A"}, f"{INPUT}.string_fuses": {},
                  f"{INPUT}.strings": [string(count=2), string(count=1)]}, ("36.3 A",), count=1, among_others=True),
    Told("DC37", {f"{FORE}.inputs.0.string_fuses": {}, f"{FORE}.inputs.0.strings": [string(count=2), string(count=1)],
                  f"{INPUT}.string_fuses": {"rated_current": "32 A"},
                  f"{INPUT}.strings": [string(count=2), string(count=1)]}, ("46.4 A",), count=2, among_others=True),
    # each type is told once
    Told("DC31", {**OPEN_DATA, f"{MONO}.open_circuit_voltage": "42 V",
                  "types.modules.other": {**OPEN_DATA[MONO], "open_circuit_voltage": "42 V"},
                  f"{INPUT}.strings.+": string(), f"{UNIT}.inputs.+": {"strings": [string(module="other")]}},
         ("at 25 °C",), count=2),
    # 14 AWG copper at most 15 A (NEC 240.4(D))
    Told("NE03", {**NEC, **THREE, f"{INPUT}.string_fuses": {"rated_current": "30 A"},
                  f"{STRING}.cable.section": "14 AWG"}, ("fuse", "30 A", "15 A")),
    # the trunk comes first
    Told("AC19", {**TRUNK, "boards.pv.rated_current": "10 A",
                  "boards.shed": {"fed_from": "main", "rated_current": "16 A",
                                  "circuit": [{"kind": "breaker", "rated_current": "32 A"}]}},
         ("board -UC3", "16 A", "32 A"), "boards.shed"),
    # what is in the ground may say so, and does not end the search
    Told("AC39", {f"{FORE}.circuit.2.method": "D1", f"{FORE}.circuit.2.depth": "0.9 m", f"{CABLE}.depth": "0.9 m"},
         ("B2",), CABLE, count=1, among_others=True),
    # nothing is given of the first breaker, fuses in both poles are healthy, a switch for shutdown is there
    Told("DC14", {f"{FORE}.inputs.0.circuit.+": {"kind": "breaker"}, **fused("20 A")},
         ("20 A", "below the least allowed"), among_others=True),
    Told("DC39", {f"{FORE}.inputs.0.strings.0.count": 3, f"{FORE}.inputs.0.string_fuses": {}, **THREE,
                  f"{INPUT}.string_fuses": {"poles": 1}}, ("one pole",), count=1, among_others=True),
    Told("DC50", {"supply.country": "US", f"{FORE}.inputs.0.circuit.+": {"kind": "rapid_shutdown"}},
         ("no shutdown device",), f"{UNIT}.inputs.0", among_others=True),
    # an input that is linked to the first one is looked at with that
    Told("DC10", {f"{FORE}.inputs.+": {**ONE_INPUT, "strings": [SECOND], "linked_to": 1},
                  f"{INPUT}.strings.+": {**SECOND, "modules_in_series": 17}},
         ("17 modules", "18 modules"), f"{UNIT}.inputs.0.strings.1", count=1, among_others=True),
    Told("ME07", {f"{CABLE}": {**COUNTER, "connection": "ct", "ct_primary": "40 A", "ct_secondary": "5 A",
                               "ct_lead_length": "10 m", "ct_burden": "2.5 VA"}}, ("3.71 VA", "2.5 VA"), CABLE,
         count=1),
    # 17.32 A of 345 A is 5.02 %
    Told("FA13", {"supply.prospective_fault_current": "0.345 kA"}, ("5.02 %",)),
    # behind 40 m of cable the network gives less
    Told("FA13", {**LONG_FEEDER, "supply.prospective_fault_current": "0.345 kA"}, ("board -UC2",), "boards.pv",
         count=1),
    Told("FA14", {"supply.transformer": {**OWN, "secondary_length": "3.02 m"}}, ("3.02 m", "3 m")),
    Told("NE02", {**NEC, f"{CABLE}.section": "14 AWG", f"{CABLE}.grouped_circuits": 12}, ("terminals",), CABLE,
         count=1),
    Told("PW06", {**ISSUED, f"{INPUT}.strings.+": string()}, ("make of",), count=2),
    Told("PW06", {**ISSUED, f"{TWELVE}.make": "Tarnholt"}, ("module type mono",), count=1),
    Told("PW09", ISSUED, ("`customer`",), at="project.customer"),
    Told("PW10", {"project.document_status": "As-built"}, ("`installed`",), at="project.installed"),
)  # fmt: skip

LATER_SILENT: tuple[tuple[str, Changes], ...] = (
    # tested with the device ahead or stands by itself, one is enough
    ("FA11", {f"{MAIN}.conditional_current": "4 kA", f"{MAIN}.short_time_current": "5 kA"}),
    ("FA12", {RCD: REMOVED, "supply.loop_impedance": 1.2}),  # FA03
    ("PW07", {**ISSUED, **PLACES}),
    ("PW07", PLACED_BOXES),
    # it is in a board whose place is given, whatever it serves
    ("PW07", {**ISSUED, f"{MAIN}.location": "meter room", f"{ISOLATOR}.enclosure": "main",
              f"{SWITCH}.location": "attic"}),
    ("EA10", {f"{STRING}.count": 4, f"{TWELVE}.insulation_threshold": "22 kohm",
              f"{TWELVE}.galvanic_separation": True}),
    ("DC37", {f"{INPUT}.string_fuses": {"rated_current": "25 A"}}),  # no fuse is needed
    ("NE03", {**NEC, f"{STRING}.cable.section": "14 AWG"}),  # behind a switch, no fuse
)  # fmt: skip

OTHER_SILENT: tuple[tuple[str, Changes], ...] = (
    ("EA04", {"supply.earthing_system": "TN-C-S"}),
    ("EA04", {"site.building": "ground_mounted"}),
    ("EA05", {"earthing.electrode": REMOVED}),  # TN-S: the supply brings the earth
    ("EA07", {f"{TWELVE}.leakage_current": "12 mA", f"{CABLE}.section": REMOVED}),
    ("EA07", {f"{TWELVE}.leakage_current": "12 mA", f"{CABLE}.protective_section": "10 mm2"}),
    ("EA08", {"profile": "BS 7671"}),
    ("EA08", {"supply.earthing_system": "TN-C-S"}),
    *(
        ("EA14", {"supply.earthing_system": earth, "profile": book, "loads.car": {**CHARGER, **car}})
        for earth, book, car in (
            ("TN-C-S", "BS 7671", {"vehicle_outdoors": True, "open_pen_protection": "disconnection"}),
            ("TN-C-S", "BS 7671", {"vehicle_outdoors": False}),
            ("TN-C-S", "BS 7671", {"charging_point": False}),
            ("TN-C-S", "cautious", {"vehicle_outdoors": True}),
            ("TN-S", "BS 7671", {"vehicle_outdoors": True}),
        )
    ),
    ("EA14", {"supply.earthing_system": "TN-C-S", "profile": "BS 7671", f"{UNIT}.connected_to": "main",
              "boards.barn": {"fed_from": "main", "earthing_system": "TT", "electrode": {"resistance": 20},
                              "circuit": [{"kind": "breaker"}, {"kind": "cable", "length": "9 m"}]},
              "loads.car": {**CHARGER, "connected_to": "barn", "vehicle_outdoors": True}}),
    ("EA13", {"earthing.bonding.1": REMOVED, "earthing.extraneous_parts": False}),
    ("EA08", {"profile": "BS 7671", "supply.earthing_system": "TN-C-S", "supply.neutral_section": "25 mm2"}),
    ("ME04", {"supply.export_limit": "6 kW", f"{MAIN}.circuit.+": LIMITER}),
    ("ME05", {"supply.export_limit": "6 kW", f"{MAIN}.circuit.+": {**LIMITER, "id": "m9"},
              "data.links": [{"from": "m9", "to": "log", "medium": "ethernet"}]}),
    ("SU03", {SPD: REMOVED}),  # the density is given
    ("SU03", {SPD: REMOVED, "site.lightning_density": REMOVED, "earthing.lightning_protection": LPS}),  # SU02
    ("SU05", {f"{INPUT}.circuit.+": {"kind": "surge_protection", "test_class": "1"},
              "earthing.lightning_protection": NEAR}),
    ("SU05", {SPD: REMOVED, "earthing.lightning_protection": NEAR}),  # SU02
    ("SU08", {"earthing.lightning_protection": LPS}),
    ("SU08", {AC_SPD: REMOVED, **SUBURBAN, "site.lightning_density": 0.846}),
    # behind its inverter a battery is in no AC circuit that a meter could miss
    ("ME08", {**METERED, "batteries.store": BATTERY}),
    ("SU10", {AC_SPD: REMOVED, "earthing.lightning_protection": LPS}),  # SU08
    ("SU10", {f"{AC_SPD}.test_class": "2", f"{MAIN}.circuit.+": WITH_1_AND_2, "earthing.lightning_protection": LPS}),
    # told by a rule of their own: DC15, AC25, AC16; an IT system has no times for a first fault
    ("RT01", {**THREE, f"{MONO}.series_fuse_max": "20 A"}),
    ("RT01", {f"{CABLE}.cores": 3}),
    ("RT01", {f"{CABLE}.section": "7 mm2"}),
    ("RT01", {"supply.earthing_system": "IT"}),
)  # fmt: skip

TOLD = (*AC_TOLD, *DC_TOLD, *DATA_TOLD, *FAULT_TOLD, *OTHER_TOLD, *LATER_TOLD)
SILENT = (*AC_SILENT, *DC_SILENT, *DATA_SILENT, *FAULT_SILENT, *OTHER_SILENT, *LATER_SILENT)
