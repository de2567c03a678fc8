"""Words for devices: terms of IEC 60050-442, -441 and IEC 61643 (from memory), one table for all that is printed."""

from __future__ import annotations

import pytest
from small_specs import system

from sld.model.device import Apparatus, InverterUnit
from sld.model.wording import built_in, device_counts, device_word, protects_at_interface

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
        (DC, {"kind": "fuse"}, "array fuse"),  # behind where strings are joined; each string has a string fuse
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
    assert str(device_word(system({circuit: [block]}).devices[f"{circuit}.0"])) == word


def test_the_fuse_of_a_string_is_a_string_fuse() -> None:
    made = system({"inverters.roof.inputs.0.string_fuses": {"rated_current": "15 A"}})
    words = [str(device_word(each)) for each in made.of(Apparatus) if each.dc]
    assert "string fuse" in words
    assert "array fuse" not in words


@pytest.mark.parametrize(
    ("blocks", "texts"),
    [
        ([{"kind": "rcd"}], ["1 RCD"]),
        ([{"kind": "rcd"}, {"kind": "fuse"}, {"kind": "rcd"}], ["1 fuse", "2 RCDs"]),
        ([{"kind": "main_switch"}] * 2, ["2 main switches"]),
        ([{"kind": "interface_protection"}] * 2, ["2 interface protection"]),
        ([{"kind": "fuse", "switch": True}] * 2, ["2 fuse-switch-disconnectors"]),
    ],
)
def test_number_of_devices(blocks: list[dict[str, object]], texts: list[str]) -> None:
    devices = [device for device in system({AC: blocks}).of(Apparatus) if device.key.startswith(AC)]
    assert sorted(map(str, device_counts(devices))) == texts


TYPE = "types.inverters.t"


@pytest.mark.parametrize(
    ("changes", "found", "protects"),
    [
        ({}, [], True),
        ({f"{TYPE}.interface_protection": False}, [], False),
        ({f"{TYPE}.dc_switch": True, f"{TYPE}.interface_protection": False}, ["DC switch"], False),
        (
            {f"{TYPE}.dc_surge_protection": "2", f"{TYPE}.ac_surge_protection": "1+2"},
            ["DC surge protection type 2", "AC surge protection type 1+2"],
            True,
        ),
        ({AC: [{"kind": "interface_protection"}]}, [], False),
        ({AC: [{"kind": "interface_protection"}], f"{TYPE}.interface_protection": True}, [], True),
    ],
)
def test_what_is_built_into_an_inverter(changes: dict[str, object], found: list[str], protects: bool) -> None:
    made = system(changes)
    unit = made.devices["inverters.roof"]
    assert isinstance(unit, InverterUnit)
    assert list(map(str, built_in(unit.type))) == found
    assert protects_at_interface(made, unit.type) == protects


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
    found = [each for each in system(changes).assumptions if "interface protection" in str(each.what)]
    assert bool(found) == is_said
    assert all(each.device == "inverters.roof" for each in found)
