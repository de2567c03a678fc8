"""Words for devices: terms of IEC 60050-442, -441 and IEC 61643 (from memory), one table for all that is printed."""

from __future__ import annotations

import pytest
from small_specs import system

from sld.model.wording import built_in, device_word, plural

AC = "inverters.roof.circuit"
DC = "inverters.roof.inputs.0.circuit"


@pytest.mark.parametrize(
    ("circuit", "block", "word"),
    [
        (AC, {"kind": "breaker"}, "circuit-breaker"),
        (AC, {"kind": "breaker", "construction": "moulded_case"}, "moulded-case circuit-breaker"),
        (AC, {"kind": "rcd"}, "RCD"),
        (AC, {"kind": "rcbo"}, "RCBO"),
        (AC, {"kind": "fuse"}, "fuse"),
        (AC, {"kind": "fuse", "switch": True}, "fuse-switch-disconnector"),
        (AC, {"kind": "surge_protection"}, "surge protective device"),
        (AC, {"kind": "interface_protection"}, "interface protection"),
        (DC, {"kind": "isolator"}, "DC isolator"),
        (DC, {"kind": "surge_protection"}, "DC surge protective device"),
        (DC, {"kind": "diode"}, "blocking diode"),
        (DC, {"kind": "disconnector"}, "DC disconnector"),
        (DC, {"kind": "plug_connector"}, "plug connector"),
        (DC, {"kind": "rapid_shutdown"}, "rapid shutdown device"),
        (DC, {"kind": "insulation_monitor"}, "insulation monitoring device"),
    ],
)
def test_word_for_a_device(circuit: str, block: dict[str, object], word: str) -> None:
    assert device_word(system({circuit: [block]}).devices[f"{circuit}.0"]) == word


@pytest.mark.parametrize(
    ("word", "count", "text"),
    [("RCD", 1, "1 RCD"), ("RCD", 2, "2 RCDs"), ("main switch", 2, "2 main switches"),
     ("interface protection", 2, "2 interface protection")],
)  # fmt: skip
def test_number_of_devices(word: str, count: int, text: str) -> None:
    assert plural(word, count) == text


TYPE = "types.inverters.t"


@pytest.mark.parametrize(
    ("changes", "found"),
    [
        ({}, ("interface protection",)),
        ({f"{TYPE}.interface_protection": False}, ()),
        ({f"{TYPE}.dc_switch": True, f"{TYPE}.interface_protection": False}, ("DC switch",)),
        (
            {f"{TYPE}.dc_surge_protection": "2", f"{TYPE}.ac_surge_protection": "1+2"},
            ("DC surge protection type 2", "AC surge protection type 1+2", "interface protection"),
        ),
        ({AC: [{"kind": "interface_protection"}]}, ()),
        ({AC: [{"kind": "interface_protection"}], f"{TYPE}.interface_protection": True}, ("interface protection",)),
    ],
)
def test_what_is_built_into_an_inverter(changes: dict[str, object], found: tuple[str, ...]) -> None:
    made = system(changes)
    assert built_in(made, made.devices["inverters.roof"].type) == found


@pytest.mark.parametrize(
    ("changes", "is_said"),
    [
        ({}, True),
        ({f"{TYPE}.interface_protection": True}, False),
        ({f"{TYPE}.interface_protection": False}, False),
        ({AC: [{"kind": "interface_protection"}]}, False),
    ],
)
def test_interface_protection_taken_as_built_in_is_said(changes: dict[str, object], is_said: bool) -> None:
    found = [each for each in system(changes).assumptions if "interface protection" in each.message]
    assert bool(found) == is_said
    assert all(each.device == "inverters.roof" for each in found)
