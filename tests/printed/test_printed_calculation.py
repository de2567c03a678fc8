"""What the calculation says of each quantity, row by row. Worked by hand as in the labels and schedules."""

from __future__ import annotations

from itertools import pairwise

import pytest
from printed_sheet import calculation, calculation_sheets, drawing

from sld.symbols.stroke import Text

ROWS = [
    # 9 · 40 V · (1 + 0.25 · 40 / 100) = 396 V
    ("workshop", "inverters", "-TB2-GC1", "Uoc,max", {
        "Quantity": "highest open-circuit voltage of the string at the lowest temperature", "Result": "396 V",
        "Formula": "N·Uoc·(1 + β/100·(Tmin - 25))",
        "Numbers put in": "N = 9; Uoc = 40 V; β = -0.25 %/K; Tmin = -15 °C", "Governed by": "", "Assumed": "",
        "Row of the table": "",
    }),
    # max(16 A, 32 A of the breaker before it)
    ("workshop", "inverters-2", "-TB1-QB1", "In,min", {
        "Quantity": "least rated current", "Result": "32 A", "Formula": "max(Ib, In(-TB1-FC1))",
        "Numbers put in": "Ib = 16 A; In(-TB1-FC1) = 32 A", "Governed by": "governed by: In(-TB1-FC1)",
        "Source": "IEC 60947-3; IEC 61008-1; IEC 60364-5-53 (protection against overload, from memory)", "Assumed": "",
    }),
    # 40 mA of leakage: 10 mm² of copper (IEC 60364-5-54 543.7)
    ("workshop", "inverters-2", "-TB1-WD1", "SPE", {
        "Result": "10 mm²", "Numbers put in": "S = 6 mm²; Ileak = 40 mA; material = Cu",
        "Governed by": "governed by: leakage",
        "Assumed": "assumed: protective conductor for the leakage laid beside the cable",
        "Source": "IEC 60364-5-54:2011 543.7 (from memory)",
    }),
    # N · 40 V is at most 900 V at 44 V each: 20; two groups of strings at one inverter, told once
    ("workshop", "inverters-2", "-TB1-GC1…3, -TB1-GC4", "Nmax", {
        "Result": "20", "Numbers put in": "Udc,max = 900 V; Uoc,max = 44 V (one module)",
    }),
    ("workshop", "inverters-2", "-TB1-GC1…3", "Uoc,max", {"Result": "440 V"}),
    ("workshop", "inverters-2", "-TB1-GC4", "Uoc,max", {"Result": "352 V"}),
    ("workshop", "boards", "-UC2-WD1", "Iz,min", {
        "Result": "55.2 A", "Formula": "I2/1.45", "Numbers put in": "In(-UC2-FC1) = 50 A; I2 = 80 A; Ib = 20 A",
    }),
    ("workshop", "main_board", "-UC1", "Iexport", {
        "Result": "37.2 A", "Numbers put in": "Ib(-TB2) = 14 A; Ib(-TB1) = 16 A; Ib(-GB1) = 7.217 A",
    }),
    ("workshop", "main_board", "-UC1", "Icw", {"Result": "10 kA", "Formula": "as specified", "Source": "spec"}),
    ("workshop", "batteries", "-GB1", "Ib", {
        "Result": "7.22 A", "Formula": "Smax / (√3 · Un)", "Numbers put in": "Smax = 5000 VA; Un = 400 V",
        "Assumed": "assumed: greatest output current not declared, taken from apparent power at nominal voltage",
    }),
    ("workshop", "generators", "-GA2", "Ib", {"Result": "28.9 A"}),
    ("workshop", "loads", "-EZ1", "Ib", {"Result": "17.3 A"}),
    ("workshop", "earthing", "-WE1", "SE,buried", {
        "Result": "16 mm²", "Numbers put in": "protection = corrosion only; material = copper",
        "Row of the table": "buried earthing conductor: corrosion only",
    }),
    ("workshop", "data_bus", "-WF1", "L", {"Result": "16 m", "Quantity": "length of the bus"}),
    ("workshop", "system", "system", "Pdc", {
        "Result": "14570 W", "Numbers put in": "-TB2-GC1 = 2790 W; -TB1-GC1…3 = 9300 W; -TB1-GC4 = 2480 W",
    }),
    # two micro-inverters of one type; equal inputs with designations that count up share one value
    ("cottage", "inverters", "-TB2-GC1, -TB3-GC1", "Uoc,max", {"Result": "44 V"}),
    ("cottage", "boards", "-WC2", "Iexport", {"Numbers put in": "Ib(-TB2), Ib(-TB3) = 1.304 A", "Result": "2.61 A"}),
    ("cottage", "main_board", "-UC1", "Iexport", {
        "Numbers put in": "Ib(-TB2…4) = 1.304 A; Ib(-TB1) = 13.04 A", "Result": "17 A",
    }),
    # no value, and why: above 1.5 · 10 A and below 10.8 A there is no rating
    ("cottage", "inverters-2", "-TB1-XD1, -TB1-XD3", "In,string", {
        "Quantity": "rated current chosen for the string fuses", "Result": "no value", "Formula": "",
        "Source": "no standard rating lies between 15 A and 10.8 A",
    }),
    ("yard", "inverters", "-TB1…5-GC1", "Uoc,max", {"Result": "704 V"}),
    # five equal circuits: each has a breaker of its own before it
    ("yard", "inverters", "-TB1…5-QB1", "In,min", {
        "Formula": "max(Ib, In(each of -TB1…5-FC1))", "Result": "100 A",
        "Governed by": "governed by: In(each of -TB1…5-FC1)",
    }),
    ("yard", "inverters-2", "-TB6-GC1", "Uoc,max", {"Result": "88 V"}),
    ("yard", "supply", "-TA1", "Lsecondary", {"Result": "3 m"}),
    # trade sizes are told, not square millimetres
    ("ranch", "inverters", "-TB1-WD1", "S,current", {"Result": "8 AWG"}),
    ("ranch", "main_board", "-UC1-WD1", "S,current", {"Result": "3/0 AWG"}),
]  # fmt: skip


@pytest.mark.parametrize(("spec", "section", "designation", "symbol", "told"), ROWS)
def test_quantity(spec: str, section: str, designation: str, symbol: str, told: dict[str, str]) -> None:
    rows = [row for row in calculation(spec)[section] if (row["Designation"], row["Symbol"]) == (designation, symbol)]
    assert len(rows) == 1
    assert {heading: rows[0][heading] for heading in told} == told


IN_WORDS = [
    ("workshop", "inverters", "-TB2-XD1", "string fuses", "not needed", "IEC 62548:2016 clause 6.5"),
    ("workshop", "inverters", "-TB2-XD1", "window", "above 16.1 A to 20 A", "cautious"),
]


@pytest.mark.parametrize(("spec", "section", "designation", "quantity", "result", "source"), IN_WORDS)
def test_a_result_in_words_has_no_symbol_and_no_formula(
    spec: str, section: str, designation: str, quantity: str, result: str, source: str
) -> None:
    (row,) = [row for row in calculation(spec)[section]
              if (row["Designation"], row["Quantity"]) == (designation, quantity)]  # fmt: skip
    assert (row["Result"], row["Symbol"], row["Formula"]) == (result, "", "")
    assert row["Source"].startswith(source)


SECTIONS = [
    ("workshop", ["inverters", "loads", "boards", "inverters-2", "batteries", "generators", "main_board", "supply",
                  "earthing", "data_bus", "system"]),
    ("cottage", ["inverters", "boards", "inverters-2", "inverters-3", "loads", "main_board", "earthing", "system"]),
    ("ranch", ["inverters", "loads", "main_board", "earthing", "system"]),
    ("yard", ["inverters", "boards", "inverters-2", "main_board", "supply", "earthing", "system"]),
]  # fmt: skip


@pytest.mark.parametrize(("spec", "sections"), SECTIONS)
def test_sections_follow_the_energy(spec: str, sections: list[str]) -> None:
    """What hangs on a board comes before it; what is in no circuit at the end."""
    assert list(calculation(spec)) == sections


@pytest.mark.parametrize("spec", ["workshop", "cottage", "ranch", "yard"])
def test_each_circuit_begins_at_the_strings(spec: str) -> None:
    """By letters of IEC 81346-2: strings GC, inputs XD, the rest of the DC side, the inverter, then the AC side."""
    for section, rows in calculation(spec).items():
        if section.startswith("inverters"):
            kinds = [row["Designation"].split(", ")[0].rpartition("-")[2][:2] for row in rows]
            firsts = list(dict.fromkeys(kinds))
            assert firsts[:2] == ["GC", "XD"]
            assert "TB" in firsts
            assert firsts.index("TB") > 1


def test_all_of_a_device_stands_together() -> None:
    rows = calculation("workshop")["inverters"]
    names = [row["Designation"] for row in rows]
    assert len(dict.fromkeys(names)) == 1 + sum(one != other for one, other in pairwise(names))


TITLES = [
    ("workshop", [
        "Inverters -TB2: from the strings to the board", "Loads -EZ2, -EZ1 and their circuits",
        "Boards -UC2 and their supply", "Inverters -TB1: from the strings to the board",
        "Batteries -GB1 and their circuits", "Generators -GA2 and their circuits",
        "Main board -UC1 and its supply", "Supply", "Earthing and bonding", "Data bus", "Whole system",
    ]),
    ("yard", [
        "Inverters -TB1…5: from the strings to the board", "Boards -UC2 and their supply",
        "Inverters -TB6: from the strings to the board", "Main board -UC1 and its supply", "Supply",
        "Earthing and bonding", "Whole system",
    ]),
]  # fmt: skip


@pytest.mark.parametrize(("spec", "titles"), TITLES)
def test_on_the_sheets_each_section_has_its_title_behind_the_notes(spec: str, titles: list[str]) -> None:
    assert calculation_sheets(spec).titles() == ["Notes", *titles]


def test_the_sheets_say_what_they_are() -> None:
    sheets = calculation_sheets("workshop")
    assert sheets.field("Document type") == "Calculation"
    assert sheets.field("Title") == "Weir workshop"
    assert sheets.field("Findings") == drawing("workshop").field("Findings")
    assert {(sheet.width_mm, sheet.height_mm) for sheet in sheets.sheets} == {(210.0, 297.0)}  # A4 upright (ISO 216)
    assert {sheet.colour for sheet in calculation_sheets("yard").sheets} == {"restrained"}
    assert sheets.about == drawing("workshop").about


@pytest.mark.parametrize(
    "text",
    ["Design aid. All values are to be checked by a person licensed for such work", "not compared with the standard",
     "Rule profile: cautious.", "printed with three, those put in with four"],
)  # fmt: skip
def test_a_caution_and_how_it_is_read(text: str) -> None:
    assert text in " ".join(calculation_sheets("workshop").paragraphs("Notes"))


def test_the_caution_comes_first() -> None:
    begins = [text.split(".")[0].split(":")[0] for text in calculation_sheets("workshop").paragraphs("Notes")]
    assert begins == ["Design aid", "Rule profile", "Values are computed with all digits and printed with three, those "
                      "put in with four"]  # fmt: skip


def test_on_paper_a_quantity_stands_below_whose_it_is_and_the_numbers_below_the_formula() -> None:
    heads, rows = calculation_sheets("workshop").table("Data bus")
    assert heads == [
        "Designation / Quantity", "Symbol / Result",
        "Formula / Numbers put in / Governed by / Source / Row of the table / Assumed",
    ]  # fmt: skip
    assert ("-WF1 length of the bus", "L 16 m", "Σ parts parts = 2 TIA-485-A") in rows


def test_each_further_page_says_what_it_is_a_page_of() -> None:
    sheets = calculation_sheets("workshop").sheets
    assert len(sheets) > 2
    for number, sheet in enumerate(sheets[1:], 2):
        strip = [stroke.text for group in sheet.groups if group.key == "title-block" for stroke in group.strokes
                 if isinstance(stroke, Text)]  # fmt: skip
        assert strip == [
            "Title", "Weir workshop, Calculation", "Legal owner", "Lowmere works office", "Identification number",
            "WW-E-12.1", "Date of issue", "2026-03-09", "Rev.", "B", "Sheet", f"{number} of {len(sheets)}",
        ]  # fmt: skip
