"""On the fewest sheets: what has room beside the diagram and its parts takes no sheet of its own, worked by hand."""

from __future__ import annotations

from sld.sheet.fewest import fewest_sheets
from sld.sheet.flow import BETWEEN_MM, Remembered
from sld.sheet.listings.laid import title_piece
from sld.sheet.listings.table import Column, Table
from sld.sheet.paper import PAPERS
from sld.sheet.placement import Placement
from sld.symbols.stroke import Box
from sld.words import ENGLISH

WIDE_MM = 185.0


def table(name: str, rows_count: int) -> Table:
    return Table(name, name, (Column("Name"), Column("Value")), (("a", "b"),) * rows_count)


def high_mm(table: Table) -> float:
    laid = Remembered(table).laid(WIDE_MM)
    rows_mm = sum(piece.height_mm for row in laid.rows for piece in row)
    return title_piece(table.title, False, WIDE_MM, ENGLISH).height_mm + laid.head.height_mm + rows_mm


def column(height_mm: float) -> Box:
    return Box(0.0, 0.0, WIDE_MM, height_mm)


def test_sheets_with_parts_of_the_diagram_are_filled_before_there_is_one_more() -> None:
    """In their order b has no room below a, nor c below b: c beside the diagram, a and b fill the sheet between."""
    a, b, c = table("a", 4), table("b", 6), table("c", 9)
    placement = Placement(PAPERS["A3"], 0.0, 0.0, (column(high_mm(c)),), 0.0)
    between = [[column(high_mm(a) + high_mm(b) + BETWEEN_MM)]]
    _, made = fewest_sheets([placement], [a, b, c], [column(260.0)], between, ENGLISH)
    assert [[each.section for each in sheet] for sheet in made] == [["c"], ["a", "b"]]
