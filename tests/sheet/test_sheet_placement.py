"""Room beside a diagram for listings: below its rows, also left of a way to the supply that leads further down."""

from __future__ import annotations

import pytest

from sld.layout.diagram.diagram import LineKind
from sld.layout.plan import Plan, Wire
from sld.sheet.paper import PAPERS, frame_box
from sld.sheet.placement import CLEAR_MM, INSET_MM, Placement, larger_papers, placements_on
from sld.symbols.stroke import Point

TITLE_MM, ROWS_MM = 31.0, 60.0


def level_and_down(down_mm: float, foot_mm: float) -> Placement:
    """Return the first placement, on A3, of a row 360 mm wide with a conductor down from it, at an x, to a foot."""

    def wire(*points: Point) -> Wire:
        return Wire(LineKind.AC, points, (("", ""), ("", "")))

    wires = (wire((0.0, ROWS_MM), (360.0, ROWS_MM)), wire((down_mm, ROWS_MM), (down_mm, foot_mm)))
    return placements_on(Plan(360.0, foot_mm, (), wires, (), (), (), ()), PAPERS["A3"], TITLE_MM)[0]


# x and foot of the conductor, width of the last column; the room above the title block is 185 mm wide, from 191 mm on
@pytest.mark.parametrize(
    ("down_mm", "foot_mm", "wide_mm"),
    [
        (355.0, 80.0, 185.0),  # there is room below it all
        (355.0, 226.0, 169.0),  # left of it
        (300.0, 226.0, 114.0),
        (200.0, 226.0, 165.0),  # right of it
        (275.0, 226.0, 92.0),  # as wide on both sides, nearly: the one with more room
    ],
)
def test_listings_stand_on_either_side_of_what_leads_down(down_mm: float, foot_mm: float, wide_mm: float) -> None:
    placement = level_and_down(down_mm, foot_mm)
    column = placement.columns[-1]
    down = placement.x_mm + down_mm
    assert column.width_mm == pytest.approx(wide_mm, abs=4.0)
    assert column.right_mm <= down - CLEAR_MM or column.left_mm >= down + CLEAR_MM or foot_mm < 100
    assert column.top_mm >= frame_box(PAPERS["A3"]).top_mm + INSET_MM + ROWS_MM


@pytest.mark.parametrize(
    ("paper", "largest", "found"),
    [
        ("A3", "A1", ["A2", "A2 upright", "A1", "A1 upright"]),
        ("A2", "A1", ["A1", "A1 upright"]),
        ("A1", "A1", []),
        ("A1", "A3", []),
    ],
)
def test_larger_papers_are_those_above_up_to_the_largest(paper: str, largest: str, found: list[str]) -> None:
    assert [each.name for each in larger_papers(PAPERS[paper], PAPERS[largest])] == found
