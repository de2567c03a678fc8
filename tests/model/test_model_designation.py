"""Reference designations. Class letters: IEC 81346-2:2009 (from memory); one letter is its main class.

That a designation belongs to its owner and outlives additions is own convention after IEC 81346-1 (product aspect).
"""

from __future__ import annotations

import pytest
from small_specs import UNIT, system

from sld.model.designation import numbers
from sld.model.device import Apparatus
from sld.model.kinds.table import KINDS

BREAKER, CABLE, RCD = {"kind": "breaker"}, {"kind": "cable", "length": "20 m"}, {"kind": "rcd"}


def designations(changes=None) -> dict[str, str]:
    return {device.key: device.designation for device in system(changes).devices.values()}


@pytest.mark.parametrize(
    ("kind", "letters"),
    [
        ("breaker", "FC"),
        ("rcd", "FB"),
        ("surge_protection", "FA"),
        ("isolator", "QB"),
        ("contactor", "QA"),
        ("meter", "PG"),
        ("inverter", "TB"),
        ("transformer", "TA"),
        ("battery", "GB"),
        ("string", "GC"),
        ("cable", "WD"),
        ("board", "UC"),
        ("diode", "RA"),
    ],
)
def test_class_letters(kind, letters) -> None:
    """IEC 81346-2:2009 subclasses (from memory)."""
    assert {row.letters for row in KINDS if row.name == kind} == {letters}


@pytest.mark.parametrize(
    ("names", "given"),
    [
        (["roof"], [1]),
        (["north", "south"], [1, 2]),
        (["inv1", "inv3"], [1, 3]),
        (["inv7", "hall"], [7, 1]),
        (["inv1", "inv3", "hall"], [1, 3, 2]),
        (["north-1", "north-2", "south-1"], [1, 2, 3]),
        (["unit0", "unit1"], [1, 2]),
        (["a2", "b2", "c2"], [2, 1, 3]),
        ([], []),
    ],
)
def test_numbers_from_the_digits_that_names_end_in(names, given) -> None:
    assert numbers(names) == given


@pytest.mark.parametrize("added", ["hall", "inv1", "inv9", "9", "north-2"])
@pytest.mark.parametrize("before", [["roof"], ["inv1", "inv3"], ["north-1", "north-2"], ["hall", "inv2", "barn"]])
def test_a_name_added_at_the_end_renumbers_nobody(before, added) -> None:
    assert numbers([*before, added])[:-1] == numbers(before)


def test_designations_of_one_inverter() -> None:
    found = designations()
    assert found["supply"] == "-GA1"
    assert found["boards.main"] == "-UC1"
    assert found["boards.main.circuit.0"] == "-UC1-PG1"
    assert found["boards.main.circuit.1"] == "-UC1-QB1"
    assert found["inverters.roof"] == "-TB1"
    assert found["inverters.roof.circuit.0"] == "-TB1-FC1"
    assert found["inverters.roof.circuit.1"] == "-TB1-WD1"
    assert found["inverters.roof.circuit.2"] == "-TB1-QB1"
    assert found["inverters.roof.inputs.0"] == "-TB1-XD1"
    assert found["inverters.roof.inputs.0.circuit.0"] == "-TB1-QB2"
    assert found["inverters.roof.inputs.0.strings.0"] == "-TB1-GC1"


LOAD = {"power": "3 kW", "circuit": [BREAKER, CABLE]}
TWO_BOARDS = {"main": {}, "barn": {"fed_from": "main", "circuit": [BREAKER, CABLE]}}


@pytest.mark.parametrize(
    "added",
    [
        {"inverters.shed": UNIT},
        {"loads.oven": LOAD},
        {"batteries.store": {"converter_power": "5 kVA", "circuit": [BREAKER]}},
        {"junction_boxes.box": {}},
        {"supply.service_fuse": "63 A"},
        {"boards": TWO_BOARDS, "inverters.roof.connected_to": "main"},
        {"inverters.roof.circuit": [*UNIT["circuit"], RCD]},
        {"inverters.roof.inputs.0.circuit": [{"kind": "isolator"}, {"kind": "surge_protection"}]},
        {"data": {"devices": {"log": {"kind": "logger"}}}},
        {"earthing": {"electrode": {"kind": "rod"}}},
    ],
    ids=lambda added: next(iter(added)),
)
def test_what_is_added_leaves_the_others_as_they_were(added) -> None:
    """Nothing that was there before is called something else; keys follow the place in the spec."""
    before, after = designations(), designations(added)
    kept = {key: name for key, name in before.items() if key.startswith(("supply", "inverters", "boards.main"))}
    assert {key: after[key] for key in kept} == kept
    assert len(after) == len(set(after.values()))


def test_a_breaker_added_first_moves_only_its_own_class() -> None:
    found = designations({"inverters.roof.circuit": [RCD, BREAKER, *UNIT["circuit"]]})
    assert found["inverters.roof.circuit.2"] == "-TB1-FC2"
    assert found["inverters.roof.circuit.3"] == "-TB1-WD1"
    assert found["inverters.roof.circuit.4"] == "-TB1-QB1"


@pytest.mark.parametrize(
    ("key", "name"),
    [("inverters.roof", "-T1"), ("inverters.roof.circuit.0", "-T1-F1"), ("boards.main", "-U1"), ("supply", "-G1")],
)
def test_one_letter(key, name) -> None:
    assert designations({"drawing": {"designation_letters": 1}})[key] == name


def test_one_letter_gives_nothing_twice() -> None:
    """TA and TB, WD, WE and WF, FA, FB and FC all become one class, so they share their counters."""
    chain = {"devices": [{"device": "log"}, {"device": "roof", "address": 1}]}
    built = system(
        {
            "drawing": {"designation_letters": 1},
            "supply.transformer": {"rated_power": "100 kVA", "primary_voltage": "10 kV", "short_circuit_voltage": 4},
            "supply.service_fuse": "63 A",
            "data": {"devices": {"log": {"kind": "logger"}}, "chains": {"bus1": chain}},
            "earthing": {"bonding": [{"to": "water pipe"}]},
        }
    )
    found = [device.designation for device in built.devices.values()]
    found += [conductor.designation for conductor in built.earth_conductors]
    found += [chain.designation for chain in built.chains]
    found.append(built.earthing_designation)
    assert sorted(found) == sorted(set(found))


@pytest.mark.parametrize(
    ("place", "key"),
    [
        ("inverters.roof.circuit.0.designation", "inverters.roof.circuit.0"),
        ("inverters.roof.designation", "inverters.roof"),
        ("inverters.roof.inputs.0.strings.0.designation", "inverters.roof.inputs.0.strings.0"),
    ],
)
def test_a_given_designation_wins(place, key) -> None:
    assert designations({place: "-QB5"})[key] == "-QB5"


@pytest.mark.parametrize(
    ("place", "taken"),
    [
        ("inverters.roof.circuit.2.designation", "-TB1-FC1"),
        ("inverters.roof.circuit.0.designation", "-TB1-QB1"),
        ("inverters.roof.circuit.0.designation", "-UC1"),
        ("inverters.roof.designation", "-TB2"),
    ],
)
def test_a_given_designation_is_never_given_again(place, taken) -> None:
    found = list(designations({place: taken, "inverters.shed": UNIT}).values())
    assert found.count(taken) == 1
    assert len(found) == len(set(found))


def test_equal_strings_are_written_briefly() -> None:
    built = system({"inverters.roof.inputs.0.strings.0.count": 4})
    group = built.devices["inverters.roof.inputs.0.strings.0"]
    assert group.designation == "-TB1-GC1…4"
    assert group.designations == ("-TB1-GC1", "-TB1-GC2", "-TB1-GC3", "-TB1-GC4")


def test_a_device_stands_for_as_many_as_there_are_strings() -> None:
    strings = {"module": "m", "modules_in_series": 18, "count": 3, "cable": {"length": "9 m"}}
    built = system({"inverters.roof.inputs.0.strings": [strings], "inverters.roof.inputs.0.string_fuses": {}})
    fuse = built.devices["inverters.roof.inputs.0.strings.0.fuse"]
    assert isinstance(fuse, Apparatus)
    assert (fuse.count, fuse.designation) == (3, "-TB1-FC2…4")
    assert built.devices["inverters.roof.inputs.0.strings.0.cable"].count == 3
