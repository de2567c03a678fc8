"""Valid specs of many shapes, as plain data. All makes, names and values are invented.

Valid means: the reader takes them. Most of them are bad designs, so that findings, flags and ratings without an answer
turn up in every combination.
"""

from __future__ import annotations

from typing import Any, get_args

from hypothesis import strategies as st

from sld.spec.blocks.circuit import AC_BLOCKS, DC_BLOCKS
from sld.spec.blocks.installed import Installed

__all__ = ["specs"]

Data = dict[str, Any]

LONG = "Wirtschaftsgebäude der Gärtnerei am Mühlenbach, östlicher Anbau mit Heizungsraum und Werkstatt im Erdgeschoss"
LABELS = [
    "roof",
    "Süddach",
    "façade nord-est",
    "přístavek č. 3",
    "Øvre låve",
    "a < b & c",
    "Ωμέγα",
    "Склад",
    LONG,
    LONG[:44],
]
PLACES = ["meter room", "Dachfläche Süd", "flat roof"]
WORDS = {
    "boards": ["board", "Verteiler ", "B"],
    "junction_boxes": ["jb", "Kasten ", "boîte"],
    "inverters": ["inv", "Süd ", "t_", "wechselrichter nord west "],
    "batteries": ["bat", "Speicher "],
    "loads": ["load", "Küche ", "wallbox"],
    "generators": ["gen", "Aggregat "],
    "devices": ["log", "Netz ", "router"],
}


def _kind(block: type[Installed]) -> str:
    return str(get_args(block.model_fields["kind"].annotation)[0])


AC_KINDS = [kind for kind in map(_kind, AC_BLOCKS) if kind != "changeover"]  # which names a source: see `_islands`
DC_KINDS = [*map(_kind, DC_BLOCKS), "cable", "cable", "cable"]
AMPERES = st.sampled_from([6, 10, 16, 25, 40, 63, 125, 400])
LENGTHS = st.sampled_from(["0.3 m", "2 m", "12 m", "35 m", "140 m", "1.2 km"])
MODULES: Data = {
    "mono": {
        "rated_power": "410 W", "open_circuit_voltage": "37.4 V", "short_circuit_current": "13.9 A",
        "mpp_voltage": "31.3 V", "mpp_current": "13.1 A", "voltage_coefficient": "-0.26 %/K",
        "series_fuse_max": "25 A", "make": "Brightfell", "model": "BF-410", "voltage_tolerance": "3 %",
        "connector_current_max": "30 A", "nominal_cell_temperature": 45,
    },
    "duo": {
        "rated_power": "455 W", "open_circuit_voltage": "41.2 V", "short_circuit_current": "13.8 A",
        "mpp_voltage": "34.6 V", "mpp_current": "13.15 A", "voltage_coefficient": "-103 mV/K",
        "bifaciality": "70 %", "parallel_unfused_max": 2, "system_voltage_max": "1500 V",
    },
    "plain": {
        "rated_power": "100 W", "open_circuit_voltage": "80 V", "short_circuit_current": "1.8 A",
        "mpp_voltage": "63 V", "mpp_current": "1.6 A", "technology": "thin_film", "protection_class": "0",
        "single_diode": {
            "photocurrent": "1.81 A", "saturation_current": "0.4 pA", "series_resistance": 3, "shunt_resistance": 1600,
            "ideality_factor": 1.2, "cells_in_series": 90, "band_gap": 1.475, "band_gap_coefficient": "-0.03 %/K",
        },
    },
}  # fmt: skip
CABLES: Data = {
    "NYM-J": {"insulation": "PVC"},
    "NAYY-J": {"conductor": "aluminium"},
    "solar": {"marking": "H1Z2Z2-K", "insulation": "EN 50618", "rated_voltage": "1500 V"},
    "data pair": {"marking": "2 × 2 × 0.8 mm² shielded", "shielded": True},
}


class _Names:
    """Names that are used up: none twice in one spec, and the ids that were given to devices of circuits."""

    def __init__(self) -> None:
        self.count = 0
        self.ids: list[str] = []
        self.designations: list[str] = []

    def next(self, draw: st.DrawFn, group: str) -> str:
        self.count += 1
        return f"{draw(st.sampled_from(WORDS[group]))}{self.count}"


def _chance(draw: st.DrawFn, one_in: int = 2) -> bool:
    return draw(st.integers(1, one_in)) == one_in


def _put(draw: st.DrawFn, block: Data, one_in: int = 2, **values: st.SearchStrategy[Any]) -> None:
    """Give a block some of these keys."""
    for key, strategy in values.items():
        if _chance(draw, one_in):
            block[key] = draw(strategy)


def _placed(draw: st.DrawFn, block: Data, one_in: int = 4) -> Data:
    _put(draw, block, one_in, name=st.sampled_from(LABELS), location=st.sampled_from(PLACES))
    _put(draw, block, one_in, status=st.sampled_from(["new", "existing", "future"]))
    _put(draw, block, 3 * one_in, note=st.sampled_from(LABELS), make=st.just("Tarnholt"), model=st.just("X 9"))
    return block


def _designated(draw: st.DrawFn, names: _Names, block: Data, letters: str) -> None:
    """Sometimes give a designation of the form that is given by rule, so that the two may meet."""
    designation = f"-{letters}{len(names.designations) + 1}"
    if _chance(draw, 6):
        names.designations.append(designation)
        block["designation"] = designation


def _ac_cable(draw: st.DrawFn) -> Data:
    block: Data = {"kind": "cable", "length": draw(LENGTHS)}
    _put(draw, block, 3, type=st.sampled_from(["NYM-J", "NAYY-J"]), method=st.sampled_from(["B2", "C", "D1", "E"]))
    _put(draw, block, 3, section=st.sampled_from([1.5, 4, 7, 16, 95]), grouped_circuits=st.integers(1, 6))
    _put(draw, block, 8, parallel=st.integers(1, 3), cores=st.integers(2, 5), protective_section=st.just(2.5))
    if "protective_section" not in block and _chance(draw, 8):
        block |= draw(st.sampled_from([{"protective_conductor": "armour", "armour_section": 60},
                                       {"protective_conductor": "separate"}, {"neutral_section": 4}]))  # fmt: skip
    if block.get("method") == "D1":
        _put(draw, block, 3, soil_resistivity=st.sampled_from([1, 2, 3.5]), depth=st.sampled_from([0.6, 1.2, 4]))
        _put(draw, block, 4, spacing=st.sampled_from([0.2, 0.5]))
    _put(draw, block, 10, grouped_cables=st.integers(1, 8), capacity_factor=st.sampled_from([0.5, 0.9]))
    if block.get("protective_conductor") != "armour":
        _put(draw, block, 8, double_insulated=st.booleans())
    return _placed(draw, block, 8)


def _ac_device(draw: st.DrawFn, names: _Names, boards: list[str]) -> Data:
    kind = draw(st.sampled_from(AC_KINDS))
    block: Data = {"kind": kind}
    if kind == "meter":
        block["purpose"] = draw(st.sampled_from(["supply", "generation", "feed_in_limit"]))
        _put(draw, block, connection=st.sampled_from(["direct", "ct"]), bidirectional=st.booleans())
        if _chance(draw):
            names.count += 1
            block["id"] = f"m{names.count}"
            names.ids.append(block["id"])
    elif kind == "interface_relay":
        _put(draw, block, settings=st.sampled_from(["set A", LONG]))
    elif kind == "surge_protection":
        _put(draw, block, test_class=st.sampled_from(["1", "2", "1+2"]), continuous_voltage=st.just("275 V"))
        _put(
            draw,
            block,
            3,
            protection_level=st.just("1.5 kV"),
            lead_length=st.just(1),
            impulse_current=st.just("12.5 kA"),
            backup_fuse_max=AMPERES,
            backup_fuse=AMPERES,
        )
    else:
        _put(draw, block, rated_current=AMPERES)
    if kind in ("breaker", "rcbo"):
        _put(draw, block, 3, curve=st.sampled_from("BCD"), breaking_capacity=st.sampled_from([3, 6, 36]))
    if kind in ("breaker", "rcbo", "rcd"):
        _put(draw, block, 6, bidirectional=st.booleans())
    if kind == "breaker":
        _put(draw, block, 4, construction=st.just("moulded_case"), trip_factor=st.just(8))
        _put(draw, block, 6, type=st.just("C16"))
        if _chance(draw, 6):
            block.pop("trip_factor", None)
            block |= {"construction": "moulded_case", "short_time_setting": "1 kA", "instantaneous_setting": "2 kA"}
            _put(draw, block, short_time_delay=st.sampled_from(["0 s", "0.1 s", "0.5 s"]))
            _put(draw, block, earth_fault_setting=st.just("100 A"))
    if kind == "rcd":
        _put(draw, block, 4, delay=st.sampled_from(["0.06 s", "1 s"]), selective=st.booleans())
    if kind in ("rcd", "rcbo"):
        _put(draw, block, sensitivity=st.sampled_from(["AC", "A", "B"]), residual_current=st.sampled_from([30, 300]))
    if kind == "fuse":
        _put(draw, block, switch=st.booleans())
    if boards:
        _put(draw, block, 12, enclosure=st.sampled_from(boards))
    return _placed(draw, block, 6)


def _ac_circuit(draw: st.DrawFn, names: _Names, boards: list[str]) -> list[Data] | None:
    """Return a circuit with up to two cables anywhere, or none."""
    if _chance(draw, 3):
        return None
    circuit = [_ac_device(draw, names, boards) for _ in range(draw(st.integers(0, 4)))]
    for _ in range(draw(st.integers(0, 2))):
        circuit.insert(draw(st.integers(0, len(circuit))), _ac_cable(draw))
    return circuit


def _with_circuit(draw: st.DrawFn, names: _Names, boards: list[str], block: Data) -> Data:
    circuit = _ac_circuit(draw, names, boards)
    if circuit is not None:
        block["circuit"] = circuit
    return _placed(draw, block)


def _dc_device(draw: st.DrawFn, boxes: list[str]) -> Data:
    kind = draw(st.sampled_from(DC_KINDS))
    block: Data = {"kind": kind}
    if kind == "cable":
        return _dc_cable(draw, block)
    if kind == "surge_protection":
        _put(draw, block, test_class=st.sampled_from(["1", "2", "1+2"]), discharge_current=st.just("15 kA"))
        _put(draw, block, 3, continuous_voltage=st.just(900), protection_level=st.just("3.5 kV"))
        _put(draw, block, 4, impulse_current=st.just(5), short_circuit_current=st.just(40), lead_length=st.just(0.6))
    elif kind == "insulation_monitor":
        _put(draw, block, rated_voltage=st.just("1 kV"), alarm_resistance=st.sampled_from(["20 kohm", "100 kohm"]))
    else:
        _put(draw, block, 3, rated_voltage=st.sampled_from([600, 1000]), rated_current=AMPERES)
    if kind == "isolator":
        _put(draw, block, utilization_category=st.sampled_from(["DC-PV0", "DC-PV2", "DC-21B"]))
    if kind == "breaker":
        _put(draw, block, 2, curve=st.sampled_from("BCD"), poles=st.integers(1, 4), polarized=st.booleans())
        _put(draw, block, 3, breaking_capacity=st.just("10 kA"), isolating=st.booleans())
    if kind == "plug_connector":
        _put(draw, block, mated_with=st.sampled_from(["Ondry C4", LONG]))
    if kind == "rapid_shutdown":
        _put(draw, block, operated_from=st.sampled_from(["at the meter", LONG]))
    if boxes:
        _put(draw, block, enclosure=st.sampled_from(boxes))
    return _placed(draw, block, 8)


def _dc_cable(draw: st.DrawFn, block: Data) -> Data:
    block["length"] = draw(LENGTHS)
    _put(draw, block, 3, type=st.just("solar"), section=st.sampled_from([4, 6, 7, 25]))
    _put(draw, block, 6, ambient_temperature=st.sampled_from(["30 °C", "70 °C"]), status=st.just("existing"))
    _put(draw, block, 6, grouped_circuits=st.integers(1, 20))
    if _chance(draw, 4):
        block |= {"method": "D1", "depth": "0.6 m"}
    else:
        _put(draw, block, 6, arrangement=st.just("single_in_air"))
    return block


def _string(draw: st.DrawFn) -> Data:
    block: Data = {"module": draw(st.sampled_from(sorted(MODULES))), "modules_in_series": draw(st.integers(1, 30))}
    _put(draw, block, count=st.sampled_from([1, 2, 3, 12, 24]), orientation=st.sampled_from(["south", "SSW, 30°"]))
    _put(draw, block, 6, cable_route=st.sampled_from(["east", "west"]))
    if _chance(draw):
        block["cable"] = _dc_cable(draw, {})
    if _chance(draw, 4):
        optimiser = {"kind": "optimiser", "output_voltage_max": "60 V", "output_current_max": "15 A"}
        devices = [[optimiser], [{"kind": "diode"}], [{"kind": "branch_connector"}], [optimiser, {"kind": "breaker"}]]
        block["circuit"] = draw(st.sampled_from(devices))
        if block["circuit"][-1]["kind"] == "branch_connector":
            block["count"] = 2 * block.get("count", 1)
    return _placed(draw, block, 8)


def _input(draw: st.DrawFn, boxes: list[str]) -> Data:
    block: Data = {"strings": [_string(draw) for _ in range(draw(st.integers(1, 3)))]}
    if boxes and _chance(draw):
        block["junction_box"] = draw(st.sampled_from(boxes))
    if _chance(draw, 3):
        block["string_fuses"] = {}
        _put(draw, block["string_fuses"], rated_current=AMPERES, rated_voltage=st.just(1000), poles=st.just(1))
        _put(draw, block["string_fuses"], 4, temperature_factor=st.just(0.9), breaking_capacity=st.just("10 kA"))
        _put(draw, block, 4, strings_per_fuse=st.integers(2, 3))
        if any(device["kind"] == "branch_connector" for each in block["strings"] for device in each.get("circuit", ())):
            block["strings_per_fuse"] = 2
    if _chance(draw):
        block["circuit"] = [_dc_device(draw, boxes) for _ in range(draw(st.integers(0, 4)))]
    _put(draw, block, 8, functional_earth=st.booleans(), functional_earth_device=st.sampled_from([1, 6, 16]))
    return block


def _inverter_type(draw: st.DrawFn) -> Data:
    block: Data = {
        "rated_power": draw(st.sampled_from(["600 W", "4 kW", "12 kW", "100 kW"])),
        "phases": draw(st.sampled_from([1, 3])),
        "dc_voltage_max": draw(st.sampled_from(["600 V", "1000 V"])),
        "mpp_voltage_min": "120 V", "mpp_voltage_max": "520 V",
        "inputs": [
            {
                "count": 2, "current_max": "16 A", "short_circuit_current_max": "24 A", "strings_max": 1,
                "terminal_current_max": "20 A",
            },
            {"current_max": 40, "short_circuit_current_max": 60},
        ],
    }  # fmt: skip
    _put(draw, block, 3, galvanic_separation=st.booleans(), dc_switch=st.booleans(), start_voltage=st.just(150))
    _put(draw, block, 3, dc_residual_current=st.sampled_from([0, 5, 40]), leakage_current=st.sampled_from([3, 120]))
    _put(
        draw,
        block,
        3,
        dc_surge_protection=st.just("2"),
        backfeed_current=st.just(5),
        interface_protection=st.booleans(),
    )
    _put(
        draw,
        block,
        6,
        inputs_independent=st.just(False),
        shutdown_voltage=st.just(100),
        arc_fault_protection=st.just(True),
    )
    _put(draw, block, 6, insulation_threshold=st.just("20 kohm"), residual_current_monitor=st.sampled_from([30, 500]))
    _put(draw, block, 6, dc_impulse_withstand=st.just("4 kV"))
    _put(draw, block, bus=st.just({"units_max": 2, "distance_max": "10 m", "exclusive": ["ethernet"]}))
    _put(draw, block, 6, micro=st.just(True))
    return block


def _inverters(draw: st.DrawFn, names: _Names, boards: list[str], boxes: list[str], types: list[str]) -> Data:
    """Return inverters: up to eight, counted ones as many as they count."""
    found: Data = {}
    remaining = draw(st.sampled_from([1, 1, 2, 3, 4, 8]))
    while remaining:
        count = draw(st.integers(1, min(4, remaining))) if _chance(draw, 3) else 1
        block: Data = {"type": draw(st.sampled_from(types))}
        block["inputs"] = [_input(draw, boxes) for _ in range(draw(st.integers(1, 3)))]
        if len(block["inputs"]) > 1 and _chance(draw, 6):
            block["inputs"][0]["linked_to"] = 2
        if count > 1:
            block["count"] = count
        else:
            _designated(draw, names, block, "TB")
        if len(boards) > 1:
            block["connected_to"] = draw(st.sampled_from(boards))
        _put(draw, block, 4, line=st.sampled_from(["L1", "L2"]), power_factor=st.just(0.9), power_limit=st.just("2 kW"))
        found[names.next(draw, "inverters")] = _with_circuit(draw, names, boards, block)
        for device in block.get("circuit", ()) if count > 1 else ():
            if "id" in device:  # which would be given to several
                names.ids.remove(device.pop("id"))
        remaining -= count
    return found


def _sized(types: Data, inverters: Data) -> None:
    """Make each type as large as its largest array asks for: five times the power is refused."""
    for name, block in types.items():
        arrays_w = [
            sum(
                float(MODULES[string["module"]]["rated_power"].split()[0])
                * string["modules_in_series"]
                * string.get("count", 1)
                for given in unit["inputs"]
                for string in given["strings"]
            )
            for unit in inverters.values()
            if unit["type"] == name
        ]
        powers = ("600 W", "4 kW", "12 kW", "100 kW", "500 kW", "2000 kW")
        watts = {each: float(each.split()[0]) * (1000 if "k" in each else 1) for each in powers}
        least_w = max(watts[block["rated_power"]], max(arrays_w, default=0) / 5)
        block["rated_power"] = next(each for each in powers if watts[each] >= least_w)


def _boards(draw: st.DrawFn, names: _Names) -> Data:
    """Return a tree of boards, each fed from an earlier one; written in any order."""
    made = [names.next(draw, "boards") for _ in range(draw(st.sampled_from([0, 1, 1, 2, 3, 5])))]
    found: Data = {}
    for place, name in enumerate(made):
        block: Data = {"fed_from": draw(st.sampled_from(made[:place]))} if place else {}
        _put(draw, block, 3, rated_current=AMPERES)
        if place:
            _put(draw, block, 5, trunk=st.just(True))
            if _chance(draw, 5):
                block["earthing_system"] = "TT"
                _put(draw, block, electrode=st.sampled_from([{"kind": "rod"}, {"kind": "ring", "resistance": 30}]))
        _put(draw, block, 6, phases=st.just(1), line=st.sampled_from(["L1", "L2", "L2-L3"]))
        _designated(draw, names, block, "UC")
        found[name] = _with_circuit(draw, names, made, block)
    return {name: found[name] for name in draw(st.permutations(made))}


def _batteries(draw: st.DrawFn, names: _Names, boards: list[str], inverters: Data) -> Data:
    found: Data = {}
    single = [f"{name}-2" if block.get("count", 1) > 1 else name for name, block in inverters.items()]
    for _ in range(draw(st.sampled_from([0, 0, 1, 2]))):
        block: Data = {}
        _put(draw, block, energy=st.just("10 kWh"))
        if _chance(draw):
            block["inverter"] = draw(st.sampled_from(single))
            _put(draw, block, charge_converter_power=st.just("3 kW"))
            _cells(draw, block, boards)
            found[names.next(draw, "batteries")] = _placed(draw, block)
            continue
        _put(draw, block, converter_power=st.just("5 kVA"), converter_phases=st.sampled_from([1, 3]))
        _put(draw, block, backup_power=st.just("4 kVA"))
        _cells(draw, block, boards)
        if len(boards) > 1:
            block["connected_to"] = draw(st.sampled_from(boards))
        found[names.next(draw, "batteries")] = _with_circuit(draw, names, boards, block)
    return found


def _cells(draw: st.DrawFn, block: Data, boards: list[str]) -> None:
    """Give a battery, now and then, data of its cells and a circuit to its converter."""
    _put(draw, block, 3, rated_voltage=st.just("51.2 V"), voltage_min=st.just("44 V"), voltage_max=st.just("58 V"))
    _put(draw, block, 4, current_max=AMPERES, short_circuit_current=st.sampled_from(["2 kA", "12 kA"]))
    _put(draw, block, 6, protection_rated_current=AMPERES, isolator_built_in=st.booleans())
    if _chance(draw):
        block["dc_circuit"] = [_battery_device(draw, boards) for _ in range(draw(st.integers(0, 4)))]


def _battery_device(draw: st.DrawFn, boards: list[str]) -> Data:
    kind = draw(st.sampled_from(["fuse", "breaker", "isolator", "cable", "cable"]))
    block: Data = {"kind": kind}
    if kind == "cable":
        block["length"] = draw(st.sampled_from(["0.3 m", "2 m", "12 m"]))
        _put(draw, block, 3, section=st.sampled_from([16, 35, 95]), parallel=st.just(2))
        return _placed(draw, block, 8)
    _put(draw, block, 3, rated_voltage=st.sampled_from([60, 80, 1000]), rated_current=AMPERES)
    if kind == "fuse":
        _put(draw, block, 3, switch=st.booleans(), breaking_capacity=st.just("20 kA"))
    if kind == "breaker":
        _put(draw, block, 3, isolating=st.booleans(), polarized=st.booleans(), breaking_capacity=st.just("6 kA"))
    if boards:
        _put(draw, block, 6, enclosure=st.sampled_from(boards))
    return _placed(draw, block, 8)


def _loads(draw: st.DrawFn, names: _Names, boards: list[str]) -> Data:
    found: Data = {}
    for _ in range(draw(st.sampled_from([0, 0, 1, 3]))):
        block: Data = {"power": "11 kW"} if _chance(draw) else {"current": draw(AMPERES)} if _chance(draw) else {}
        _put(draw, block, 3, charging_point=st.booleans(), phases=st.sampled_from([1, 3]))
        if block.get("charging_point"):
            _put(draw, block, 3, vehicle_outdoors=st.booleans(), open_pen_protection=st.just("disconnection"))
        if block.get("phases") != 3:
            _put(draw, block, 4, line=st.sampled_from(["L1", "L3", "L1-L2"]))
        _designated(draw, names, block, "EZ")
        if len(boards) > 1:
            block["connected_to"] = draw(st.sampled_from(boards))
        found[names.next(draw, "loads")] = _with_circuit(draw, names, boards, block)
    return found


def _generators(draw: st.DrawFn, names: _Names, boards: list[str]) -> Data:
    found: Data = {}
    for _ in range(draw(st.sampled_from([0, 0, 0, 1, 2]))):
        block: Data = {"power": draw(st.sampled_from(["5 kVA", "60 kVA"]))}
        block["changeover"] = draw(st.sampled_from(["change-over switch", LONG]))
        _put(draw, block, 3, current_max=AMPERES, phases=st.sampled_from([1, 3]))
        _designated(draw, names, block, "GA")
        if len(boards) > 1:
            block["connected_to"] = draw(st.sampled_from(boards))
        found[names.next(draw, "generators")] = _with_circuit(draw, names, boards, block)
    return found


def _earthing(draw: st.DrawFn) -> Data:
    block: Data = {}
    _put(draw, block, electrode=st.fixed_dictionaries(
        {"kind": st.sampled_from(["foundation", "ring", "rod", "mesh"])}, optional={"resistance": st.just("12 ohm")}
    ))  # fmt: skip
    _put(
        draw, block, 3, conductor=st.fixed_dictionaries({}, optional={"section": st.just(6), "length": st.just("9 m")})
    )
    bonding = st.fixed_dictionaries(
        {"to": st.sampled_from(["water pipe", LONG, "Träger"])},
        optional={
            "section": st.sampled_from([4, 16]), "length": st.just(40),
            "purpose": st.sampled_from(["main_bonding", "array_frame", "other"]),
        },
    )  # fmt: skip
    _put(draw, block, bonding=st.lists(bonding, max_size=7))
    if _chance(draw, 3):
        block["lightning_protection"] = {"separation_kept": draw(st.booleans())}
        _put(draw, block["lightning_protection"], level=st.sampled_from(["I", "III"]), down_conductors=st.just(4))
        _put(draw, block["lightning_protection"], 3, separation=st.just("0.4 m"), separation_path=st.just("9 m"))
    _put(draw, block, name=st.sampled_from(LABELS), location=st.sampled_from(PLACES), note=st.sampled_from(LABELS))
    return block


def _step(draw: st.DrawFn, name: str, first: bool) -> Data:
    """Return a device of a chain; no cable leads to the first one."""
    block: Data = {"device": name}
    _put(draw, block, address=st.integers(0, 255), terminated=st.booleans())
    if not first:
        _put(draw, block, length=LENGTHS)
    return block


def _data_bus(draw: st.DrawFn, names: _Names, others: list[str]) -> Data:
    """Return data devices, up to three chains in any order of what there is, and links.

    At most four cables end at one device: the layout says that a small symbol has room for no more than five.
    """
    made = [names.next(draw, "devices") for _ in range(draw(st.integers(0, 3)))]
    kinds = st.sampled_from(["logger", "energy_manager", "router", "module"])
    found: Data = {"devices": {name: _placed(draw, {"kind": draw(kinds)}) for name in made}}
    ends = dict.fromkeys([*made, *others], 0)
    found["chains"], found["links"] = {}, []
    for number in range(draw(st.integers(0, 3))):
        members = [name for name, count in ends.items() if count <= 2]
        if len(members) < 2:
            break
        picked = draw(st.lists(st.sampled_from(members), min_size=2, max_size=8, unique=True))
        ends.update({name: ends[name] + 2 for name in picked})
        chain: Data = {"devices": [_step(draw, name, name == picked[0]) for name in picked]}
        _put(draw, chain, 3, cable=st.sampled_from(["data pair", LONG]), master=st.sampled_from(picked))
        _put(draw, chain, 3, shield_earthed_at=st.lists(st.sampled_from(picked), max_size=2, unique=True))
        found["chains"][draw(st.sampled_from(["bus", "rs485_", "Kette "])) + str(number)] = chain
    for _ in range(draw(st.integers(0, 3))):
        members = [name for name, count in ends.items() if count <= 3]
        if len(members) < 2:
            break
        one, other = draw(st.lists(st.sampled_from(members), min_size=2, max_size=2, unique=True))
        ends.update({one: ends[one] + 1, other: ends[other] + 1})
        medium = draw(st.sampled_from(["ethernet", "wireless", "pulse"]))
        found["links"].append({"from": one, "to": other, "medium": medium})
        _put(draw, found["links"][-1], length=LENGTHS)
    return found


def _project(draw: st.DrawFn) -> Data:
    block: Data = {"title": draw(st.sampled_from(LABELS))}
    _put(draw, block, 3, subtitle=st.just(LONG), customer=st.just("Émile & Söhne"), address=st.sampled_from(LABELS))
    _put(draw, block, 3, drawing_number=st.just("MV-1"), drawn_by=st.just("office"), date=st.just("2026-02-28"))
    indices = "ABCDE"[: draw(st.integers(0, 5))]
    block["revisions"] = [
        {"index": index, "change": draw(st.sampled_from(["first", LONG])), "date": "2026-03-01"} for index in indices
    ]
    return block


def _supply(draw: st.DrawFn) -> Data:
    block: Data = {"earthing_system": draw(st.sampled_from(["TN-S", "TN-C-S", "TT", "IT"]))}
    _put(draw, block, phases=st.sampled_from([1, 3]), service_fuse=AMPERES, operator=st.sampled_from(LABELS))
    _put(
        draw, block, 3, prospective_fault_current=st.sampled_from([1, 6, 40]), loop_impedance=st.sampled_from([0.1, 2])
    )
    _put(draw, block, 3, export_limit=st.sampled_from(["0 W", "8 kW"]), service_fuse_status=st.just("new"))
    _put(draw, block, 5, country=st.sampled_from(["US", "AU", "DE"]))
    if _chance(draw, 5):
        block["transformer"] = {"rated_power": "400 kVA", "primary_voltage": "20 kV", "short_circuit_voltage": "4 %"}
    return block


def _site(draw: st.DrawFn) -> Data:
    block: Data = {"temperature_min": draw(st.integers(-40, 10)), "temperature_max": draw(st.integers(15, 50))}
    _put(draw, block, lightning_density=st.sampled_from([0, 1.2, 9]), rear_irradiance=st.just("5 %"))
    _put(draw, block, mounting=st.sampled_from(["roof_parallel", "roof_tilted", "free_standing"]))
    _put(draw, block, building=st.sampled_from(["dwelling", "other_building", "ground_mounted"]))
    if _chance(draw, 3):
        block["locations"] = {PLACES[0]: {}, PLACES[1]: {"ambient_temperature": 55}, PLACES[2]: {"outdoor": True}}
    return block


def _in_north_america(draw: st.DrawFn, data: Data) -> None:
    """Put a spec under the National Electrical Code, with what only that profile reads."""
    data["profile"] = "NEC 690"
    supply = data["supply"]
    if supply.get("phases") == 1:
        _put(draw, supply, split_phase=st.just(True))
    else:
        _put(draw, supply, voltage=st.sampled_from(["208 V", "480 V"]))
    data["types"]["cables"] = {**CABLES, "THWN-2": {"temperature_rating": "90 °C"}, "USE-2": {"insulation": "XLPE"}}
    for board in data["boards"].values():
        _put(draw, board, source_connection=st.sampled_from(["opposite_end", "sum_of_devices", "supply_side"]))
    for unit in data["inverters"].values():
        _put(draw, unit, 3, line=st.sampled_from(["L1-L2", "L3-L1"]))
    owners = [*data["boards"].values(), *data["inverters"].values(), *data["batteries"].values()]
    circuits = [owner.get("circuit", ()) for owner in owners]
    circuits += [given.get("circuit", ()) for unit in data["inverters"].values() for given in unit["inputs"]]
    for cable in (each for circuit in circuits for each in circuit if each.get("kind") == "cable"):
        _put(draw, cable, section=st.sampled_from(["10 AWG", "6 AWG", "1/0 AWG", "500 kcmil", "6 mm2"]))
        _put(draw, cable, terminal_temperature=st.sampled_from(["60 °C", "75 °C"]))


def _islands(draw: st.DrawFn, data: Data) -> None:
    """Sometimes put a generator at a change-over switch, and a board at the backup output of an inverter."""
    boards, inverters = data["boards"], data["inverters"]
    for name, block in data["generators"].items():
        given = [board for board in boards.values() if "circuit" in board]
        if given and _chance(draw):
            switch: Data = {"kind": "changeover", "second_source": name}
            _put(draw, switch, rated_current=AMPERES, poles=st.integers(2, 4), neutral_earth_link=st.booleans())
            _put(draw, switch, interlock=st.sampled_from(["mechanical", "none"]), operation=st.just("manual"))
            circuit = given[draw(st.integers(0, len(given) - 1))]["circuit"]
            circuit.insert(draw(st.integers(0, len(circuit))), switch)
            block.pop("connected_to", None)
            _put(draw, block, neutral_earthed=st.booleans(), residual_protection=st.booleans())
    main = next((name for name, board in boards.items() if "fed_from" not in board), "")
    single = {name: unit for name, unit in inverters.items() if unit.get("count", 1) == 1}
    at_main = [name for name, unit in single.items() if unit.get("connected_to", main) == main]
    if not at_main or len(boards) < 2 or not _chance(draw):
        return
    types = data["types"]["inverters"]
    name = draw(st.sampled_from(at_main))
    _backed(draw, types[inverters[name]["type"]])
    board = boards[draw(st.sampled_from([each for each in sorted(boards) if each != main]))]
    del board["fed_from"]
    board["fed_from_backup"] = name
    if _chance(draw, 4):
        name = draw(st.sampled_from(at_main))
        board.setdefault("circuit", []).append({"kind": "changeover", "second_source": name})
        _backed(draw, types[inverters[name]["type"]])


def _backed(draw: st.DrawFn, inverter_type: Data) -> None:
    """Give an inverter type a backup output of its rated power."""
    backup: Data = {"power": f"{inverter_type['rated_power']}".replace("W", "VA")}
    _put(draw, backup, separates_neutral=st.booleans(), neutral_earth_link=st.booleans())
    inverter_type["backup"] = backup


def _boundary(draw: st.DrawFn, supply: Data, boards: Data) -> None:
    """Sometimes say where the network operator's part ends: behind what there is."""
    (circuit,) = [board.get("circuit") for board in boards.values() if "fed_from" not in board] or [None]
    metered = circuit is None or any(each.get("purpose") == "supply" for each in circuit)
    behind = ["network", *["service_fuse"] * ("service_fuse" in supply), *["supply_meter"] * metered]
    _put(draw, supply, ownership_boundary=st.sampled_from(behind))


def _asked_about(data: Data) -> None:
    """Take back what the reader would ask about: a loop below the short circuit, boards above what feeds them."""
    supply = data["supply"]
    if supply.get("prospective_fault_current") == 1 and "loop_impedance" in supply:
        supply["loop_impedance"] = 2
    for board in data["boards"].values():
        feeding = (each for each in board.get("circuit", ()) if each["kind"] in ("breaker", "rcbo", "fuse"))
        amperes = [block["rated_current"] for block in feeding if "rated_current" in block]
        amperes += [supply["service_fuse"]] if "service_fuse" in supply else []
        if amperes and board.get("rated_current", 0) > 9 * min(amperes):
            board["rated_current"] = min(amperes)


@st.composite
def specs(draw: st.DrawFn) -> Data:
    """A spec as plain data."""
    names = _Names()
    boards = _boards(draw, names)
    boxes = [names.next(draw, "junction_boxes") for _ in range(draw(st.sampled_from([0, 0, 1, 3])))]
    types = {f"type {n}": _inverter_type(draw) for n in range(draw(st.integers(1, 2)))}
    inverters = _inverters(draw, names, list(boards), boxes, sorted(types))
    _sized(types, inverters)
    batteries = _batteries(draw, names, list(boards), inverters)
    loads = _loads(draw, names, list(boards))
    generators = _generators(draw, names, list(boards))
    data: Data = {
        "project": _project(draw),
        "site": _site(draw),
        "supply": _supply(draw),
        "types": {
            "modules": MODULES, "cables": CABLES, "inverters": types,
            "ac_devices": {"C16": {"kind": "breaker", "curve": "C", "breaking_capacity": "6 kA", "make": "Tarnholt"}},
        },
        "boards": boards,
        "junction_boxes": {name: _placed(draw, {}) for name in boxes},
        "inverters": inverters,
        "batteries": batteries,
        "loads": loads,
        "generators": generators,
    }  # fmt: skip
    _boundary(draw, data["supply"], boards)
    _islands(draw, data)
    _asked_about(data)
    if _chance(draw):
        data["earthing"] = _earthing(draw)
    if _chance(draw):
        data["data"] = _data_bus(draw, names, [*inverters, *batteries, *loads, *generators, *names.ids])
    drawing: Data = {}
    _put(draw, drawing, unfold=st.just(True), draw_once_from=st.integers(2, 4))
    _put(draw, drawing, paper=st.sampled_from(["A4", "A2", "A0"]), designation_letters=st.just(1))
    _put(draw, drawing, symbols=st.sampled_from(["IEC", "ANSI"]))
    data["drawing"] = drawing
    _put(draw, data, 4, profile=st.sampled_from(["IEC 62548-1", "IEC 60364-7-712", "BS 7671", "AS/NZS 5033"]))
    if _chance(draw, 3):
        _in_north_america(draw, data)
    if _chance(draw, 4):
        place = f"inverters.{draw(st.sampled_from(sorted(inverters)))}"
        reason = {"reason": LONG, "role": "design engineer", "date": "2026-03-31"}
        data["accept"] = [{"code": code, "at": place, **reason} for code in ("DC24", "AC14")]
    return data
