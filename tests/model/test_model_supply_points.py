"""A spec with two supply points: what stands behind which, how it is designated, and what is told of each alone."""

from __future__ import annotations

import pytest
from small_specs import UNIT, changed

from sld import run
from sld.finding import Finding
from sld.model.device import Busbar
from sld.run import Checked

RCD = {"kind": "rcd", "rated_current": "40 A", "residual_current": "300 mA", "sensitivity": "A", "selective": True}
TWO = {
    "supply": {"earthing_system": "TN-S", "voltage": "400 V", "service_fuse": "63 A", "country": "AT",
               "prospective_fault_current": "6 kA", "loop_impedance": "0.3 ohm"},
    "further_supplies.well": {
        "name": "pump house",
        "supply": {"earthing_system": "TT", "voltage": "400 V", "service_fuse": "35 A",
                   "prospective_fault_current": "3 kA", "loop_impedance": "0.5 ohm", "supply_point": "No 7"},
        "earthing": {"electrode": {"kind": "rod", "resistance": "45 ohm"}, "extraneous_parts": False},
    },
    "boards.main": {"circuit": [{"kind": "meter", "purpose": "supply"}, {"kind": "main_switch"}]},
    "boards.pump": {"fed_from": "well", "circuit": [{"kind": "main_switch"}, RCD]},
    "boards.shed": {"fed_from": "pump", "circuit": [{"kind": "breaker"}, {"kind": "cable", "length": "9 m"}]},
    "inverters.roof.connected_to": "main",
    "inverters.barn": {**UNIT, "connected_to": "shed"},
    "loads.lamps": {"power": "1 kW", "connected_to": "shed"},
}  # fmt: skip


def two(**changes: object) -> Checked:
    """Return the farm with two supply points, changed: `a__b` is the key `b` of `a`, None leaves one of TWO out."""
    values = TWO | {key.replace("__", "."): value for key, value in changes.items()}
    return run.check_mapping(changed({key: value for key, value in values.items() if value is not None}))


@pytest.fixture(scope="module")
def farm() -> Checked:
    return two()


BEHIND = [
    ("supply", "-GA1", 0),
    ("supply.service_fuse", "-FC1", 0),
    ("boards.main", "-UC1", 0),
    ("inverters.roof", "-TB1", 0),
    ("further_supplies.well.supply", "-GA2", 1),
    ("further_supplies.well.supply.service_fuse", "-FC2", 1),
    ("boards.pump", "-UC2", 1),
    ("boards.shed", "-UC3", 1),
    ("inverters.barn", "-TB2", 1),
    ("loads.lamps", "-EZ1", 1),
]


@pytest.mark.parametrize(("key", "designation", "part"), BEHIND)
def test_each_device_stands_behind_one_supply_point(farm: Checked, key: str, designation: str, part: int) -> None:
    """Numbers run through the drawing: a designation stands for one thing on it (IEC 81346-1)."""
    assert [key in each.system.devices for each in farm.parts] == [part == 0, part == 1]
    assert farm.devices[key].designation == designation


def test_no_designation_stands_twice(farm: Checked) -> None:
    parts = [part.system for part in farm.parts]
    names = [each.designation for each in farm.devices.values()]
    names += [each.designation for system in parts for each in system.earth_conductors]
    names += [system.earthing_designation for system in parts]
    assert len(names) == len(set(names))


def test_adding_a_supply_point_renumbers_nothing_behind_the_first(farm: Checked) -> None:
    alone = run.check_mapping(changed({"supply": TWO["supply"], "boards.main": TWO["boards.main"]}))
    for key, device in alone.system.devices.items():
        assert farm.devices[key].designation == device.designation


EARTHING = [("boards.main", "TN-S"), ("inverters.roof", "TN-S"), ("boards.pump", "TT"), ("inverters.barn", "TT")]


@pytest.mark.parametrize(("key", "earthing_system"), EARTHING)
def test_earthing_system_is_that_of_the_supply_in_front(farm: Checked, key: str, earthing_system: str) -> None:
    (system,) = [part.system for part in farm.parts if key in part.system.devices]
    assert system.earthing_at(key) == earthing_system


def test_each_supply_point_has_its_main_board_and_electrode(farm: Checked) -> None:
    first, second = (part.system for part in farm.parts)
    assert (first.main_board().key, second.main_board().key) == ("boards.main", "boards.pump")
    assert first.electrode_at("boards.main") is None
    electrode = second.electrode_at("boards.shed")
    assert electrode is not None
    assert electrode.resistance_ohm == 45
    assert second.electrode_path("boards.shed") == ("further_supplies", "well", "earthing", "electrode")
    assert [each.key for each in second.of(Busbar)] == ["boards.pump", "boards.shed"]


def test_the_country_of_the_first_supply_is_that_of_the_site(farm: Checked) -> None:
    assert [part.system.supply.country for part in farm.parts] == ["AT", "AT"]


def told(checked: Checked, code: str) -> list[Finding]:
    return [each for each in checked.findings if each.code == code]


BREAKER = {"kind": "breaker", "breaking_capacity": "4.5 kA", "rated_current": "20 A", "curve": "C"}
CIRCUIT = [BREAKER, {"kind": "cable", "length": "9 m"}]


def test_a_breaking_capacity_is_held_against_the_fault_current_of_its_own_supply() -> None:
    """IEC 60364-4-43 434.5.1: 4.5 kA break 3 kA, and not 6 kA."""
    behind_second = two(inverters__barn__circuit=CIRCUIT)
    assert not told(behind_second, "FA01")
    (finding,) = told(two(inverters__roof__circuit=CIRCUIT), "FA01")
    assert finding.at == ("inverters", "roof", "circuit", 0, "breaking_capacity")
    at_6_ka = {"further_supplies__well__supply__prospective_fault_current": "6 kA"}
    able = [{"kind": "breaker", "breaking_capacity": "10 kA"}]
    (finding,) = told(two(inverters__barn__circuit=CIRCUIT, boards__shed__circuit=able, **at_6_ka), "FA01")
    assert finding.device == "inverters.barn.circuit.0"


def test_what_a_supply_lacks_is_told_at_its_own_place() -> None:
    """IEC 60364-4-41 411.5, 411.6: TT needs an electrode; 462.1: a switch at each origin, ahead of all else."""
    circuit = [{"kind": "surge_protection"}, RCD]
    lacking = two(further_supplies__well__earthing={"extraneous_parts": False}, boards__pump__circuit=circuit)
    (electrode,) = told(lacking, "EA05")
    assert electrode.at == ("further_supplies", "well", "earthing", "electrode")
    assert electrode.device == "further_supplies.well.earthing"
    (switch,) = told(lacking, "AC20")
    assert switch.at == ("boards", "pump", "circuit")


def test_what_is_common_to_both_is_told_once(farm: Checked) -> None:
    assert len({(each.code, each.at, str(each.message)) for each in farm.findings}) == len(farm.findings)
    (revision,) = told(two(project__document_status="for notification"), "PW03")
    assert revision.at[0] == "project"


def test_an_acceptance_behind_either_supply_point_counts() -> None:
    entry = {"reason": "tested", "role": "designer", "date": "2026-01-05"}
    places = [
        {**entry, "code": "EA05", "at": "further_supplies.well.earthing"},
        {**entry, "code": "EA13", "at": "earthing"},
    ]
    found = two(further_supplies__well__earthing={}, accept=places)
    (electrode,) = told(found, "EA05")
    assert electrode.accepted is not None
    assert [each.accepted is not None for each in told(found, "EA13")] == [True, False]
    assert not told(found, "ACC01")


def test_sums_are_of_one_supply_point() -> None:
    """10 kW behind each, not 20 kW behind the first: an export limit of 12 kW at either asks for nothing."""
    from sld.ratings.symbol import Symbol

    farm = two(supply__export_limit="12 kW", further_supplies__well__supply__export_limit="8 kW")
    assert [part.ratings["", Symbol.PAC].value for part in farm.parts] == [10_000, 10_000]
    (limit,) = told(farm, "ME04")
    assert limit.at == ("further_supplies", "well", "supply", "export_limit")


def test_a_supply_point_may_have_loads_alone() -> None:
    farm = two(inverters__barn=None)
    assert farm.parts[1].system.main_board().designation == "-UC2"
    assert not [each for each in farm.parts[1].system.earth_conductors if each.purpose == "array_frame"]
