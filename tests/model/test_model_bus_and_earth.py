"""Data chains with counted inverters, and the conductors at the main earthing terminal."""

from __future__ import annotations

import pytest
from small_specs import system


def chains(steps, more=None):
    changes = {
        "inverters.roof.count": 3,
        "data": {"devices": {"log": {"kind": "logger"}}, "chains": {"bus1": {"devices": steps, **(more or {})}}},
    }
    return system(changes).chains


ROOF = {"device": "roof", "address": 11, "length": "4 m", "terminated": True}


def test_a_counted_inverter_becomes_neighbours_with_consecutive_addresses() -> None:
    (chain,) = chains([{"device": "log"}, ROOF])
    assert [node.device for node in chain.nodes[1:]] == [f"inverters.roof-{n}" for n in (1, 2, 3)]
    assert [node.address for node in chain.nodes] == [None, 11, 12, 13]
    assert [node.length_m for node in chain.nodes] == [None, 4, 4, 4]


def test_the_termination_is_at_the_last_of_them() -> None:
    (chain,) = chains([{"device": "log", "terminated": True}, ROOF])
    assert [node.terminated for node in chain.nodes] == [True, False, False, True]


def test_at_the_head_of_a_chain_the_first_of_them_is_terminated() -> None:
    """A resistor belongs to both ends of the cable (TIA-485-A), which is the first neighbour here."""
    first = {"device": "roof", "address": 1, "terminated": True}
    (chain,) = chains([first, {"device": "log", "terminated": True}])
    assert [node.terminated for node in chain.nodes] == [True, False, False, True]


@pytest.mark.parametrize(
    ("more", "master"),
    [({}, "data.devices.log"), ({"master": "roof-2"}, "inverters.roof-2"), ({"master": "roof"}, "inverters.roof-1")],
)
def test_the_master_is_named_or_the_only_data_device(more, master) -> None:
    (chain,) = chains([{"device": "log"}, ROOF], more)
    assert chain.master == master


def test_no_master_without_a_data_device() -> None:
    (chain,) = chains([{"device": "roof-1"}, {"device": "roof-2"}])
    assert chain.master == ""


@pytest.mark.parametrize(("cable", "marking"), [("Cat 6", "Cat 6"), (None, "")])
def test_the_marking_of_a_cable_without_a_type_is_its_name(cable, marking) -> None:
    (chain,) = chains([{"device": "log"}, ROOF], {"cable": cable} if cable else {})
    assert (chain.marking, chain.shielded) == (marking, None)


def conductors(changes):
    return [(str(each.to), each.purpose, each.assumed) for each in system(changes).earth_conductors]


ELECTRODE = {"earthing": {"electrode": {"kind": "rod"}, "bonding": [{"to": "frames", "purpose": "array_frame"}]}}
NO_KIND = {"earthing": {"electrode": {}, "bonding": [{"to": "frames", "purpose": "array_frame"}]}}
UNKNOWN = "earth electrode, kind not stated"
NO_ELECTRODE = {"earthing": {"bonding": [{"to": "frames", "purpose": "array_frame"}]}}


@pytest.mark.parametrize(
    ("earthing_system", "changes", "expected"),
    [
        ("TN-S", NO_ELECTRODE, [("PE of the supply", "supply", False)]),
        ("TN-C-S", NO_ELECTRODE, [("PEN of the supply", "supply", False)]),
        ("TN-S", ELECTRODE, [("rod electrode", "earthing", False), ("PE of the supply", "supply", False)]),
        ("TT", ELECTRODE, [("rod electrode", "earthing", False)]),
        ("TT", NO_KIND, [(UNKNOWN, "earthing", False)]),
        ("TN-S", NO_KIND, [(UNKNOWN, "earthing", False), ("PE of the supply", "supply", False)]),
        ("IT", ELECTRODE, [("rod electrode", "earthing", False)]),
        ("TT", NO_ELECTRODE, [(UNKNOWN, "earthing", True)]),
    ],
)
def test_conductors_at_the_earth_terminal_by_system(earthing_system, changes, expected) -> None:
    """IEC 60364-1:2005 312.2: a TN network brings the protective conductor, TT and IT have their own electrode."""
    found = conductors({"supply.earthing_system": earthing_system, **changes})
    assert found == [*expected, ("frames", "array_frame", False)]


@pytest.mark.parametrize("earthing_system", ["TN-S", "TN-C-S", "TT", "IT"])
def test_without_an_earthing_block_electrode_and_frames_are_assumed(earthing_system) -> None:
    found = conductors({"supply.earthing_system": earthing_system})
    assert (UNKNOWN, "earthing", True) in found
    assert ("module frames", "array_frame", True) in found


def test_lightning_protection_has_its_conductor() -> None:
    changes = {"earthing": {"electrode": {}, "lightning_protection": {"level": "II", "separation_kept": True}}}
    assert ("lightning protection system", "lightning", False) in conductors(changes)


@pytest.mark.parametrize(
    ("earthing_system", "to"),
    [("TN-S", "earthing point of the supply (PE)"), ("TN-C-S", "earthing point of the supply (PEN)")],
)
def test_a_conductor_without_an_electrode_goes_to_the_supply(earthing_system: str, to: str) -> None:
    """IEC 60364-5-54:2011 542.1.1 (from memory): a TN supply brings its own earthing."""
    given = {"conductor": {"section": "16 mm2", "length": "4 m"}, **NO_ELECTRODE["earthing"]}
    (found, _) = system({"supply.earthing_system": earthing_system, "earthing": given}).earth_conductors
    assert (str(found.to), found.purpose, found.section_mm2, found.length_m) == (to, "earthing", 16.0, 4.0)
    assert found.at == ("earthing", "conductor")
