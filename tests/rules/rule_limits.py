"""More cases of the rules: a hair beyond each limit, exactly at it, and each reason not to tell.

The limits are those of the clause that each rule names, worked by hand in the comments; "common practice, no source"
where the rule says so. `rule_cases.py` has the spec paths and the first case of every rule.
"""

from __future__ import annotations

from typing import NamedTuple

from rule_cases import (
    ADVICE,
    BREAKER,
    CABLE,
    CHARGER,
    FEEDER,
    FUSE,
    ISOLATOR,
    MAIN,
    MAIN_SWITCH,
    NC,
    ONE_PHASE,
    OWN,
    PV_BOARD,
    RCD,
    TT,
    TWELVE,
    UNIT,
    charging,
)
from systems import REMOVED, Changes

from sld.finding import Severity

__all__ = ["SILENT", "TOLD", "Told"]


class Told(NamedTuple):
    """What a rule must tell of a change of the base, as far as it is stated here.

    message: parts in their order. at: dotted end of the place in the spec. also: how many further places. count: how
    many findings of the code. among_others: with the neighbours of `test_rules_in_depth`.
    """

    code: str
    changes: Changes
    message: tuple[str, ...]
    device: str | None = None
    severity: Severity | None = None
    at: str | None = None
    also: int | None = None
    count: int | None = None
    remedy: str = ""
    among_others: bool = False


FORE = "inverters.fore"
SECOND_RCD = {"kind": "rcd", "sensitivity": "A"}
PUMP = {"loads.pump": {"power": "2 kW", "connected_to": "pv"}}
BARE_BOARD = {"boards.pv": {"fed_from": "main"}, f"{UNIT}.connected_to": "pv"}
PART_OF_TWO = {"supply.transformer": {**OWN, "secondary_voltage": "440.2 V"}}
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
    Told("AC11", {ISOLATOR: {**SWITCH_FUSE, "switch": False}}, ("no AC isolator",)),
    Told("AC14", {**BARE_BOARD, **PUMP, BREAKER: REMOVED}, ("between it and board -UC2",), UNIT, count=1),
    Told("AC14", {**PV_BOARD, **PUMP, BREAKER: REMOVED}, ("between it and board -UC2",), UNIT, count=1),
    Told("AC15", {**LONG_FEEDER, "supply.voltage_rise_limit": 0.5}, ("%", "limit of 0.5 %"), UNIT,
         at="boards.pv.circuit.1.section", also=1),
    Told("AC15", {**LONG_FEEDER, "supply.voltage_rise_limit": REMOVED}, ("%", "target of 1 %"), UNIT,
         at="boards.pv.circuit.1.section", also=0),
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
    Told("AC30", {"loads.car": charging(residual_current="30.2 mA", sensitivity="B")}, ("no RCD of at most 30 mA",)),
    Told("AC32", {**ONE_PHASE, "supply.earthing_system": "IT", f"{BREAKER}.poles": 1},
         ("1 pole and leaves", "in an IT system"), BREAKER, NC),
    Told("AC32", {**TT, f"{BREAKER}.poles": 3}, ("3 poles and leaves", "in a TT system"), BREAKER, ADVICE),
    Told("AC35", {"boards.aux": {"fed_from": "main", "circuit": [{"kind": "cable", "length": "5 m"}]}, **FEEDER},
         ("2 single-phase",), "boards.sub.circuit.1"),
)  # fmt: skip

AC_SILENT: tuple[tuple[str, Changes], ...] = (
    ("AC03", {BREAKER: FUSE, f"{CABLE}.section": "1.5 mm2"}),  # carries less than the fuse lets through: AC02
    ("AC04", {f"{TWELVE}.current_max": "20.1 A"}),  # above its rated current: AC01
    ("AC08", {f"{MAIN}.circuit.+": SECOND_RCD}),  # nothing of type B behind it
    ("AC08", {f"{MAIN}.circuit.+": {**SECOND_RCD, "sensitivity": "B"}, "loads.charger": CHARGER}),
    ("AC10", {"loads.pump": {"power": "2 kW", "circuit": [{"kind": "rcbo", "bidirectional": False}]}}),
    ("AC10", {RCD: {"kind": "rcbo", "rated_current": "20 A", "bidirectional": True}}),
    ("AC11", {ISOLATOR: SWITCH_FUSE}),
    ("AC14", {**PV_BOARD, BREAKER: REMOVED}),  # the breaker of the board protects its one circuit
    ("AC18", {**ONE_PHASE, f"{TWELVE}.rated_power": "5 kW"}),  # a single-phase supply has no other line
    ("AC20", {MAIN_SWITCH: SWITCH_FUSE}),
    ("AC21", {f"{TWELVE}.interface_protection": False, f"{MAIN}.circuit.+": {"kind": "interface_protection"}}),
    ("AC26", {f"{CABLE}.cores": 5}),
    ("AC26", SINGLE_CORE),
    ("AC28", transformer("440 V")),
    ("AC28", {**ONE_PHASE, **transformer("400 V")}),  # three-phase transformers serve single-phase supplies
    *(("AC29", {**ONE_PHASE, "supply.voltage": volt}) for volt in ("108 V", "132 V", "207 V", "253 V", "304.7 V")),
    *(("AC29", {"supply.voltage": volt}) for volt in ("228.8 V", "528 V", "540 V", "759 V", "900 V", "1100 V")),
    # the RCD stands ahead of the breaker
    ("AC30", {"loads.car": {**CHARGER, "circuit": [{"kind": "rcd", "sensitivity": "B"}, {"kind": "breaker"}]}}),
    # one of two RCDs is of type B
    ("AC30", {"loads.car": {**CHARGER, "circuit": [
        {"kind": "rcd", "sensitivity": "B", "residual_current": "30 mA"},
        {"kind": "rcd", "sensitivity": "A", "residual_current": "30 mA"}]}}),
    ("AC35", {key: value for key, value in FEEDER.items() if key != "inverters.two"}),  # one inverter alone
    ("AC35", {**FEEDER, "supply.phases": 1, f"{TWELVE}.phases": 1}),  # the neutral carries what the line does
)  # fmt: skip

TOLD = AC_TOLD
SILENT = AC_SILENT
