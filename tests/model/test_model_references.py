"""Names that lead nowhere: one finding each, at the very word that is wrong. Own convention."""

from __future__ import annotations

import pytest
from small_specs import UNIT, spec

from sld.spec.references import dangling

CHAIN = {"devices": [{"device": "log"}, {"device": "roof"}]}
DATA = {"devices": {"log": {"kind": "logger"}}, "chains": {"bus": CHAIN}}
TO_THE_SECOND = {"devices": [{"device": "log"}, {"device": "roof-2"}]}
SECOND, ENDED = {"device": "roof-2"}, {"device": "roof", "terminated": True}
MANY = {f"log {number}": {"kind": "logger"} for number in range(5)}
RING = {"a": {"fed_from": "b"}, "b": {"fed_from": "a"}}
INPUT = "inverters.roof.inputs.0"

MISTAKES = [
    ("SP51", {"inverters.roof.type": "u"}, ("inverters", "roof", "type")),
    (
        "SP51",
        {f"{INPUT}.strings.0.module": "n"},
        ("inverters", "roof", "inputs", 0, "strings", 0, "module"),
    ),
    ("SP51", {"inverters.roof.circuit.1.type": "NYM"}, ("inverters", "roof", "circuit", 1, "type")),
    ("SP51", {"inverters.roof.circuit.0.type": "mcb"}, ("inverters", "roof", "circuit", 0, "type")),
    ("SP51", {f"{INPUT}.circuit.0.type": "sw"}, ("inverters", "roof", "inputs", 0, "circuit", 0, "type")),
    ("SP51", {f"{INPUT}.junction_box": "box"}, ("inverters", "roof", "inputs", 0, "junction_box")),
    ("SP51", {"inverters.roof.circuit.0.enclosure": "barn"}, ("inverters", "roof", "circuit", 0, "enclosure")),
    (
        "SP51",
        {"site.locations": {"cellar": {}}, "inverters.roof.location": "attic"},
        ("inverters", "roof", "location"),
    ),
    (
        "SP51",
        {"boards": {"main": {}, "b": {"fed_from": "m"}}, "inverters.roof.connected_to": "main"},
        ("boards", "b", "fed_from"),
    ),
    ("SP51", {"inverters.roof.connected_to": "barn"}, ("inverters", "roof", "connected_to")),
    ("SP51", {"batteries": {"store": {"inverter": "rouf"}}}, ("batteries", "store", "inverter")),
    (
        "SP51",
        {"data": {**DATA, "links": [{"from": "log", "to": "r", "medium": "ethernet"}]}},
        ("data", "links", 0, "to"),
    ),
    (
        "SP51",
        {"data": {**DATA, "chains": {"bus": {**CHAIN, "master": "logg"}}}},
        ("data", "chains", "bus", "master"),
    ),
    (
        "SP51",
        {"data": {**DATA, "chains": {"bus": {**CHAIN, "shield_earthed_at": ["x"]}}}},
        ("data", "chains", "bus", "shield_earthed_at", 0),
    ),
    (
        "SP51",
        {"data": {**DATA, "chains": {"bus": {"devices": [{"device": "log"}, {"device": "x"}]}}}},
        ("data", "chains", "bus", "devices", 1, "device"),
    ),
    (
        "SP57",
        {"data": {**DATA, "chains": {"bus": {"devices": [{"device": "log"}, *[{"device": "roof"}] * 6]}}}},
        ("data", "chains", "bus", "devices", 2, "device"),
    ),
    (
        "SP57",
        {"inverters.roof.count": 2, "data": {**DATA, "chains": {"bus": {"devices": [{"device": "roof"}, SECOND]}}}},
        ("data", "chains", "bus", "devices", 1, "device"),
    ),
    (
        "SP57",
        {"data": {"devices": MANY, "chains": {name: {"devices": [{"device": name}, ENDED]} for name in MANY}}},
        ("data", "chains", "log 4", "devices", 1, "terminated"),
    ),
    ("SP52", {"loads": {"roof": {"power": "1 kW"}}}, ("inverters", "roof")),
    ("SP52", {"inverters.roof.circuit.0.id": "roof"}, ("inverters", "roof", "circuit", 0, "id")),
    (
        "SP52",
        {"inverters.roof.circuit.0.designation": "-Q1", "inverters.roof.circuit.2.designation": "-Q1"},
        ("inverters", "roof", "circuit", 2, "designation"),
    ),
    (
        "SP52",
        {"inverters.roof.count": 2, "inverters.roof.circuit.0.designation": "-Q1"},
        ("inverters", "roof", "circuit", 0, "designation"),
    ),
    ("SP52", {"inverters.roof.count": 2, "inverters.roof.designation": "-TB9"}, ("inverters", "roof", "designation")),
    (
        "SP52",
        {"inverters.roof.count": 2, "inverters.roof.circuit.0.id": "q"},
        ("inverters", "roof", "circuit", 0, "id"),
    ),
    (
        "SP52",  # each of two equal inverters has a box of its own: jb-1 and jb-2
        {
            "inverters.roof.count": 2,
            "inverters.roof.inputs.0.junction_box": "jb",
            "junction_boxes": {"jb": {}, "jb-1": {}},
        },
        ("junction_boxes", "jb-1"),
    ),
    ("SP53", {"inverters.roof.inputs": UNIT["inputs"] * 3}, ("inverters", "roof", "inputs")),
    (
        "SP53",
        {"types.ac_devices": {"b": {"kind": "breaker", "designation": "-Q7"}}},
        ("types", "ac_devices", "b", "designation"),
    ),
    ("SP53", {"types.dc_devices": {"i": {"kind": "isolator", "id": "i"}}}, ("types", "dc_devices", "i", "id")),
    (
        "SP53",
        {"types.ac_devices": {"x": {"kind": "fuse"}}, "inverters.roof.circuit.0.type": "x"},
        ("inverters", "roof", "circuit", 0, "type"),
    ),
    ("SP54", {"boards": {"a": {}, "b": {}}, "inverters.roof.connected_to": "a"}, ("boards", "b")),
    ("SP54", {"boards": RING, "inverters.roof.connected_to": "a"}, ("boards",)),
    (
        "SP54",
        {
            "boards": {"m": {}, **RING},
            "inverters.roof.connected_to": "m",
        },
        ("boards", "a", "fed_from"),
    ),
    ("SP55", {"boards": {"m": {}, "a": {"fed_from": "m"}}}, ("inverters", "roof")),
    (
        "SP55",
        {"batteries": {"store": {"inverter": "roof", "connected_to": "main"}}, "boards": {"main": {}}},
        ("batteries", "store", "inverter"),
    ),
    ("SP56", {"supply.ownership_boundary": "service_fuse"}, ("supply", "ownership_boundary")),
    (
        "SP56",
        {"supply.ownership_boundary": "supply_meter", "boards": {"main": {"circuit": [{"kind": "main_switch"}]}}},
        ("supply", "ownership_boundary"),
    ),
]  # fmt: skip


@pytest.mark.parametrize(("code", "changes", "at"), MISTAKES)
def test_one_finding_at_the_very_place(code, changes, at) -> None:
    found = dangling(spec(changes))
    assert [(finding.code, finding.at) for finding in found] == [(code, at)]
    assert found[0].message
    assert found[0].remedy


@pytest.mark.parametrize(
    "changes",
    [
        {},
        {"data": DATA},
        {"inverters.roof.count": 2, "data": {**DATA, "chains": {"bus": TO_THE_SECOND}}},
        {"inverters.roof.location": "anywhere"},
        {"boards": {"m": {}, "a": {"fed_from": "m"}}, "inverters.roof.connected_to": "a"},
    ],
)  # fmt: skip
def test_good_names_are_let_through(changes) -> None:
    assert dangling(spec(changes)) == []
