"""Tables as CSV: RFC 4180, headings first, in UTF-8 with the mark by which spreadsheets know it."""

from __future__ import annotations

from functools import cache

from printed_sheet import checked

from sld import run
from sld.documents.cell import given
from sld.documents.section import Column, Form, Table
from sld.rows import csv, rows
from sld.words import ENGLISH, verbatim


@cache
def files() -> dict[str, bytes]:
    made = run.draw(checked("workshop"))
    return run.files(made.sheets, "weir", ("csv",), tables=made.tables)


def test_a_schedule_as_a_file() -> None:
    """RFC 4180: lines end in CR LF, a cell with a comma stands in quotation marks."""
    lines = files()["weir-strings.csv"].decode("utf-8").split("\r\n")
    assert lines[0] == (
        '\ufeffDesignation,Input,"Strings × in series, module, power",Uoc STC / max,"Umpp,min",Isc STC / design,'
        '"Orientation, place"'
    )
    assert '-TB1-GC4,-TB1-XD2,"1 × 8 × F310, 2.48 kWp",320 / 352 V,215 V,10 / 10.7 A,"W, 30°"' in lines
    assert lines[-1] == ""


def test_every_schedule_has_its_file() -> None:
    names = {"strings", "cables", "equipment", "earthing", "terminals", "data_bus"}
    assert {f"weir-{name}.csv" for name in names} <= set(files())


def test_a_form_is_rows_of_caption_and_value_without_headings() -> None:
    form = rows(Form("form", verbatim("Form"), ((verbatim("Site"), given("4 Weir Lane")),)), ENGLISH)
    assert csv(form).decode("utf-8-sig") == "Site,4 Weir Lane\r\n"


def test_cells_of_a_table_stand_in_the_order_of_their_columns() -> None:
    columns = (Column(verbatim("A")), Column(verbatim("B")))
    table = rows(Table("t", verbatim("T"), columns, ((given("1"), given("2")), (given("3"), given("4")))), ENGLISH)
    assert csv(table).decode("utf-8-sig") == "A,B\r\n1,2\r\n3,4\r\n"
