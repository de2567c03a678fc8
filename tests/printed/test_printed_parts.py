"""The table of the sheets of a diagram that is drawn in parts, and what is said of how its lines go on."""

from __future__ import annotations

from printed_sheet import drawing

IN_PARTS = ("largest_paper: A0, paper: A1", "largest_paper: A3, paper: A3")


def test_sheets_of_a_diagram_that_is_drawn_in_parts() -> None:
    """One line a sheet, one for each kind of inverter on it, and the total; 3 + 1 strings at -TB1, 11 + 3 kVA."""
    columns = ("Sheet", "Shows", "Inverters", "Apparent power", "Strings")
    rows = [
        ("2", "supply, -UC1 main board", "–", "–", "–"),
        ("3", "-UC2 annex board: -TB2, -TB1", "2", "14 kVA", "5"),
        ("", "-TB2 Orrin S3", "1", "3 kVA each", "1 each"),
        ("", "-TB1 Orrin S10", "1", "11 kVA each", "4 each"),
        ("", "total", "2", "14 kVA", "5"),
    ]
    sheets = drawing("workshop", "", IN_PARTS)
    assert sheets.rows("Sheets of the diagram") == [dict(zip(columns, row, strict=True)) for row in rows]
    assert [sheet.description.split("; ")[0] for sheet in sheets.sheets[1:3]] == [row[1] for row in rows if row[0]]


def test_a_diagram_in_parts_says_so_and_how_lines_go_on() -> None:
    (note,) = [text for text in drawing("workshop", "", IN_PARTS).paragraphs("Notes") if text.startswith("Paper: ")]
    assert "does not fit A3, so it is drawn on sheets 2 to 3" in note
    assert "/3.B4 is sheet 3, zone B4" in note
    assert "Sheets of the diagram" not in drawing("workshop").titles()
