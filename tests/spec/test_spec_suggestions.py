"""What is suggested for a key, kind or word that is not known: the right word, where a key belongs, or nothing."""

from __future__ import annotations

import pytest

from sld.finding import Finding
from sld.gallery.spec_intro import SMALLEST as SMALL
from sld.spec import Unusable, load_text
from sld.spec.language.blocks import SHARED, fields_by_key, places
from sld.spec.suggestions import meant_kind, meant_word
from sld.spec.synonyms import _CALLED, meant


def refused(text: str) -> tuple[Finding, ...]:
    with pytest.raises(Unusable) as told:
        load_text(text)
    return tuple(told.value.findings)


# a line of the spec, what stands there instead, and what the remedy must say (common practice, no source, of the words)
INSTEAD = [
    ("open_circuit_voltage: 37.0 V", "Voc: 37.0 V", "write `open_circuit_voltage`"),
    ("open_circuit_voltage: 37.0 V", "Uoc: 37.0 V", "write `open_circuit_voltage`"),
    ("open_circuit_voltage: 37.0 V", "U0: 37.0 V", "write `open_circuit_voltage`"),
    ("short_circuit_current: 13.7 A", "Isc: 13.7 A", "write `short_circuit_current`"),
    ("mpp_voltage: 31.0 V", "Vmpp: 31.0 V", "write `mpp_voltage`"),
    ("mpp_current: 12.9 A", "Imp: 12.9 A", "write `mpp_current`"),
    ("rated_power: 400 W", "Pmax: 400 W", "write `rated_power`"),
    ("modules_in_series: 8", "modules: 8", "write `modules_in_series`"),
    ("modules_in_series: 8", "panels: 8", "write `modules_in_series`"),
    ("short_circuit_current_max: 22 A", "Isc max: 22 A", "write `short_circuit_current_max`"),
    ("supply: {", "supply: {main fuse: 63 A, ", "write `service_fuse`"),
    ("inverters:\n  roof", "PV array:\n  roof", "write `inverters`"),
    ("inverters:\n  roof", "ground: {}\ninverters:\n  roof", "write `earthing`"),
    ("phases: 1, voltage", "pases: 1, voltage", "write `phases`"),
    ("mpp_voltage_min: 100 V", "mpp_volt_min: 100 V", "write `mpp_voltage_min`"),
    ("rated_power: 3 kW", "rated_pwer: 3 kW", "write `rated_power`"),
    ("phases: 1, voltage", "phases: 1, paper: A3, voltage", "it is a key of `drawing`"),
    ("phases: 1, voltage", "phases: 1, modules_in_series: 4, voltage", "`inverters.NAME.inputs[].strings[]`"),
]  # fmt: skip


@pytest.mark.parametrize(("old", "new", "remedy"), INSTEAD, ids=[new for _, new, _ in INSTEAD])
def test_remedy(old: str, new: str, remedy: str) -> None:
    assert any(remedy in found.remedy for found in refused(SMALL.replace(old, new, 1)))


# a guess that does not fit what stands there is none
NO_GUESS = [
    ("rated_power: 400 W", "rated_power: 400 W\n      battery_voltage: 48 V", "rated_voltage"),
    ("type: Small 3", "type: Small 3\n    modules: {a: 1}", "`model`"),
    ("earthing_system: TN-C-S", "earthing_system: TN-C", "write `TN-C-S`"),
    ("type: Small 3", "type: Small 3\n    circuit: [{kind: cable, length: 5 m, material: Cu}]", "`terminals`"),
    ("type: Small 3", "type: Small 3\n    circuit: [{kind: cable, length: 5 m, insulation: PVC}]", "`location`"),
]


@pytest.mark.parametrize(("old", "new", "guess"), NO_GUESS, ids=[guess for *_, guess in NO_GUESS])
def test_no_guess(old: str, new: str, guess: str) -> None:
    found = refused(SMALL.replace(old, new, 1))
    assert found
    assert not [each.remedy for each in found if each.remedy.startswith("write `") and guess in each.remedy]


KINDS = ["breaker", "fuse", "rcd", "rcbo", "isolator", "surge_protection", "meter", "cable", "main_switch"]


@pytest.mark.parametrize(
    ("tag", "own", "more"),
    [
        ("mcb", "breaker", ""),
        ("MCCB", "breaker", "construction: moulded_case"),
        ("AC switch", "isolator", ""),
        ("RCCB", "rcd", ""),
        ("spd", "surge_protection", ""),
        ("braker", "breaker", ""),
        ("elephant", "", ""),
    ],
)
def test_kind(tag: str, own: str, more: str) -> None:
    assert meant_kind(tag, KINDS) == (own, more)


@pytest.mark.parametrize(("word", "own"), [("TN-C", ""), ("tncs", "TN-C-S"), ("TN-C-S ", "TN-C-S"), ("TN S", "TN-S")])
def test_word(word: str, own: str) -> None:
    assert meant_word(word, ["TN-S", "TN-C-S", "TT", "IT"]) == own


def test_every_synonym_leads_to_a_word_of_the_language() -> None:
    keys = {key for block in (*places(), *SHARED) for key in fields_by_key(block)}
    kinds = {
        "breaker",
        "rcd",
        "rcbo",
        "isolator",
        "main_switch",
        "surge_protection",
        "meter",
        "cable",
        "plug_connector",
    }
    assert set(_CALLED) <= keys | kinds
    assert meant("max series fuse") == ("series_fuse_max",)
