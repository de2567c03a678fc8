"""One failing case for each rule: a change of the base that breaks it, and what must be told.

The data are invented; each limit is that of the clause the rule names, and the numbers in the comments were worked by
hand from the formula of that clause. "Common practice, no source" where the rule says so.
"""

from __future__ import annotations

from typing import Any, NamedTuple

from systems import REMOVED, Changes

from sld.finding import Severity

__all__ = ["AT_THE_LIMIT", "FAILING", "Case"]

ADVICE, NC, DANGER = Severity.ADVICE, Severity.NON_COMPLIANCE, Severity.DANGER


class Case(NamedTuple):
    """A broken rule: the change of the base, the device that is flagged, parts of the message in order, the remedy."""

    code: str
    severity: Severity
    changes: Changes
    device: str
    message: tuple[str, ...]
    remedy: str


SITE, MONO, TWELVE = "site", "types.modules.mono", "types.inverters.twelve"
UNIT = "inverters.roof"
INPUT = f"{UNIT}.inputs.0"
KEY = "inverters.roof.inputs.0"  # of the System: the same words
STRING = f"{INPUT}.strings.0"
SPD, SWITCH = f"{INPUT}.circuit.0", f"{INPUT}.circuit.1"
BREAKER, RCD, CABLE, ISOLATOR = (f"{UNIT}.circuit.{place}" for place in range(4))
MAIN = "boards.main"
METER, MAIN_SWITCH, AC_SPD = (f"{MAIN}.circuit.{place}" for place in range(3))
CHAIN = "data.chains.bus"
LPS = {"separation_kept": True}
ADDED = f"{INPUT}.circuit.+"
PLUG = {"kind": "plug_connector"}
SEPARATED = {"separation_kept": True, "separation_path": "10 m", "down_conductors": 4}
THREE = {f"{STRING}.count": 3}
HIGH = {f"{TWELVE}.dc_voltage_max": "1500 V", f"{MONO}.system_voltage_max": "1500 V"}
SECOND = {"module": "mono", "modules_in_series": 18, "orientation": "south"}
FUSE = {"kind": "fuse", "rated_current": "20 A"}
RELEASE = {
    "kind": "breaker", "construction": "moulded_case", "rated_current": "25 A", "overload_setting": "20 A",
    "short_time_setting": "120 A", "short_time_delay": "0.2 s", "instantaneous_setting": "200 A",
    "breaking_capacity": "25 kA",
}  # fmt: skip
TT = {"supply.earthing_system": "TT"}
PV_BOARD = {
    "boards.pv": {"fed_from": "main", "circuit": [{"kind": "breaker", "rated_current": "32 A"}]},
    f"{UNIT}.connected_to": "pv",
}
AC_WAY = {"kind": "cable", "length": "15 m", "section": "4 mm2"}
COUNTER = {"kind": "meter", "purpose": "generation"}
RCD_30 = {"kind": "rcd", "rated_current": "25 A", "residual_current": "100 mA", "sensitivity": "A", "poles": 4}
CABLE_AHEAD = RCD
OUTBUILDING = {
    "boards.shed": {"fed_from": "main", "circuit": [
        {"kind": "breaker", "rated_current": "32 A", "curve": "C", "breaking_capacity": "6 kA"},
        {"kind": "cable", "length": "30 m", "section": "10 mm2"}]},
    f"{UNIT}.connected_to": "main",
}  # fmt: skip
OWN_EARTH = {"boards.shed.earthing_system": "TT", "boards.shed.electrode": {"kind": "rod", "resistance": 80}}
THREE_WIRES = {"supply.neutral": "not_distributed", "supply.voltage": "230 V", f"{BREAKER}.poles": 3,
               f"{RCD}.poles": 3, f"{ISOLATOR}.poles": 3, f"{MAIN_SWITCH}.poles": 3}  # fmt: skip
RCBO_30 = {"kind": "rcbo", "rated_current": "32 A", "residual_current": "30 mA", "sensitivity": "A", "poles": 4}
WIDE = {"supply.service_fuse": "63 A"}
AHEAD = {"kind": "rcd", "residual_current": "300 mA", "sensitivity": "A"}
TRUNK = {
    "boards.pv": {"fed_from": "main", "trunk": True, "circuit": [{"kind": "breaker", "rated_current": "32 A"}]},
    f"{UNIT}.connected_to": "pv",
}
SHARED = {
    "boards.pv": {"fed_from": "main", "trunk": True, "circuit": [
        {"kind": "breaker", "rated_current": "16 A"}, {"kind": "cable", "length": "12 m"}]},
    f"{UNIT}.connected_to": "pv", "loads.pump": {"power": "2 kW", "connected_to": "pv"},
}  # fmt: skip
URBAN = {"site.surroundings": "urban", "site.lightning_density": 0.85, "supply.risk_length": "1 km"}
IN_PIPE = {"length": "20 m", "section": "4 mm2", "conduit": "p"}
PIPED = {f"{CABLE}.conduit": "p", "site.conduits.p": {"inside_diameter": "20 mm"}}
LIMITED = {"supply.export_limit": "6 kW", "data.devices.log.feed_in_limit": {"sensor": "m9", "inverters": ["roof"]}}
SPARED = {"data.devices.log.feed_in_limit": {"sensor": "m9", "inverters": ["store"]},
          "batteries.store": {"converter_power": "3 kVA"}}  # fmt: skip
WITHOUT_OWN = {f"{TWELVE}.interface_protection": False}
RELAY = {"kind": "interface_relay", "trips": "k"}
COUPLING = {"kind": "contactor", "id": "k", "rated_current": "25 A", "poles": 4}
SIXTEEN = {"supply.prospective_fault_current": "16 kA", f"{MAIN}.conditional_current": "16 kA"}
LIMITER = {"kind": "meter", "purpose": "feed_in_limit"}

WAY = {"kind": "cable", "length": "5 m", "section": "10 mm2"}
ONE_INPUT = {"strings": [{**SECOND, "count": 2}], "circuit": [{"kind": "isolator"}]}
SUB_ARRAYS = {f"{TWELVE}.inputs.0.count": 3, f"{UNIT}.inputs": [ONE_INPUT, {**ONE_INPUT}, {**ONE_INPUT}]}
GROUPED = {f"{STRING}.count": 8, f"{INPUT}.strings_per_fuse": 2, f"{MONO}.short_circuit_current": "4 A",
           f"{MONO}.mpp_current": "3.8 A", f"{MONO}.rated_power": "118 W",
           f"{MONO}.series_fuse_max": "20 A"}  # fmt: skip
OPEN_DATA = {
    MONO: {
        "rated_power": "270 W", "open_circuit_voltage": "37.8 V", "short_circuit_current": "9.04 A",
        "mpp_voltage": "30.8 V", "mpp_current": "8.77 A", "voltage_coefficient": "-0.36 %/K",
        "current_coefficient": "5.424 mA/K", "power_coefficient": "-0.46 %/K", "series_fuse_max": "15 A",
        "single_diode": {"photocurrent": "9.317927 A", "saturation_current": "0.6098899 nA",
                         "series_resistance": 0.25903, "shunt_resistance": "602.153625 ohm",
                         "modified_ideality": "1.612427 V"},
    }
}  # fmt: skip
"""Row 6235 of the module list of the California Energy Commission, 2019-03-05 (multicrystalline, 60 cells)."""

LIMITS = f"{TWELVE}.inputs.0"
EARTHED = {**THREE, f"{INPUT}.functional_earth": True, f"{INPUT}.functional_earth_pole": "negative"}
OPTIMISER = {
    "kind": "optimiser", "input_voltage_max": "60 V", "input_current_max": "18 A", "rated_power": "500 W",
    "output_voltage_max": "60 V", "output_current_max": "15 A", "string_voltage": "700 V",
    "string_voltage_max": "900 V", "units_min": 8, "units_max": 25, "string_power_max": "12 kW",
}  # fmt: skip


def with_optimisers(**other: object) -> Changes:
    """Return the strings of the base with an optimiser at each of their 18 modules, with other values."""
    return {f"{STRING}.circuit": [{**OPTIMISER, **other}]}


BRANCH = {"kind": "branch_connector"}
DIODE = {"kind": "diode"}
AL = {"insulation": "XLPE", "conductor": "aluminium"}
IN_DUCT = {"kind": "cable", "type": "al", "length": "5 m", "section": "16 mm2", "method": "D1"}

DC = (
    # 25 · 37 V · (1 + 0.0026 · 37) = 1014 V; one module 40.56 V, so 24 fit under 1000 V
    Case("DC01", DANGER, {f"{STRING}.modules_in_series": 25}, f"{KEY}.strings.0",
         ("string -TB1-GC1…2", "1014 V", "-12 °C", "1000 V"), "at most 24 modules"),
    # 18 · 40.56 V = 730 V; 17 fit under 700 V
    Case("DC02", DANGER, {f"{MONO}.system_voltage_max": "700 V"}, f"{KEY}.strings.0",
         ("730 V", "700 V"), "at most 17 modules"),
    Case("DC03", NC, {**HIGH, f"{STRING}.modules_in_series": 25}, f"{KEY}.strings.0",
         ("1014 V", "1000 V", "building"), "1000 V"),
    # cells at 34 + 35 K; 7 · 31 V · (1 - 0.0039 · 44) = 180 V; one module 25.68 V, so 8 reach 200 V; the cable takes
    # 2 · 20 m · 13 A · 5.09 Ω/km · (1 + 0.00393 · 70) = 3.4 V
    Case("DC04", ADVICE, {f"{STRING}.modules_in_series": 7}, f"{KEY}.strings.0",
         ("180 V", "176 V at the inverter", "200 V"), "at least 8 modules"),
    # 18 · 31 V · (1 + 0.0039 · 37) = 638.5 V
    Case("DC05", ADVICE, {f"{TWELVE}.mpp_voltage_max": "600 V"}, f"{KEY}.strings.0", ("639 V", "600 V"), "600 V"),
    # 666 V · (1 - 0.0026 · 44) = 590 V
    Case("DC06", ADVICE, {f"{TWELVE}.start_voltage": "600 V"}, f"{KEY}.strings.0", ("590 V", "600 V"), "600 V"),
    Case("DC07", ADVICE, {f"{TWELVE}.inputs.0.current_max": "25 A"}, KEY, ("input -TB1-XD1", "26 A", "25 A"), "25 A"),
    # 1.25 · 2 · 13.9 A = 34.75 A
    # 27.8 A keeps 30 A, 1.25 times as much does not: the data sheet must say for what the limit holds
    Case("DC08", NC, {f"{LIMITS}.short_circuit_current_max": "30 A"}, KEY,
         ("34.8 A", "KI = 1.25", "27.8 A", "30 A"), "short_circuit_limit_for"),
    Case("DC08", DANGER, {f"{LIMITS}.short_circuit_current_max": "27 A"}, KEY, ("34.8 A", "27.8 A", "27 A"), "27 A"),
    Case("DC08", DANGER, {f"{LIMITS}.short_circuit_current_max": "30 A",
                          f"{LIMITS}.short_circuit_limit_for": "largest_current"}, KEY, ("34.8 A", "30 A"), "30 A"),
    Case("DC08", DANGER, {f"{LIMITS}.short_circuit_current_max": "27.7 A",
                          f"{LIMITS}.short_circuit_limit_for": "standard_conditions"}, KEY,
         ("27.8 A", "standard test conditions", "27.7 A"), "fewer strings"),
    Case("DC09", NC, {f"{TWELVE}.inputs.0.strings_max": 1}, KEY, ("2 strings", "terminals for 1"), "at most 1"),
    Case("DC10", DANGER, {f"{INPUT}.strings.+": {**SECOND, "modules_in_series": 17}}, f"{KEY}.strings.1",
         ("string -TB1-GC3", "17 modules", "-TB1-GC1…2", "18 modules"), "use 18 modules `mono`"),
    Case("DC10", DANGER, {f"{INPUT}.strings.+": {**SECOND, "module": "other"}}, f"{KEY}.strings.1",
         ("`other`", "`mono`"), "`mono`"),
    Case("DC11", ADVICE, {f"{INPUT}.strings.+": {**SECOND, "orientation": "east"}}, f"{KEY}.strings.1",
         ("east", "south"), "one input"),
    # IEC 62548:2016 6.5: 2 · 13.9 A > 25 A; two strings need none (13.9 A)
    Case("DC12", DANGER, THREE, KEY, ("27.8 A", "25 A"), "25 A gPV fuse"),
    Case("DC12", DANGER, {f"{MONO}.parallel_unfused_max": 1}, KEY, ("2 strings", "1 are allowed"), "at most 1 strings"),
    Case("DC13", ADVICE, {f"{INPUT}.string_fuses": {}}, KEY, ("13.9 A", "25 A"), "leave `string_fuses` out"),
    # 1.5 · 13.9 A = 20.85 A is the open lower end, 25 A the upper
    Case("DC14", DANGER, {**THREE, f"{INPUT}.string_fuses": {"rated_current": "20 A"}}, f"{KEY}.strings.0.fuse",
         ("20 A", "below", "20.9 A"), "25 A gPV fuse"),
    Case("DC14", DANGER, {**THREE, f"{INPUT}.string_fuses": {"rated_current": "32 A"}}, f"{KEY}.strings.0.fuse",
         ("32 A", "above", "25 A"), "25 A gPV fuse"),
    Case("DC15", DANGER, {**THREE, f"{MONO}.series_fuse_max": "20 A"}, KEY, ("20.9 A", "20 A"), "at most 2 strings"),
    Case("DC16", DANGER, {**THREE, f"{INPUT}.string_fuses": {"rated_voltage": "600 V"}}, f"{KEY}.strings.0.fuse",
         ("fuse", "600 V", "730 V"), "900 V"),
    Case("DC17", NC, {SWITCH: REMOVED}, KEY, ("no DC isolator",), "isolator"),
    Case("DC17", ADVICE, {SWITCH: PLUG, f"{TWELVE}.micro": True}, KEY, ("no DC isolator", "AC side is off"),
         "plugs_disconnect"),
    Case("DC18", DANGER, {f"{SWITCH}.rated_voltage": "700 V"}, f"{KEY}.circuit.1",
         ("isolator -TB1-QB2", "700 V", "730 V"), "800 V"),
    Case("DC19", DANGER, {f"{SWITCH}.rated_current": "32 A"}, f"{KEY}.circuit.1", ("32 A", "34.8 A"), "40 A"),
    Case("DC20", DANGER, {f"{SWITCH}.utilization_category": "DC-PV1"}, f"{KEY}.circuit.1",
         ("DC-PV1", "DC-PV2", "2 strings"), "DC-PV2"),
    # DC-PV0 is for opening and closing without current (IEC 60947-3:2020, from memory)
    Case("DC21", DANGER, {f"{SWITCH}.utilization_category": "DC-PV0", f"{STRING}.count": 1}, f"{KEY}.circuit.1",
         ("DC-PV0", "not to be opened under load"), "DC-PV1"),
    Case("DC21", ADVICE, {f"{SWITCH}.utilization_category": "DC-21B"}, f"{KEY}.circuit.1", ("DC-21B",), "DC-PV2"),
    # EN 50618: 1.5 mm² two touching 24 A, 0.92 at 70 °C, 0.60 for five circuits = 13.2 A; 1.25 · 13.9 A = 17.4 A
    Case("DC22", DANGER, {f"{STRING}.cable": {"length": "20 m", "section": "1.5 mm2", "grouped_circuits": 5}},
         f"{KEY}.strings.0.cable", ("cable -TB1-WD2…3", "13.2 A", "17.4 A"), "leave `section` out"),
    # air of 70 °C behind the modules takes no heat from a conductor of 70 °C (IEC 60364-5-52:2009 523.1)
    Case("DC22", DANGER, {"types.cables.pvc": {}, f"{STRING}.cable.type": "pvc"}, f"{KEY}.strings.0.cable",
         ("cable -TB1-WD2…3", "0 A", "17.4 A"), "hotter conductors"),
    # aluminium 16 mm², XLPE, in a duct 71 A (IEC 60364-5-52:2009 B.52.3), twelve in it 0.45; 1.25 · 2 · 13.9 A
    Case("DC22", DANGER, {"types.cables.al": AL, ADDED: {**IN_DUCT, "grouped_circuits": 12}}, f"{KEY}.circuit.2",
         ("32 A", "34.8 A"), "fewer circuits"),
    Case("DC23", DANGER, {f"{STRING}.cable.type": "rubber"}, f"{KEY}.strings.0.cable", ("700 V", "730 V"), "1000 V"),
    # 2 · 60 m · 13 A · 5.09 Ω/km · (1 + 0.00393 · 70) = 10.1 V of 558 V
    Case("DC24", ADVICE, {f"{STRING}.cable.length": "60 m"}, KEY, ("1.81 %", "1 %"), "at most 1 %"),
    Case("DC24", NC, {f"{STRING}.cable.length": "120 m"}, KEY, ("3.63 %", "3 %"), "at most 3 %"),
    Case("DC25", ADVICE, {f"{STRING}.cable.method": "D2"}, f"{KEY}.strings.0.cable", ("directly in the ground",),
         "duct"),
    Case("DC25", ADVICE, {f"{STRING}.cable.type": "rubber"}, f"{KEY}.strings.0.cable", ("XLPE",), "EN 50618"),
    Case("DC26", ADVICE, {f"{MONO}.bifaciality": "70 %"}, f"{KEY}.strings.0", ("bifacial", "10 %"), "rear_irradiance"),
    # 36 · 410 W = 14760 W
    Case("DC27", ADVICE, {f"{TWELVE}.rated_power": "6 kW"}, UNIT, ("inverter -TB1", "2.46", "1.5"), "1.5"),
    Case("DC27", ADVICE, {f"{TWELVE}.rated_power": "30 kW"}, UNIT, ("0.492", "0.8"), "0.8"),
    Case("DC28", ADVICE, {f"{TWELVE}.dc_power_max": "14 kW"}, UNIT, ("14.8 kW", "14 kW"), "14 kW"),
    Case("DC29", DANGER, {f"{INPUT}.functional_earth": True}, KEY, ("does not separate",), "remove `functional_earth`"),
    # row 6235 of the CEC module file: 42.8 V at -10 °C by the model, and 18 · 37.8 · (1 + 0.0005 · 37) = 693 V
    Case("DC31", NC, {**OPEN_DATA, f"{MONO}.voltage_coefficient": "-0.05 %/K"}, f"{KEY}.strings.0",
         ("when cold", "693 V", "5 %"), "unit, sign"),
    Case("DC31", NC, {**OPEN_DATA, f"{MONO}.open_circuit_voltage": "42 V"}, f"{KEY}.strings.0",
         ("680 V", "at 25 °C", "756 V"), "unit, sign"),
    # 24 · 40.56 V = 973 V; 3 % more is 1003 V
    Case("DC32", ADVICE, {f"{STRING}.modules_in_series": 24, f"{MONO}.voltage_tolerance": "3 %"}, f"{KEY}.strings.0",
         ("1003 V", "3 %", "1000 V"), "one module fewer"),
    Case("DC33", NC, {f"{STRING}.modules_in_series": 7, f"{TWELVE}.shutdown_voltage": "178 V"}, f"{KEY}.strings.0",
         ("176 V", "178 V"), "at least 8 modules"),
    # 1.25 · 13.9 A = 17.4 A; both strings through one pair where a cable joins them: 34.8 A
    Case("DC34", DANGER, {f"{TWELVE}.inputs.0.terminal_current_max": "15 A"}, KEY,
         ("17.4 A", "1 string)", "15 A"), "at most 15 A"),
    Case("DC34", DANGER, {f"{TWELVE}.inputs.0.terminal_current_max": "28 A", f"{INPUT}.circuit.+": WAY}, KEY,
         ("34.8 A", "2 strings", "28 A"), "at most 28 A"),
    # IEC 62548:2016 6.5: 1.25 · 27.8 A = 34.75 A < In
    Case("DC35", NC, {**SUB_ARRAYS, f"{TWELVE}.inputs_independent": False}, KEY,
         ("one of 3 sub-arrays",), "`fuse` of 35 A gPV"),
    Case("DC35", NC, {**SUB_ARRAYS, f"{UNIT}.inputs.1.linked_to": 1, f"{UNIT}.inputs.2.linked_to": 2}, KEY,
         ("one of 3 sub-arrays",), "`fuse` of 35 A gPV"),
    Case("DC35", NC, {f"{TWELVE}.backfeed_current": "5 A"}, KEY, ("5 A", "no fuse"), "`fuse` of 35 A gPV"),
    # 20 A · 0.85 = 17 A; 1.25 · 13.9 A = 17.4 A
    Case("DC36", ADVICE, {**THREE, "profile": "IEC 60364-7-712", f"{INPUT}.string_fuses": {"rated_current": "20 A"}},
         f"{KEY}.strings.0.fuse", ("17 A", "0.85, assumed", "17.4 A"), "temperature_factor"),
    # 25 A · 0.6 = 15 A
    Case("DC36", NC, {**THREE, f"{INPUT}.string_fuses": {"rated_current": "25 A", "temperature_factor": 0.6}},
         f"{KEY}.strings.0.fuse", ("15 A", "0.6)", "17.4 A"), "temperature_factor"),
    # 2 · 13.9 A against 1.45 · 25 A
    Case("DC37", ADVICE, {**THREE, f"{INPUT}.string_fuses": {}}, f"{KEY}.strings.0.fuse", ("36.3 A", "27.8 A"),
         "27.8 A"),
    # 1.25 · 3 · 13.9 A = 52.1 A
    Case("DC38", DANGER, {**THREE, f"{INPUT}.string_fuses": {"breaking_capacity": "0.05 kA"}}, f"{KEY}.strings.0.fuse",
         ("0.05 kA", "0.0521 kA"), "10 kA is usual"),
    Case("DC39", DANGER, {**THREE, f"{INPUT}.string_fuses": {"poles": 1}}, f"{KEY}.strings.0.fuse", ("one pole",),
         "both poles"),
    Case("DC39", ADVICE, {**THREE, "profile": "NEC 690", f"{INPUT}.string_fuses": {"poles": 1}},
         f"{KEY}.strings.0.fuse", ("690.9(C)",), "both poles"),
    Case("DC17", NC, {SWITCH: {"kind": "breaker"}}, KEY, ("no DC isolator",), "`isolator`"),
    # 2 · 730 V; 1.4 · 2 · 13.9 A
    Case("DC52", DANGER, {ADDED: {**DIODE, "rated_voltage": "1400 V"}}, f"{KEY}.circuit.2",
         ("blocking diode", "1400 V", "1460 V"), "at least 1460 V"),
    Case("DC52", DANGER, {ADDED: {**DIODE, "rated_current": "38 A"}}, f"{KEY}.circuit.2", ("38 A", "38.9 A"),
         "at least 38.92 A"),
    Case("DC53", NC, {**EARTHED, f"{INPUT}.string_fuses": {"poles": 2}}, f"{KEY}.strings.0.fuse", ("both poles",),
         "leave `poles` out"),
    Case("DC53", DANGER, {**EARTHED, f"{INPUT}.string_fuses": {"pole": "negative"}}, f"{KEY}.strings.0.fuse",
         ("the earthed pole alone",), "not earthed"),
    Case("DC46", DANGER, {f"{SWITCH}.poles": 1}, f"{KEY}.circuit.1", ("1 pole",), "at least 2 poles"),
    Case("DC47", DANGER, {f"{MONO}.connector_current_max": "16 A"}, f"{KEY}.strings.0",
         ("16 A", "17.4 A", "short circuit"), "connectors for more"),
    Case("DC47", DANGER, {**THREE, f"{MONO}.connector_current_max": "30 A"}, f"{KEY}.strings.0",
         ("30 A", "34.8 A", "into a fault"), "string fuses"),
    # 1.5625 · 17 A = 26.6 A; NEC Table 310.16: 14 AWG at terminals of 75 °C 20 A
    Case("DC48", NC, {"profile": "NEC 690", f"{MONO}.short_circuit_current": "17 A",
                      f"{STRING}.cable.section": "14 AWG", f"{STRING}.cable.terminal_temperature": "75 °C"},
         f"{KEY}.strings.0.cable", ("20 A", "26.6 A", "NEC 690"), "leave `section` out"),
    Case("DC49", ADVICE, {**HIGH, f"{STRING}.modules_in_series": 25, "site.building": "ground_mounted"},
         f"{KEY}.strings.0", ("1014 V", "1000 V", "instructed"), "fence"),
    Case("DC44", NC, {f"{MONO}.protection_class": "0"}, f"{KEY}.strings.0", ("730 V", "class 0", "120 V"), "class II"),
    # behind the junction nothing comes back; in a string the other one feeds back; IEC 62548:2016 7.3 (from memory)
    # IEC 62548:2016 7.3 (from memory): not sensitive to polarity, at a single string too
    Case("DC51", NC, {ADDED: {"kind": "breaker", "polarized": True}, f"{STRING}.count": 1}, f"{KEY}.circuit.2",
         ("DC circuit-breaker", "one direction", "other way"), "not polarized"),
    Case("DC51", NC, {ADDED: {"kind": "breaker", "polarized": True}}, f"{KEY}.circuit.2",
         ("DC circuit-breaker", "one direction", "2 strings are joined ahead"), "not polarized"),
    Case("DC51", DANGER, {f"{STRING}.circuit": [{"kind": "breaker", "polarized": True}]}, f"{KEY}.strings.0.each.0",
         ("DC circuit-breaker", "one direction", "1 other string can feed back"), "not polarized"),
    Case("DC51", ADVICE, {f"{STRING}.circuit": [{"kind": "breaker"}]}, f"{KEY}.strings.0.each.0",
         ("not said to break", "1 other string"), "polarized: false"),
    # four strings two by two: 1.25 · 2 · 13.9 A = 34.8 A forwards, as much back from the other two
    Case("DC42", DANGER, {f"{STRING}.count": 4, f"{STRING}.circuit": [{**BRANCH, "rated_current": "30 A"}]},
         f"{KEY}.strings.0.each.0", ("branch connector", "30 A", "34.8 A"), "at least 34.75 A"),
    # six strings two by two: the other four send 1.25 · 4 · 13.9 A = 69.5 A back
    Case("DC42", DANGER, {f"{STRING}.count": 6, f"{STRING}.circuit": [{**BRANCH, "rated_current": "60 A"}]},
         f"{KEY}.strings.0.each.0", ("60 A", "69.5 A"), "at least 69.5 A"),
    Case("DC41", DANGER, {f"{STRING}.circuit": [{**BRANCH, "rated_voltage": "700 V"}]}, f"{KEY}.strings.0.each.0",
         ("branch connector", "700 V", "730 V"), "at least 730.1 V"),
    # a breaker of each string protects it as a fuse does: 1.5 · 13.9 A < In <= 25 A
    Case("DC14", DANGER, {**THREE, f"{STRING}.circuit": [{"kind": "breaker", "rated_current": "32 A"}]},
         f"{KEY}.strings.0.each.0", ("32 A", "25 A"), "in the range"),
    # IEC 62548-1:2023, the maker's string rules; 18 modules of 410 W, 40.56 V cold, 1.25 · 13.9 A = 17.4 A
    Case("DC54", DANGER, {**with_optimisers(), f"{STRING}.modules_in_series": 26}, f"{KEY}.strings.0",
         ("26 optimisers", "above the 25"), "fewer modules"),
    Case("DC54", NC, with_optimisers(units_min=19), f"{KEY}.strings.0", ("18 optimisers", "below the 19"), "more mod"),
    Case("DC54", NC, with_optimisers(string_power_max="7 kW"), f"{KEY}.strings.0", ("7.38 kW", "7 kW"), "fewer"),
    Case("DC54", DANGER, with_optimisers(input_voltage_max="40 V"), f"{KEY}.strings.0", ("40.6 V", "40 V"), "these"),
    Case("DC54", DANGER, with_optimisers(modules_per_unit=2), f"{KEY}.strings.0", ("81.1 V", "60 V"), "for these"),
    # 17.4 A with KI alone, until the data sheet is asked; 13.9 A above 13.5 A whatever it says
    Case("DC54", NC, with_optimisers(input_current_max="17 A"), f"{KEY}.strings.0", ("17.4 A", "17 A"),
         "short_circuit_limit_for"),
    Case("DC54", DANGER, with_optimisers(input_current_max="17 A", short_circuit_limit_for="largest_current"),
         f"{KEY}.strings.0", ("17.4 A", "17 A"), "these"),
    Case("DC54", DANGER, with_optimisers(input_current_max="13.5 A"), f"{KEY}.strings.0", ("13.5 A",), "these"),
    Case("DC54", ADVICE, with_optimisers(rated_power="400 W"), f"{KEY}.strings.0", ("410 W", "400 W"), "for these"),
    Case("DC54", NC, {f"{STRING}.circuit": [{"kind": "optimiser"}]}, f"{KEY}.strings.0", ("no limits",), "output_curr"),
    # the maker's 1050 V, or 18 · 60 V = 1080 V where he states none, on 1000 V
    Case("DC01", DANGER, with_optimisers(string_voltage_max="1050 V"), f"{KEY}.strings.0", ("1050 V", "1000 V"), ""),
    Case("DC01", DANGER, with_optimisers(string_voltage_max=None), f"{KEY}.strings.0", ("1080 V", "1000 V"), ""),
    Case("DC10", DANGER, {**with_optimisers(), f"{INPUT}.strings.+": SECOND}, f"{KEY}.strings.1",
         ("one of them alone has power optimisers",), "input of its own"),
    # a diode in each string carries that string alone: 1.4 · 13.9 A = 19.5 A
    Case("DC52", DANGER, {f"{STRING}.circuit": [{**DIODE, "rated_current": "19 A"}]}, f"{KEY}.strings.0.each.0",
         ("19 A", "19.5 A"), "at least 19.46 A"),
    Case("DC51", DANGER, {ADDED: {"kind": "breaker", "polarized": True}, f"{STRING}.count": 1,
                          f"{TWELVE}.backfeed_current": "5 A"}, f"{KEY}.circuit.2", ("feeds back 5 A",),
         "not polarized"),
    # both strings behind it: 1.25 · 2 · 13.9 A = 34.75 A; IEC 62548:2016 6.5, arrays
    Case("DC14", DANGER, {ADDED: {"kind": "breaker", "rated_current": "32 A"}}, f"{KEY}.circuit.2",
         ("DC circuit-breaker", "32 A", "34.8 A"), "in the range"),
    # 1.25 · 2 · 13.9 A = 34.75 A
    Case("DC38", DANGER, {ADDED: {"kind": "breaker", "breaking_capacity": "0.03 kA"}}, f"{KEY}.circuit.2",
         ("DC circuit-breaker", "0.03 kA", "0.0348 kA"), "use one with"),
    Case("DC46", DANGER, {ADDED: {"kind": "breaker", "poles": 1, "isolating": True}}, f"{KEY}.circuit.2", ("1 pole",),
         "at least 2 poles"),
    Case("DC50", NC, {"supply.country": "US"}, KEY, ("no shutdown device", "690.12"), "rapid_shutdown"),
    Case("DC45", NC, {"supply.country": "US"}, UNIT, ("730 V", "NEC 690.11", "80 V"), "arc_fault_protection"),
    Case("DC10", DANGER, {f"{UNIT}.inputs.+": {**ONE_INPUT, "strings": [{**SECOND, "modules_in_series": 16}],
                                               "linked_to": 1}}, f"{UNIT}.inputs.1.strings.0",
         ("16 modules", "18 modules"), "use 18 modules"),
    # 1.5 · 2 · 4 A = 12 A, 20 A - 4 A = 16 A; 10 A lies below. IEC 62548:2016 6.5, grouped strings
    Case("DC14", DANGER, {**GROUPED, f"{INPUT}.string_fuses": {"rated_current": "10 A"}}, f"{KEY}.strings.0.fuse",
         ("10 A", "below", "12 A"), "15 A gPV fuse"),
    Case("DC30", NC, {**THREE, f"{MONO}.series_fuse_max": REMOVED}, f"{KEY}.strings.0",
         ("3 strings",), "series_fuse_max"),
    Case("DC40", NC, {ADDED: {**PLUG, "make": "Brightfell", "model": "P4", "mated_with": "Ondry C4"}},
         f"{KEY}.circuit.2", ("plug connector -TB1-XD2 (Brightfell P4)", "Ondry C4"), "two halves of one type"),
    # 18 · 40.56 V = 730 V
    *(Case("DC41", DANGER, {ADDED: {"kind": kind, "rated_voltage": "700 V"}}, f"{KEY}.circuit.2",
           (word, "700 V", "730 V"), "730.1 V")
      for kind, word in (("plug_connector", "plug connector"), ("disconnector", "DC disconnector"),
                         ("rapid_shutdown", "rapid shutdown device"), ("breaker", "DC circuit-breaker"),
                         ("insulation_monitor", "insulation monitoring device"))),
    # 1.25 · 2 · 13.9 A = 34.75 A
    *(Case("DC42", DANGER, {ADDED: {"kind": kind, "rated_current": "30 A"}}, f"{KEY}.circuit.2",
           (word, "30 A", "34.8 A"), "34.75 A")
      for kind, word in (("plug_connector", "plug connector"), ("disconnector", "DC disconnector"),
                         ("rapid_shutdown", "rapid shutdown device"))),
    # 730 V / 30 mA = 24.3 kΩ
    Case("DC43", NC, {ADDED: {"kind": "insulation_monitor", "alarm_resistance": "20 kohm"}}, f"{KEY}.circuit.2",
         ("insulation monitoring device -TB1-BU1", "20 kΩ", "24.3 kΩ"), "24.34 kΩ"),
)  # fmt: skip

SECOND_INPUT = {"strings": [{**SECOND, "cable": {"length": "20 m", "section": "4 mm2"}}], "junction_box": "jb2"}
BOXES = {
    "junction_boxes": {"jb1": {}, "jb2": {}},
    f"{INPUT}.junction_box": "jb1",
    f"{UNIT}.inputs.+": {**SECOND_INPUT, "circuit": [{"kind": "isolator", "enclosure": "jb2"}]},
}

SURGE = (
    # 115 / 6 = 19.2 m for a dwelling
    Case("SU01", NC, {SPD: REMOVED, "site.lightning_density": 6}, KEY, ("20 m", "19.2 m"), "type 2"),
    Case("SU02", NC, {SPD: REMOVED, "earthing.lightning_protection": LPS}, KEY, ("lightning",), "type 2"),
    Case("SU03", ADVICE, {SPD: REMOVED, "site.lightning_density": REMOVED}, KEY, ("density",), "lightning_density"),
    # 1.2 · 18 · 37 V = 799.2 V
    # 18 · 37 V · (1 + 0.0026 · 37) = 730 V, the cold of the site computed; IEC 61643-32 (from memory)
    Case("SU04", DANGER, {f"{SPD}.continuous_voltage": "720 V"}, f"{KEY}.circuit.0",
         ("-TB1-FA1", "720 V", "730 V"), "800 V"),
    Case("SU05", DANGER, {"earthing.lightning_protection": {"separation_kept": False}}, f"{KEY}.circuit.0",
         ("type 2", "type 1"), "type 1 or 1+2"),
    # 0.8 · 6 kV
    Case("SU06", NC, {f"{SPD}.protection_level": "5.5 kV"}, f"{KEY}.circuit.0", ("5.5 kV", "4.8 kV"), "4.8 kV"),
    # 3.5 kV and 1.5 m of leads at 1 kV/m
    Case("SU06", NC, {f"{SPD}.lead_length": "1.5 m"}, f"{KEY}.circuit.0", ("5 kV", "4.8 kV"), "4.8 kV"),
    # 0.8 · 4 kV
    Case("SU06", NC, {f"{TWELVE}.dc_impulse_withstand": "4 kV"}, f"{KEY}.circuit.0", ("3.5 kV", "3.2 kV"), "3.2 kV"),
    Case("SU12", ADVICE, {f"{SPD}.lead_length": "0.8 m"}, f"{KEY}.circuit.0", ("0.8 m", "0.5 m"), "0.5 m"),
    Case("SU05", DANGER, {"earthing.lightning_protection": LPS, "site.building": "ground_mounted"}, f"{KEY}.circuit.0",
         ("type 2", "type 1", "supports"), "type 1 or 1+2"),
    # IEC 61643-32 Annex A (from memory): 10 kA for class I, 5 kA for class III
    Case("SU17", NC, {"earthing.lightning_protection": {"separation_kept": False, "level": "I"},
                      f"{SPD}.test_class": "1+2", f"{SPD}.impulse_current": "5 kA"}, f"{KEY}.circuit.0",
         ("5 kA", "10 kA"), "10 kA"),
    Case("SU17", ADVICE, {"earthing.lightning_protection": {"separation_kept": False}, f"{SPD}.test_class": "1+2"},
         f"{KEY}.circuit.0", ("does not state", "5 kA"), "impulse_current"),
    # 1.25 · 2 · 13.9 A
    Case("SU18", DANGER, {f"{SPD}.short_circuit_current": "30 A"}, f"{KEY}.circuit.0", ("30 A", "34.8 A"), "34.8 A"),
    # 0.04 / 0.5 · 0.44 · 10 m = 0.352 m
    Case("SU19", DANGER, {"earthing.lightning_protection": {**SEPARATED, "separation": "0.3 m"}}, "earthing",
         ("0.3 m", "0.352 m"), "0.352 m"),
    Case("SU07", NC, {f"{SPD}.discharge_current": "3 kA"}, f"{KEY}.circuit.0", ("3 kA", "5 kA"), "5 kA"),
    Case("SU08", NC, {AC_SPD: REMOVED, "earthing.lightning_protection": LPS}, MAIN, ("board -UC1",), "type 1+2"),
    # 1.1 · 230 V
    Case("SU09", NC, {f"{AC_SPD}.continuous_voltage": "230 V"}, AC_SPD, ("-UC1-FA1", "230 V", "253 V"), "253 V"),
    Case("SU10", NC, {f"{AC_SPD}.test_class": "2", "earthing.lightning_protection": LPS}, AC_SPD,
         ("type 2", "type 1"), "1+2"),
    Case("SU11", NC, {f"{AC_SPD}.protection_level": "3 kV"}, AC_SPD, ("3 kV", "2.5 kV"), "2.5 kV"),
    Case("SU12", ADVICE, {f"{AC_SPD}.lead_length": "0.8 m"}, AC_SPD, ("0.8 m", "0.5 m"), "0.5 m"),
    Case("SU12", NC, {f"{AC_SPD}.lead_length": "1.2 m"}, AC_SPD, ("1.2 m", "1 m"), "0.5 m"),
    Case("SU14", ADVICE, {**BOXES, f"{SPD}.enclosure": "jb2"}, f"{KEY}.circuit.0",
         ("-TB1-FA1", "`jb2`", "input -TB1-XD2"), "`enclosure`"),
    # IEC 62305-1 Table 3: class III 100 kA, half of it over four conductors
    Case("SU15", NC, {f"{AC_SPD}.test_class": "1+2", f"{AC_SPD}.impulse_current": "7 kA",
                      "earthing.lightning_protection": LPS}, AC_SPD, ("-UC1-FA1", "7 kA", "12.5 kA"), "12.5 kA"),
    Case("SU15", ADVICE, {f"{AC_SPD}.test_class": "1+2", "earthing.lightning_protection": {**LPS, "level": "II"}},
         AC_SPD, ("-UC1-FA1", "18.8 kA"), "impulse_current"),
    Case("SU16", ADVICE, {"site.lightning_density": 6}, KEY, ("20 m", "modules", "10 m"), "near the modules"),
    Case("SU16", ADVICE, {"earthing.lightning_protection": LPS,
                          f"{INPUT}.circuit.+": {"kind": "cable", "length": "11 m"}}, KEY,
         ("11 m", "inverter", "10 m"), "near the inverter"),
    # 534.4.2: type 1 where direct strokes to the line are reckoned with, else type 2
    Case("SU10", NC, {f"{AC_SPD}.test_class": "2", "supply.overhead": True, "supply.direct_strokes": True}, AC_SPD,
         ("type 2", "overhead", "type 1"), "1+2"),
    Case("SU10", ADVICE, {f"{AC_SPD}.test_class": "2", "supply.overhead": True}, AC_SPD,
         ("type 2", "overhead", "not said"), "direct_strokes"),
    # BS 7671 443.4.1: in every case unless declined; IEC 60364-4-44 443.4: no assessment, commerce, or CRL < 1000
    *(Case("SU08", NC, {AC_SPD: REMOVED, **more}, MAIN, ("board -UC1", clause), "type 2") for clause, more in (
        ("BS 7671 443.4.1", {"profile": "BS 7671"}),
        ("BS 7671 443.4.1", {"profile": "BS 7671", **URBAN}),
        ("443.4", {}),
        ("443.4", {"site.building": "other_building", **URBAN}),
        ("443.4", {"site.building": "other_building", "site.surge_protection_declined": "owner"}),
        # 850 / (1.01 km · 0.85) = 990; 85 / (2 km · 0.05) = 850
        ("443.4", {**URBAN, "supply.risk_length": "1010 m"}),
        ("443.4", {"site.surroundings": "rural", "site.lightning_density": 0.05}),
    )),
    Case("SU08", ADVICE, {AC_SPD: REMOVED, f"{MAIN}.status": "existing"}, MAIN, ("443.4",), "type 2"),
    Case("SU25", ADVICE, {"earthing.lightning_protection": LPS}, UNIT, ("inverter -TB1", "15 m", "10 m"), "type 2"),
    Case("SU13", NC, {f"{AC_SPD}.backup_fuse_max": "32 A"}, AC_SPD, ("-FC1", "35 A", "32 A"), "32 A"),
    Case("SU13", NC, {f"{AC_SPD}.backup_fuse": "160 A"}, AC_SPD, ("a backup fuse of 160 A", "125 A"), "125 A"),
)  # fmt: skip

ONE_PHASE = {"supply.phases": 1, f"{TWELVE}.phases": 1, f"{TWELVE}.rated_power": "3 kW"}
THREE_POLES = {f"{place}.poles": 3 for place in (BREAKER, RCD, ISOLATOR)}
LARGE = {
    "current": "120 A",
    "circuit": [
        {"kind": "breaker", "rated_current": "125 A", "breaking_capacity": "10 kA"},
        {"kind": "cable", "length": "8 m", "section": "50 mm2", "method": "C"},
    ],
}
BETWEEN = {"power": "3 kW", "line": "L1-L2", "circuit": [{"kind": "breaker", "rated_current": "16 A", "poles": 1}]}
SHED = {
    "boards.shed": {
        "fed_from": "main", "phases": 1, "line": "L2", "circuit": [
            {"kind": "breaker", "rated_current": "16 A", "breaking_capacity": "6 kA", "poles": 2},
            {"kind": "cable", "length": "20 m", "section": "6 mm2", "cores": 3},
        ],
    },
    f"{UNIT}.connected_to": "main",
    "loads.lamps": {"connected_to": "shed", "power": "2 kW",
                    "circuit": [{"kind": "breaker", "rated_current": "10 A", "breaking_capacity": "6 kA"}]},
}  # fmt: skip
LAMPS = {"connected_to": "shed", "current": "70 A", "line": "L3", "circuit": [{"kind": "breaker", "poles": 2}]}
SLOW = {RCD: {"kind": "isolator"}, f"{BREAKER}.curve": "D", "supply.loop_impedance": 0.8}  # nothing opens at once
REDUCED = {
    "boards.shed": {"fed_from": "main", "circuit": [
        {"kind": "breaker", "rated_current": "80 A", "breaking_capacity": "6 kA"},
        {"kind": "cable", "length": "20 m", "section": "35 mm2", "neutral_section": "16 mm2"},
    ]},
    f"{UNIT}.connected_to": "main",
}  # fmt: skip
STEEL = {
    "types.cables.swa": {"insulation": "XLPE"}, f"{CABLE}.type": "swa", f"{CABLE}.section": "25 mm2",
    f"{CABLE}.cores": 4, f"{CABLE}.protective_conductor": "armour", f"{CABLE}.armour_section": "76 mm2",
}  # fmt: skip
COMBINED = {"supply.earthing_system": "TN-C-S"}
PEN = {"kind": "cable", "length": "2 m", "cores": 4}
TWO_AT_ONE_PLACE = {
    "boards.main.location": "cellar", f"{UNIT}.connected_to": "main",
    "further_supplies": {"second": {
        "supply": {"earthing_system": "TT", "voltage": "400 V", "service_fuse": "35 A"},
        "earthing": {"electrode": {"resistance": "20 ohm"}, "extraneous_parts": False},
    }},
    "boards.well": {"fed_from": "second", "location": "cellar"},
}  # fmt: skip
PME = {**COMBINED, "profile": "BS 7671"}
# an ordinary house of the trade's guides: tails of 25 mm², earthing conductor of 16 mm², bonding of 10 mm²
PME_HOUSE = {
    **PME, **ONE_PHASE, "supply.voltage": "230 V", "earthing.electrode": REMOVED,
    f"{MAIN}.circuit.+": {**PEN, "cores": 2, "section": "25 mm2"},
    "earthing.conductor": {"section": "16 mm2", "buried": False},
}  # fmt: skip
OWN = {"rated_power": "250 kVA", "primary_voltage": "20 kV", "short_circuit_voltage": 4}
SINGLE = {
    "type": "single",
    "connected_to": "sub",
    "circuit": [
        {"kind": "breaker", "breaking_capacity": "6 kA"},
        {"kind": "cable", "length": "5 m"},
        {"kind": "isolator"},
    ],
    "inputs": [{"strings": [{**SECOND, "cable": {"length": "9 m"}}], "circuit": [{"kind": "isolator"}]}],
}
FEEDER = {
    f"{UNIT}.connected_to": "main",
    "types.inverters.single": {
        "rated_power": "4 kW", "phases": 1, "dc_voltage_max": "1000 V", "mpp_voltage_min": "200 V",
        "mpp_voltage_max": "850 V", "inputs": [{"current_max": "26 A", "short_circuit_current_max": "40 A"}],
    },
    "boards.sub": {
        "fed_from": "main",
        "circuit": [{"kind": "breaker", "breaking_capacity": "6 kA"}, {"kind": "cable", "length": "5 m"}],
    },
    "inverters.one": {**SINGLE, "line": "L1"},
    "inverters.two": {**SINGLE, "line": "L2"},
}  # fmt: skip

CHARGER = {
    "power": "11 kW",
    "charging_point": True,
    "circuit": [{"kind": "breaker"}, {"kind": "rcd", "sensitivity": "B"}],
}
DESK = {"power": "2 kW", "supplies": "socket_outlets", "circuit": [
    {"kind": "rcd", "sensitivity": "AC", "residual_current": "30 mA"}, {"kind": "breaker"}]}  # fmt: skip
STORE = {"converter_power": "5 kVA", "connected_to": "main", "circuit": [{"kind": "rcbo", "sensitivity": "A"}]}
FIVE_BEHIND_ONE = {
    f"{MAIN}.circuit.+": {**AHEAD, "residual_current": "500 mA"}, RCD: {"kind": "isolator"}, f"{UNIT}.count": 5,
    "data": REMOVED, f"{MAIN}.rated_current": "125 A", "supply.service_fuse": "100 A",
}  # fmt: skip


def sockets(device: dict[str, Any]) -> dict[str, Any]:
    """Return a load of socket-outlets behind a protective device."""
    return {"power": "3 kW", "supplies": "socket_outlets", "circuit": [device]}


def lighting(rated_a: float) -> Changes:
    """Return a lighting circuit of 1.5 mm² behind a breaker of curve B."""
    device = {"kind": "breaker", "curve": "B", "rated_current": f"{rated_a} A", "breaking_capacity": "6 kA"}
    cable = {"kind": "cable", "length": "5 m", "section": "1.5 mm2"}
    return {"loads.lamps": {"current": "4 A", "line": "L1", "circuit": [device, cable]}}


def charging(**rcd: str) -> dict[str, object]:
    """Return a charging point behind an RCD with the given values."""
    return {**CHARGER, "circuit": [{"kind": "breaker"}, {"kind": "rcd", **rcd}]}


AC = (
    # 12 kVA / (√3 · 400 V) = 17.3 A
    Case("AC01", NC, {f"{BREAKER}.rated_current": "16 A"}, BREAKER,
         ("circuit-breaker -TB1-FC1", "16 A", "17.3 A"), "20 A"),
    # IEC 60364-5-52 Table B.52.4, method B2, 1.5 mm² copper PVC: 15 A
    Case("AC02", DANGER, {f"{CABLE}.section": "1.5 mm2"}, CABLE,
         ("cable -TB1-WD1", "15 A", "20 A"), "leave `section` out"),
    # 2.5 mm²: 20 A, above the design current of 17.3 A: a breaker of 20 A would do
    Case("AC02", DANGER, {f"{CABLE}.section": "2.5 mm2", f"{BREAKER}.rated_current": "25 A"}, CABLE,
         ("cable -TB1-WD1", "20 A", "25 A"), "or use a protective device of at most 20 A"),
    # 16 A from the network and 17.3 A from the inverter meet at the load between them: 33.3 A (IEC 60364-5-55 551.7.2)
    Case("AC02", DANGER, {**SHARED, "boards.pv.circuit.1.section": "2.5 mm2"}, "boards.pv.circuit.1",
         ("20 A", "33.3 A of circuit-breaker -WC2-FC1 and the generation"), "leave `section` out"),
    # the same table, 2.5 mm²: 20 A; 1.6 / 1.45 · 20 A = 22.1 A
    Case("AC03", NC, {BREAKER: FUSE, f"{CABLE}.section": "2.5 mm2"}, CABLE,
         ("carries 20 A as laid; fuse -TB1-FC1 of 20 A needs a cable of 22.1 A, because it trips late",),
         "circuit-breaker"),
    Case("AC04", ADVICE, {f"{TWELVE}.current_max": "19 A"}, BREAKER, ("95 %", "90 %"), "larger rated current"),
    Case("AC05", NC, {f"{RCD}.rated_current": "16 A"}, RCD, ("RCD -TB1-FB1", "16 A", "20 A"), "20 A"),
    Case("AC06", DANGER, {f"{TWELVE}.dc_residual_current": REMOVED}, RCD, ("type A", "type B"), "type B"),
    # the direct currents of all inverters behind one RCD add in it: 5 · 6 mA = 30 mA, above the 6 mA of type A and the
    # 10 mA of type F (IEC 60364-5-53:2019 531.3.3, from memory)
    Case("AC06", DANGER, {**FIVE_BEHIND_ONE}, f"{MAIN}.circuit.3", ("type A", "type B", "30 mA"), "an RCD for each"),
    # the converter of a battery without separation whose maker declares nothing
    Case("AC06", DANGER, {"batteries.store": STORE}, "batteries.store.circuit.0", ("RCBO", "type A", "type B"),
         "`dc_residual_current`"),
    # 6 mA of the inverter and the 6 mA at which the charging point disconnects
    Case("AC06", DANGER, {f"{MAIN}.circuit.+": {**AHEAD, "sensitivity": "A"},
                          "loads.car": {**CHARGER, "circuit": [{"kind": "breaker"}]}}, f"{MAIN}.circuit.3",
         ("type A", "type B", "12 mA"), "type B"),
    Case("AC50", NC, {**FIVE_BEHIND_ONE, f"{TWELVE}.own_residual_device": True, f"{MAIN}.circuit.3.sensitivity": "B"},
         f"{MAIN}.circuit.3", ("RCD -UC1-FB1", "5 inverters", "of its own"), "in its own `circuit`"),
    Case("AC07", DANGER, {f"{RCD}.sensitivity": "AC"}, RCD, ("type AC", "type A"), "use type A"),
    # BS 7671:2018+A2 531.3.3 (from memory): type AC for fixed equipment alone
    Case("AC07", NC, {"profile": "BS 7671", "loads.desk": DESK}, "loads.desk.circuit.0",
         ("type AC", "socket-outlets"), "type A"),
    Case("AC63", DANGER, {f"{CABLE}.type": "rubber", "types.cables.rubber.rated_voltage": "399 V"}, CABLE,
         ("399 V", "400 V"), "at least 400 V"),
    Case("AC08", DANGER, {f"{MAIN}.circuit.+": {"kind": "rcd", "sensitivity": "A"}, "loads.charger": CHARGER},
         f"{MAIN}.circuit.3", ("-UC1-FB1", "type A", "type B"), "type B"),
    # 36 mA / 0.3 = 120 mA
    Case("AC09", ADVICE, {f"{TWELVE}.leakage_current": "36 mA"}, RCD, ("100 mA", "120 mA"), "300 mA"),
    Case("AC10", DANGER, {RCD: {"kind": "rcbo", "rated_current": "20 A", "bidirectional": False}}, RCD,
         ("RCBO",), "bidirectional"),
    # declared by nobody, with an inverter behind: BS 7671:2018+A3:2024 530.3.201
    Case("AC10", NC, {"profile": "BS 7671", RCD: {"kind": "rcbo", "rated_current": "20 A"}}, RCD,
         ("RCBO", "not declared"), "`bidirectional: true`"),
    Case("AC10", ADVICE, {"profile": "BS 7671"}, RCD, ("RCD", "not declared"), "`bidirectional: true`"),
    Case("AC10", DANGER, {f"{BREAKER}.bidirectional": False}, BREAKER,
         ("circuit-breaker", "one direction"), "bidirectional"),
    Case("AC11", NC, {ISOLATOR: REMOVED, RCD: COUNTER, f"{BREAKER}.isolating": False}, UNIT,
         ("no AC isolator",), "isolator"),
    # nothing is known of a moulded-case breaker: IEC 60947-2 makes the suitability a matter of its marking
    Case("AC11", NC, {ISOLATOR: REMOVED, RCD: COUNTER, f"{BREAKER}.construction": "moulded_case",
                      f"{BREAKER}.curve": REMOVED}, UNIT,
         ("no AC isolator",), "`isolating: true`"),
    # Table 52.2: 1.5 mm² of copper; BS 7671 Table 52.3: 1 mm² for lighting alone (from memory)
    Case("AC46", NC, {f"{CABLE}.section": "1 mm2"}, CABLE, ("1 mm²", "1.5 mm²"), "1.5 mm²"),
    Case("AC12", NC, {f"{ISOLATOR}.rated_current": "16 A"}, ISOLATOR, ("16 A", "20 A"), "20 A"),
    # two loads of 25 A on a feeder of 32 A, without diversity: 50 A
    Case("AC01", NC, {"boards.flat": {"fed_from": "main", "circuit": [{"kind": "breaker", "rated_current": "32 A"}]},
                      f"{UNIT}.connected_to": "main",
                      "loads": {name: {"connected_to": "flat", "current": "25 A"} for name in ("heater", "cooker")}},
         "boards.flat.circuit.0", ("32 A", "50 A"), "50 A"),
    Case("AC13", NC, {f"{MAIN_SWITCH}.rated_current": "32 A"}, MAIN_SWITCH, ("32 A", "35 A"), "40 A"),
    Case("AC14", DANGER, {**TRUNK, f"{UNIT}.circuit": [], "boards.pv.circuit": []}, UNIT, ("board -UC1",), "breaker"),
    Case("AC14", DANGER, {"loads.house": {"power": "5 kW", "circuit": []}}, "loads.house",
         ("load -EZ1", "no overcurrent protection", "board -UC1"), "breaker"),
    # each connecting point has a device of its own: IEC 60364-7-722 722.533.101
    Case("AC14", DANGER, {"loads.car": {**CHARGER, "circuit": [{"kind": "rcd", "sensitivity": "B"}]}}, "loads.car",
         ("charging point -EZ1", "board -UC1"), "breaker"),
    Case("AC14", DANGER, {"batteries.store": {**STORE, "circuit": [{"kind": "isolator"}]}}, "batteries.store",
         ("battery -GB1", "board -UC1"), "breaker"),
    Case("AC14", DANGER, {"generators.set": {"power": "20 kVA", "changeover": "switch", "circuit": []}},
         "generators.set", ("generator -GA2", "board -UC1"), "breaker"),
    Case("AC14", DANGER, {BREAKER: REMOVED}, UNIT, ("no overcurrent protection", "board -UC1"), "breaker"),
    # 17.32 A of the 27 A of Table B.52.4: 70 − (1 − 0.411) · 40 = 46.5 °C (BS 7671 Appendix 4 6.1), 4.61 Ω/km · 1.104;
    # √3 · 17.32 A · 15 m · 5.09 Ω/km = 2.29 V of 400 V
    Case("AC15", NC, {"supply.voltage_rise_limit": 0.5}, UNIT, ("0.573", "0.5 %"), "at most 0.5 %"),
    Case("AC15", ADVICE, {"supply.voltage_rise_limit": REMOVED, f"{CABLE}.length": "40 m"}, UNIT,
         ("1.53 %", "1 %"), "at most 1 %"),
    # the smallest that carries 20 A is 2.5 mm², three sizes above 10 mm²: 120 m lift 1.96 %
    Case("AC15", ADVICE, {"supply.voltage_rise_limit": REMOVED, f"{CABLE}.length": "120 m",
                          f"{CABLE}.section": REMOVED}, UNIT, ("%", "1 %"), "terminal_section_max"),
    # IEC 60364-5-52 526
    Case("AC45", NC, {f"{TWELVE}.terminal_section_max": "2.5 mm2"}, CABLE, ("cable -TB1-WD1 of 4 mm²", "2.5 mm²"),
         "terminal blocks"),
    Case("AC45", NC, {f"{RCD}.terminal_section_max": "2.5 mm2"}, CABLE, ("4 mm²", "2.5 mm²"), "terminal blocks"),
    Case("AC16", NC, {f"{CABLE}.section": "7 mm2"}, CABLE, ("7", "6, 10"), "leave `section` out"),
    Case("AC17", DANGER, {"supply.phases": 1}, UNIT, ("3 phases", "1"), "single-phase inverter"),
    Case("AC18", ADVICE, {f"{TWELVE}.phases": 1, f"{TWELVE}.rated_power": "5 kW"}, UNIT,
         ("5 kVA", "4.6 kVA"), "three-phase"),
    # the trunk's breaker of 32 A lets so much through; 12 kW / (√3 · 400 V) = 17.3 A
    Case("AC19", DANGER, {**TRUNK, "boards.pv.rated_current": "25 A"}, "boards.pv",
         ("AC trunk cable -WC2", "25 A", "32 A"), "trunk cable for 32 A"),
    # with a load on it In 16 A + Ig 17.3 A
    Case("AC19", DANGER, {**SHARED, "boards.pv.rated_current": "32 A"}, "boards.pv",
         ("AC trunk cable -WC2", "32 A", "33.3 A"), "trunk cable for 33.3 A"),
    # 35 A + 17.3 A
    Case("AC19", DANGER, {f"{MAIN}.rated_current": "50 A"}, MAIN, ("board -UC1", "50 A", "52.3 A"), "63 A"),
    # nothing but the inverter is behind the board: Ig 17.3 A alone
    Case("AC19", DANGER, {**PV_BOARD, "boards.pv.rated_current": "16 A"}, "boards.pv",
         ("board -UC2", "16 A", "17.3 A of the generation"), "63 A"),
    # In 32 A + Ig 17.3 A = 49.3 A
    Case("AC19", DANGER, {**PV_BOARD, "boards.pv.rated_current": "40 A",
                          "loads.pump": {"power": "2 kW", "connected_to": "pv"}}, "boards.pv",
         ("40 A", "49.3 A"), "63 A"),
    # 0.8 · 20 A = 16 A below 17.3 A
    Case("AC38", NC, {f"{MAIN}.diversity_factor": 0.8}, BREAKER, ("circuit-breaker -TB1-FC1", "17.3 A", "16 A"),
         "`diversity_factor`"),
    Case("AC20", NC, {MAIN_SWITCH: REMOVED}, MAIN, ("no main switch",), "main_switch"),
    Case("AC21", NC, {f"{TWELVE}.interface_protection": False}, UNIT,
         ("interface protection",), "interface_protection"),
    # one cable of 15 mm in 20 mm: 56.3 % > 53 %; four conductors of two strings, 6 mm, in 18 mm: 44.4 % > 40 %
    # IEC 60364-1 312.1 (from memory): three lines and nothing else
    Case("AC52", NC, {**THREE_WIRES, f"{TWELVE}.needs_neutral": True}, UNIT, ("takes a neutral", "none is distributed"),
         "lines without a neutral"),
    Case("AC52", NC, {**THREE_WIRES, "loads.oven": {"power": "2 kW", "phases": 1, "line": "L2"}}, "loads.oven",
         ("L2 alone",), "two lines"),
    # IEC 60364-4-41 411.3.3, 415.1: at most 30 mA, without a delay
    Case("AC53", NC, {"loads.kitchen": sockets({"kind": "breaker", "rated_current": "16 A"})}, "loads.kitchen",
         ("socket-outlets", "30 mA"), "`rcbo` of 30 mA"),
    Case("AC53", NC, {"loads.kitchen": sockets({**RCBO_30, "residual_current": "100 mA"})}, "loads.kitchen",
         ("socket-outlets", "30 mA"), "`rcbo` of 30 mA"),
    Case("AC53", NC, {"loads.lamps": {**sockets({"kind": "breaker"}), "supplies": "luminaires"}}, "loads.lamps",
         ("luminaires", "30 mA"), "`rcbo` of 30 mA"),
    # 411.3.1.2: each building; the feeder of 10 mm² is of the house, so that 6 mm² is the least in the shed (544.1.1)
    Case("EA13", ADVICE, {**OUTBUILDING, **OWN_EARTH}, "boards.shed", ("building of board -UC2", "pipes or steel?"),
         "extraneous_parts: false"),
    Case("EA13", NC, {**OUTBUILDING, "boards.shed.extraneous_parts": True}, "boards.shed",
         ("building of board -UC2", "extraneous parts"), "`bonding`"),
    Case("EA02", NC, {**OUTBUILDING, **OWN_EARTH, "boards.shed.bonding": [{"to": "pipe", "section": "4 mm2"}]},
         "earth.boards.shed.bonding.0", ("to pipe", "4 mm²", "6 mm²"), "6 mm²"),
    Case("AC60", ADVICE, {**PIPED, f"{CABLE}.outside_diameter": "15 mm"}, CABLE, ("56.3 %", "53 %"), "larger conduit"),
    Case("AC60", ADVICE, {f"{STRING}.cable": {**IN_PIPE, "outside_diameter": "6 mm"},
                          "site.conduits.p": {"inside_diameter": "18 mm"}}, f"{KEY}.strings.0.cable",
         ("44.4 %", "40 %"), "larger conduit"),
    *(Case("AC61", NC, {**WITHOUT_OWN, **changes}, RCD, parts, "trips") for changes, parts in (
        ({RCD: {"kind": "interface_relay"}}, ("-TB1-BU1", "not said to open")),
        ({RCD: RELAY, f"{ISOLATOR}.id": "k"}, ("-TB1-BU1", "-TB1-QB1", "no command")),
    )),
    # it opens a contactor beside the way, or nothing
    Case("AC21", NC, {**WITHOUT_OWN, RCD: {"kind": "interface_relay"}}, UNIT, ("no interface protection",), "add"),
    Case("AC21", NC, {**WITHOUT_OWN, RCD: RELAY, "loads.pump": {"power": "1 kW", "circuit": [COUPLING]}}, UNIT,
         ("no interface protection",), "interface"),
    Case("AC22", NC, {"supply.service_fuse": "16 A"}, "supply.service_fuse",
         ("service fuse -FC1", "16 A", "17.3 A"), "20 A"),
    # a limit of 11.5 kW of 12 kW: 17.32 A · 11.5 / 12 = 16.6 A; without a meter for it nothing keeps it
    Case("AC22", NC, {"supply.service_fuse": "16 A", "supply.export_limit": "11.5 kW", f"{MAIN}.circuit.+": LIMITER},
         "supply.service_fuse", ("16 A", "16.6 A"), "20 A"),
    Case("AC22", NC, {"supply.service_fuse": "16 A", "supply.export_limit": "10 kW"},
         "supply.service_fuse", ("16 A", "17.3 A"), "20 A"),
    # by Table 54.2 16 mm²; by the equation √(950² · 5) / 115 = 18.5 mm² behind 160 A gG, which 680 A do not open in 5 s
    Case("AC23", NC, {f"{CABLE}.section": "25 mm2", f"{CABLE}.protective_section": "10 mm2",
                      BREAKER: {**FUSE, "rated_current": "160 A"}}, CABLE, ("10 mm²", "16 mm²"), "16 mm²"),
    Case("AC24", NC, {f"{BREAKER}.poles": 1}, BREAKER, ("1 pole", "3 phases"), "at least 3 poles"),
    # a load between two lines, or on one phase of three-pole devices
    Case("AC24", NC, {"loads.heater": BETWEEN}, "loads.heater.circuit.0", ("-EZ1-FC1", "two line"), "2 poles"),
    Case("AC17", DANGER, {**SHED, f"{UNIT}.connected_to": "shed"}, UNIT, ("3 phases", "board -UC2", "has 1"),
         "single-phase inverter"),
    Case("AC17", DANGER, {**SHED, "loads.lamps.phases": 3}, "loads.lamps", ("load -EZ1", "board -UC2"), "by three"),
    Case("AC17", DANGER, {**ONE_PHASE, "batteries.store": {"converter_power": "3 kVA", "converter_phases": 3}},
         "batteries.store", ("battery", "3 phases"), "by three"),
    Case("AC17", DANGER, {**ONE_PHASE, "loads.saw": {"power": "3 kW", "phases": 3}}, "loads.saw",
         ("load -EZ1", "supply has 1"), "feed it by three"),
    # what the single-phase board needs is not enough for one of three phases
    Case("AC25", DANGER, {**SHED, "boards.shed.phases": REMOVED, "boards.shed.line": REMOVED}, "boards.shed.circuit.1",
         ("3 cores", "5 conductors", "no protective conductor"), "5 cores"),
    # IEC 60364-5-52 524.2: as the lines up to 16 mm² copper and in single-phase circuits, else at least 16 mm²
    Case("AC51", NC, {f"{CABLE}.section": "10 mm2", f"{CABLE}.neutral_section": "6 mm2"}, CABLE,
         ("neutral", "6 mm²", "10 mm²"), "10 mm²"),
    Case("AC51", NC, {f"{CABLE}.section": "35 mm2", f"{CABLE}.neutral_section": "10 mm2"}, CABLE,
         ("10 mm²", "16 mm²"), "16 mm²"),
    Case("AC51", NC, {**ONE_PHASE, f"{CABLE}.section": "35 mm2", f"{CABLE}.neutral_section": "16 mm2"}, CABLE,
         ("16 mm²", "35 mm²"), "35 mm²"),
    Case("AC51", NC, {"types.cables.alu": {"conductor": "aluminium"}, f"{CABLE}.type": "alu",
                      f"{CABLE}.section": "50 mm2", f"{CABLE}.neutral_section": "16 mm2"}, CABLE,
         ("16 mm²", "25 mm²"), "25 mm²"),
    # B.52.4, B2: 16 mm² copper PVC with three loaded conductors carry 62 A; 70 A of one line return through the neutral
    Case("AC51", DANGER, {"supply.service_fuse": "100 A", **REDUCED, "loads.lamps": LAMPS}, "boards.shed.circuit.1",
         ("neutral of cable", "70 A", "62 A"), "as large as"),
    # BS 7671 Table 54.7: 16 · 143/46 = 49.7 mm² of steel for 25 mm² XLPE; 42 mm² stand for 42 · 46/143 = 13.5 mm²
    Case("AC23", NC, {**STEEL, **SLOW, f"{CABLE}.armour_section": "42 mm2"}, CABLE, ("armour", "13.5 mm²", "16 mm²"),
         "beside it"),
    # IEC 60364-5-54 543.1.3: 4 mm² where nothing protects a conductor that is no core, 2.5 mm² where something does
    # √35 000 / 115 = 1.63 mm² by the equation, 4 mm² for its strength: IEC 60364-5-54 543.1.3
    Case("AC23", NC, {f"{CABLE}.protective_conductor": "separate", f"{CABLE}.protective_section": "2.5 mm2",
                      f"{CABLE}.cores": 4}, CABLE, ("2.5 mm²", "4 mm²"), "4 mm²"),
    Case("AC23", NC, {**SLOW, f"{CABLE}.section": "2.5 mm2", f"{CABLE}.protective_conductor": "separate",
                      f"{CABLE}.protective_section": "2.5 mm2"}, CABLE,
         ("2.5 mm²", "4 mm²"), "4 mm²"),
    Case("AC25", DANGER, {f"{CABLE}.cores": 3, f"{CABLE}.protective_conductor": "core",
                          f"{CABLE}.protective_section": "4 mm2"}, CABLE, ("3 cores", "no protective"), "5 cores"),
    # IEC 60364-1 312.2: L1 L2 L3 N PE; the base has four-pole devices
    Case("AC25", DANGER, {f"{CABLE}.cores": 3}, CABLE, ("cable -TB1-WD1", "3 cores", "5 conductors L1 L2 L3 N PE",
         "no protective conductor"), "5 cores"),
    Case("AC25", DANGER, {**ONE_PHASE, f"{CABLE}.cores": 2}, CABLE, ("2 cores", "3 conductors L N PE"), "3 cores"),
    Case("AC25", NC, {f"{CABLE}.cores": 4}, CABLE, ("4 cores", "5 conductors"), "5 cores"),
    Case("AC25", ADVICE, {**THREE_POLES, f"{CABLE}.cores": 4}, CABLE, ("4 cores", "neutral"), "data sheet"),
    Case("AC26", ADVICE, {f"{CABLE}.method": "F", f"{CABLE}.cores": 5, f"{CABLE}.section": "25 mm2"}, CABLE,
         ("5 cores", "single-core"), "method: E"),
    Case("AC27", NC, {"supply.transformer": {**OWN, "rated_power": "10 kVA"}}, "supply.transformer",
         ("10 kVA", "12 kVA"), "12 kVA"),
    # 690 V is 72 % above 400 V
    Case("AC28", NC, {"supply.transformer": {**OWN, "secondary_voltage": "690 V"}}, "supply.transformer",
         ("690 V", "400 V"), "secondary_voltage"),
    Case("AC29", NC, {"supply.voltage": "230 V", "supply.neutral": "distributed"}, "supply",
         ("230 V", "three phases", "400"), "`phases`"),
    Case("AC29", NC, {**ONE_PHASE, "supply.voltage": "400 V"}, "supply", ("400 V", "one phase"), "`phases`"),
    # IEC 60364-7-722:2018 722.531.3 (from memory): at most 30 mA, type B, or A with 6 mA detection
    Case("AC30", NC, {"loads.car": {**CHARGER, "circuit": [{"kind": "breaker"}]}}, "loads.car",
         ("charging point", "30 mA"), "type B"),
    Case("AC30", NC, {"loads.car": charging(residual_current="100 mA")}, "loads.car", ("30 mA",), "type B"),
    Case("AC30", NC, {"loads.car": charging(sensitivity="AC")}, "loads.car", ("type AC",), "type B"),
    Case("AC30", ADVICE, {"loads.car": charging(sensitivity="A")}, "loads.car", ("type A", "6 mA"), "type B"),
    Case("AC31", NC, {f"{RCD}.residual_current": "3000 mA"}, RCD, ("3000 mA", "1000"), "1000 mA"),
    Case("AC31", ADVICE, {f"{RCD}.residual_current": "200 mA"}, RCD, ("200 mA",), "stands on the device"),
    Case("AC32", NC, {**ONE_PHASE, "supply.earthing_system": "IT", f"{BREAKER}.poles": 1}, BREAKER,
         ("1 pole", "IT"), "2 poles"),
    Case("AC32", ADVICE, {**ONE_PHASE, **TT, f"{BREAKER}.poles": 1}, BREAKER, ("1 pole", "TT"), "2 poles"),
    Case("AC32", ADVICE, {**TT, f"{BREAKER}.poles": 3}, BREAKER, ("3 poles", "TT"), "4 poles"),
    # an RCD encloses every live conductor, in TN too (IEC 60364-5-53:2019 531.3.1)
    Case("AC32", NC, {f"{RCD}.poles": 3}, RCD, ("RCD", "3 poles", "the neutral does not pass"), "4 poles"),
    # what isolates leaves no live conductor connected; in TT the neutral is one (BS 7671:2018 461.2)
    Case("AC32", NC, {**TT, f"{MAIN_SWITCH}.poles": 3}, MAIN_SWITCH, ("main switch", "3 poles", "TT"), "4 poles"),
    Case("AC32", NC, {**TT, f"{ISOLATOR}.poles": 3}, ISOLATOR, ("isolator", "3 poles", "TT"), "4 poles"),
    Case("AC33", ADVICE, {f"{UNIT}.line": "L2"}, UNIT, ("inverter -TB1", "L2"), "remove `line`"),
    Case("AC34", ADVICE, {CABLE: REMOVED}, UNIT, ("AC cable", "voltage rise"), "`cable`"),
    Case("AC34", ADVICE, {f"{STRING}.cable": REMOVED}, UNIT, ("DC cables", "voltage drop"), "`cable`"),
    # 4 kW / 230 V = 17.4 A in each of two lines
    Case("AC36", NC, {f"{TWELVE}.power_factor_min": 0.9, f"{UNIT}.power_factor": 0.85}, UNIT,
         ("inverter -TB1", "0.85", "0.9"), "0.9 or above"),
    # 12.5 kVA / (√3 · 400 V) = 18.04 A, at 90 % of the voltage 20.05 A
    Case("AC40", ADVICE, {f"{TWELVE}.apparent_power_max": "12.5 kVA"}, UNIT,
         ("inverter -TB1", "20.05 A", "20 A", "-TB1-FC1"), "`current_max`"),
    # 438 V and 0.62 % more: 440.7 V above 1.1 · 400 V
    # the service fuse of 35 A is ahead of the one, the breaker of 20 A of the other
    Case("AC44", ADVICE, {f"{ISOLATOR}.lockable": False}, ISOLATOR, ("cannot be locked open",), "locked open"),
    Case("AC44", NC, {f"{ISOLATOR}.lockable": False, "profile": "BS 7671"}, ISOLATOR, ("which is demanded",), "locked"),
    Case("AC44", NC, {f"{ISOLATOR}.lockable": False, "supply.country": "GB"}, ISOLATOR, ("which is demanded",), "lock"),
    Case("AC44", NC, {f"{SWITCH}.lockable": False, f"{SWITCH}.location": "loft", f"{UNIT}.location": "garage",
                      "site.locations": {"loft": {}, "garage": {}}}, f"{KEY}.circuit.1", ("out of sight",), "locked"),
    Case("AC43", NC, {f"{MAIN}.circuit.+": {"kind": "interface_protection", "rated_current": "32 A",
         "settings": "relay"}}, f"{MAIN}.circuit.3", ("32 A", "35 A"), "40 A"),
    Case("AC43", NC, {f"{UNIT}.circuit.+": {"kind": "contactor", "rated_current": "16 A"}}, f"{UNIT}.circuit.4",
         ("contactor", "16 A", "20 A"), "20 A"),
    Case("AC41", NC, {"supply.voltage_max": "438 V"}, UNIT, ("inverter -TB1", "441 V", "440 V"), "440 V"),
    # 2 · 4 kVA on L1, nothing on L3
    Case("AC42", ADVICE, {**FEEDER, "inverters.two": {**SINGLE, "line": "L1"}}, "inverters.one",
         ("8 kVA", "4.6 kVA"), "L1, L2 and L3"),
    Case("AC39", ADVICE, {f"{CABLE}.depth": "0.9 m"}, CABLE, ("cable -TB1-WD1", "B2"), "method: D1"),
    Case("AC37", ADVICE, {f"{MAIN}.circuit.+": AHEAD}, RCD, ("-UC1-FB1", "-TB1-FB1", "type S"), "selective: true"),
    Case("AC37", ADVICE, {f"{MAIN}.circuit.+": {**AHEAD, "residual_current": "200 mA", "selective": True}}, RCD,
         ("2 times",), "3 times"),
    Case("AC35", ADVICE, FEEDER, "boards.sub.circuit.1", ("cable -UC2-WD1", "17.4 A", "2 single-phase"), "neutral"),
)  # fmt: skip

FAULT = (
    Case("FA01", DANGER, {f"{BREAKER}.breaking_capacity": "4.5 kA"}, BREAKER, ("4.5 kA", "5 kA"), "6 kA"),
    Case("FA01", NC, {"supply.prospective_fault_current": REMOVED}, BREAKER,
         ("6 kA", "16 kA", "assumed"), "prospective_fault_current"),
    Case("FA01", DANGER, {"supply.prospective_fault_current": "16.1 kA", f"{MAIN}.conditional_current": "16 kA"},
         BREAKER, ("6 kA", "16.1 kA"), "20 kA"),
    # with a fuse of at most 63 A ahead the 16 kA hold, not with one of 80 A (BEAMA bulletin on the 16 kA conditional
    # rating, 2018, https://talk.electricianforum.co.uk/topic/40638)
    Case("FA01", DANGER, {**SIXTEEN, f"{MAIN}.backup_fuse_max": "63 A", "supply.service_fuse": "80 A"}, BREAKER,
         ("6 kA", "16 kA"), "20 kA"),
    # what an assembly withstands behind a fuse of 125 A, or behind a breaker, says nothing of breakers of 6 kA in it
    Case("FA01", DANGER, {**SIXTEEN, "supply.service_fuse": "125 A"}, BREAKER, ("6 kA", "16 kA"), "20 kA"),
    Case("FA01", DANGER, {**SIXTEEN, f"{MAIN}.circuit.+": {"kind": "breaker", "construction": "moulded_case",
                                                          "rated_current": "63 A", "breaking_capacity": "25 kA"}},
         BREAKER, ("6 kA", "16 kA"), "20 kA"),
    Case("FA01", DANGER, {"supply.prospective_fault_current": "16 kA", f"{BREAKER}.conditional_current": "15 kA"},
         BREAKER, ("6 kA", "16 kA"), "20 kA"),
    Case("FA15", DANGER, {f"{RCD}.conditional_current": "4.5 kA"}, RCD, ("RCD -TB1-FB1", "4.5 kA (Inc)", "5 kA"),
         "at least 5 kA"),
    Case("FA15", DANGER, {f"{MAIN_SWITCH}.conditional_current": "3 kA"}, MAIN_SWITCH, ("3 kA (Inc)", "5 kA"),
         "at least 5 kA"),
    Case("FA15", NC, {f"{MAIN_SWITCH}.conditional_current": "10 kA", "supply.prospective_fault_current": REMOVED},
         MAIN_SWITCH, ("10 kA (Inc)", "16 kA"), "at least 16 kA"),
    Case("FA15", NC, {f"{MAIN_SWITCH}.backup_fuse_max": "32 A"}, MAIN_SWITCH,
         ("main switch -UC1-QB1", "service fuse", "35 A", "32 A"), "at most 32 A"),
    Case("FA15", NC, {f"{RCD}.backup_fuse_max": "16 A"}, RCD, ("circuit-breaker -TB1-FC1 of 20 A", "16 A"),
         "at most 16 A"),
    Case("FA15", NC, {**SIXTEEN, f"{MAIN}.backup_fuse_max": "32 A"}, MAIN, ("board -UC1", "35 A", "32 A"),
         "at most 32 A"),
    Case("FA15", ADVICE, {"supply.prospective_fault_current": "10.1 kA"}, MAIN_SWITCH,
         ("states no conditional current", "10.1 kA"), "backup_fuse_max"),
    Case("FA02", ADVICE, {f"{BREAKER}.breaking_capacity": REMOVED}, BREAKER, ("5 kA",), "6 kA"),
    # IEC 60364-4-41 411.4.4 with 0.95: 0.95 · 230 V / (10 · 20 A) = 1.09 Ω
    Case("FA03", DANGER, {RCD: REMOVED, "supply.loop_impedance": 1.2}, BREAKER, ("1.37 Ω", "1.09 Ω"), "1.09 Ω"),
    # 0.95 · 230 V / (20 · 20 A) = 0.546 Ω
    Case("FA03", NC, {RCD: REMOVED, "supply.loop_impedance": REMOVED, f"{BREAKER}.curve": "D"}, BREAKER,
         ("0.546 Ω",), "loop_impedance"),
    Case("FA04", DANGER, {**TT, RCD: REMOVED}, UNIT, ("no RCD", "TT"), "`rcd`"),
    # the RCD behind the cable does not see a fault in it: IEC 60364-4-41 411.5, 411.3.2.4
    Case("FA04", DANGER, {**TT, RCD: AC_WAY, CABLE: RCD_30}, CABLE_AHEAD,
         ("cable -TB1-WD1", "no RCD ahead", "TT"), "`rcd`"),
    Case("FA04", DANGER, {**TT, **OUTBUILDING}, "boards.shed.circuit.1", ("cable -UC2-WD1", "no RCD ahead"), "`rcd`"),
    # a building with an electrode of its own on a TN supply
    Case("FA04", DANGER, {**OUTBUILDING, **OWN_EARTH, f"{UNIT}.connected_to": "shed", RCD: REMOVED}, UNIT,
         ("no RCD", "TT"), "`rcd`"),
    # 0.95 · 230 V / (0.3 Ω + 80 Ω) = 2.7 A, more than 5 · 300 mA: 0.04 s and the delay of 0.3 s; 0.2 s finally
    Case("FA20", DANGER, {**TT, "earthing.electrode.resistance": 80, f"{RCD}.delay": "0.3 s",
                          f"{RCD}.residual_current": "300 mA"}, BREAKER,
         ("RCD -TB1-FB1", "0.34 s", "0.2 s"), "`delay`"),
    # 800 Ω · 100 mA; 50 V / 100 mA = 500 Ω
    Case("FA05", DANGER, {**TT, "earthing.electrode.resistance": 800}, RCD, ("80 V", "50 V"), "500 Ω"),
    # 499.8 Ω and 15 m of 4 mm² at 70 °C, 4.61 Ω/km · 1.1965 · 0.015 km = 0.083 Ω; 499.95 Ω and it are 500.03 Ω
    Case("FA05", DANGER, {**TT, "supply.loop_impedance": REMOVED, "earthing.electrode.resistance": 499.95}, RCD,
         ("50", "50 V"), "500 Ω"),
    # the loop outside, where stated, counts as well (BS 7671 411.5.3): 480 Ω + 21 Ω = 501 Ω
    Case("FA05", DANGER, {**TT, "supply.loop_impedance": 21, "earthing.electrode.resistance": 480}, RCD,
         ("50.1 V", "50 V"), "500 Ω"),
    Case("FA05", DANGER, {**OUTBUILDING, **OWN_EARTH, "boards.shed.electrode.resistance": 800,
                          f"{UNIT}.connected_to": "shed"}, RCD, ("V", "50 V"), "500 Ω"),
    Case("FA06", NC, {**OUTBUILDING, **OWN_EARTH, "boards.shed.electrode": {"kind": "rod"}}, "boards.shed",
         ("board -UC2", "without a stated resistance"), "`resistance`"),
    Case("FA06", NC, {**TT, "earthing.electrode.resistance": REMOVED}, "earthing", ("-XE1", "TT"), "`resistance`"),
    Case("FA07", DANGER, {"supply.loop_impedance": 600}, RCD, ("60 V", "50 V"), "50 V"),
    # a 20 A gG fuse opens within 0.4 s at 130 A (BS 7671 Table 41.2(a)): 0.95 · 230 V / 130 A = 1.68 Ω
    Case("FA03", DANGER, {BREAKER: FUSE, RCD: REMOVED, "supply.loop_impedance": 1.6, "profile": "BS 7671"}, BREAKER,
         ("fuse -TB1-FC1", "1.77 Ω", "1.68 Ω", "within 0.4 s"), "lower rated current"),
    # 1.2 · Isd 120 A = 144 A after 0.2 s, in 0.3 s of the 0.4 s allowed: 0.95 · 230 V / 144 A = 1.517 Ω
    Case("FA03", DANGER, {BREAKER: RELEASE, RCD: REMOVED, "supply.loop_impedance": 1.4}, BREAKER,
         ("circuit-breaker -TB1-FC1", "1.57 Ω", "1.52 Ω", "within 0.4 s"), "lower setting"),
    # 0.35 s and 0.1 s to open are too long: 1.2 · Ii 200 A = 240 A, 0.95 · 230 V / 240 A = 0.910 Ω
    Case("FA03", DANGER, {BREAKER: {**RELEASE, "short_time_delay": "0.35 s"}, RCD: REMOVED,
                          "supply.loop_impedance": 0.8}, BREAKER, ("0.966 Ω", "0.91 Ω"), "shorter delay"),
    Case("FA03", DANGER, {BREAKER: {"kind": "breaker", "construction": "moulded_case", "rated_current": "25 A",
                                    "short_time_setting": "120 A", "short_time_delay": "0.35 s"}, RCD: REMOVED},
         BREAKER, ("no setting", "0.4 s"), "`short_time_delay`"),
    # one of any system at 147 A (manual of a loop tester): 0.95 · 230 V / 147 A = 1.486 Ω
    Case("FA03", DANGER, {BREAKER: FUSE, RCD: REMOVED, "supply.loop_impedance": 1.4}, BREAKER,
         ("fuse -TB1-FC1", "1.57 Ω", "1.49 Ω", "within 0.4 s"), "lower rated current"),
    # 25 A are less than 1.6 · 20 A; 1.13 · 25 A = 28.25 A of a breaker ahead are less than 1.45 · 20 A = 29 A
    Case("FA10", ADVICE, {"supply.service_fuse": "25 A"}, BREAKER,
         ("fuse -FC1", "circuit-breaker -TB1-FC1", "1.6 times 20 A"), "larger device ahead"),
    Case("FA10", ADVICE, {f"{MAIN}.circuit.+": {"kind": "breaker", "rated_current": "25 A", "curve": "D"}}, BREAKER,
         ("circuit-breaker -UC1-FC1", "28.2 A", "29 A"), "table of the maker"),
    # B holds up to 3 · 32 A = 96 A, below the 5 · 20 A at which C may trip
    Case("FA10", ADVICE, {f"{MAIN}.circuit.+": {"kind": "breaker", "rated_current": "32 A", "curve": "B"}}, BREAKER,
         ("circuit-breaker -UC1-FC1", "both at once"), "table of the maker"),
    # IEC 61439-1 Table 7: 1.5 · 5 kA = 7.5 kA
    Case("FA11", DANGER, {f"{MAIN}.peak_current": "6 kA"}, MAIN, ("board -UC1", "6 kA (Ipk)", "7.5 kA"), "7.5 kA"),
    Case("FA11", DANGER, {f"{MAIN}.short_time_current": "4 kA"}, MAIN, ("4 kA (Icw)", "5 kA"), "conditional_current"),
    Case("FA11", DANGER, {f"{MAIN}.conditional_current": "4 kA"}, MAIN, ("4 kA (Icc)", "5 kA"), "5 kA"),
    Case("FA11", ADVICE, {"supply.prospective_fault_current": "10.1 kA"}, MAIN, ("no short-circuit", "10.1 kA"),
         "type plate"),
    # 5 kA at the board, of which 5.1 kA would be switched off: nothing of it is
    Case("FA12", NC, {f"{BREAKER}.construction": "moulded_case", f"{BREAKER}.curve": REMOVED,
                      f"{BREAKER}.instantaneous_setting": "6 kA"},
         BREAKER, ("moulded-case circuit-breaker -TB1-FC1", "greatest short circuit there is 5000 A"), "set it"),
    # 0.95 · 230 V over twice 140 m of 4.61 Ω/km at 1.2 and the 0.3 Ω of the supply, less than 10 · 20 A
    Case("FA12", ADVICE, {f"{CABLE}.length": "140 m", f"{CABLE}.section": "4 mm2", "supply.voltage_rise_limit": 20},
         BREAKER, ("circuit-breaker -TB1-FC1", "200 A", "118 A"), "lower curve"),
    # 17.3 A of 340 A
    Case("FA13", ADVICE, {"supply.prospective_fault_current": "0.34 kA"}, MAIN, ("board -UC1", "17.32 A", "5.09 %"),
         "in hand"),
    # IEC 60364-4-43 433.2.2 and 434.2.1 (from memory): 3 m
    Case("FA14", NC, {"supply.transformer": {**OWN, "secondary_length": "3.5 m"}}, "supply.transformer",
         ("transformer -TA1", "3.5 m", "3 m"), "primary_protection"),
    Case("FA14", ADVICE, {"supply.transformer": OWN}, "supply.transformer", ("transformer -TA1", "3 m"),
         "secondary_length"),
    Case("FA14", NC, {"supply.transformer": OWN, "supply.service_fuse": REMOVED,
                      f"{MAIN}.circuit.0": {"kind": "cable", "length": "8 m", "section": "95 mm2"}},
         "supply.transformer", ("8 m", "3 m"), "within 3 m"),
    # the gates of IEC 60269-1 end at 1250 A; 5 s above 32 A (411.3.2.3)
    Case("FA08", ADVICE, {BREAKER: {**FUSE, "rated_current": "1600 A"}, RCD: REMOVED}, BREAKER,
         ("fuse -TB1-FC1", "5 s"), "time-current curve"),
    # 63 A gG opens within 0.4 s at 500 A (0.95 · 230 V / 0.427 Ω = 512 A): √(500² · 0.4) / 115 = 2.75 mm²
    Case("FA09", DANGER, {BREAKER: {**FUSE, "rated_current": "63 A"}, f"{CABLE}.section": "2.5 mm2",
                          f"{CABLE}.length": "7 m", "profile": "BS 7671"}, CABLE,
         ("cable -TB1-WD1", "fuse -TB1-FC1", "2.5 mm²", "2.75 mm²"), "4 mm²"),
    # the least current decides for a fuse: told as surely where no prospective current is stated
    Case("FA09", DANGER, {BREAKER: {**FUSE, "rated_current": "63 A"}, f"{CABLE}.section": "2.5 mm2",
                          f"{CABLE}.length": "7 m", "profile": "BS 7671",
                          "supply.prospective_fault_current": REMOVED}, CABLE,
         ("cable -TB1-WD1", "fuse -TB1-FC1", "2.5 mm²", "2.75 mm²"), "4 mm²"),
    # class 3 up to 6 kA, curve C of 20 A: √55 000 / 115 = 2.04 mm²; a fuse of 100 A ahead limits it to no less
    Case("FA09", DANGER, {f"{CABLE}.section": "1.5 mm2", "supply.service_fuse": "100 A"}, CABLE,
         ("cable -TB1-WD1", "circuit-breaker -TB1-FC1", "1.5 mm²", "2.04 mm²"), "2.5 mm²"),
    # no loop is stated, so an earth fault may be as large as any other
    Case("FA09", DANGER, {f"{CABLE}.protective_section": "1.5 mm2", "supply.service_fuse": "100 A",
                          "supply.loop_impedance": REMOVED}, CABLE, ("protective conductor of 1.5 mm²",), "2.5 mm²"),
    # class 3 up to 10 kA: √110 000 / 115 = 2.88 mm²
    Case("FA09", ADVICE, {"supply.prospective_fault_current": "8 kA", "supply.service_fuse": "100 A",
                          f"{CABLE}.section": "2.5 mm2"}, CABLE, ("2.5 mm²", "2.88 mm²"), "maker"),
    # 5 kA · √25 ms / 115 = 6.87 mm²; with its maker's time or energy it is no matter of opinion
    Case("FA09", ADVICE, {f"{BREAKER}.construction": "moulded_case", "supply.service_fuse": REMOVED}, CABLE,
         ("4 mm²", "6.87 mm²"), "maker"),
    Case("FA09", DANGER, {f"{BREAKER}.construction": "moulded_case", f"{BREAKER}.clearing_time": "20 ms",
                          "supply.service_fuse": REMOVED}, CABLE, ("4 mm²", "6.15 mm²"), "maker"),
    Case("FA09", DANGER, {f"{BREAKER}.let_through_energy": "300000 A2s"}, CABLE, ("4 mm²", "4.76 mm²"), "6 mm²"),
    # nobody stated the 16 kA; what class 3 lets through up to 6 kA alone is 2.04 mm²
    Case("FA09", ADVICE, {f"{CABLE}.section": "1.5 mm2", "supply.service_fuse": REMOVED,
                          "supply.prospective_fault_current": REMOVED}, CABLE, ("1.5 mm²", "2.88 mm²"), "maker"),
    # class 3, curve B up to 16 A: √35 000 / 115 = 1.63 mm² at 5 kA, √25 000 / 115 = 1.37 mm² up to 4.5 kA; a note to
    # DIN VDE 0100-430 434.5 takes class 3 as enough (https://eacademy.mitegro.com/energiebegrenzungsklasse-von-ls-schaltern/)
    Case("FA09", ADVICE, {"supply.service_fuse": "100 A", **lighting(16)}, "loads.lamps.circuit.1",
         ("1.5 mm²", "1.63 mm²"), "maker"),
    # in TT the earth leaves a few amperes; a short circuit to the neutral, 0.95 · 230 V / 0.226 Ω = 969 A, opens a
    # 100 A fuse within 5 s: √(580² · 5) / 115 = 11.3 mm²
    Case("FA09", DANGER, {**TT, BREAKER: {**FUSE, "rated_current": "100 A"}, f"{CABLE}.section": "10 mm2",
                          f"{CABLE}.length": "45 m"}, CABLE, ("10 mm²", "11.3 mm²"), "16 mm²"),
)  # fmt: skip

BURDEN = {f"{METER}.connection": "ct", f"{METER}.ct_primary": "40 A", f"{METER}.ct_secondary": "5 A",
          f"{METER}.ct_lead_length": "10 m", f"{METER}.ct_burden": "2.5 VA"}  # fmt: skip

METERING = (
    Case("ME01", NC, {f"{METER}.current_max": "20 A"}, METER, ("meter -UC1-PG1", "20 A", "35 A"), "35 A"),
    Case("ME02", NC, {f"{METER}.connection": "ct", f"{METER}.ct_primary": "30 A"}, METER, ("30 A", "35 A"), "35 A"),
    Case("ME03", ADVICE, {METER: REMOVED}, MAIN, ("no energy meter",), "purpose: supply"),
    # the sensor stands in the circuit of a load and does not see the inverter; or is no meter
    Case("ME08", NC, {**LIMITED, "loads.pump": {"power": "1 kW", "circuit": [{**LIMITER, "id": "m9"}]}},
         "data.devices.log", ("-KF1", "-PG", "does not see inverter -TB1"), "main board"),
    Case("ME08", NC, {**LIMITED, f"{BREAKER}.id": "m9"}, "data.devices.log", ("-TB1-FC1", "no meter"), "main board"),
    # 12 kW that nothing turns down, above 6 kW
    Case("ME09", NC, {**LIMITED, f"{MAIN}.circuit.+": {**LIMITER, "id": "m9"}, **SPARED}, "data.devices.log",
         ("12 kW", "6 kW"), "power_limit"),
    # turned down to 7 kW without its measurement, above 6 kW
    Case("ME09", NC, {**LIMITED, f"{MAIN}.circuit.+": {**LIMITER, "id": "m9"},
                      "data.devices.log.feed_in_limit.fail_safe_power": "7 kW"}, "data.devices.log",
         ("without its measurement", "7 kW", "6 kW"), "turn down"),
    Case("ME04", NC, {"supply.export_limit": "6 kW"}, "supply", ("6 kW", "12 kW"), "feed_in_limit"),
    Case("ME05", NC, {"supply.export_limit": "6 kW", f"{MAIN}.circuit.+": LIMITER}, f"{MAIN}.circuit.3",
         ("-UC1-PG2",), "`id`"),
    # (5 A)² · 2 · 10 m · 7.41 Ω/km = 3.7 VA
    Case("ME07", NC, BURDEN, METER, ("meter -UC1-PG1", "3.71 VA", "2.5 VA"), "ct_lead_section"),
    Case("ME06", NC, {f"{METER}.bidirectional": False}, METER, ("one direction",), "bidirectional"),
)  # fmt: skip

STEP = f"{CHAIN}.devices.1"
BUS = f"{TWELVE}.bus"
NAMED_METER = {f"{METER}.id": "m1"}
SECOND_CHAIN = {"data.chains.side": {"devices": [{"device": "roof"}, {"device": "m1"}]}}

TWO_HOUSES = {
    "site.locations": {"yard": {"building": "house"}, "loft": {"building": "barn"}},
    "data.devices.log.location": "yard",
    f"{UNIT}.location": "loft",
}

DATA = (
    Case("DB01", ADVICE, {f"{STEP}.address": REMOVED}, UNIT, ("inverter -TB1", "-WF1"), "1 to 247"),
    Case("DB02", NC, {**NAMED_METER, f"{CHAIN}.devices.+": {"device": "m1", "address": 1}}, METER,
         ("-UC1-PG1", "address 1", "-TB1"), "example 2"),
    Case("DB03", NC, {f"{STEP}.address": 250}, UNIT, ("250", "1 to 247"), "1 to 247"),
    Case("DB04", NC, {f"{BUS}.unit_load": 32}, CHAIN, ("-WF1", "33", "32"), "at most 32"),
    Case("DB05", NC, {f"{STEP}.length": "1300 m"}, CHAIN, ("1300 m", "1200 m"), "1200 m"),
    Case("DB06", NC, {f"{STEP}.length": "60 m"}, UNIT, ("60 m", "50 m"), "50 m"),
    Case("DB07", NC, {f"{BUS}.units_max": 1, f"{UNIT}.count": 2}, CHAIN, ("2 inverters", "the 1 "), "at most 1"),
    Case("DB08", NC, {f"{BUS}.length_max": "100 m", f"{STEP}.length": "120 m"}, CHAIN, ("120 m", "100 m"), "100 m"),
    Case("DB09", NC, {f"{STEP}.terminated": False}, CHAIN, ("-KF1", "-TB1"), "terminated: true"),
    Case("DB09", ADVICE, {f"{STEP}.terminated": False, f"{CHAIN}.devices.0.terminated": False}, CHAIN,
         ("no termination",), "first and the last"),
    Case("DB10", ADVICE, {f"{CHAIN}.shield_earthed_at": []}, CHAIN, ("0 devices", "1"), "exactly one"),
    Case("DB11", ADVICE, {**NAMED_METER, **SECOND_CHAIN}, "data.chains.side", ("-WF2",), "`master`"),
    Case("DB12", ADVICE, {"data.devices.log2": {"kind": "logger"}, f"{CHAIN}.devices.+": {"device": "log2"}}, CHAIN,
         ("2 devices", "-KF1", "-KF2"), "chain of their own"),
    Case("DB13", NC, {**NAMED_METER, **SECOND_CHAIN}, UNIT, ("-WF2", "-WF1"), "one chain"),
    Case("DB14", NC, {"data.links": [{"from": "roof", "to": "log", "medium": "ethernet"}]}, UNIT,
         ("Ethernet",), "not both"),
    Case("DB15", NC, {"data.devices.net": {"kind": "router"},
                      "data.links": [{"from": "log", "to": "net", "medium": "ethernet", "length": "120 m"}]},
         "data.devices.log", ("120 m", "100 m"), "100 m"),
    Case("DB16", ADVICE, {f"{STEP}.length": REMOVED}, CHAIN, ("1 stretches",), "length"),
    Case("DB19", ADVICE, TWO_HOUSES, UNIT, ("logger -KF1 in house", "inverter -TB1 in barn"), "fibre"),
    Case("DB18", ADVICE, {"data.devices.net": {"kind": "router"}}, "data.devices.net", ("router",), "link"),
    Case("DB17", ADVICE, {f"{CHAIN}.cable": "bare"}, CHAIN, ("without a shield",), "shielded"),
)  # fmt: skip

EARTHING = (
    # IEC 60364-5-54 Table 54.1: 16 mm² buried, protected against corrosion alone
    Case("EA01", NC, {"earthing.conductor.section": "10 mm2"}, "earth.electrode",
         ("-WE1", "10 mm²", "16 mm²"), "16 mm²"),
    Case("EA02", NC, {"earthing.bonding.0.section": "4 mm2"}, "earth.bonding.0",
         ("module frames", "4 mm²", "6 mm²"), "6 mm²"),
    Case("EA03", ADVICE, {"earthing.bonding.0": REMOVED}, "earth.array_frame", ("assumed", "-TB1"), "array_frame"),
    Case("EA04", ADVICE, {"supply.earthing_system": "TN-C-S", "site.building": "ground_mounted"}, "earthing",
         ("TN-C-S",), "TT"),
    Case("EA05", NC, {**OUTBUILDING, "boards.shed.earthing_system": "TT"}, "boards.shed", ("board -UC2", "TT"),
         "`electrode`"),
    Case("EA05", NC, {**TT, "earthing.electrode": REMOVED}, "earthing", ("no electrode", "TT"), "electrode"),
    Case("EA07", NC, {f"{TWELVE}.leakage_current": "12 mA", f"{CABLE}.protective_section": "4 mm2"}, CABLE,
         ("4 mm²", "10 mm²", "12 mA"), "10 mm²"),
    Case("EA07", ADVICE, {f"{TWELVE}.leakage_current": "12 mA"}, CABLE, ("cores of 4 mm²", "10 mm²"), "10 mm²"),
    # IEC 60364-5-54:2011 544.1.1: half of the 25 mm² that the 50 mm² of the circuit of 125 A need is 12.5 mm²
    Case("EA02", NC, {"supply.service_fuse": "125 A", "loads.mill": LARGE}, "earth.bonding.1",
         ("10 mm²", "16 mm²"), "16 mm²"),
    Case("EA08", ADVICE, {"profile": "BS 7671", "supply.earthing_system": "TN-C-S"}, "earth.bonding.1",
         ("10 mm²", "neutral"), "16 mm² up to 50 mm²"),
    Case("AC23", NC, {"profile": "AS/NZS 5033", f"{CABLE}.section": "16 mm2", f"{CABLE}.protective_section": "4 mm2",
                      BREAKER: {**FUSE, "rated_current": "160 A"}}, CABLE, ("4 mm²", "6 mm²"), "6 mm²"),
    Case("EA01", NC, {"profile": "AS/NZS 5033", "earthing.conductor.section": "2.5 mm2"}, "earth.electrode",
         ("2.5 mm²", "4 mm²"), "4 mm²"),
    Case("EA02", NC, {"profile": "AS/NZS 5033", "earthing.bonding.1.section": "2.5 mm2"}, "earth.bonding.1",
         ("2.5 mm²", "4 mm²"), "4 mm²"),
    # BS 7671:2018 Table 54.8: 70 mm² of neutral asks for 25 mm², of the earthing conductor too (542.3.1)
    Case("EA02", NC, {**PME_HOUSE, "supply.neutral_section": "70 mm2"}, "earth.bonding.1",
         ("water pipe", "10 mm²", "25 mm²"), "25 mm²"),
    Case("EA01", NC, {**PME_HOUSE, "supply.neutral_section": "70 mm2"}, "earth.supply", ("16 mm²", "25 mm²"), "25 mm²"),
    Case("EA02", NC, {**PME, f"{MAIN}.circuit.+": {**PEN, "section": "70 mm2"}}, "earth.bonding.1",
         ("10 mm²", "25 mm²"), "25 mm²"),
    # the copper equivalent of 95 mm² aluminium: 95 · 0.0225 / 0.036 = 59.4 mm² (IEC 60364-5-52 Annex G)
    Case("EA02", NC, {**PME, "types.cables.alu": {"conductor": "aluminium"},
                      f"{MAIN}.circuit.+": {**PEN, "type": "alu", "section": "95 mm2"}}, "earth.bonding.1",
         ("10 mm²", "25 mm²"), "25 mm²"),
    # IEC 60364-5-54:2011 543.4.1: 10 mm² copper, 16 mm² aluminium
    Case("EA12", NC, {**COMBINED, f"{MAIN}.circuit.+": {**PEN, "section": "6 mm2"}}, f"{MAIN}.circuit.3",
         ("cable -UC1-WD1", "(PEN)", "6 mm²", "10 mm²"), "10 mm²"),
    Case("EA12", NC, {**COMBINED, "types.cables.alu": {"conductor": "aluminium"},
                      f"{MAIN}.circuit.+": {**PEN, "type": "alu", "section": "10 mm2"}}, f"{MAIN}.circuit.3",
         ("10 mm²", "16 mm²"), "16 mm²"),
    # BS 7671:2018+A2 722.411.4.1
    Case("EA14", NC, {**PME, "loads.car": {**CHARGER, "vehicle_outdoors": True}}, "loads.car",
         ("charging point -EZ1", "outdoors", "TN-C-S"), "`open_pen_protection`"),
    Case("EA14", NC, {**COMBINED, "supply.country": "GB", "site.locations": {"drive": {"outdoor": True}},
                      "loads.car": {**CHARGER, "location": "drive"}}, "loads.car", ("outdoors",),
         "`open_pen_protection`"),
    Case("EA14", ADVICE, {**PME, "loads.car": CHARGER}, "loads.car", ("may the vehicle",), "vehicle_outdoors: false"),
    # IEC 60364-4-41 411.3.1.1: parts that can be touched at once on one earthing system
    Case("EA15", NC, TWO_AT_ONE_PLACE, "boards.well", ("board -UC2", "TT", "board -UC1", "TN-S"), "out of reach"),
    Case("EA15", ADVICE, {**TWO_AT_ONE_PLACE, "boards.well.location": "yard", "site.locations": {
        "cellar": {"building": "barn"}, "yard": {"building": "barn"}}}, "boards.well", ("-UC2", "-UC1"),
         "one earthing system"),
    # IEC 60364-4-41 411.3.1.2
    Case("EA13", NC, {"earthing.bonding.1": REMOVED}, "earthing", ("main bonding", "-XE1", "pipes"), "`bonding`"),
    Case("EA13", NC, {"earthing.bonding.1": REMOVED, "earthing.extraneous_parts": True}, "earthing",
         ("-XE1", "extraneous parts"), "`bonding`"),
    Case("EA13", ADVICE, {"earthing": REMOVED}, "earthing", ("main bonding",), "extraneous_parts: false"),
    Case("EA13", ADVICE, {"earthing.bonding.1": REMOVED, "site.building": "ground_mounted"}, "earthing",
         ("main bonding",), "extraneous_parts: false"),
    # IEC 62548:2016 6.4 (from memory): 1 A up to 25 kWp
    Case("EA09", NC, {f"{INPUT}.functional_earth": True}, KEY, ("without a device",), "at most 1 A"),
    Case("EA09", NC, {f"{INPUT}.functional_earth": True, f"{INPUT}.functional_earth_device": "2 A"}, KEY,
         ("2 A", "1 A"), "at most 1 A"),
    # 14.76 kWp: 30 kΩ (IEC 62548:2016 6.4); 730 V / 30 mA = 24.3 kΩ
    Case("EA10", NC, {f"{TWELVE}.insulation_threshold": "20 kohm"}, UNIT, ("20 kΩ", "30 kΩ"), "at least 30 kΩ"),
    # IEC 62109-2:2011 4.8.3 (from memory): 300 mA up to 30 kVA; 2π · 50 Hz · 50 nF/kWp · 14.76 kWp · 230 V = 53.3 mA
    Case("EA11", NC, {f"{TWELVE}.residual_current_monitor": "500 mA"}, UNIT, ("500 mA", "300 mA"), "300 mA"),
    Case("EA11", ADVICE, {f"{TWELVE}.residual_current_monitor": "30 mA"}, UNIT, ("53.3 mA", "30 mA"), "separation"),
    Case("EA06", ADVICE, {"supply.earthing_system": "IT"}, "earthing", ("IT system",), "insulation monitoring"),
)  # fmt: skip

ENTRY = {"code": "DC01", "at": "-TB9", "reason": "tested", "role": "designer", "date": "2026-01-05"}

SPEC = (
    # a spec file with such a value is refused, or accepts it at its place
    Case("SP41", DANGER, {f"{MONO}.voltage_coefficient": "-0.14 %/K"}, "", ("-0.14 %/K", "usual is", "-0.15 %/K"),
         "data sheet"),
    Case("SP41", DANGER, {f"{STRING}.count": 9}, "", ("array power over inverter power: 5.54", "at most 5"),
         "data sheet"),  # 9 · 18 · 410 W = 66.4 kW
    Case("ACC01", ADVICE, {"accept": [ENTRY]}, "", ("DC01", "-TB9"), "remove the entry"),
    Case("RT01", NC, {"supply.service_fuse": "125 A", f"{METER}.current_max": REMOVED}, METER,
         ("Imax", "125 A"), "connection: ct"),
    Case("RT01", ADVICE, {"supply.service_fuse": REMOVED, f"{MAIN_SWITCH}.rated_current": REMOVED}, MAIN_SWITCH,
         ("main switch -UC1-QB1", "In", "service_fuse"), "service_fuse"),
    Case("RT01", ADVICE, {"loads.kitchen": {"circuit": [{"kind": "breaker"}]}}, "loads.kitchen.circuit.0",
         ("In",), "power or current"),
)  # fmt: skip

FAILING = (*DC, *SURGE, *AC, *FAULT, *METERING, *DATA, *EARTHING, *SPEC)

# exactly at the limit: allowed, by "above", "below" or "at least" in the clause of each rule
AT_990_V = {f"{MONO}.open_circuit_voltage": "50 V", f"{MONO}.voltage_coefficient": "-0.25 %/K",
            "site.temperature_min": -15}  # fmt: skip

AT_THE_LIMIT: tuple[tuple[str, Changes], ...] = (
    ("EA13", {**OUTBUILDING, **OWN_EARTH, "boards.shed.extraneous_parts": False}),
    ("EA13", {**OUTBUILDING, **OWN_EARTH, "boards.shed.bonding": [{"to": "pipe", "section": "6 mm2"}]}),
    ("EA02", {**OUTBUILDING, **OWN_EARTH, "boards.shed.bonding": [{"to": "pipe", "section": "6 mm2"}]}),
    ("EA13", OUTBUILDING),  # its building is not known to be another
    ("AC53", {"loads.kitchen": sockets(RCBO_30)}),
    ("AC52", {f"{TWELVE}.needs_neutral": True}),
    ("AC52", {**THREE_WIRES, f"{TWELVE}.needs_neutral": False,
              "loads.oven": {"power": "2 kW", "phases": 1, "line": "L1-L2"}}),
    ("EA15", {**TWO_AT_ONE_PLACE, "boards.well.location": "pump house"}),
    ("EA15", {**TWO_AT_ONE_PLACE, "supply.earthing_system": "TT"}),
    ("EA15", {**TWO_AT_ONE_PLACE, "boards.well": {"fed_from": "second"}}),  # nobody says where it is
    ("SP41", {f"{MONO}.voltage_coefficient": "-0.15 %/K"}),
    ("SP41", {f"{STRING}.count": 8}),  # 8 · 18 · 410 W = 59.0 kW, 4.9 times 12 kW
    # 20 · 50 V · (1 + 0.0025 · 40) = 1100 V
    ("DC01", {f"{MONO}.open_circuit_voltage": "50 V", f"{MONO}.voltage_coefficient": "-0.25 %/K",
         f"{STRING}.modules_in_series": 20,
              "site.temperature_min": -15, f"{TWELVE}.dc_voltage_max": "1100 V"}),
    ("DC07", {f"{TWELVE}.inputs.0.current_max": "26 A"}),
    ("DC08", {f"{LIMITS}.short_circuit_current_max": "34.75 A"}),
    ("DC08", {f"{LIMITS}.short_circuit_current_max": "27.8 A",
              f"{LIMITS}.short_circuit_limit_for": "standard_conditions"}),
    ("DC03", {**HIGH, "profile": "BS 7671", f"{STRING}.modules_in_series": 25}),
    ("DC03", {**HIGH, "profile": "IEC 60364-7-712", f"{STRING}.modules_in_series": 25}),
    ("DC17", {SWITCH: REMOVED, f"{TWELVE}.micro": True, f"{TWELVE}.plugs_disconnect": True}),
    ("DC52", {**AT_990_V, ADDED: {**DIODE, "rated_voltage": "1980 V", "rated_current": "38.92 A"}}),
    ("DC54", with_optimisers(input_current_max="13.9 A", short_circuit_limit_for="standard_conditions")),
    ("DC54", {**with_optimisers(string_power_max="10.25 kW"), f"{STRING}.modules_in_series": 25}),
    # 25 · 40.56 V would be 1014 V of modules alone; 30 A without KI
    ("DC01", {**with_optimisers(), f"{STRING}.modules_in_series": 25}),
    ("DC08", {**with_optimisers(), f"{LIMITS}.short_circuit_current_max": "30 A"}),
    # 7380 W at 700 V: 10.543 A, two of them 21.086 A
    ("DC07", {**with_optimisers(), f"{LIMITS}.current_max": "21.1 A"}),
    ("DC10", {**with_optimisers(), f"{INPUT}.strings.+": {**SECOND, "modules_in_series": 12, "circuit": [OPTIMISER]}}),
    ("DC12", {**with_optimisers(), **THREE}),
    ("DC50", {**with_optimisers(rapid_shutdown=True), "supply.country": "US"}),
    ("DC42", {f"{STRING}.count": 4, f"{STRING}.circuit": [{**BRANCH, "rated_current": "34.75 A"}]}),
    ("DC09", {f"{STRING}.count": 4, f"{STRING}.circuit": [BRANCH]}),  # two pairs of conductors on two of terminals
    ("DC12", {**THREE, f"{STRING}.circuit": [{"kind": "breaker", "rated_current": "25 A"}]}),
    ("DC13", {f"{STRING}.circuit": [{"kind": "breaker", "rated_current": "25 A"}]}),
    ("DC52", {f"{STRING}.circuit": [{**DIODE, "rated_current": "19.46 A"}]}),
    ("DC53", {**EARTHED, f"{INPUT}.string_fuses": {}}),
    ("DC53", {**EARTHED, f"{INPUT}.string_fuses": {"pole": "positive"}}),
    ("DC39", {**EARTHED, f"{INPUT}.string_fuses": {}}),
    ("AC44", {f"{SWITCH}.lockable": True}),
    ("DC09", {f"{TWELVE}.inputs.0.strings_max": 2}),
    # 71 A · 0.50 for nine in the duct = 35.5 A
    ("DC22", {"types.cables.al": AL, ADDED: {**IN_DUCT, "grouped_circuits": 9}}),
    # PVC 4 mm² on a wall 36 A · 0.71 at 50 °C · 0.80 for two bunched = 20.4 A
    ("DC22", {"types.cables.pvc": {}, f"{STRING}.cable": {"type": "pvc", "length": "20 m", "section": "4 mm2",
                                                          "method": "C", "ambient_temperature": "50 °C"}}),
    ("DC25", {f"{STRING}.cable.method": "D1"}),
    ("DC25", {"types.cables.al": AL, ADDED: IN_DUCT}),
    ("DC12", {**THREE, f"{MONO}.short_circuit_current": "12.5 A", f"{MONO}.mpp_current": "12.1 A"}),
    ("DC14", {**THREE, f"{INPUT}.string_fuses": {"rated_current": "25 A"}}),
    ("DC19", {f"{SWITCH}.rated_current": "34.75 A"}),
    # 18 · 50 V · (1 + 0.0025 · 40) = 990 V; 990 V / 30 mA = 33 kΩ
    ("DC41", {**AT_990_V, ADDED: {**PLUG, "rated_voltage": "990 V"}}),
    ("DC42", {ADDED: {**PLUG, "rated_current": "34.75 A"}}),
    ("DC43", {**AT_990_V, ADDED: {"kind": "insulation_monitor", "alarm_resistance": "33 kohm"}}),
    ("DC27", {f"{TWELVE}.rated_power": "9840 W"}),
    ("DC28", {f"{TWELVE}.dc_power_max": "14760 W"}),
    # 42.784 V at -10 °C by the single-diode model; 37.8 · (1 + 0.00225 · 35) = 40.777 V, 4.93 % less
    ("DC31", {**OPEN_DATA, f"{MONO}.voltage_coefficient": "-0.225 %/K", "site.temperature_min": -10,
              f"{MONO}.current_coefficient": "5.135262 mA/K"}),
    # 20 · 50 V · (1 + 0.0025 · 40) = 1100 V and 10 % more
    ("DC32", {f"{MONO}.open_circuit_voltage": "50 V", f"{MONO}.voltage_coefficient": "-0.25 %/K",
              f"{MONO}.system_voltage_max": "1500 V", f"{MONO}.voltage_tolerance": "10 %",
              f"{STRING}.modules_in_series": 20, "site.temperature_min": -15, f"{TWELVE}.dc_voltage_max": "1210 V"}),
    # cells at 15 + 35 °C: 16 · 31 V · (1 - 0.005 · 25) = 434 V
    ("DC33", {"site.temperature_max": 15, f"{MONO}.mpp_voltage_coefficient": "-0.5 %/K",
              f"{STRING}.modules_in_series": 16, f"{STRING}.cable": REMOVED, f"{TWELVE}.shutdown_voltage": "434 V"}),
    ("DC04", {"site.temperature_max": 15, f"{MONO}.mpp_voltage_coefficient": "-0.5 %/K",
              f"{STRING}.modules_in_series": 16, f"{STRING}.cable": REMOVED, f"{TWELVE}.mpp_voltage_min": "434 V"}),
    ("DC34", {f"{TWELVE}.inputs.0.terminal_current_max": "17.375 A"}),
    ("DC35", {**SUB_ARRAYS, f"{UNIT}.inputs": [ONE_INPUT, ONE_INPUT], f"{TWELVE}.inputs_independent": False}),
    ("DC35", {f"{TWELVE}.backfeed_current": "0 A"}),
    ("DC35", {f"{TWELVE}.backfeed_current": "5 A", f"{INPUT}.circuit.+": {"kind": "fuse"}}),
    ("DC36", {**THREE, f"{INPUT}.string_fuses": {"rated_current": "25 A", "temperature_factor": 0.695}}),
    # 3 · 14.5 A = 1.45 · 30 A
    ("DC37", {f"{STRING}.count": 4, f"{MONO}.short_circuit_current": "14.5 A", f"{MONO}.series_fuse_max": "30 A",
              f"{INPUT}.string_fuses": {"rated_current": "30 A"}}),
    ("DC38", {**THREE, f"{INPUT}.string_fuses": {"breaking_capacity": "0.052125 kA"}}),
    ("DC39", {**THREE, f"{INPUT}.string_fuses": {"poles": 1}, f"{INPUT}.functional_earth": True}),
    ("DC46", {f"{SWITCH}.poles": 2}),
    ("DC47", {f"{MONO}.connector_current_max": "17.375 A"}),
    # 1.5625 · 16 A = 25 A, the ampacity of 12 AWG at terminals of 75 °C (NEC Table 310.16)
    ("DC48", {"profile": "NEC 690", f"{MONO}.short_circuit_current": "16 A", f"{STRING}.cable.section": "12 AWG",
              f"{STRING}.cable.terminal_temperature": "75 °C"}),
    # at 25 °C: 25 · 40 V, and 3 · 40 V
    ("DC49", {**HIGH, f"{MONO}.open_circuit_voltage": "40 V", f"{STRING}.modules_in_series": 25,
              "site.temperature_min": 25, "site.building": "ground_mounted"}),
    ("DC44", {f"{MONO}.open_circuit_voltage": "40 V", f"{STRING}.modules_in_series": 3, "site.temperature_min": 25,
              f"{MONO}.protection_class": "0"}),
    ("DC45", {"supply.country": "US", f"{TWELVE}.arc_fault_protection": True}),
    # "80 V and above": 2 · 39.9 V is below
    ("DC45", {"supply.country": "US", f"{MONO}.open_circuit_voltage": "39.9 V", f"{STRING}.modules_in_series": 2,
              "site.temperature_min": 25}),
    ("DC45", {"supply.country": "NO", "supply.grid_rules": "generic"}),
    ("DC51", {ADDED: {"kind": "breaker", "polarized": False}}),
    ("DC51", {ADDED: {"kind": "breaker"}}),
    ("DC14", {ADDED: {"kind": "breaker", "rated_current": "40 A"}}),
    ("DC38", {ADDED: {"kind": "breaker", "breaking_capacity": "0.03475 kA"}}),
    ("DC46", {ADDED: {"kind": "breaker", "poles": 1}}),
    ("DC42", {ADDED: {"kind": "breaker", "rated_current": "16 A"}}),
    ("DC17", {SWITCH: {"kind": "breaker", "isolating": True}}),
    ("DC35", {f"{TWELVE}.backfeed_current": "5 A", ADDED: {"kind": "breaker"}}),
    ("DC50", {"supply.country": "US", ADDED: {"kind": "rapid_shutdown"}}),
    ("DC50", {"supply.country": "US", "site.building": "ground_mounted"}),
    ("SU17", {"earthing.lightning_protection": {"separation_kept": False}, f"{SPD}.test_class": "1+2",
              f"{SPD}.impulse_current": "5 kA"}),
    ("SU18", {f"{SPD}.short_circuit_current": "34.75 A"}),
    ("SU19", {"earthing.lightning_protection": {**SEPARATED, "separation": "0.352 m"}}),
    ("SU06", {f"{SPD}.lead_length": "1.3 m"}),
    ("EA09", {f"{INPUT}.functional_earth": True, f"{INPUT}.functional_earth_device": "1 A"}),
    ("EA10", {f"{TWELVE}.insulation_threshold": "30 kohm"}),
    ("EA11", {f"{TWELVE}.residual_current_monitor": "300 mA"}),
    ("SU04", {**AT_990_V, f"{SPD}.continuous_voltage": "990 V"}),
    ("SU06", {f"{SPD}.protection_level": "4.8 kV"}),
    ("SU07", {f"{SPD}.discharge_current": "5 kA"}),
    ("SU12", {f"{AC_SPD}.lead_length": "0.5 m"}),
    ("SU13", {f"{AC_SPD}.backup_fuse_max": "35 A"}),
    ("SU13", {f"{AC_SPD}.backup_fuse_max": "32 A", f"{AC_SPD}.backup_fuse": "32 A"}),  # its own, not the 35 A ahead
    ("AC01", {f"{TWELVE}.current_max": "20 A"}),
    ("AC02", {f"{CABLE}.section": "2.5 mm2"}),
    # 6 mm² carries 34 A; to where no load is, and ahead of the trunk itself, the 16 A alone
    ("AC02", {**SHARED, "boards.pv.circuit.1.section": "6 mm2"}),
    ("AC02", SHARED),
    ("AC02", {**SHARED, "boards.pv.circuit.1.section": "2.5 mm2", "loads.pump.connected_to": "main"}),
    ("AC02", {**SHARED, "boards.pv.circuit.1.section": "2.5 mm2",
              "boards.pv.circuit.+": {"kind": "cable", "length": "5 m"}}),
    ("AC04", {f"{TWELVE}.current_max": "18 A"}),
    ("AC04", {f"{TWELVE}.current_max": "19 A", f"{BREAKER}.rated_current": REMOVED}),
    ("AC45", {f"{TWELVE}.terminal_section_max": "4 mm2"}),
    ("AC45", {f"{UNIT}.terminal_section_max": "4 mm2", f"{TWELVE}.terminal_section_max": "2.5 mm2"}),
    ("AC05", {f"{RCD}.rated_current": "20 A"}),
    ("AC09", {f"{TWELVE}.leakage_current": "30 mA"}),
    ("AC12", {f"{ISOLATOR}.rated_current": "20 A"}),
    ("AC43", {f"{UNIT}.circuit.+": {"kind": "contactor", "rated_current": "20 A"}}),
    ("AC43", {f"{MAIN}.circuit.+": {"kind": "interface_protection", "rated_current": "35 A", "settings": "relay"}}),
    # 850 / (1 km · 0.85) = 1000; 85 / (0.1 km · 0.85) = 1000
    ("SU08", {AC_SPD: REMOVED, **URBAN}),
    ("SU08", {AC_SPD: REMOVED, **URBAN, "site.surroundings": "suburban", "supply.risk_length": "100 m"}),
    ("SU08", {AC_SPD: REMOVED, "site.surge_protection_declined": "owner, 2026-03-02"}),
    ("SU08", {AC_SPD: REMOVED, "site.surge_protection_declined": "owner", "profile": "BS 7671",
              "site.building": "other_building"}),
    ("SU08", {AC_SPD: REMOVED, "profile": "AS/NZS 5033"}),
    ("SU10", {f"{AC_SPD}.test_class": "2", "supply.overhead": True, "supply.direct_strokes": False}),
    # 17.32 A · 11 / 12 = 15.9 A; 0 W: nothing is fed in
    *(("AC22", {"supply.service_fuse": "16 A", "supply.export_limit": f"{power} kW", f"{MAIN}.circuit.+": LIMITER})
      for power in (11, 0)),
    # four conductors of 7 mm in 22.14 mm: 4 · 49 / 490 = 40 %; one cable of 14.5 mm in 20 mm: 52.6 % of 53 %
    ("AC60", {f"{STRING}.cable": {**IN_PIPE, "outside_diameter": "7 mm"},
              "site.conduits.p": {"inside_diameter": "22.14 mm"}}),
    ("AC60", {**PIPED, f"{CABLE}.outside_diameter": "14.5 mm"}),
    ("AC60", {**PIPED, f"{CABLE}.outside_diameter": "18 mm", "site.conduits.p": {}}),
    *((code, {**WITHOUT_OWN, RCD: RELAY, f"{UNIT}.circuit.+": COUPLING}) for code in ("AC21", "AC61")),
    ("AC61", {**WITHOUT_OWN, RCD: RELAY, f"{BREAKER}.id": "k"}),
    *((code, {**LIMITED, f"{MAIN}.circuit.+": {**LIMITER, "id": "m9"}}) for code in ("ME08", "ME09")),
    # what is not turned down is set to the limit itself
    ("ME09", {**LIMITED, f"{MAIN}.circuit.+": {**LIMITER, "id": "m9"},
              "data.devices.log.feed_in_limit.fail_safe_power": "6 kW"}),
    ("ME09", {**LIMITED, f"{MAIN}.circuit.+": {**LIMITER, "id": "m9"}, **SPARED, f"{UNIT}.power_limit": "6 kW"}),
    ("AC13", {f"{MAIN_SWITCH}.rated_current": "35 A"}),
    ("AC18", {f"{TWELVE}.phases": 1, f"{TWELVE}.rated_power": "4.6 kW"}),
    ("AC19", {**TRUNK, "boards.pv.rated_current": "32 A"}),
    ("AC11", {**TRUNK, f"{UNIT}.circuit": [], "boards.pv.circuit": [{"kind": "breaker", "rated_current": "32 A"},
              {"kind": "isolator", "rated_current": "40 A"}]}),
    ("AC14", {**TRUNK, f"{UNIT}.circuit": []}),
    ("AC19", {f"{TWELVE}.current_max": "18 A", f"{MAIN}.rated_current": "53 A"}),
    ("AC19", {**PV_BOARD, f"{TWELVE}.current_max": "18 A", "boards.pv.rated_current": "18 A"}),
    ("AC38", {f"{TWELVE}.current_max": "16 A", f"{MAIN}.diversity_factor": 0.8}),
    ("AC24", {f"{BREAKER}.poles": 3}),
    ("AC51", {f"{CABLE}.section": "35 mm2", f"{CABLE}.neutral_section": "16 mm2"}),
    ("AC51", {"supply.service_fuse": "100 A", **REDUCED, "loads.lamps": {**LAMPS, "current": "62 A"}}),
    *((code, STEEL) for code in ("AC23", "AC25", "FA03", "FA09", "EA01", "EA02")),
    ("AC23", {**SLOW, **STEEL, f"{CABLE}.armour_section": "49.75 mm2"}),
    ("AC23", {**SLOW, f"{CABLE}.section": "2.5 mm2", f"{CABLE}.protective_conductor": "separate_protected",
              f"{CABLE}.protective_section": "2.5 mm2"}),
    ("AC24", {"loads.heater": {**BETWEEN, "circuit": [{"kind": "breaker", "rated_current": "16 A", "poles": 2}]}}),
    ("AC24", {"loads.lamp": {**BETWEEN, "line": "L3"}}),
    ("AC17", {**ONE_PHASE, "batteries.store": {"converter_power": "3 kVA"}}),  # as many phases as its board
    *((code, SHED) for code in ("AC17", "AC24", "AC25", "AC35", "AC42")),
    ("AC36", {f"{TWELVE}.power_factor_min": 0.9, f"{UNIT}.power_factor": 0.9}),
    ("FA01", {f"{BREAKER}.breaking_capacity": "5 kA"}),
    # 6 kA behind a service fuse of 60 A in a board of 16 kA, and by the maker's table of the breaker itself
    ("FA01", {**SIXTEEN, f"{MAIN}.backup_fuse_max": "60 A", "supply.service_fuse": "60 A"}),
    ("FA01", {"supply.prospective_fault_current": "16 kA", f"{BREAKER}.conditional_current": "16 kA",
              f"{BREAKER}.backup_fuse_max": "35 A"}),
    ("FA15", {f"{RCD}.conditional_current": "5 kA", f"{RCD}.backup_fuse_max": "20 A"}),
    ("FA15", {f"{MAIN_SWITCH}.conditional_current": "5 kA", f"{MAIN_SWITCH}.backup_fuse_max": "35 A"}),
    ("FA15", {"supply.prospective_fault_current": "10 kA"}),
    # 1.2 · Ig 60 A = 72 A: 0.95 · 230 V / 72 A = 3.03 Ω
    ("FA03", {BREAKER: {**RELEASE, "earth_fault_setting": "60 A", "earth_fault_delay": "0.2 s"}, RCD: REMOVED,
              "supply.loop_impedance": 1.4}),
    ("FA03", {BREAKER: RELEASE, RCD: REMOVED, "supply.loop_impedance": 1.3}),  # 1.47 Ω
    # held to its setting of 20 A, not to the 40 A of its frame
    ("AC02", {BREAKER: {**RELEASE, "rated_current": "40 A"}}),
    # it waits 0.2 s for what opens at once behind it
    ("FA10", {"supply.service_fuse": REMOVED, f"{MAIN}.circuit.+": {
                                    "kind": "breaker", "construction": "moulded_case", "rated_current": "63 A",
                                    "overload_setting": "40 A", "short_time_setting": "90 A",
                                    "short_time_delay": "0.2 s"}}),
    # gG 25 A opens at 183 A within 0.4 s: 0.95 · 230 V / 183 A = 1.194 Ω; the gate for 0.1 s would be 0.84 Ω
    ("FA03", {BREAKER: {**FUSE, "rated_current": "25 A"}, RCD: REMOVED, "supply.loop_impedance": 1}),
    # a consumer unit that is tested for 16 kA with its breakers of 6 kA behind the service fuse (BS EN 61439-3
    # Annex ZB)
    ("FA01", {"supply.prospective_fault_current": "16 kA", f"{MAIN}.conditional_current": "16 kA"}),
    # 0.95 · 230 V / 130 A = 1.6808 Ω holds the loop of 0.3 Ω and the cable
    ("FA03", {BREAKER: FUSE, RCD: REMOVED, "supply.loop_impedance": 1.5, "profile": "BS 7671"}),
    # gG 25 A over gG 16 A: two steps of the series; C 40 A carries 45.2 A
    ("FA10", {"supply.service_fuse": "32 A"}),
    # 1.05 · 32 A = 33.6 A of curve E against 1.45 · 20 A = 29 A; 1.25 · 35 A of the fuse against 1.2 · 32 A
    ("FA10", {f"{MAIN}.circuit.+": {"kind": "breaker", "rated_current": "32 A", "curve": "E"}}),
    ("AC37", {f"{MAIN}.circuit.+": {**RCBO_30, "residual_current": "300 mA", "selective": True}}),
    ("FA10", {"supply.service_fuse": "25 A", BREAKER: {**FUSE, "rated_current": "16 A"}}),
    ("FA10", {**WIDE, f"{MAIN}.circuit.+": {"kind": "breaker", "rated_current": "40 A", "curve": "C"}}),
    ("FA10", {**WIDE, f"{MAIN}.circuit.+": {"kind": "breaker", "rated_current": "40 A", "curve": "B"}}),
    ("AC40", {f"{TWELVE}.apparent_power_max": "12470 VA"}),
    ("AC41", {"supply.voltage_max": "437 V"}),
    ("AC42", {**FEEDER, "types.inverters.single.apparent_power_max": "4.6 kVA"}),
    ("ME07", {**BURDEN, f"{METER}.ct_burden": "3.8 VA"}),
    ("SU25", {"earthing.lightning_protection": LPS, f"{CABLE}.length": "10 m"}),
    ("DB19", {**TWO_HOUSES, "site.locations.yard.building": "barn"}),
    ("AC39", {f"{CABLE}.depth": "0.9 m", f"{CABLE}.method": "D2"}),
    ("FA11", {f"{MAIN}.peak_current": "7.5 kA", f"{MAIN}.short_time_current": "5 kA"}),
    ("FA11", {f"{MAIN}.peak_current": "7 kA", f"{MAIN}.conditional_current": "5 kA"}),
    ("FA11", {"supply.prospective_fault_current": "10 kA"}),
    ("FA13", {"supply.prospective_fault_current": "0.4 kA", f"{TWELVE}.current_max": "20 A"}),
    ("FA14", {"supply.transformer": {**OWN, "secondary_length": "3 m"}}),
    ("FA14", {"supply.transformer": {**OWN, "secondary_length": "9 m", "primary_protection": "fuses 16 A, shown"}}),
    ("AC37", {f"{MAIN}.circuit.+": {**AHEAD, "selective": True}}),
    # 499.91 Ω and 0.083 Ω of the protective conductor
    ("FA05", {**TT, "supply.loop_impedance": REMOVED, "earthing.electrode.resistance": 499.91}),
    ("ME01", {f"{METER}.current_max": "35 A"}),
    ("ME04", {"supply.export_limit": "12 kW"}),
    ("DB03", {f"{STEP}.address": 247}),
    ("DB04", {f"{BUS}.unit_load": 31}),
    ("DB05", {f"{STEP}.length": "1200 m"}),
    ("DB06", {f"{STEP}.length": "50 m"}),
    ("DB07", {f"{BUS}.units_max": 1}),
    ("DB08", {f"{BUS}.length_max": "120 m", f"{STEP}.length": "120 m"}),
    ("EA01", {"earthing.conductor.section": "16 mm2"}),
    # buried unprotected it is larger than a fault asks for; the 10 mm² beside the water pipe is half of 16 mm² at most
    ("EA02", {"earthing.conductor.section": "35 mm2", "earthing.bonding.1.section": "6 mm2"}),
    # a section for the voltage of a long way: the earth fault does not grow with it
    ("EA01", {f"{CABLE}.section": "50 mm2", f"{CABLE}.length": "150 m", "earthing.electrode": REMOVED,
              "earthing.conductor": {"section": "6 mm2", "buried": False}}),
    # AS/NZS 3000 Table 5.1: 2.5 mm² for 4 mm²; at least 4 mm² of main earthing conductor and of bonding
    ("AC23", {"profile": "AS/NZS 5033", f"{CABLE}.protective_section": "2.5 mm2"}),
    ("EA01", {"profile": "AS/NZS 5033", "earthing.conductor.section": "4 mm2"}),
    ("EA02", {"profile": "AS/NZS 5033", "earthing.bonding.0.section": "4 mm2", "earthing.bonding.1.section": "4 mm2"}),
    *((code, PME_HOUSE) for code in ("EA01", "EA02", "EA08", "EA12", "AC23", "AC25")),
    # half of what is required, 16 mm² for tails of 25 mm², not of what is laid (BS 7671:2018 544.1.1)
    ("EA02", {**PME_HOUSE, "supply.earthing_system": "TN-S", "earthing.conductor.section": "35 mm2"}),
    ("EA02", {**PME_HOUSE, "supply.neutral_section": "35 mm2"}),
    ("EA02", {**PME_HOUSE, "supply.neutral_section": "50 mm2", "earthing.bonding.1.section": "16 mm2"}),
    ("EA01", {**PME_HOUSE, "supply.neutral_section": "50 mm2"}),
    ("EA12", {**COMBINED, f"{MAIN}.circuit.+": {**PEN, "section": "10 mm2"}}),
    ("EA12", {**COMBINED, f"{MAIN}.circuit.+": PEN, "supply.service_fuse": "16 A"}),  # chosen so
    ("EA12", {**COMBINED, f"{MAIN}.circuit.+": {**PEN, "cores": 5, "section": "6 mm2"}}),
    ("EA12", {**PME, f"{MAIN}.circuit.+": {**PEN, "section": "6 mm2"}}),
    ("AC25", {**COMBINED, f"{MAIN}.circuit.+": {**PEN, "section": "10 mm2"}}),
    ("AC25", {f"{CABLE}.cores": 5}),
    ("AC25", {f"{CABLE}.cores": 4, f"{CABLE}.protective_section": "4 mm2"}),
    ("AC25", {f"{MAIN}.circuit.+": {"kind": "cable", "length": "4 m", "cores": 4}, **TT}),
    ("AC27", {"supply.transformer": {**OWN, "rated_power": "12 kVA"}}),
    ("AC28", {"supply.transformer": {**OWN, "secondary_voltage": "440 V"}}),
    ("AC29", {"supply.voltage": "440 V"}),
    ("AC30", {"loads.car": charging(residual_current="30 mA", sensitivity="B")}),
    ("AC30", {"loads.car": charging()}),
    ("AC31", {f"{RCD}.residual_current": "1000 mA"}),
    ("AC32", {**TT, f"{BREAKER}.poles": 4}),
    ("AC07", {"loads.desk": DESK}),  # no book that is asked here forbids it
    ("AC07", {"profile": "BS 7671", "loads.desk": {**DESK, "supplies": "fixed_equipment"}}),
    ("AC63", {f"{CABLE}.type": "rubber", "types.cables.rubber.rated_voltage": "400 V"}),
    ("FA09", {f"{CABLE}.section": "2.5 mm2"}),
    # class 3 up to 4.5 kA: √25 000 / 115 = 1.37 mm²
    ("FA09", {"supply.service_fuse": "100 A", **lighting(16), "supply.prospective_fault_current": "4.5 kA"}),
    ("FA09", {f"{CABLE}.section": "2.5 mm2", "supply.service_fuse": REMOVED,
              "supply.prospective_fault_current": REMOVED}),
    # 4² · 115² = 211 600 A²s
    ("FA09", {f"{BREAKER}.let_through_energy": "211600 A2s"}),
    # the protective conductor of a flat twin cable: by Table 54.2 4 mm², by the equation √22 000 / 115 = 1.29 mm², as
    # the loop of 0.3 Ω lets 843 A through
    ("AC23", {f"{CABLE}.protective_section": "1.5 mm2"}),
    ("FA09", {f"{CABLE}.protective_section": "1.5 mm2"}),
    ("SU15", {f"{AC_SPD}.test_class": "1+2", f"{AC_SPD}.impulse_current": "12.5 kA",
              "earthing.lightning_protection": LPS}),
    ("SU16", {"earthing.lightning_protection": LPS, f"{STRING}.cable.length": "10 m"}),
    ("SU14", {**BOXES, f"{SPD}.enclosure": "jb1"}),
)  # fmt: skip
