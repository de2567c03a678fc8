"""The spec language walked key by key: for each key of each block a small spec that has it, and another value of it.

The spec is a house with one inverter, on which each block is put at its place. `BESIDE` has what else must stand in the
spec for a key to mean anything, `VALUES` the values that are tried where those made from the type of the key say
nothing: a limit that is kept, an option that is the one chosen anyway.
"""

from __future__ import annotations

import copy
import types
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Annotated, Any, Literal, get_args, get_origin

from pydantic.fields import FieldInfo

from sld.spec.blocks.battery_circuit import BATTERY_BLOCKS, BatteryCable
from sld.spec.blocks.block import Block, Named, Wired
from sld.spec.blocks.installed import Installed
from sld.spec.language.blocks import AC_DEVICES, DC_DEVICES, STRING_DEVICES, fields_by_key, places
from sld.spec.language.forms import members
from sld.spec.units import Unit, Units
from sld.spec.usual import Usual
from sld.words import known_languages

__all__ = ["HOUSE", "Case", "cases", "text_keys", "with_block"]

Data = dict[str, Any]

MODULE = {
    "rated_power": "400 W", "open_circuit_voltage": "37 V", "short_circuit_current": "13.5 A",
    "mpp_voltage": "31 V", "mpp_current": "12.9 A",
}  # fmt: skip
LIMITS = {"current_max": "60 A", "short_circuit_current_max": "90 A"}
INVERTER = {
    "rated_power": "10 kW", "phases": 3, "dc_voltage_max": "1000 V", "mpp_voltage_min": "200 V",
    "mpp_voltage_max": "850 V", "inputs": [{"count": 2, **LIMITS}],
}  # fmt: skip
STRING = {"module": "m", "modules_in_series": 12}
STRINGS = {"strings": [{**STRING, "count": 4}]}
UNIT = {"type": "t", "inputs": [{"strings": [STRING]}]}
BREAKER, CABLE = {"kind": "breaker", "rated_current": "20 A"}, {"kind": "cable", "length": "20 m"}
HOUSE: Data = {
    "project": {"title": "House"},
    "site": {"temperature_min": -10, "temperature_max": 35},
    "supply": {"earthing_system": "TN-S", "prospective_fault_current": "6 kA", "loop_impedance": 0.3},
    "types": {"modules": {"m": MODULE}, "inverters": {"t": INVERTER}},
    "inverters": {"roof": UNIT},
}

LEAST: dict[str, Data] = {
    "Project": HOUSE["project"],
    "Party": {"company": "Firm"},
    "Revision": {"index": "A", "change": "first", "date": "2026-01-02"},
    "Site": HOUSE["site"],
    "Supply": HOUSE["supply"],
    "FurtherSupply": {"supply": HOUSE["supply"]},
    "SupplyTransformer": {"rated_power": "100 kVA", "primary_voltage": "10 kV", "short_circuit_voltage": "4 %"},
    "ModuleType": MODULE,
    "SingleDiode": {
        "photocurrent": 13.6, "saturation_current": "0.12 nA", "series_resistance": 0.2, "shunt_resistance": 300,
        "modified_ideality": 1.6,
    },
    "InverterType": INVERTER,
    "MppInput": LIMITS,
    "Inverter": UNIT,
    "Input": {"strings": [STRING]},
    "PvString": STRING,
    "AcCable": CABLE,
    "DcCable": CABLE,
    "Meter": {"kind": "meter", "purpose": "supply"},
    "BatteryCable": {"kind": "cable", "length": "2 m"},
    "BackupOutput": {"power": "5 kVA"},
    "Changeover": {"kind": "changeover", "second_source": "set"},
    "Generator": {"power": "20 kVA", "changeover": "four-pole switch"},
    "Bonding": {"to": "water pipe"},
    "MainBonding": {"to": "water pipe"},
    "LightningProtection": {"separation_kept": True},
    "DataBus": {"devices": {"log": {"kind": "logger"}, "net": {"kind": "router"}}},
    "DataDevice": {"kind": "logger"},
    "FeedInLimit": {"sensor": "s", "inverters": ["roof"]},
    "LoadLimit": {"current": "20 A", "loads": ["pump"]},
    "Chain": {"devices": [{"device": "log"}, {"device": "roof"}]},
    "ChainStep": {"device": "roof"},
    "DataLink": {"from": "log", "to": "net", "medium": "ethernet"},
    "Accept": {"code": "DC01", "at": "inverters.roof", "reason": "why", "role": "who", "date": "2026-01-02"},
    "Certificate": {"reference": "Number"},
    "Paper": {"title": "Title", "kind": "manual"},
    "Warranty": {"of": "modules"},
    "NetworkSettings": {"set": "Set"},
    "VoltagePoint": {"voltage": "90 %", "reactive_power": "10 %"},
    "PowerPoint": {"power": "50 %", "power_factor": 0.95},
}  # fmt: skip
"""The required keys of a block, by the name of its class."""


def _name(block: type[Block]) -> str:
    return block.__name__


AT = {
    "FeedInLimit": "data.devices.NAME.feed_in_limit",
    "DcFuse": "inverters.NAME.inputs[].string_fuses",
    "DcCable": "inverters.NAME.inputs[].strings[].cable",
    **dict.fromkeys(("DcBreaker", "BlockingDiode"), "inverters.NAME.inputs[].circuit[]"),
    "AcCable": "inverters.NAME.circuit.1",
    "Changeover": "boards.NAME.circuit.0",
    "ChainStep": "data.chains.NAME.devices.1",
    **{block.__name__: "batteries.NAME.dc_circuit.0" for block in (*BATTERY_BLOCKS, BatteryCable)},
    "EarthElectrode": "earthing.electrode",
    "MainBonding": "boards.shed.bonding.0",
}
"""Where a block that has several places is put; else in a circuit of the inverter, or at its first place."""

NAMES = {
    "types.modules": "m", "types.inverters": "t", "inverters": "roof", "batteries": "store", "boards": "main",
    "data.devices": "log", "data.chains": "bus", "further_supplies": "second",
}  # fmt: skip
"""What NAME stands for, by the path before it."""

ROOF = "inverters.roof"
BUS = {"data": {"devices": {"log": {"kind": "logger"}, "net": {"kind": "router"}}}}
STEPS = [{"device": "log"}, {"device": "roof", "length": "40 m"}]
CHAIN = {**BUS, "data.chains": {"bus": {"devices": STEPS}}}
LINK = {**BUS, "data.links": [{"from": "log", "to": "Zq", "medium": "pulse"}]}
NEC = {"profile": "NEC 690", "supply.voltage": "480 V"}
PME = {"profile": "BS 7671", "supply.earthing_system": "TN-C-S"}
BOXES = {"junction_boxes": {"Zq": {}}}
BOARDS = {"boards": {"main": {}, "far": {"fed_from": "main"}}, f"{ROOF}.connected_to": "main"}
UNDER = {"boards": {"top": {}}, ".fed_from": "top", f"{ROOF}.connected_to": "top"}
LIGHTNING = {"site.lightning_density": 4, "site.building": "dwelling"}
AC = {f"{ROOF}.circuit": [{}, BREAKER, CABLE]}
MOULDED = {**AC, ".construction": "moulded_case"}
AC_CABLE = {f"{ROOF}.circuit": [BREAKER, CABLE]}
TYPED_CABLE = {f"{ROOF}.circuit": [BREAKER, {**CABLE, "type": "Zq"}]}
DC = {f"{ROOF}.inputs.0.circuit": [{}, {"kind": "isolator"}]}
DC_CABLE = {f"{ROOF}.inputs.0.strings.0.cable": {**CABLE, "type": "Zq"}}
FOUR = {f"{ROOF}.inputs": [STRINGS]}
PAIR = {f"{ROOF}.inputs": [STRINGS, STRINGS]}
TOO_LONG = {f"{ROOF}.inputs.0.strings.0.modules_in_series": 30}
CT = {**AC, ".connection": "ct"}

LOADS = {"loads": {"pump": {"current": "16 A"}, "fan": {"current": "16 A"}}}
STORE = {"inverter": "roof", "voltage_min": "40 V", "voltage_max": "58 V", "short_circuit_current": "4 kA"}
BATTERY = {"batteries": {"store": {**STORE, "dc_circuit": [{}, {"kind": "cable", "length": "2 m"}]}}}
TYPED_STORE = {"batteries": {"store": {**STORE, "dc_circuit": [{"kind": "fuse", "type": "x"}]}}}
CELLS = {f".{key}": value for key, value in STORE.items()} | {
    ".dc_circuit": [{"kind": "cable", "length": "5 m"}, {"kind": "fuse"}]
}

PIPES = {"site.conduits": {"Zq": {"inside_diameter": "30 mm"}, "far": {"inside_diameter": "30 mm"}}}
IN_PIPE = {**PIPES, ".conduit": "Zq", ".outside_diameter": "7 mm"}

METERS = [
    {"kind": "meter", "purpose": "feed_in_limit", "id": "s"},
    {"kind": "meter", "purpose": "supply", "id": "z"},
]
SENSOR = {f"{ROOF}.circuit": [BREAKER, *METERS], "supply.export_limit": "5 kW"}

BESIDE: dict[str, Data] = {
    "MainBonding": {"boards": {"top": {}, "shed": {"fed_from": "top"}}, f"{ROOF}.connected_to": "top"},
    **{key: {f"{ROOF}.network_settings": {"set": "Set"}} for key in ("VoltagePoint", "PowerPoint")},
    "feed_in_limit": SENSOR,
    "FeedInLimit": {**BUS, **SENSOR, "batteries": {"store": {"converter_power": "3 kVA"}}},
    "InterfaceRelay.trips": {f"{ROOF}.circuit": [{}, BREAKER, {"kind": "contactor", "id": "Zq"}]},
    "conduit": PIPES,
    "AcCable.conduit": {f"{ROOF}.circuit": [BREAKER, CABLE], **PIPES},
    "outside_diameter": {**PIPES, ".conduit": "Zq"},
    "single_conductors": IN_PIPE,
    "Site.conduits": {f"{ROOF}.inputs.0.strings.0.cable": {**CABLE, "conduit": "Zq"}},
    "Conduit": {f"{ROOF}.inputs.0.strings.0.cable": {**CABLE, "conduit": "Zq", "outside_diameter": "7 mm"}},
    "Inverter.reactive_power": {".power_factor": 0.9, f"{ROOF}.circuit": [BREAKER, CABLE]},
    "Supply.direct_strokes": {"supply.overhead": True, "boards": {"main": {"circuit": [{"kind": "surge_protection"}]}}},
    "Supply.risk_length": {"site.lightning_density": 1, "site.surroundings": "urban"},
    "Site.surroundings": {"site.lightning_density": 1},
    "DataDevice.load_limit": LOADS,
    "Load.vehicle_outdoors": {".charging_point": True},
    "Load.open_pen_protection": {".charging_point": True},
    "LoadLimit": {**BUS, **LOADS},
    "Spec.accept": TOO_LONG,
    "Accept": TOO_LONG,
    "CableType": TYPED_CABLE,
    "CableType.rated_voltage": DC_CABLE,
    "CableType.shielded": {**CHAIN, "data.chains.bus.cable": "Zq"},
    "CableType.temperature_rating": {**NEC, f"{ROOF}.circuit": [BREAKER, {**CABLE, "type": "Zq"}]},
    "Chain": BUS,
    "DataLink": BUS,
    "ChainStep": CHAIN,
    "InverterBus.units_max": {**CHAIN, f"{ROOF}.count": 3},
    "InverterBus.termination_built_in": {**CHAIN, "data.chains.bus.devices.1.terminated": True},
    "InverterType.bus": CHAIN,
    "InverterType.plugs_disconnect": {".micro": True},
    "MppInput.short_circuit_limit_for": {**PAIR, ".short_circuit_current_max": "60 A"},
    "InverterBus": CHAIN,
    "InverterBus.exclusive": {**CHAIN, "data.links": [{"from": "roof", "to": "net", "medium": "ethernet"}]},
    "InverterType.dc_impulse_withstand": {
        f"{ROOF}.inputs.0.circuit": [{"kind": "surge_protection", "protection_level": "3 kV"}]
    },
    "InverterType.inputs": PAIR,
    "InverterType.inputs_independent": PAIR,
    "MppInput": PAIR,
    "MppInput.count": {**PAIR, "types.inverters.t.inputs": [LIMITS, {**LIMITS, "current_max": "30 A"}]},
    "Site.locations": {f"{ROOF}.location": "loft"},
    "Location": {f"{ROOF}.location": "Zq", f"{ROOF}.circuit": [BREAKER, {**CABLE, "location": "Zq"}]},
    "Location.building": {
        f"{ROOF}.location": "Zq",
        **CHAIN,
        "data.devices.log.location": "shed",
        "site.locations": {"shed": {"building": "shed"}},
    },
    "Spec.further_supplies": {**BOARDS, "boards.far.fed_from": "second"},
    "FurtherSupply": {**BOARDS, "boards.far.fed_from": "second"},
    "Supply.grid_rules": {"supply.country": "GB"},
    "Supply.split_phase": {"supply.phases": 1, "types.inverters.t.phases": 1},
    "Supply.service_fuse_status": {"supply.service_fuse": "100 A"},
    "Supply.ownership_boundary": {"supply.service_fuse": "100 A"},
    "Supply.voltage_max": AC_CABLE,
    "Supply.neutral_section": {**PME, "earthing": {"bonding": [{"to": "water pipe"}]}},
    "Supply.voltage_rise_limit": AC_CABLE,
    "InverterBus.unit_load": {**CHAIN, f"{ROOF}.count": 3},
    "Drawing.largest_paper": {
        "inverters": {
            f"r{n}": {**UNIT, "inputs": [{"strings": [{**STRING, "modules_in_series": 8 + n}]}]} for n in range(5)
        },
        "drawing.paper": "A4",
    },
    "Drawing.draw_once_from": {f"{ROOF}.count": 3},
    "Drawing.unfold": {f"{ROOF}.count": 5},
    "ModuleType.parallel_unfused_max": {**FOUR, "types.modules.m.series_fuse_max": "25 A"},
    "Types.cables": {f"{ROOF}.circuit": [BREAKER, {**CABLE, "type": "x"}]},
    "Types.ac_devices": {f"{ROOF}.circuit": [{"kind": "breaker", "type": "x"}]},
    "Types.dc_devices": {f"{ROOF}.inputs.0.circuit": [{"kind": "isolator", "type": "x"}]},
    "Spec.include": {"types": {}},
    "Meter.ct_primary": CT,
    "Meter.ct_secondary": CT,
    "Meter.ct_lead_length": CT,
    "Meter.ct_lead_section": {**CT, ".ct_lead_length": "5 m"},
    "Meter.ct_burden": {**CT, ".ct_lead_length": "5 m"},
    "Board.source_connection": {
        **NEC,
        f"{ROOF}.circuit": [{"kind": "breaker", "rated_current": "125 A"}],
        ".rated_current": "100 A",
        ".circuit": [{"kind": "breaker", "rated_current": "100 A"}],
    },
    "Board.power_control_current": {
        **NEC,
        ".source_connection": "power_control",
        ".circuit": [{"kind": "breaker", "rated_current": "100 A"}],
    },
    "AcCable.capacity_factor_reason": {**AC_CABLE, ".capacity_factor": 0.9},
    "AcCable.protective_conductor": {**AC_CABLE, ".section": "2.5 mm2"},
    "AcCable.armour_section": {**AC_CABLE, ".protective_conductor": "armour"},
    "AcCable.neutral_section": {**AC_CABLE, ".section": "35 mm2"},
    "AcCable.terminal_temperature": {**NEC, f"{ROOF}.circuit": [BREAKER, CABLE]},
    "DcCable.terminal_temperature": NEC,
    "DcCable.capacity_factor_reason": {".capacity_factor": 0.9},
    **{f"DcCable.{key}": {".method": "D1"} for key in ("spacing", "depth", "soil_resistivity")},
    "Input": FOUR,
    "Input.functional_earth_pole": {".functional_earth": True},
    "Input.functional_earth_device": {".functional_earth": True},
    "Input.linked_to": PAIR,
    "Input.junction_box": {**FOUR, **BOXES, ".string_fuses": {}},
    "Input.strings_per_fuse": {**FOUR, ".string_fuses": {}},
    "PvString.cable_route": {
        **LIGHTNING,
        f"{ROOF}.inputs": [
            {
                "strings": [
                    {**STRING, "cable": {"length": "40 m"}},
                    {**STRING, "cable_route": "Zq", "cable": {"length": "40 m"}},
                ]
            }
        ],
    },
    "Battery.charge_converter_power": {".inverter": "roof"},
    "Battery.inverter": {},
    "Battery.backup_power": {".converter_power": "5 kVA"},
    "Battery.backup_short_circuit_current": {
        ".converter_power": "5 kVA",
        ".backup_power": "5 kVA",
        "boards": {"main": {"circuit": [{"kind": "network_separation"}]}},
    },
    **{
        f"Battery.{key}": {each: value for each, value in CELLS.items() if each != f".{key}"}
        for key in (
            "voltage_min",
            "voltage_max",
            "rated_voltage",
            "current_max",
            "short_circuit_current",
            "protection_rated_current",
            "isolator_built_in",
        )
    },
    "Types.battery_devices": TYPED_STORE,
    "Board.fed_from_backup": {
        "boards": {"Zq": {}},
        f"{ROOF}.connected_to": "Zq",
        "types.inverters.t.backup": {"power": "5 kVA"},
    },
    "Changeover.second_source": {"types.inverters.t.backup": {"power": "5 kVA"}},
    "BatteryCable.type": {**BATTERY, "types.cables": {"Zq": {"insulation": "XLPE"}}},
    "LightningProtection.separation": {".separation_path": "10 m"},
    "LightningProtection.separation_path": {".separation": "0.1 m"},
    "connected_to": {**BOARDS, ".connected_to": "main"},
    "Board.earthing_system": UNDER,
    "Board.bonding": UNDER,
    "Board.extraneous_parts": UNDER,
    "Board.electrode": {**UNDER, ".earthing_system": "TT"},
    "Board.fed_from": {"boards": {"Zq": {}}, f"{ROOF}.connected_to": "Zq"},
    "PvString.module": {"types.modules.Zq": {**MODULE, "rated_power": "380 W"}},
    "Inverter.type": {"types.inverters.Zq": {**INVERTER, "rated_power": "12 kW"}},
    "AcCable.type": {**AC_CABLE, "types.cables": {"Zq": {"insulation": "XLPE"}}},
    "DcCable.type": {"types.cables": {"Zq": {"insulation": "XLPE"}}},
    "CableType.insulation": {f"{ROOF}.circuit": [BREAKER, {**CABLE, "type": "Zq"}], **DC_CABLE},
    "DcFuse.temperature_factor": {**FOUR, "types.modules.m.series_fuse_max": "30 A", ".rated_current": "25 A"},
    "Breaker.trip_factor": MOULDED,
    **{
        f"Breaker.{key}": MOULDED
        for key in ("overload_setting", "short_time_setting", "instantaneous_setting", "earth_fault_setting")
    },
    "Breaker.short_time_delay": {**MOULDED, ".short_time_setting": "150 A"},
    "Breaker.earth_fault_delay": {**MOULDED, ".earth_fault_setting": "50 A"},
    "Breaker.service_breaking_capacity": {**MOULDED, ".breaking_capacity": "50 kA"},
    "Breaker.clearing_time": {**AC, ".construction": "moulded_case"},
    "SingleDiode.ideality_factor": {".modified_ideality": ..., ".cells_in_series": 60},
    "SingleDiode.cells_in_series": {".modified_ideality": ..., ".ideality_factor": 1.04},
    **dict.fromkeys(map(_name, AC_DEVICES), AC),
    **dict.fromkeys(map(_name, DC_DEVICES), DC),
    "Changeover": {"generators": {"set": {"power": "20 kVA", "changeover": "with a switch"}}},
    **{block.__name__: BATTERY for block in (*BATTERY_BLOCKS, BatteryCable)},
    "AcCable": AC_CABLE,
    "DcCable": {},
    "Optimiser": {f"{ROOF}.inputs": [{"strings": [{**STRING, "count": 4, "circuit": [{}]}]}]},
    "BranchConnector": {f"{ROOF}.inputs": [{"strings": [{**STRING, "count": 4, "circuit": [{}]}]}]},
    "DcFuse": FOUR,
}
"""What else stands in the spec, by block and by `Block.key`; a place that begins with a dot is inside the block,
and `...` leaves a key of the block out."""

for _block in (*AC_DEVICES, *dict.fromkeys((*DC_DEVICES, *STRING_DEVICES)), *BATTERY_BLOCKS):
    if issubclass(_block, Installed):
        _side, _around = (
            ("dc", BOXES) if _block in (*DC_DEVICES, *STRING_DEVICES) else ("ac", {**BOARDS, "boards.far.name": "Barn"})
        )
        if _block in BATTERY_BLOCKS:
            _side = "battery"
        _own = {"kind": get_args(_block.model_fields["kind"].annotation)[0], **LEAST.get(_name(_block), {})}
        BESIDE[f"{_name(_block)}.enclosure"] = BESIDE[_name(_block)] | _around
        BESIDE[f"{_name(_block)}.id"] = BESIDE[_name(_block)] | LINK
        BESIDE[f"{_name(_block)}.type"] = BESIDE[_name(_block)] | {
            f"types.{_side}_devices.Zq": {**_own, "make": "Make"}
        }

VALUES: dict[str, list[Any]] = {
    "FeedInLimit.sensor": ["z"],
    "FeedInLimit.inverters": [["store"]],
    "AcCable.protective_conductor": ["core", "separate", "separate_protected"],
    "AcCable.armour_section": ["60 mm2", "76 mm2"],
    "Site.conduits": [{"Zq": {}}],
    "single_conductors": [5],
    "DataDevice.load_limit": [{"current": "20 A", "loads": ["pump"]}],
    "LoadLimit.loads": [["fan"]],
    "Spec.include": [["more.yaml"]],
    "Spec.project": [{"title": "Barn"}],
    "Spec.drawing": [{"paper": "A2"}],
    "Spec.site": [{**HOUSE["site"], "temperature_max": 36}],
    "Spec.supply": [{"earthing_system": "TT"}],
    "FurtherSupply.supply": [{"earthing_system": "TT"}],
    "Spec.further_supplies": [{"second": {"supply": {"earthing_system": "TT"}}}],
    "Spec.types": [{**HOUSE["types"], "modules": {"m": {**MODULE, "make": "Zq"}}}],
    "Types.modules": [{"m": {**MODULE, "make": "Zq"}}],
    "Types.inverters": [{"t": {**INVERTER, "make": "Zq"}}],
    "Types.cables": [{"x": {}}],
    "Types.ac_devices": [{"x": {"kind": "breaker"}}],
    "Types.dc_devices": [{"x": {"kind": "isolator"}}],
    "Types.battery_devices": [{"x": {"kind": "fuse"}}],
    "Battery.dc_circuit": [[{"kind": "fuse"}]],
    "InverterType.backup": [{"power": "5 kVA"}],
    "Changeover.second_source": ["roof"],
    "Board.fed_from_backup": ["roof"],
    "Battery.voltage_min": ["50 V"],
    "Battery.rated_voltage": ["51 V"],
    "Battery.voltage_max": ["60 V"],
    "Generator.short_circuit_current": ["90 A"],
    "Project.language": [code for code in known_languages() if code != "en"],
    "Project.logo": ["logo.svg"],
    "Drawing.font": ["own.ttf"],
    "date": ["2026-07-07"],
    "installed": ["2026-07-07"],
    "commissioned": ["2026-07-07"],
    "work_begins": ["2026-07-07"],
    "commissioning_planned": ["2026-07-07"],
    "start": ["2026-07-07"],
    "ip": ["IP65"],
    "ct_lines": [["L1"]],
    "mounting": [{"mass": "7 kg"}],
    "Site.mounting": ["roof_tilted", "free_standing"],
    "Spec.notification": [{"account_number": "Zq"}],
    "Spec.upkeep": [{"operation": ["Zq"]}],
    "Revision.index": ["B"],
    "Site.temperature_min": [-20],
    "Supply.country": ["DE"],
    "Supply.grid_rules": ["generic", "net.toml"],
    "Supply.voltage_max": ["420 V"],
    "Supply.other_supply_points": [["Zq"]],
    "Supply.voltage_rise_limit": ["0.1 %"],
    "Site.locations": [{"loft": {"outdoor": True}}],
    "Drawing.largest_paper": ["A4", "A2"],
    "Drawing.draw_once_from": [2],
    "ModuleType.rated_power": ["390 W"],
    "ModuleType.mpp_voltage": ["30 V"],
    "ModuleType.mpp_current": ["12.5 A"],
    "ModuleType.series_fuse_max": ["20 A"],
    "ModuleType.open_circuit_voltage": ["38 V"],
    "ModuleType.short_circuit_current": ["14 A"],
    "InverterType.dc_voltage_max": ["1100 V"],
    "InverterType.mpp_voltage_min": ["300 V"],
    "InverterType.mpp_voltage_max": ["800 V"],
    "InverterType.dc_power_max": ["3 kW"],
    "InverterType.dc_impulse_withstand": ["1500 V"],
    "InverterType.bus": [{"units_max": 1, "length_max": "10 m"}],
    "InverterType.inputs": [[LIMITS, {**LIMITS, "current_max": "20 A"}]],
    "MppInput.strings_max": [3],
    "MppInput.current_max": ["40 A"],
    "MppInput.short_circuit_current_max": ["100 A"],
    "InverterType.rated_voltage": ["380 V"],
    "SingleDiode.saturation_current": ["0.1 nA"],
    "InverterBus.exclusive": [["ethernet"]],
    "InverterBus.unit_load": [30],
    "CableType.temperature_rating": [75],
    "terminal_temperature": [75],
    "CableType.conductor": ["copper", "aluminium"],
    "Breaker.breaking_capacity": ["2 kA"],
    "Fuse.breaking_capacity": ["2 kA"],
    "Rcbo.breaking_capacity": ["2 kA"],
    "Meter.ct_primary": [75],
    "Meter.ct_secondary": [1],
    "Meter.ct_lead_section": [4],
    "Meter.ct_burden": [2.5],
    "DcFuse.rated_current": ["15 A"],
    "DcFuse.breaking_capacity": ["0.5 kA"],
    "DcFuse.temperature_factor": [0.5],
    "Board.fed_from": ["Zq"],
    "Inverter.inputs": [[STRINGS]],
    "Input.strings": [[{**STRING, "modules_in_series": 13}]],
    "Input.linked_to": [2],
    "Battery.inverter": ["roof"],
    "Chain.shield_earthed_at": [["roof"]],
    "Chain.master": ["roof"],
    "Chain.devices": [[{"device": "roof"}, {"device": "net"}]],
    "ChainStep.device": ["net"],
    "DataLink.from": ["roof"],
    "DataLink.to": ["roof"],
    "Accept.code": ["DC02"],
    "CableType.marking": ["Mark"],
    "Breaker.trip_factor": [7],
    "connected_to": ["far"],
    "enclosure": ["far"],
    "LightningProtection.separation": ["0.1 m"],
    "ModuleType.parallel_unfused_max": [1],
    "Input.circuit": [[{"kind": "isolator"}, {"kind": "isolator"}]],
    "Accept.at": ["inverters.roof.circuit"],
    **{f"{_name(block)}.enclosure": ["Zq"] for block in (*DC_DEVICES, *STRING_DEVICES)},
    "BranchConnector.strings": [4],
    "SingleDiode.ideality_factor": [1.04, 1.05],
    "SingleDiode.cells_in_series": [60, 61],
}
"""Values to try, by `Block.key` or by key."""


@dataclass(frozen=True, slots=True)
class Case:
    """One key of a block at one place. base: the spec without it. specs: the same with each value tried."""

    name: str
    base: Data
    specs: tuple[Data, ...]


def cases(block: type[Block]) -> Iterator[Case]:
    """Yield the keys of a block that are tried one by one: all but those of `text_keys`, and the `kind` of a device."""
    texts = text_keys(block)
    for key, field in fields_by_key(block).items():
        if key in texts or (key == "kind" and len(get_args(field.annotation)) == 1):
            continue
        name = f"{block.__name__}.{key}"
        base, _ = with_block(block, key)
        specs = []
        for value in next((VALUES[each] for each in (name, key) if each in VALUES), values_of(field)):
            spec, here = with_block(block, key)
            here[key] = copy.deepcopy(value)
            specs.append(spec)
        yield Case(name, base, tuple(specs))


PRINTED = {"designation": "-ZQ7", "status": "future", "torque": "7.3 Nm", "strip_length": "13.7 mm"}
"""Values that are printed as they are written, of keys that devices share."""


def text_keys(block: type[Block]) -> dict[str, str]:
    """Return the keys of a block whose value can be read off the sheets as it is given, each with one of its own."""
    found = {}
    for number, (key, field) in enumerate(fields_by_key(block).items()):
        if key in PRINTED and issubclass(block, Named | Wired):
            found[key] = PRINTED[key]
        elif not {key, f"{block.__name__}.{key}"} & (BESIDE.keys() | VALUES.keys()) and values_of(field) == ["Zq"]:
            found[key] = f"Zq{number}z"
    return found


def with_block(block: type[Block], key: str = "") -> tuple[Data, Data]:
    """Return the house with a block at its place and what `BESIDE` has for block and key, and that block in it."""
    name = block.__name__
    path = _path(block)
    data = copy.deepcopy(HOUSE)
    needed = {**BESIDE.get(name, {}), **BESIDE.get(f"{block.__name__}.{key}", BESIDE.get(key, {}))}
    for place, value in needed.items():
        if not place.startswith("."):
            put(data, place, value)
    least = LEAST.get(name, {"kind": get_args(block.model_fields["kind"].annotation)[0]} if _needs_kind(block) else {})
    if path:
        put(data, path, least | (_at(data, path.split("."), {}) or {}))
    for place, value in needed.items():
        if place.startswith(".") and value is ...:
            del _at(data, path.split("."))[place[1:]]
        elif place.startswith("."):
            put(data, path + place, value)
    return data, _at(data, path.split(".") if path else [])


def _needs_kind(block: type[Block]) -> bool:
    return "kind" in block.model_fields and block.model_fields["kind"].is_required()


def _path(block: type[Block]) -> str:
    """Return the path of a block in the house, numbers for places in lists."""
    found = sorted(places()[block], key=lambda each: each.startswith("further_supplies."))
    path = AT.get(block.__name__) or next((each for each in found if each.startswith("inverters")), found[0])
    before, _, after = path.replace("[]", ".0").partition(".NAME")
    return f"{before}.{NAMES.get(before, 'Zq')}{after}" if ".NAME" in path else before


def _at(data: Any, way: list[str], missing: Any = None) -> Any:
    """Return what stands at a path, or `missing`."""
    for step in way:
        place: Any = int(step) if isinstance(data, list) else step
        if place not in (range(len(data)) if isinstance(data, list) else data):
            return missing
        data = data[place]
    return data


def put(data: Data, path: str, value: Any) -> None:
    """Put a value at a dotted path; what is missing on the way is added."""
    here: Any = data
    way = path.split(".")
    for step, following in zip(way, [*way[1:], ""], strict=True):
        new: Any = copy.deepcopy(value) if not following else [] if following.isdigit() else {}
        if isinstance(here, list):
            if int(step) == len(here):
                here.append(new)
            elif not following:
                here[int(step)] = new
            here = here[int(step)]
        else:
            here[step] = new if not following else here.get(step, new)
            here = here[step]


PLAIN: dict[str, Any] = {
    "V": 777, "A": 17, "kA": 7.7, "W": 7777, "VA": 7777, "m": 17, "mm2": 35, "°C": 57, "ohm": 0.7, "%": 3.3, "mm": 7.7,
    "Nm": 7.7, "K·m/W": 1.7, "Wh": 7777, "Hz": 60, "s": 0.7, "Bd": 19200, "mA": 77, "/km2/yr": 1.7, "eV": 1.3,
    "A2s": 27777, "ms": 170, "kg": 7.7, "deg": 17,
}  # fmt: skip
"""A value in each unit that no example of the house has."""


def values_of(field: FieldInfo) -> list[Any]:
    """Return values to try, made from the type of a key: every option, the other truth, another number."""
    (one, *_), marks = members(field.annotation), [*field.metadata]
    while get_origin(one) is Annotated:
        inner, *more = get_args(one)
        (one, *_), marks = members(inner), [*marks, *more]
    marks = [each for mark in marks for each in (mark.metadata if isinstance(mark, FieldInfo) else (mark,))]
    unit = next((mark for mark in marks if isinstance(mark, Unit | Units)), None)
    if unit is not None:
        usual = next(mark for mark in marks if isinstance(mark, Usual))
        plain = isinstance(unit, Unit) and usual.holds(PLAIN[unit.unit], unit.unit)
        return [PLAIN[unit.unit] if plain else usual.example]
    if get_origin(one) is Literal:
        return list(get_args(one))
    simple = {bool: [not field.default], str: ["Zq"], int: [2 if field.default != 2 else 3], float: [0.77]}
    if one in simple:
        return simple[one]
    blocks = list(_blocks(one))
    if not blocks:
        return [["Zq"]]
    least = LEAST.get(blocks[0].__name__, {"kind": "breaker"} if _needs_kind(blocks[0]) else {})
    if get_origin(one) is list:
        return [[least]]
    return [least] if isinstance(one, type) else [{"Zq": least}]


def _blocks(annotation: Any) -> Iterator[type[Block]]:
    """Yield the blocks inside an annotation."""
    if isinstance(annotation, type) and not isinstance(annotation, types.GenericAlias):
        if issubclass(annotation, Block):
            yield annotation
    else:
        for part in get_args(annotation):
            yield from _blocks(part)
