"""Tables as XLSX, read back by the library that spreadsheets of Python are read with: names, cells, widths."""

from __future__ import annotations

from io import BytesIO
from zipfile import ZIP_DEFLATED, ZipFile

import pytest

from sld.render import xlsx
from sld.rows import Rows

openpyxl = pytest.importorskip("openpyxl")

LONG = "a name that has more than thirty-one letters"
TABLES = {
    "strings": Rows("strings", ("String", "Modules"), (("-GC1", "12"), ("-GC2", "=1+1"))),
    LONG: Rows("long", (), (("a text of forty letters, so to say, or so", "b"),)),
    LONG.upper(): Rows("longer", (), (("x" * 99, "c"),)),
}


def test_names_cells_and_widths() -> None:
    """ECMA-376: a sheet has at most 31 characters in its name, which no other has, whatever its capitals."""
    book = openpyxl.load_workbook(BytesIO(xlsx(TABLES)))
    assert book.sheetnames == ["strings", LONG[:31], f"{LONG.upper()[:29]} 2"]
    first, second, third = book.worksheets
    assert [[cell.value for cell in row] for row in first] == [["String", "Modules"], ["-GC1", "12"], ["-GC2", "=1+1"]]
    assert {cell.data_type for row in first for cell in row} == {"s"}
    assert [[cell.font.bold for cell in row] for row in first] == [[True, True], [False, False], [False, False]]
    assert (first.freeze_panes, second.freeze_panes) == ("A2", None)
    widths = [[sheet.column_dimensions[column].width for column in "AB"] for sheet in (first, second, third)]
    assert widths == [[8, 9], [len(TABLES[LONG].cells[0][0]) + 2, 8], [60, 8]]


def test_its_parts_have_a_fixed_date_and_are_for_their_owner() -> None:
    """The date of each part is one that ZIP can hold, which begins in 1980; 0o600 is read and write for the owner."""
    content = xlsx(TABLES)
    assert content == xlsx(TABLES)
    with ZipFile(BytesIO(content)) as file:
        parts = file.infolist()
    assert {each.date_time for each in parts} == {(2000, 1, 1, 0, 0, 0)}
    assert {each.external_attr >> 16 for each in parts} == {0o600}
    assert {each.compress_type for each in parts} == {ZIP_DEFLATED}
