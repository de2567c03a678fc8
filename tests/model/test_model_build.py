"""The tree that a spec comes to: repeats, enclosures, types filled in, assumptions, names. Own convention."""

from __future__ import annotations

from typing import Any

import pytest
from small_specs import BASE, UNIT, system

from sld.finding import Severity
from sld.model.assumed import assumed
from sld.model.conductors import cores
from sld.model.copies import Copy
from sld.model.device import Apparatus, Busbar, Cable, InverterUnit, StringGroup
from sld.model.wording import status_word

BREAKER, CABLE, ISOLATOR = {"kind": "breaker"}, {"kind": "cable", "length": "20 m"}, {"kind": "isolator"}
BOARDS = {"main": {}, "barn": {"fed_from": "main", "circuit": [BREAKER, CABLE, {"kind": "main_switch"}]}}


def test_every_device_has_its_parent_before_it() -> None:
    built = system({"boards": BOARDS, "inverters.roof.connected_to": "barn", "inverters.roof.count": 3})
    seen: set[str] = set()
    for device in built.devices.values():
        assert device.parent in seen or device.key == built.root
        seen.add(device.key)
    reached = {built.root, *(device.key for device in built.downstream(built.root))}
    assert reached == seen


def test_count_makes_that_many_inverters() -> None:
    built = system({"inverters.roof.count": 3})
    units = list(built.of(InverterUnit))
    assert [unit.key for unit in units] == ["inverters.roof-1", "inverters.roof-2", "inverters.roof-3"]
    assert [unit.designation for unit in units] == ["-TB1", "-TB2", "-TB3"]
    assert [unit.copy for unit in units] == [1, 2, 3]
    assert len(list(built.of(StringGroup))) == 3
    assert built.devices["inverters.roof-3.circuit.0"].designation == "-TB3-FC1"


def test_string_count_is_kept_and_not_expanded() -> None:
    built = system({"inverters.roof.inputs.0.strings.0.count": 4})
    (group,) = built.of(StringGroup)
    assert (group.given.count, len(group.designations)) == (4, 4)


def test_the_order_of_an_input_is_turned_towards_the_network() -> None:
    """The spec goes from the strings to the inverter; the tree from the network to the strings."""
    built = system({"inverters.roof.inputs.0.circuit": [{"kind": "surge_protection"}, ISOLATOR]})
    above = [device.kind.name for device in built.upstream("inverters.roof.inputs.0.strings.0")]
    assert above[:4] == ["surge_protection", "isolator", "input", "inverter"]


@pytest.mark.parametrize(
    ("circuit", "enclosures"),
    [
        ([BREAKER], ["main"]),
        ([BREAKER, ISOLATOR], ["main", ""]),  # without a cable in between, the isolator is beside the inverter
        ([BREAKER, CABLE], ["main", ""]),
        ([BREAKER, CABLE, ISOLATOR], ["main", "", ""]),
        ([CABLE, ISOLATOR], ["", ""]),
        ([BREAKER, CABLE, ISOLATOR, CABLE], ["main", "", "", ""]),
        ([BREAKER, CABLE, {**ISOLATOR, "enclosure": "barn"}], ["main", "", "barn"]),
    ],
)
def test_enclosure_by_position_in_an_inverter_circuit(circuit, enclosures) -> None:
    boards = {**BOARDS, "barn": {"fed_from": "main"}}
    built = system({"boards": boards, "inverters.roof.connected_to": "main", "inverters.roof.circuit": circuit})
    found = [built.devices[f"inverters.roof.circuit.{place}"].enclosure for place in range(len(circuit))]
    assert found == [f"boards.{name}" if name else "" for name in enclosures]


@pytest.mark.parametrize(
    ("circuit", "enclosures"),
    [
        ([BREAKER], ["main"]),
        ([BREAKER, ISOLATOR], ["main", "main"]),
        ([BREAKER, CABLE], ["main", ""]),
        ([BREAKER, CABLE, ISOLATOR], ["main", "", "barn"]),
        ([CABLE, ISOLATOR], ["", "barn"]),
        ([BREAKER, CABLE, ISOLATOR, CABLE, ISOLATOR], ["main", "", "", "", "barn"]),
    ],
)
def test_enclosure_by_position_on_the_way_to_a_board(circuit, enclosures) -> None:
    """Before the first cable at the feeding board, after the last at the fed one."""
    boards = {"main": {}, "barn": {"fed_from": "main", "circuit": circuit}}
    built = system({"boards": boards, "inverters.roof.connected_to": "main"})
    found = [built.devices[f"boards.barn.circuit.{place}"].enclosure for place in range(len(circuit))]
    assert found == [f"boards.{name}" if name else "" for name in enclosures]


def test_devices_of_the_main_board_sit_in_it_where_no_cable_leads_to_it() -> None:
    built = system({"boards": {"main": {"circuit": [ISOLATOR]}}})
    assert built.devices["boards.main.circuit.0"].enclosure == "boards.main"


def test_devices_before_the_cable_to_the_main_board_sit_in_none() -> None:
    built = system({"boards": {"main": {"circuit": [{"kind": "fuse"}, CABLE, ISOLATOR]}}})
    found = [built.devices[f"boards.main.circuit.{place}"].enclosure for place in range(3)]
    assert found == ["", "", "boards.main"]


def test_captions_of_enclosures() -> None:
    boards = {"main": {"name": "main board", "location": "meter room"}, "sub_b": {"fed_from": "main"}}
    built = system({"boards": boards, "inverters.roof.connected_to": "sub_b"})
    assert {key: str(caption) for key, caption in built.enclosures.items()} == {
        "boards.main": "-UC1 main board, meter room",
        "boards.sub_b": "-UC2 sub b",
    }


def test_string_fuses_sit_in_the_junction_box() -> None:
    changes = {
        "junction_boxes": {"box": {}},
        "inverters.roof.inputs.0.junction_box": "box",
        "inverters.roof.inputs.0.string_fuses": {},
    }
    built = system(changes)
    assert built.devices["inverters.roof.inputs.0.strings.0.fuse"].enclosure == "junction_boxes.box"
    assert built.devices["inverters.roof.inputs.0.circuit.0"].enclosure == ""


@pytest.mark.parametrize(
    ("own", "value"), [({}, "C"), ({"curve": "B"}, "B"), ({"make": "Own make"}, "C")], ids=["type", "own", "other"]
)
def test_a_type_fills_in_what_the_device_leaves_out(own, value) -> None:
    changes = {
        "types.ac_devices": {"mcb": {"kind": "breaker", "curve": "C", "make": "Corrick", "rated_current": "25 A"}},
        "inverters.roof.circuit.0": {"kind": "breaker", "type": "mcb", **own},
    }
    device = system(changes).devices["inverters.roof.circuit.0"]
    assert isinstance(device, Apparatus)
    assert device.given.curve == value
    assert device.given.rated_current_a == 25
    assert device.make == own.get("make", "Corrick")
    assert device.model == "mcb"


ASSUMED = [
    ({"supply.voltage": None}, "nominal voltage 400 V", ("supply",)),
    ({"supply.voltage": None, "supply.phases": 1}, "nominal voltage 230 V", ("supply",)),
    ({"inverters.roof.circuit": None}, "a circuit-breaker and an isolator", ("inverters", "roof")),
    ({"inverters.roof.inputs.0.circuit": None}, "a DC isolator at input 1", ("inverters", "roof", "inputs", 0)),
    ({"boards": {"main": {"circuit": [{"kind": "surge_protection"}]}}}, "type 2", ("boards", "main", "circuit", 0)),
    (
        {"inverters.roof.inputs.0.circuit": [{"kind": "surge_protection"}]},
        "type 2",
        ("inverters", "roof", "inputs", 0, "circuit", 0),
    ),
    ({}, "copper cable with PVC insulation", ("inverters", "roof", "circuit", 1)),
    (
        {"inverters.roof.inputs.0.strings.0.cable": {"length": "9 m"}},
        "solar cable to EN 50618",
        ("inverters", "roof", "inputs", 0, "strings", 0, "cable"),
    ),
    ({}, "an energy meter and a main switch at board `main`", ("boards",)),
    ({"boards": {"b": {}}}, "an energy meter and a main switch at board `b`", ("boards", "b")),
    (
        {"boards": {"main": {}, "shed": {"fed_from": "main"}}, "inverters.roof.connected_to": "shed"},
        "a circuit-breaker at board `shed`",
        ("boards", "shed"),
    ),
    ({"loads.oven": {"power": "2 kW"}}, "a circuit-breaker for `oven`", ("loads", "oven")),
    ({}, "a main earthing terminal with an earth electrode", ("earthing",)),
    ({"earthing": {}}, "bonding of the module frames", ("earthing",)),
    ({"earthing": {}, "supply.earthing_system": "TT"}, "an earth electrode", ("earthing",)),
]


@pytest.mark.parametrize(("changes", "words", "at"), ASSUMED)
def test_what_is_assumed_is_said_where_the_spec_leaves_it_out(changes, words, at) -> None:
    said = [finding for finding in system(changes).assumptions if words in str(finding.what)]
    assert [finding.at for finding in said] == [at]
    (finding,) = assumed(said)
    assert (finding.code, finding.severity) == ("AS01", Severity.ASSUMPTION)
    assert str(finding.message) == f"assumed: {said[0].what}"
    assert finding.device == said[0].device
    assert isinstance(finding.device, str)
    assert said[0].remedy


@pytest.mark.parametrize(("status", "drawn"), [("new", "new"), ("existing", "new"), ("future", "future")])
@pytest.mark.parametrize(
    ("unit", "circuit"),
    [("inverters.roof", "inverters.roof.circuit"), ("inverters.roof", "inverters.roof.inputs.0.circuit"),
     ("loads.oven", "loads.oven.circuit")],
)  # fmt: skip
def test_what_is_assumed_never_passes_for_existing(unit: str, circuit: str, status: str, drawn: str) -> None:
    """Nobody looked whether there is an isolator at the old inverter; the word beside it says that it is assumed."""
    left_out = {"loads.oven": {"power": "2 kW"}} if unit == "loads.oven" else {circuit: None}
    made = system({**left_out, f"{unit}.status": status})
    devices = [each for each in made.of(Apparatus) if each.key.startswith(f"{circuit}.")]
    assert devices
    assert {(each.status, each.assumed, str(status_word(each))) for each in devices} == {(drawn, True, "assumed")}


def test_a_built_in_switch_needs_no_isolator() -> None:
    changes = {"types.inverters.t.dc_switch": True, "inverters.roof.inputs.0.circuit": None}
    built = system(changes)
    assert [d for d in built.of(Apparatus) if d.dc] == []
    assert not any("DC isolator" in str(finding.what) for finding in built.assumptions)


def test_a_complete_spec_assumes_nothing() -> None:
    changes = {
        "types.cables": {"NYM": {}, "solar": {"insulation": "EN 50618"}},
        "types.inverters.t.interface_protection": True,
        "inverters.roof.circuit.1.type": "NYM",
        "boards": {"main": {"circuit": [ISOLATOR]}},
        "earthing": {"electrode": {}, "bonding": [{"to": "frames", "purpose": "array_frame"}]},
    }
    assert system(changes).assumptions == ()


@pytest.mark.parametrize(
    ("name", "keys"),
    [
        ("roof", ("inverters.roof-1", "inverters.roof-2")),
        ("roof-2", ("inverters.roof-2",)),
        ("main", ("boards.main",)),
        ("oven", ("loads.oven",)),
        ("log", ("data.devices.log",)),
        ("limiter", ("boards.main.circuit.0",)),
    ],
)
def test_names_and_ids_stand_for_devices(name, keys) -> None:
    changes = {
        "inverters.roof.count": 2,
        "boards": {"main": {"circuit": [{"kind": "meter", "purpose": "feed_in_limit", "id": "limiter"}]}},
        "loads.oven": {"power": "2 kW"},
        "data": {"devices": {"log": {"kind": "logger"}}},
    }
    assert system(changes).names[name] == keys


def test_boards_stand_below_the_board_that_feeds_them_before_its_inverters() -> None:
    boards = {"sub": {"fed_from": "main"}, "main": {}, "sub2": {"fed_from": "sub"}}
    built = system({"boards": boards, "inverters.roof.connected_to": "main"})
    assert [device.key for device in built.of(Busbar)] == ["boards.main", "boards.sub", "boards.sub2"]
    assert built.children["boards.main"] == ("boards.sub.circuit.0", "inverters.roof.circuit.0")


def test_a_long_row_of_boards() -> None:
    """As many boards one behind the other as nobody builds; the spec is valid all the same."""
    count = 1500
    boards = {"b0": {}, **{f"b{n}": {"fed_from": f"b{n - 1}", "circuit": [BREAKER]} for n in range(1, count)}}
    built = system({"boards": boards, "inverters.roof.connected_to": f"b{count - 1}"})
    assert len(list(built.of(Busbar))) == count
    assert sum(isinstance(device, Busbar) for device in built.upstream("inverters.roof")) == count


def test_a_battery_at_an_inverter_is_on_its_dc_side() -> None:
    built = system({"batteries": {"store": {"inverter": "roof"}}})
    battery = built.devices["batteries.store"]
    assert (battery.parent, battery.dc) == ("inverters.roof", True)


def test_cable_marking_is_that_of_its_type() -> None:
    built = system({"types.cables": {"NYM-J": {}}, "inverters.roof.circuit.1.type": "NYM-J"})
    cables = [cable.marking for cable in built.of(Cable)]
    assert cables == ["NYM-J"]


def test_the_base_is_not_changed_by_the_tests() -> None:
    assert BASE["inverters"] == {"roof": UNIT}


@pytest.mark.parametrize("device", [{"test_class": "2"}, {"type": "arrester"}])
def test_a_stated_type_of_surge_protection_is_not_assumed(device) -> None:
    changes = {
        "types.dc_devices": {"arrester": {"kind": "surge_protection", "test_class": "1+2"}},
        "inverters.roof.inputs.0.circuit": [{"kind": "surge_protection", **device}],
    }
    assert "type 2" not in [str(each.what) for each in system(changes).assumptions]


@pytest.mark.parametrize(
    ("key", "of_the_copy"),
    [
        ("inverters.hall", "inverters.hall.2"),
        ("inverters.hall.inputs.0", "inverters.hall.2.inputs.0"),
        ("inverters.hallway.inputs.0", "inverters.hallway.inputs.0"),  # begins alike and belongs to another
        ("boards.main", "boards.main"),  # shorter
        ("earth", "earth"),
        ("inverters.shed.inputs.0", "inverters.shed.inputs.0"),
    ],
)
def test_a_copy_has_keys_of_its_own_for_what_belongs_to_the_first(key: str, of_the_copy: str) -> None:
    assert Copy.of("inverters.hall", "inverters.hall.2", 2, {"-TB1": "-TB2"}, {}).key_of(key) == of_the_copy


CORES = [
    ({}, 5),  # three lines, neutral, protective conductor
    ({"cores": 4}, 4),
    ({"protective_section": "6 mm2"}, 5),  # a core may be smaller than the others
    ({"protective_conductor": "core"}, 5),
    ({"protective_conductor": "separate"}, 4),
    ({"protective_conductor": "armour", "armour_section": "20 mm2"}, 4),
]


@pytest.mark.parametrize(("given", "count"), CORES)
def test_a_protective_conductor_beside_the_cable_is_no_core(given: dict[str, Any], count: int) -> None:
    """IEC 60364-5-54:2011 543.2.1: a conductor in a multicore cable, a separate one, or armour."""
    built = system({"inverters.roof.circuit.1": {"kind": "cable", "length": "20 m", **given}})
    cable = built.devices["inverters.roof.circuit.1"]
    assert isinstance(cable, Cable)
    assert cores(built, cable) == count
