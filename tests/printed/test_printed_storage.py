"""What a reader must see of batteries, backup outputs and change-over switches, read off the finished sheets.

A row: the designation and all that stands beside it (`croft.yaml`). What the spec gives is printed as given; what is
computed was worked by hand. Capacities: IEC 60364-5-52 Tables B.52.2 and B.52.4, copper with PVC.
"""

from __future__ import annotations

import pytest
from printed_sheet import drawing

BESIDE = [
    # 4 kW of the charge converter at 40 V: 100 A
    ("-GB1", "low Fenwick B5 5 kWh 51.2 V DC 40…58 V Ik 4 kA Ib 100 A shed"),
    ("-GB1-FC1", "2 × 100 A 80 V Icn 20 kA"),
    ("-GB1-WD1", "Cu/PVC 2 × 25 mm² 2 m Iz 101 A"),  # two loaded, B1, 30 °C
    ("-GB1-QB1", "80 V 125 A DC-21B 2P"),
    # its own converter: 6 kVA / 300 V = 20 A on the DC side, 6 kVA / (√3 · 400 V) = 8.66 A on the AC side
    ("-GB2", "high 400 V DC 300…450 V Ik 2 kA built in: protection 32 A, isolator Ib 20 A"),
    ("-GB2-TB1", "6 kVA Ib 8.66 A"),
    ("-GB2-FC2", "In ≥ 20 A 2P Un ≥ 450 V suitable for isolation"),  # nothing is chosen: what it must be at least
    ("-TB1", "Fenwick H5 5 kW, Ib 7.22 A built in: DC switch backup 4 kVA shed"),
    # three loaded, C, 30 °C: 32 A; the AC terminal among those of the inverter
    ("-UC2-WD1", "Cu/PVC 5 × 4 mm² 5 m Iz 32 A from the backup output"),
    ("-UC3-QA1", "40 A 4P by hand key interlock N–PE link while the network is off"),
    ("-UC4-QA1", "40 A 4P three positions, opens first II: backup output of -TB1"),
    ("-GA2", "set 10 kVA, Ib 14.4 A Ik 40 A neutral earthed at the set"),  # 10 kVA / (√3 · 400 V)
]


@pytest.mark.parametrize(("designation", "text"), BESIDE)
def test_beside_a_device(designation: str, text: str) -> None:
    assert drawing("croft").label(designation) == text


def test_what_a_backup_output_feeds_stands_in_the_schedule_and_for_review() -> None:
    told = "Ik 20 A, feeds through ≤ 25 A, separates all poles, N–PE link while the network is off"
    of = drawing("croft").row("Equipment schedule", "-TB1")["Make, model; ratings"]
    assert f"built in: DC switch, backup 4 kVA, {told}, DC ≤ 1000 V" in of
    review = drawing("croft", "operator").pairs("For review")
    assert f"while the network is away: {told}" in review["Inverter settings, -TB1"]


MEANINGS = [
    ("-GB1", "Battery"),
    ("-GB1-TA1", "Charge converter, direct current to direct current"),
    ("-GB2-TB1", "Converter of a battery, three-phase"),
    ("-GB1-FC1", "Fuse"),
    ("-GB1-QB1", "Switch-disconnector"),
    ("-UC3-QA1", "Change-over switch, way I to the network"),
    ("-UC4-QA1", "Change-over switch, way I to the network"),
]


@pytest.mark.parametrize(("designation", "meaning"), MEANINGS)
def test_symbol(designation: str, meaning: str) -> None:
    assert drawing("croft").meaning(designation) == meaning


@pytest.mark.parametrize("designation", ["-UC3-QA1", "-UC4-QA1"])
def test_the_ways_of_a_change_over_switch_are_marked(designation: str) -> None:
    assert drawing("croft").marks(designation) == "I II"


TEXTS = [
    ("Notes", "While the network is away -UC2 can be live from -TB1."),
    ("Notes", "While the network is away -UC3 can be live from -GA2, behind -UC3-QA1."),
    ("Notes", "While the network is away -UC4 can be live from -TB1, behind -UC4-QA1."),
    (
        "Cautions",
        "The site has other connections to the public network: LM 5604. They stay live when the one in this drawing is "
        "isolated, and have drawings of their own.",
    ),
]


@pytest.mark.parametrize(("title", "text"), TEXTS)
def test_text(title: str, text: str) -> None:
    assert text in drawing("croft").paragraphs(title)


def test_no_note_about_batteries_that_were_checked() -> None:
    assert not [text for text in drawing("croft").paragraphs("Notes") if "Battery side" in text]


EQUIPMENT = [
    ("-GB1-FC1", "battery fuse"),
    ("-GB1-QB1", "battery isolator"),
    ("-GB2-FC2", "battery circuit-breaker"),
    ("-GB2-TB1", "battery converter"),
    ("-UC3-QA1", "change-over switch"),
]


@pytest.mark.parametrize(("designation", "word"), EQUIPMENT)
def test_device_in_the_equipment_schedule(designation: str, word: str) -> None:
    assert drawing("croft").row("Equipment schedule", designation)["Device"] == word


def test_battery_cable_in_the_cable_schedule() -> None:
    row = drawing("croft").row("Cable schedule", "-GB1-WD1")
    # 2 · 2 m · 100 A · 0.78 Ω/km · (1 + 0.00393 · 50) / 1000 = 0.373 V of 40 V (IEC 60228 class 5, 25 mm²)
    assert row["Δu"] == "0.933 %"
    assert row["Laid"] == "B1, 30 °C"
    assert row["Iz,min / Iz"] == "100 / 101 A"
