"""A diagram on several sheets: nothing lies on anything, and the sheets together say what the diagram says."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace

import pytest
from diagrams import systems, wild
from hypothesis import given
from lettering import above, drawn
from plan_check import all_cells, defects
from plan_reader import chained, power_nets
from sheet_reader import Page, check_earth_references, on_data, read_sheets
from some_examples import examples
from worked_diagrams import inverters_on_one_bus, one_inverter

from sld import layout
from sld.documents.title import TitleBlock
from sld.layout.diagram.branch import branch
from sld.layout.diagram.diagram import Cell, Diagram
from sld.layout.diagram.wrapping import worded
from sld.layout.parts.cut_places import Room
from sld.layout.parts.marks import CONTINUED, is_mark
from sld.layout.parts.parts import Parts, parts_of
from sld.layout.plan import Plan
from sld.sheet.compose import Composition, Drawn, Part, Standing, compose
from sld.sheet.lint import lint
from sld.sheet.placement import fits, room_mm
from sld.symbols import catalogue

BLOCK = TitleBlock("Owner", "Title", "EFS-0001", "2026-01-31", "Maker")


def named(diagram: Diagram) -> Diagram:
    """The diagram with designations of which there is only one each, as in any system."""
    count = 0

    def renamed(cell: Cell) -> Cell:
        nonlocal count
        count += 1
        names = (*above(f"-N{count}"), *cell.above[1:])
        return replace(cell, above=names, children=tuple(map(renamed, cell.children)))

    return replace(diagram, root=renamed(diagram.root), free=tuple(map(renamed, diagram.free)))


def in_parts(diagram: Diagram, paper: str) -> Parts:
    return parts_of(worded(diagram), layout.arrange, lambda plan: fits(plan, BLOCK, paper), Room(*room_mm(paper)))


def on_sheets(made: Parts, paper: str) -> Composition:
    parts = tuple(Part(plan, str(title)) for plan, title in zip(made.plans, made.titles, strict=True))
    empty = Plan(0.0, 0.0, (), (), (), (), (), ())
    return compose(Drawn(empty, parts, made.references), catalogue, BLOCK, [], paper)


def page(standing: Standing) -> Page:
    """The sheet with all that is on the plan moved to where it stands."""
    dx, dy = standing.x_mm, standing.y_mm

    def moved(point: tuple[float, float]) -> tuple[float, float]:
        return (round(point[0] + dx, 3), round(point[1] + dy, 3))

    plan = standing.plan
    cells = tuple(
        replace(each, at=moved(each.at), box=each.box.moved(dx, dy), pins=tuple((n, moved(p)) for n, p in each.pins))
        for each in plan.cells
    )
    wires = tuple(replace(each, points=tuple(map(moved, each.points))) for each in plan.wires)
    whole = replace(plan, cells=cells, wires=wires, dots=tuple(map(moved, plan.dots)))
    return Page(standing.sheet_number, standing.paper.width_mm, standing.paper.height_mm, whole)


def check_sheets(unnamed: Diagram, paper: str, passing_data: bool = False) -> Parts:
    diagram = named(unnamed)
    made = in_parts(diagram, paper)
    for plan, part in zip(made.plans, made.diagrams, strict=True):
        assert [text for text in defects(plan, part) if not (passing_data and text.startswith("data wire"))] == []
    drawing = on_sheets(made, paper)
    for sheet in drawing.sheets:
        assert [defect.message for defect in lint(sheet)] == []
    pages = [page(standing) for standing in drawing.diagrams]
    nets = read_sheets(pages)
    data = {net for net in nets if any(name.startswith("data") for _, name in net)}
    earth = {net for net in nets if any(name == "earth" or key == "met" for key, name in net)}
    assert nets - data - earth == power_nets(diagram)
    assert on_data(data) == chained(diagram)
    check_earth_references(pages, "met")
    drawn = Counter(cell.key for part in made.diagrams for cell in all_cells(part) if not is_mark(cell))
    parted = {key: count for key, count in drawn.items() if CONTINUED not in key}
    assert parted == {cell.key: 1 for cell in all_cells(diagram)}
    return made


@pytest.mark.parametrize("paper", ["A4", "A3"])
@examples(4)
@given(diagram=systems())
def test_systems_in_parts_have_no_defect_and_read_back(paper: str, diagram: Diagram) -> None:
    check_sheets(diagram, paper)


@examples(4)
@given(wild())
def test_wild_trees_in_parts_have_no_defect_and_read_back(diagram: Diagram) -> None:
    check_sheets(diagram, "A4", passing_data=True)


@pytest.mark.parametrize("count", [1, 12, 30])
def test_a_busbar_goes_on_from_sheet_to_sheet(count: int) -> None:
    diagram = inverters_on_one_bus(count)
    made = check_sheets(diagram, "A3")
    assert len(made.plans) >= count / 8  # an inverter needs more than 25 mm, a sheet has 263 mm
    marks = [cell for part in made.diagrams for cell in all_cells(part) if cell.symbol == "continued_left"]
    assert len(marks) == len(made.plans) - 1


def test_parts_fit_the_sheet_wherever_they_can() -> None:
    made = in_parts(inverters_on_one_bus(30), "A3")
    assert all(fits(plan, BLOCK, "A3") for plan in made.plans)


def test_a_path_too_long_for_a_sheet_is_cut_where_it_leaves_the_board() -> None:
    """A room of 160 mm: the path needs 385 mm, and 165 mm with the narrowest labels."""
    room = Room(160.0, 263.0)
    made = parts_of(worded(one_inverter()), layout.arrange, lambda plan: plan.width_mm <= room.width_mm, room)
    marks = {cell.key for part in made.diagrams for tree in part.trees for cell in branch(tree) if is_mark(cell)}
    assert marks == {f"{key}/{end}" for key in ("wac", "in1", "in2") for end in ("to", "from")}  # and at the inverter
    assert all(plan.width_mm <= room.width_mm for plan in made.plans)


def test_what_cannot_be_cut_is_left_for_a_larger_sheet() -> None:
    one = Diagram(drawn("net", "network", ["x" * 200]))
    made = in_parts(one, "A4")
    assert len(made.plans) == 1
    assert not fits(made.plans[0], BLOCK, "A4")


def test_equal_diagrams_give_equal_parts() -> None:
    assert in_parts(inverters_on_one_bus(20), "A3") == in_parts(inverters_on_one_bus(20), "A3")
