"""What a reader must see of a drawing with two supply points: a row each of what `twin.yaml` gives, worked by hand."""

from __future__ import annotations

import pytest
from printed_sheet import drawing

# the network with what it brings in TN-S, and in TT, where it brings no protective conductor (IEC 60364-1 312.2)
BESIDE = [
    ("-GA1", "3N PE ~, 400/230 V TN-S Ipf 6 kA, Ze 0.2 Ω cable not given, No. LM 71 feed-in ≤ 4 kW, existing"),
    ("-GA2", "long barn 3N ~, 400/230 V TT Ipf 3 kA, Ze 0.5 Ω cable not given No. LM 72, existing"),
    ("-FC1", "63 A gG existing"),
    ("-FC2", "35 A gG existing"),
    ("-UC1-PG1", "supply meter 80 A direct No. 11"),  # the least of 40, 60, 80 and 100 A that carries 63 A
    ("-UC2-PG1", "supply meter 60 A direct No. 22"),
    ("-TB2", "three 3 kW, Ib 4.33 A"),  # 3 kW / (√3 · 400 V)
]


@pytest.mark.parametrize(("designation", "text"), BESIDE)
def test_beside_a_device(designation: str, text: str) -> None:
    assert drawing("twin").label(designation) == text


# 10 and 8 modules of 310 W, 40 V and −0.25 %/K: 44 V at −15 °C
OF_EACH = [
    ("-GA1", "Strings, DC power at STC", "1, 3.1 kWp"),
    ("-GA1", "Highest Uoc at -15 °C", "440 V ≤ 600 V"),
    ("-GA1", "Feed-in limit", "4 kW"),
    ("-GA1", "Fault current, loop of the supply", "6 kA, 0.2 Ω"),
    ("-GA1", "Main switches", "-UC1-QB1"),
    ("-GA1", "Earthing system", "TN-S"),
    ("-GA2 long barn", "Strings, DC power at STC", "1, 2.48 kWp"),
    ("-GA2 long barn", "Highest Uoc at -15 °C", "352 V ≤ 600 V"),
    ("-GA2 long barn", "Feed-in limit", "none stated"),
    ("-GA2 long barn", "Export current a line", "4.33 A"),
    ("-GA2 long barn", "Fault current, loop of the supply", "3 kA, 0.5 Ω"),
    ("-GA2 long barn", "Main switches", "-UC2-QB1"),
    ("-GA2 long barn", "Earthing system", "TT, RA 45 Ω"),
]


@pytest.mark.parametrize(("supply", "quantity", "value"), OF_EACH)
def test_the_summary_is_of_one_supply_point(supply: str, quantity: str, value: str) -> None:
    assert drawing("twin").pairs(f"Summary: supply {supply}")[quantity] == value


@pytest.mark.parametrize(
    ("supply", "number", "meter"), [("-GA1", "LM 71", "No. 11"), ("-GA2 long barn", "LM 72", "No. 22")]
)
def test_the_operator_reads_each_supply_point_by_itself(supply: str, number: str, meter: str) -> None:
    rows = drawing("twin", "operator").pairs(f"For review: supply {supply}")
    assert rows[f"Supply point, {supply.split()[0]}"].split(", ")[0] == number
    assert [value for name, value in rows.items() if name.startswith("Meter") and meter in value]


@pytest.mark.parametrize("reader", ["", "operator", "crew"])
def test_every_reader_is_warned_of_both_and_told_where_each_is_isolated(reader: str) -> None:
    """A notice wherever one device does not isolate all (BS 7671 514.11.1; IEC 60364-4-46 462, from memory)."""
    first, second, *_ = drawing("twin", reader).paragraphs("Cautions")
    assert "Isolate every public supply" in first
    assert second.startswith(
        "2 supply points: -GA1 (LM 71), isolated at -UC1-QB1; -GA2 long barn (LM 72), isolated at -UC2-QB1."
    )
    assert "a notice at each main switch" in second


def test_notes_say_whose_they_are() -> None:
    notes = drawing("twin").paragraphs("Notes")
    (barn,) = [each for each in notes if "Earthing system TT" in each]
    assert barn.startswith("supply -GA2 long barn: ")
    assert [each for each in notes if each.startswith("AC conductors are drawn for all poles")], "once, for both"


def test_each_supply_point_has_its_boundary_and_its_earth() -> None:
    texts = drawing("twin").texts()
    assert len([text for text in texts if text == "← customer"]) == 2
    assert {"-XE1 main earthing terminal", "-XE2 main earthing terminal"} <= set(texts)
    assert {row["Designation"] for row in drawing("twin").rows("Earthing conductors")} == {
        f"-WE{n}" for n in range(1, 6)
    }


def test_schedules_have_the_devices_of_both() -> None:
    rows = drawing("twin").rows("String schedule")
    assert [row["Designation"] for row in rows] == ["-TB1-GC1", "-TB2-GC1"]
