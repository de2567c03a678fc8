"""One failing case for each rule of the National Electrical Code, and one at each limit, on the base under that code.

The base is put on a 208Y/120 V supply. Its inverter declares 32 A, so that 1.25 · 32 A = 40 A (NEC 2023 705.28, 690.9:
the arithmetic of https://unanswered.io/guide/what-is-the-120-percent-rule-for-solar-panels). Ampacities: NEC Table
310.16 as Table E3705.1 of https://up.codes/s/conductor-sizing-and-overcurrent-protection prints it.
"""

from __future__ import annotations

from rule_cases import (
    ADVICE,
    BREAKER,
    CABLE,
    DANGER,
    INPUT,
    ISOLATOR,
    KEY,
    MAIN,
    MAIN_SWITCH,
    METER,
    MONO,
    NC,
    RCD,
    STRING,
    SWITCH,
    TWELVE,
    UNIT,
    Case,
)
from systems import BASE, REMOVED, Changes

from sld.finding import Severity

__all__ = ["AT_THE_LIMIT", "FAILING", "NEC"]

NEC: Changes = {
    "profile": "NEC 690",
    "supply.voltage": "208 V",
    "supply.frequency": "60 Hz",
    "supply.service_fuse": "100 A",
    "supply.loop_impedance": REMOVED,
    "supply.earthing_system": "TN-C-S",
    f"{TWELVE}.current_max": "32 A",
    f"{TWELVE}.rated_power": "11.5 kW",
    f"{MAIN}.rated_current": "150 A",
    f"{METER}.current_max": "200 A",
    f"{MAIN_SWITCH}.rated_current": "100 A",
    f"{BREAKER}.rated_current": "40 A",
    f"{BREAKER}.breaking_capacity": "10 kA",
    f"{BREAKER}.poles": 3,
    f"{RCD}": {"kind": "contactor", "rated_current": "60 A"},
    f"{CABLE}.section": "8 AWG",
    f"{CABLE}.terminal_temperature": "75 °C",
    f"{ISOLATOR}.rated_current": "60 A",
    f"{ISOLATOR}.poles": 3,
    f"{STRING}.cable": {"length": "15 m", "section": "10 AWG", "terminal_temperature": "75 °C"},
    f"{INPUT}.circuit.0": {"kind": "isolator", "rated_voltage": "1000 V", "rated_current": "60 A"},
    f"{SWITCH}": {"kind": "rapid_shutdown"},
    f"{TWELVE}.arc_fault_protection": True,
    f"{TWELVE}.ground_fault_protection": True,
    "site.building": "other_building",
    "earthing.conductor.section": "4 AWG",
    "earthing.bonding.0.section": "6 AWG",
    "earthing.bonding.1.section": "4 AWG",
}
PARALLEL = {f"{CABLE}.parallel": 2, f"{CABLE}.section": "1 AWG"}
AHEAD = {
    "boards.house": {"fed_from": "main", "rated_current": "200 A",
                     "circuit": [{"kind": "breaker", "rated_current": "100 A", "breaking_capacity": "10 kA"}]},
    f"{MAIN}.source_connection": "supply_side",
    f"{UNIT}.connected_to": "main",
}  # fmt: skip
SPLIT = {**NEC, "supply.phases": 1, "supply.split_phase": True, "supply.voltage": "240 V", f"{TWELVE}.phases": 1}
ONE_POLE = {"power": "1.8 kW", "circuit": [{"kind": "breaker", "rated_current": "20 A", "poles": 1}]}
CONTROLLED = {f"{MAIN}.rated_current": "125 A", f"{MAIN}.source_connection": "power_control"}
LATE = {
    f"{UNIT}.circuit": [
        {"kind": "cable", "length": "5 m", "section": "6 AWG", "terminal_temperature": "75 °C"},
        {"kind": "breaker", "rated_current": "40 A", "breaking_capacity": "10 kA", "poles": 3},
        {"kind": "isolator", "rated_current": "60 A", "poles": 3},
    ]
}


def store(fuse_a: float, size: str, **fuse: object) -> Changes:
    """Return a battery of 4.5 kW at 45 V, which is 100 A, with a fuse in both poles and a cable of 90 °C."""
    circuit = [
        {"kind": "fuse", "rated_current": f"{fuse_a} A", "rated_voltage": "80 V", "breaking_capacity": "20 kA",
         "switch": True, **fuse},
        {"kind": "cable", "type": "battery", "length": "2 m", "section": size},
    ]  # fmt: skip
    cells = {"voltage_min": "45 V", "voltage_max": "58 V", "short_circuit_current": "5 kA", "energy": "10 kWh"}
    return {
        **NEC,
        "types.cables.battery": {"insulation": "XLPE", "temperature_rating": "90 °C"},
        "batteries.store": {"inverter": "roof", "charge_converter_power": "4.5 kW", **cells, "dc_circuit": circuit},
    }


def islanded(**backup: object) -> Changes:
    """Return an inverter with a backup output and a board there."""
    away = {"boards.away": {"fed_from_backup": "roof"}, f"{UNIT}.connected_to": "main"}
    return {**NEC, f"{TWELVE}.backup": {"power": "10 kVA", **backup}, **away}


MEXICO = {"supply.country": "MX", "supply.grid_rules": "generic"}

FAILING = (
    # 706.30, 706.31: 1.25 · 100 A = 125 A; 240.6(A) has 110 A below it; 2 AWG of 75 °C carries 115 A; 1 AWG, 130 A,
    # allows 150 A
    Case("NE01", NC, store(110, "1 AWG"), "batteries.store.dc_circuit.0", ("110 A", "125 A"), "125 A"),
    Case("NE02", DANGER, store(125, "2 AWG"), "batteries.store.dc_circuit.1", ("115 A", "125 A"), "section"),
    Case("NE03", DANGER, store(175, "1 AWG"), "batteries.store.dc_circuit.1", ("175 A", "150 A"), "smaller"),
    Case("BA04", DANGER, store(125, "1 AWG", breaking_capacity="4 kA"), "batteries.store.dc_circuit.0",
         ("4 kA", "5 kA"), "5 kA"),
    Case("BA06", DANGER, store(125, "1 AWG", rated_voltage="50 V"), "batteries.store.dc_circuit.0", ("50 V", "58 V"),
         "58 V"),
    Case("BA09", NC, store(125, "1 AWG", switch=False), "batteries.store", ("cannot be cut off",), "isolator"),
    # 250.30: a separately derived system, whose neutral nothing bonds
    Case("BU01", DANGER, islanded(separates_neutral=True), UNIT, ("neutral without earth",), "neutral_earth_link"),
    Case("BU02", NC, islanded(separates_neutral=False, neutral_earth_link=True), UNIT, ("joined",), "poles"),
    # 408.6: the base has 5 kA
    Case("NE10", DANGER, {**NEC, f"{MAIN}.conditional_current": "4 kA"}, MAIN, ("4 kA (Icc)", "5 kA"), "5 kA"),
    Case("NE10", DANGER, {**NEC, f"{MAIN}.short_time_current": "4 kA"}, MAIN, ("4 kA (Icw)", "5 kA"), "5 kA"),
    Case("NE10", ADVICE, {**NEC, "supply.prospective_fault_current": "10.1 kA"}, MAIN, ("no short-circuit", "10.1 kA"),
         "label"),
    # 1.25 · 32 A = 40 A, the rating below in 240.6(A) is 35 A
    Case("NE01", NC, {**NEC, f"{BREAKER}.rated_current": "35 A"}, f"{UNIT}.circuit.0", ("35 A", "40 A", "125 %"),
         "40 A"),
    # 10 AWG copper: 35 A in the 75 °C column, below 40 A
    Case("NE02", DANGER, {**NEC, f"{CABLE}.section": "10 AWG"}, f"{UNIT}.circuit.2", ("35 A", "terminals", "40 A"),
         "section"),
    # 12 circuits of three conductors are 36: 0.40 · 50 A = 20 A, below 32 A
    Case("NE02", DANGER, {**NEC, f"{CABLE}.grouped_circuits": 12}, f"{UNIT}.circuit.2", ("20 A", "as laid", "32 A"),
         "section"),
    # 14 AWG at 75 °C: 20 A, below 1.5625 · 13.9 A = 21.7 A
    Case("DC48", NC, {**NEC, f"{STRING}.cable.section": "14 AWG"}, f"{KEY}.strings.0.cable",
         ("20 A", "21.7 A", "NEC 690"), "section"),
    # 10 AWG of 90 °C at 80 °C: 0.41 · 40 A = 16.4 A, below 1.25 · 13.9 A = 17.4 A
    Case("NE02", DANGER, {**NEC, f"{STRING}.cable.ambient_temperature": "80 °C", f"{STRING}.cable.grouped_circuits": 1},
         f"{KEY}.strings.0.cable", ("16.4 A", "as laid", "17.4 A"), "section"),
    # 8 AWG of 75 °C allows 50 A; 60 A is above
    Case("NE03", DANGER, {**NEC, f"{BREAKER}.rated_current": "60 A"}, f"{UNIT}.circuit.2", ("60 A", "50 A"), "smaller"),
    # 240.4(D): 14 AWG copper at most 15 A, though its table value is 20 A
    Case("NE03", DANGER, {**NEC, f"{CABLE}.section": "14 AWG"}, f"{UNIT}.circuit.2", ("40 A", "15 A"), "section"),
    # 100 A + 1.25 · 32 A = 140 A, above a busbar of 125 A
    Case("NE04", DANGER, {**NEC, f"{MAIN}.rated_current": "125 A"}, "boards.main", ("125 A", "140 A"), "opposite end"),
    # (100 A + 40 A) / 1.2 = 116.7 A, above 110 A
    Case("NE04", DANGER, {**NEC, f"{MAIN}.rated_current": "110 A", f"{MAIN}.source_connection": "opposite_end"},
         "boards.main", ("110 A", "117 A"), "125 A"),
    # 408.36: the main of 100 A on a busbar of 90 A, whatever its sources: 40 A of devices,
    # (100 A + 7.5 A) / 1.2 = 89.6 A, none on it, 80 A set
    *(Case("NE04", DANGER, {**NEC, **more, f"{MAIN}.rated_current": "90 A", f"{MAIN}.source_connection": way},
           "boards.main", ("90 A", "100 A"), "100 A")
      for way, more in (("sum_of_devices", {}), ("opposite_end", {f"{TWELVE}.current_max": "6 A"}),
                        ("supply_side", {}), ("power_control", {f"{MAIN}.power_control_current": "80 A"}))),
    Case("NE05", NC, {**NEC, **AHEAD, **LATE, f"{UNIT}.circuit.0.section": "8 AWG"}, f"{UNIT}.circuit.0",
         ("8 AWG", "6 AWG"), "6 AWG"),
    Case("NE06", NC, {**NEC, **PARALLEL}, f"{UNIT}.circuit.2", ("2 conductors", "1 AWG", "1/0 AWG"), "1/0 AWG"),
    # 705.28(A): a trunk cable of 35 A for 1.25 · 32 A
    Case("NE04", DANGER, {**NEC, "boards.pv": {"fed_from": "main", "trunk": True, "rated_current": "35 A",
                                               "circuit": [{"kind": "breaker", "rated_current": "35 A"}]},
                          f"{UNIT}.connected_to": "pv"}, "boards.pv", ("35 A", "40 A"), "40 A"),
    # 705.13: a busbar of 125 A under a power control system set to 130 A
    Case("NE04", DANGER, {**NEC, **CONTROLLED, f"{MAIN}.power_control_current": "130 A"}, "boards.main",
         ("125 A", "130 A", "power control"), "lower setting"),
    # 705.11(C): 5.5 m of conductors without a device of their own
    Case("NE09", NC, {**NEC, **AHEAD, **LATE, f"{UNIT}.circuit.0.length": "5.5 m"}, f"{UNIT}.circuit.0",
         ("5.5 m", "more than 5 m"), "within 5 m"),
    Case("NE09", NC, {**NEC, **AHEAD, **LATE, "site.building": "dwelling", f"{UNIT}.circuit.0.length": "3.5 m"},
         f"{UNIT}.circuit.0", ("3.5 m", "more than 3 m"), "within 3 m"),
    # the first source has 5 m, the second 5.5 m
    Case("NE09", NC, {**NEC, **AHEAD, **LATE, "inverters.two": {**BASE["inverters"]["roof"], "connected_to": "main",
         "circuit": [{**LATE[f"{UNIT}.circuit"][0], "length": "5.5 m"}, *LATE[f"{UNIT}.circuit"][1:]]}},
         "inverters.two.circuit.0", ("5.5 m", "more than 5 m"), "within 5 m"),
    # Chapter 9 Table 1: two conductors of 5 mm in 12 mm are 34.7 %, above 31 %
    Case("AC60", NC, {**NEC, f"{CABLE}.conduit": "p", f"{CABLE}.single_conductors": 2,
                      f"{CABLE}.outside_diameter": "5 mm", "site.conduits.p": {"inside_diameter": "12 mm"}}, CABLE,
         ("34.7 %", "31 %"), "larger conduit"),
    # 690.41(B), and what is not known of it
    Case("NE08", NC, {**NEC, f"{TWELVE}.ground_fault_protection": False}, UNIT, ("does not protect", "earth faults"),
         "listed"),
    Case("NE08", ADVICE, {**NEC, f"{TWELVE}.ground_fault_protection": None}, UNIT, ("not stated",), "data sheet"),
    # 690.11 and 690.12 hold by the profile, in whichever country, and where none is named: 18 · 40.56 V = 730 V
    *(Case("DC45", NC, {**NEC, **country, f"{TWELVE}.arc_fault_protection": False}, UNIT, ("730 V", "690.11", "80 V"),
           "arc_fault_protection") for country in ({}, MEXICO, {"supply.country": "US"})),
    *(Case("DC50", NC, {**NEC, **country, SWITCH: REMOVED}, KEY, ("no shutdown device", "690.12"), "rapid_shutdown")
      for country in ({}, MEXICO, {"supply.country": "US"})),
    # 230.67(A): a service of a dwelling shall have one; an existing one is advised
    Case("NE07", NC, {**NEC, "site.building": "dwelling", f"{MAIN}.circuit.2": REMOVED}, "boards.main",
         ("no surge protection",), "surge_protection"),
    Case("NE07", ADVICE, {**NEC, "site.building": "dwelling", f"{MAIN}.circuit.2": REMOVED,
                          f"{MAIN}.status": "existing"}, "boards.main", ("no surge protection",), "surge_protection"),
    # 208Y/120 V: 120 V from line to ground
    Case("SU09", NC, {**NEC, f"{MAIN}.circuit.2.continuous_voltage": "115 V"}, f"{MAIN}.circuit.2",
         ("115 V", "120 V"), "120 V"),
    Case("PR01", Severity.ASSUMPTION, NEC, "", ("NEC 690", "250.4"), "other means"),
    Case("PR01", Severity.ASSUMPTION, {"profile": "AS/NZS 5033"}, "", ("AS/NZS 3008.1.1",), "other means"),
    # AS/NZS 4777.1:2016 3.3.3 demands 2 %: no mere target
    Case("AC15", NC, {"profile": "AS/NZS 5033", "supply.voltage_rise_limit": REMOVED, f"{CABLE}.length": "60 m"},
         UNIT, ("limit", "2 %"), "section"),
    # 690.7(A): 600 V on a dwelling; 18 · 40.56 V = 730 V
    Case("DC03", NC, {**NEC, "site.building": "dwelling"}, f"{KEY}.strings.0", ("730 V", "600 V", "dwelling"), "600 V"),
    # 250.122: a device of 40 A asks for 10 AWG
    # 240 V between the two lines; a load that names its line works at 120 V with one pole
    Case("AC24", NC, {**SPLIT, "loads.heater": ONE_POLE}, "loads.heater.circuit.0", ("1 pole", "two line"), "`line`"),
    Case("AC23", NC, {**NEC, f"{CABLE}.protective_section": "12 AWG"}, f"{UNIT}.circuit.2", ("12 AWG", "10 AWG"),
         "10 AWG"),
    # 250.66: service conductors for 100 A at 75 °C are 3 AWG copper, which asks for 8 AWG
    Case("EA01", NC, {**NEC, "earthing.conductor.section": "10 AWG"}, "earth.electrode", ("10 AWG", "8 AWG"), "8 AWG"),
    Case("AC16", NC, {**NEC, f"{CABLE}.section": "6 mm2"}, f"{UNIT}.circuit.2", ("6 mm²", "10 AWG", "8 AWG"),
         "section"),
    Case("FA01", DANGER, {**NEC, "supply.prospective_fault_current": "18 kA"}, f"{UNIT}.circuit.0",
         ("10 kA", "18 kA"), "18 kA"),
    Case("AC12", NC, {**NEC, f"{ISOLATOR}.rated_current": "30 A"}, f"{UNIT}.circuit.3", ("30 A", "40 A"), "60 A"),
)  # fmt: skip

AT_THE_LIMIT: tuple[tuple[str, Changes], ...] = (
    ("NE01", NEC),
    *((code, store(125, "1 AWG")) for code in ("NE01", "NE02", "NE03", "BA04", "BA06", "BA09")),
    ("NE03", store(150, "1 AWG")),
    ("BU01", islanded(separates_neutral=False)),  # not separately derived: bonded at the service (702.11)
    ("BU01", islanded()),
    ("NE10", {**NEC, f"{MAIN}.conditional_current": "5 kA", f"{MAIN}.short_time_current": "4 kA"}),
    ("NE10", {**NEC, "supply.prospective_fault_current": "10 kA"}),
    # 10 AWG of 75 °C: 35 A = 1.25 · 28 A
    ("NE02", {**NEC, f"{TWELVE}.current_max": "28 A", f"{TWELVE}.rated_power": "10 kW", f"{CABLE}.section": "10 AWG",
              f"{BREAKER}.rated_current": "35 A"}),
    ("NE03", {**NEC, f"{BREAKER}.rated_current": "50 A"}),
    # 8 AWG of 75 °C, seven to nine conductors: 0.70 · 50 A = 35 A, the next standard rating is 35 A itself
    ("NE03", {**NEC, f"{CABLE}.grouped_circuits": 3, f"{BREAKER}.rated_current": "35 A",
              f"{TWELVE}.current_max": "28 A", f"{TWELVE}.rated_power": "10 kW"}),
    # 100 A + 1.25 · 32 A = 140 A
    ("NE04", {**NEC, f"{MAIN}.rated_current": "140 A"}),
    # 200 A busbar and main: (200 A + 40 A) / 1.2 = 200 A
    ("NE04", {**NEC, "supply.service_fuse": "200 A", f"{MAIN}.rated_current": "200 A",
              f"{MAIN}.source_connection": "opposite_end"}),
    # a trunk cable has no loads: its breaker of 40 A and 1.25 · 32 A = 40 A count, not their sum
    ("NE04", {**NEC, "boards.pv": {"fed_from": "main", "trunk": True, "rated_current": "40 A",
                                   "circuit": [{"kind": "breaker", "rated_current": "40 A"}]},
              f"{UNIT}.connected_to": "pv"}),
    # 100 A + 1.25 · 32 A = 140 A would be too much for 125 A; the power control system lets no more flow
    ("NE04", {**NEC, **CONTROLLED, f"{MAIN}.power_control_current": "125 A"}),
    ("NE09", {**NEC, **AHEAD, **LATE, f"{UNIT}.circuit.0.length": "5 m"}),
    ("NE09", {**NEC, **AHEAD, f"{CABLE}.length": "40 m"}),
    ("NE05", {**NEC, **AHEAD, **LATE}),
    ("NE05", {**NEC, **AHEAD}),  # 8 AWG behind its breaker
    ("NE06", {**NEC, **PARALLEL, f"{CABLE}.section": "1/0 AWG"}),
    ("NE07", NEC),
    # two strings off buildings are exempt from 690.41(B); and nothing on the ground is shut down or guarded for arcs
    *((code, {**NEC, "site.building": "ground_mounted", SWITCH: REMOVED, f"{TWELVE}.arc_fault_protection": False,
              f"{TWELVE}.ground_fault_protection": False}) for code in ("NE08", "DC45", "DC50")),
    # beside its modules, and without voltage as soon as the network is off
    ("DC50", {**NEC, SWITCH: REMOVED, f"{TWELVE}.micro": True}),
    ("DC45", {**NEC, **MEXICO}),
    ("AC24", {**SPLIT, "loads.lamps": {**ONE_POLE, "line": "L1"}}),
    ("AC23", {**NEC, f"{CABLE}.protective_section": "10 AWG"}),
    # 10 · 50 V · (1 + 0.005 · 40) = 600 V
    ("DC03", {**NEC, "site.building": "dwelling", f"{MONO}.open_circuit_voltage": "50 V",
              f"{MONO}.voltage_coefficient": "-0.5 %/K", "site.temperature_min": "-15 °C",
              f"{STRING}.modules_in_series": 10}),
    ("PR01", {}),
)  # fmt: skip
