"""The list of ratings (formula and source, then device, value and inputs), and the table of a diagram's sheets."""

from __future__ import annotations

import pytest
from printed_sheet import drawing

# the third column: the formula with its source; the fourth: devices, value, inputs. Worked in the labels
RATINGS = [
    ("workshop", "Uoc,max", "N·Uoc·(1 + β/100·(Tmin - 25)) | IEC 62548:2016 7.2",
     "-TB2-GC1, -TB2-XD1: 396 V with N = 9; Uoc = 40 V; β = -0.25 %/K; Tmin = -15 °C"),
    ("workshop", "Uoc,max", "N·Uoc·(1 + β/100·(Tmin - 25)) | IEC 62548:2016 7.2",
     "-TB1-GC1…3, -TB1-XD1, system: 440 V with N = 10; Uoc = 40 V; β = -0.25 %/K; Tmin = -15 °C"),
    ("workshop", "Pstring", "N·Pmax", "-TB1-GC4: 2480 W with N = 8; Pmax = 310 W"),
    ("workshop", "Nmax", "floor(Udc,max/Uoc,max)", "-TB2-GC1: 13 with Udc,max = 600 V; Uoc,max = 44 V (one module)"),
    ("workshop", "Slead", "Isn² · 2 · L · R", "-UC1-PG1: 1.48 VA with Isn = 5 A; L = 4 m (one way); R = 7.41 Ω/km"),
    # equal devices share a line, which names the devices of each one's own circuit
    ("yard", "Pdc", "Σ strings · N · Pmax", "-TB1…5: 4960 W with each of -TB1…5-GC1 = 4960 W"),
    ("yard", "Pdc", "Σ strings · N · Pmax", "system: 25420 W with -TB1…5-GC1 = 4960 W; -TB6-GC1 = 620 W"),
    ("yard", "Ib", "Imax,ac | IEC 60364-7-712:2017 712.433", "-TB1…5: 80 A with Imax,ac = 80 A"),
    ("yard", "Ib", "Smax / (√3 · Un)", "-TB6: 1.3 A with Smax = 900 VA; Un = 400 V"),
    ("yard", "Iexport", "Σ Ib of the most loaded line", "-UC2-FC1, -UC2-WD1, -UC2: 400 A with Ib(-TB1…5) = 80 A"),
    ("yard", "Iexport", "Σ Ib of the most loaded line",
     "-TB1…5-FC1, -TB1…5-QB1: 80 A with Ib(each of -TB1…5) = 80 A"),
]  # fmt: skip


@pytest.mark.parametrize(("spec", "symbol", "formula", "line"), RATINGS)
def test_rating(spec: str, symbol: str, formula: str, line: str) -> None:
    rows = [tuple(row.values()) for row in drawing(spec).rows("Ratings")]
    of_symbol = [text for name, text in rows if name == symbol and text.startswith(formula)]
    assert [text for text in of_symbol if line in text]


def test_what_is_given_is_no_rating_of_the_list() -> None:
    """The list is of what was computed or chosen: a formula each, never `as specified`."""
    texts = [text for row in drawing("workshop").rows("Ratings") for text in row.values()]
    assert not [text for text in texts if text.startswith("as specified")]


IN_PARTS = ("largest_paper: A0, paper: A1", "largest_paper: A3, paper: A3")


def test_sheets_of_a_diagram_that_is_drawn_in_parts() -> None:
    """One line a sheet, one for each kind of inverter on it, and the total; 3 + 1 strings at -TB1, 11 + 3 kVA."""
    columns = ("Sheet", "Shows", "Inverters", "Apparent power", "Strings")
    rows = [
        ("2", "supply, -UC1 main board", "–", "–", "–"),
        ("3", "-UC2, -UC1 (continued): -TB2", "1", "3 kVA", "1"),
        ("", "-TB2 Orrin S3", "1", "3 kVA each", "1 each"),
        ("4", "-TB1", "1", "11 kVA", "4"),
        ("", "-TB1 Orrin S10", "1", "11 kVA each", "4 each"),
        ("", "total", "2", "14 kVA", "5"),
    ]
    sheets = drawing("workshop", "", IN_PARTS)
    assert sheets.rows("Sheets of the diagram") == [dict(zip(columns, row, strict=True)) for row in rows]
    assert [sheet.description for sheet in sheets.sheets[1:4]] == [row[1] for row in rows if row[0]]


def test_a_diagram_in_parts_says_so_and_how_lines_go_on() -> None:
    (note,) = [text for text in drawing("workshop", "", IN_PARTS).paragraphs("Notes") if text.startswith("Paper: ")]
    assert "does not fit A3, so it is drawn on sheets 2 to 4" in note
    assert "/3.B4 is sheet 3, zone B4" in note
    assert "Sheets of the diagram" not in drawing("workshop").titles()
