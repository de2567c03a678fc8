"""The boundary of ownership on the sheet: across the supply wire, read through, in the legend, on every paper."""

from __future__ import annotations

import json
import shutil
from dataclasses import replace
from itertools import pairwise
from pathlib import Path

import pytest
from example_specs import SAMPLED, document
from plan_reader import read_nets, through_boundaries

from sld import run
from sld.layout.plan import PlacedCell, Plan
from sld.sheet.compose import Composition
from sld.sheet.legend import legend
from sld.sheet.lint import lint
from sld.sheet.sheet import Group
from sld.symbols import catalogue
from sld.symbols.stroke import Box, Dash, Polyline
from sld.symbols.typeface import text_box
from sld.words import ENGLISH

SPECS = Path(__file__).parents[2] / "specs"
SYMBOL = "ownership_boundary"
GIVEN = "  ownership_boundary: service_fuse\n"
METER, SWITCH = "boards.main.circuit.0", "boards.main.circuit.1"
PLACES = [
    ("network", "supply.service_fuse", "supply"),
    ("service_fuse", METER, "supply.service_fuse"),
    ("supply_meter", SWITCH, METER),
]


def drawn(folder: Path, boundary: str, **drawing: str) -> Composition:
    """The village hall with its boundary elsewhere."""
    shutil.copytree(SPECS / "types", folder / "types")
    text = (SPECS / "village-hall.yaml").read_text(encoding="utf-8")
    assert GIVEN in text
    text = text.replace(GIVEN, GIVEN.replace("service_fuse", boundary))
    path = folder / "hall.yaml"
    path.write_text(f"{text}\ndrawing: {json.dumps(drawing)}\n", encoding="utf-8")
    return run.draw(run.check(path))


def boundaries(made: Composition) -> list[Group]:
    """Those of the diagrams, not of the overview."""
    numbers = {standing.sheet_number for standing in made.diagrams}
    groups = [group for sheet in made.sheets if sheet.number in numbers for group in sheet.groups]
    return [group for group in groups if group.kind == "ownership_boundary"]


@pytest.mark.parametrize(("boundary", "left", "right"), PLACES)
@pytest.mark.parametrize("symbols", ["IEC", "ANSI"])
def test_boundary_lies_between_the_two_owners(
    tmp_path: Path, boundary: str, left: str, right: str, symbols: str
) -> None:
    made = drawn(tmp_path, boundary, symbols=symbols)
    plan = made.diagrams[0].plan
    cells = {cell.key: cell for cell in plan.cells}
    mark = cells[f"{right}/ownership_boundary"]
    way = [cells[left].at, mark.at, cells[right].at]
    x, y = zip(*way, strict=True)
    assert way == sorted(way, key=lambda at: at[1] if mark.turned else at[0])
    assert len(set(x if mark.turned else y)) == 1
    nets = read_nets(plan)
    assert frozenset({(mark.key, "supply"), (right, "feed")}) in nets
    assert frozenset({(left, "supply"), (right, "feed")}) in through_boundaries(nets)


@pytest.mark.parametrize(("boundary", "status"), [("service_fuse", "existing"), ("network", "existing")])
def test_boundary_is_a_long_dashed_double_dotted_line_across_the_wire(
    tmp_path: Path, boundary: str, status: str
) -> None:
    """ISO 128-2 line 05: 24 d, 3 d, 0.5 d, 3 d, 0.5 d, 3 d (from memory), as wide for any status."""
    (group,) = boundaries(drawn(tmp_path, boundary))
    (line,) = [each for each in group.strokes if isinstance(each, Polyline) and each.dash is Dash.PROPERTY]
    assert Dash.PROPERTY.value == (24.0, 3.0, 0.5, 3.0, 0.5, 3.0)
    (x1, y1), (x2, y2) = line.points
    assert group.at is not None
    if y1 == y2:  # across a conductor that leads down
        (x1, y1), (x2, y2), group = (y1, x1), (y2, x2), replace(group, at=(group.at[1], group.at[0]))
    assert x1 == x2
    assert group.at is not None
    assert min(y1, y2) < group.at[1] < max(y1, y2)
    assert (group.status, line.width_mm) == (status, 0.25)
    period_mm = sum(Dash.PROPERTY.value) * line.width_mm
    assert abs(y1 - y2) > period_mm, "dash, both dots and a dash are to be seen"


def test_legend_has_the_boundary_only_where_it_is_drawn(tmp_path: Path) -> None:
    plan = drawn(tmp_path, "service_fuse").diagrams[0].plan
    assert [entry.text for entry in legend([plan], catalogue, ENGLISH).entries].count("Boundary of ownership") == 1
    without = Plan(0.0, 0.0, (), (), (), (), (), ())
    assert "Boundary of ownership" not in [entry.text for entry in legend([without], catalogue, ENGLISH).entries]


@pytest.mark.parametrize("paper", ["A4", "A3", "A2"])
@pytest.mark.parametrize("boundary", ["network", "service_fuse", "supply_meter"])
def test_boundary_is_drawn_once_on_every_paper(tmp_path: Path, paper: str, boundary: str) -> None:
    made = drawn(tmp_path, boundary, paper=paper, largest_paper=paper)
    assert [defect.message for sheet in made.sheets for defect in lint(sheet)] == []
    assert len(boundaries(made)) == 1


def lines_of_boundaries(path: Path) -> list[tuple[Plan, PlacedCell, Box]]:
    """The room of each boundary's line, with its plan."""
    plans = [standing.plan for standing in document(path, "drawing").diagrams]
    return [(plan, cell, cell.strip) for plan in plans for cell in plan.cells if cell.strip and cell.symbol == SYMBOL]


@pytest.mark.parametrize("path", SAMPLED)
def test_nothing_but_the_supply_crosses_the_boundary(path: Path) -> None:
    for plan, mark, room in lines_of_boundaries(path):
        others = [box for cell in plan.cells if cell is not mark for box in (cell.box, *map(text_box, cell.labels))]
        others += [text_box(text) for text in (*plan.texts, *(frame.caption for frame in plan.frames))]
        others += [flag.box for flag in plan.flags]
        assert not [box for box in others if box.meets(room)]
        legs = [pair for wire in plan.wires for pair in pairwise(wire.points)]
        boxes = [Box(min(x1, x2), min(y1, y2), max(x1, x2), max(y1, y2)).grown(0.1) for (x1, y1), (x2, y2) in legs]
        assert not [box for box in boxes if box.meets(room)], "the conductor of the supply is the symbol's own there"


HIGH = ("hill-farm", "mill-house", "smithy")


@pytest.mark.parametrize("spec", [*HIGH, "lower-farm", "winery-estate"])
def test_boundary_is_as_long_as_the_diagram_is_high(spec: str) -> None:
    """From the top to the foot, with no table in its way; across the whole column where it is turned."""
    for number, (plan, mark, room) in enumerate(lines_of_boundaries(SPECS / f"{spec}.yaml")):
        assert mark.turned == (spec not in HIGH)
        if mark.turned:
            column = [cell for cell in plan.cells if cell.turned]
            right = max(text_box(text).right_mm for cell in column for text in cell.labels)
            assert (room.left_mm, room.right_mm) == pytest.approx((min(c.box.left_mm for c in column), right), abs=4.0)
            continue
        assert (room.top_mm, room.bottom_mm) == (plan.bands_mm[number] if plan.bands_mm else (0.0, plan.height_mm))
        assert [text.at[1] < room.top_mm + 10.0 for text in mark.labels] == [True, True]
