"""Places of devices, and what a cable passes from one to another. Common practice, no source."""

from __future__ import annotations

from typing import Any

import pytest
from small_specs import system

from sld.model.device import Cable
from sld.model.places import passage, place_of, place_words

STRING: dict[str, Any] = {"module": "m", "modules_in_series": 18, "cable": {"length": "9 m"}}
ROOF = {**STRING, "location": "roof"}
AC = "inverters.roof.circuit.1"
OWN = "inverters.roof.inputs.0.strings.0.cable"
SHARED = "inverters.roof.inputs.0.circuit.1"
INPUT = "inverters.roof.inputs.0"
UNIT = {"inverters.roof.location": "attic"}
JOINED = {f"{INPUT}.circuit": [{"kind": "isolator"}, {"kind": "cable", "length": "5 m"}]}
BOXED = {
    "junction_boxes": {"jb": {"location": "gable"}},
    f"{INPUT}.junction_box": "jb",
    f"{INPUT}.circuit": [{"kind": "isolator", "enclosure": "jb"}, {"kind": "cable", "length": "5 m"}],
}


@pytest.mark.parametrize(
    ("changes", "cable", "words"),
    [
        ({}, AC, ""),
        (UNIT, AC, ""),  # the other end is not known
        ({**UNIT, "boards": {"main": {"location": "cellar"}}}, AC, "attic – cellar"),
        ({**UNIT, "boards": {"main": {"location": "attic"}}}, AC, ""),  # it stays in one place
        ({**UNIT, "boards": {"main": {"location": "cellar"}}, "inverters.roof.circuit.2.location": "stairs"}, AC,
         "stairs – cellar"),
        ({**UNIT, f"{INPUT}.strings": [STRING]}, OWN, ""),
        ({**UNIT, f"{INPUT}.strings": [ROOF]}, OWN, "roof – attic"),
        ({f"{INPUT}.strings": [ROOF]}, OWN, ""),
        ({**UNIT, f"{INPUT}.strings": [ROOF], f"{INPUT}.circuit.0.location": "loft"}, OWN, "roof – loft"),
        ({**UNIT, **BOXED, f"{INPUT}.strings": [ROOF]}, OWN, "roof – gable"),
        ({**UNIT, **BOXED, f"{INPUT}.strings": [ROOF]}, SHARED, "gable – attic"),
        # a joint of unknown place between two cables tells nothing of either
        ({**UNIT, f"{INPUT}.strings": [ROOF], **JOINED},
         OWN, ""),
        ({**UNIT, f"{INPUT}.strings": [ROOF], **JOINED},
         SHARED, ""),
        ({**UNIT, f"{INPUT}.strings": [{**ROOF, "cable": None}, {**ROOF, "cable": None, "location": "wall"}],
          **JOINED}, SHARED, "roof / wall – attic"),
    ],
)  # fmt: skip
def test_passage_of_a_cable(changes: dict[str, Any], cable: str, words: str) -> None:
    found = system(changes)
    device = found.devices[cable]
    assert isinstance(device, Cable)
    assert str(passage(found, device)) == words


@pytest.mark.parametrize(
    ("name", "words"),
    [
        ("roof", "roof (outdoors)"),
        ("outdoor cabinet", "outdoor cabinet"),
        ("attic", "attic"),
        ("nowhere", "nowhere"),
        ("", ""),
    ],
)
def test_outdoor_places_are_told_apart(name: str, words: str) -> None:
    places = {"roof": {"outdoor": True}, "outdoor cabinet": {"outdoor": True}, "attic": {}}
    assert str(place_words(system({"site.locations": places}).site.locations, name)) == words


def test_a_box_and_a_board_give_their_place_to_what_is_in_them() -> None:
    found = system({**BOXED, "boards": {"main": {"location": "cellar"}}, "site.locations": {"gable": {"outdoor": True},
                                                                                          "cellar": {}}})  # fmt: skip
    assert place_of(found, found.devices["inverters.roof.circuit.0"]) == "cellar"
    assert place_of(found, found.devices[f"{INPUT}.circuit.0"]) == "gable"
    assert place_of(found, found.devices["inverters.roof.circuit.2"]) == ""
    assert str(found.enclosures["junction_boxes.jb"]).endswith("gable (outdoors)")
    assert str(found.enclosures["boards.main"]).endswith(", cellar")
