"""On the fewest sheets: what has room beside the diagram and its parts takes no sheet of its own, worked by hand."""

from __future__ import annotations

from typing import Any

import pytest

from sld.sheet import fewest
from sld.sheet.fewest import fewest_sheets
from sld.sheet.flow import BETWEEN_MM, Dealt, Remembered, flow
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


# a page has the title, the heading and one row, and room that a second row just does not fit into: it might be saved;
# beside the diagram so low a part is not worth its place
@pytest.mark.parametrize(
    ("rows_count", "dealt_count"),
    [
        pytest.param(20, 4, id="among 20 further sheets every manner is tried"),
        pytest.param(21, 1, id="among 21 the first one is kept"),
        pytest.param(60, 1, id="among 60 too"),
    ],
)
def test_no_time_is_spent_on_saving_one_of_very_many_sheets(
    rows_count: int, dealt_count: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    dealt: list[int] = []

    def counted(*told: Any) -> list[list[Dealt]]:
        made = flow(*told)
        dealt.append(len(made))
        return made

    monkeypatch.setattr(fewest, "flow", counted)
    page = column(high_mm(table("a", 2)) - 0.1)
    placement = Placement(PAPERS["A3"], 0.0, 0.0, (page,), 0.0)
    fewest_sheets([placement], [table("a", rows_count)], [page], [], ENGLISH)
    assert dealt == [1 + rows_count] * dealt_count
