"""Cases of the rules that compare with the grid rules of a country; the country files name the sources."""

from __future__ import annotations

from rule_cases import ADVICE, FEEDER, MAIN, NC, PV_BOARD, TWELVE, UNIT, Case
from systems import BASE

__all__ = ["AT_THE_LIMIT", "FAILING"]

ONE_LINE = {f"{TWELVE}.phases": 1}
OWN = {"kind": "interface_protection", "settings": "VDE-AR-N 4105"}
ROOF = {**BASE["inverters"]["roof"], "connected_to": "pv"}
TWO_AT_A_BOARD = {
    **PV_BOARD, "supply.country": "DE", f"{TWELVE}.rated_power": "16 kW", UNIT: ROOF, "inverters.barn": ROOF,
}  # fmt: skip
SWITCH = {"kind": "contactor", "id": "k", "rated_current": "63 A"}

FAILING = (
    # Germany above 30 kVA (VDE-AR-N 4105 6.1), Austria from 30 kVA (Vorarlberg Netz): 30.1 and 30 kVA
    Case("AC62", NC, {"supply.country": "DE", f"{TWELVE}.rated_power": "30.1 kW"}, MAIN, ("30.1 kVA", "> 30 kVA"),
         "`interface_protection`"),
    Case("AC62", NC, {"supply.country": "AT", f"{TWELVE}.rated_power": "30 kW"}, MAIN, ("30 kVA", "≥ 30 kVA"),
         "`interface_protection`"),
    # 2 · 16 kVA at a board of their own: told there; a device in the circuit of the other one serves that one alone
    Case("AC62", NC, TWO_AT_A_BOARD, "boards.pv", ("32 kVA", "> 30 kVA"), "the board that the units feed"),
    Case("AC62", NC, {**TWO_AT_A_BOARD, "inverters.barn": {**ROOF, "circuit": [OWN]}}, "boards.pv", ("32 kVA",),
         "the board that the units feed"),
    # a relay that is not said to open a switch
    Case("AC62", NC, {**TWO_AT_A_BOARD, f"{MAIN}.circuit.+": {"kind": "interface_relay"}}, "boards.pv", ("32 kVA",),
         "the board that the units feed"),
    # the eleventh digit of a MaLo-ID: 41373559241 fits (https://nordgroon.de), 41373559242 does not
    Case("PW13", NC, {"supply.country": "DE", "supply.supply_point": "hello"}, "", ("`hello`", "MaLo-ID"), "the bill"),
    Case("PW14", ADVICE, {"supply.country": "DE", "supply.supply_point": "41373559242"}, "", ("41373559242",),
         "digit by digit"),
    # Austria 3.68 kVA, Germany 4.6 kVA, France 6 kVA (from memory)
    Case("AC18", ADVICE, {**ONE_LINE, "supply.country": "AT", f"{TWELVE}.rated_power": "4 kW"}, UNIT,
         ("4 kVA", "> 3.68 kVA"), "three-phase"),
    Case("AC18", ADVICE, {**ONE_LINE, "supply.country": "FR", f"{TWELVE}.rated_power": "6.1 kW"}, UNIT,
         ("6.1 kVA", "> 6 kVA"), "three-phase"),
)  # fmt: skip

AT_THE_LIMIT = (
    ("AC62", {"supply.country": "DE", f"{TWELVE}.rated_power": "30 kW"}),
    ("AC62", {"supply.country": "AT", f"{TWELVE}.rated_power": "29.9 kW"}),
    ("AC62", {f"{TWELVE}.rated_power": "300 kW"}),  # no country, no limit
    ("AC62", {"supply.country": "DE", f"{TWELVE}.rated_power": "31 kW", f"{MAIN}.circuit.+": OWN}),
    ("AC62", {**TWO_AT_A_BOARD, "inverters.barn": {**ROOF, "circuit": [OWN]}, UNIT: {**ROOF, "circuit": [OWN]}}),
    (
        "AC62",
        {
            "supply.country": "DE",
            f"{TWELVE}.rated_power": "31 kW",
            f"{MAIN}.circuit": [SWITCH, {"kind": "interface_relay", "trips": "k"}],
        },
    ),
    # what is only planned neither counts nor needs it
    ("AC62", {**TWO_AT_A_BOARD, "inverters.barn": {**ROOF, "status": "future"}}),
    ("PW13", {"supply.country": "DE", "supply.supply_point": "413 7355 9241"}),
    ("PW13", {"supply.country": "US", "supply.supply_point": "hello"}),  # no national number
    ("PW13", {"supply.supply_point": "hello"}),
    ("PW14", {"supply.country": "DE", "supply.supply_point": "41373559241"}),
    ("PW14", {"supply.country": "DE", "supply.supply_point": "hello"}),  # PW13 tells it
    ("AC18", {**ONE_LINE, "supply.country": "AT", f"{TWELVE}.rated_power": "3.68 kW"}),
    ("AC18", {**ONE_LINE, "supply.country": "FR", f"{TWELVE}.rated_power": "6 kW"}),
    ("AC18", {**ONE_LINE, "supply.country": "US", f"{TWELVE}.rated_power": "9 kW"}),  # no such rule there
    ("AC42", {**FEEDER, "supply.country": "FR", "types.inverters.single.apparent_power_max": "6 kVA"}),
)
