"""Nothing lies on anything else, and the connections read back from the drawing are those of the diagram."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace

import pytest
from diagrams import systems, wild
from hypothesis import given
from lettering import above
from plan_check import all_cells, defects
from plan_reader import chained, power_nets, read_nets
from some_examples import examples
from worked_diagrams import inverters_on_one_bus, one_inverter

from sld.layout.diagram.diagram import BusChain, BusStep, Cell, Diagram, EarthBar, EarthTap
from sld.layout.passes.arrange import arrange
from sld.layout.plan import Plan
from sld.symbols import catalogue


def ends_in_earth(symbol: str) -> bool:
    """Whether a hanging body has the sign of earth at its own end."""
    shape = catalogue.symbol(symbol)
    return shape.hangs and "earth" not in dict(shape.pins)


def check_reading(plan: Plan, diagram: Diagram) -> None:
    nets = read_nets(plan)
    data = {net for net in nets if any(name.startswith("data") for _, name in net)}
    earth = {net for net in nets if any(name == "earth" or key == "met" for key, name in net)}
    assert nets - data - earth == power_nets(diagram)
    terminated = Counter(step.key for chain in diagram.chains for step in chain.steps if step.terminated)
    resistors = [key for net in data for key, name in net if name == "feed"]
    assert Counter(key.rpartition("/")[0] for key in resistors) == terminated
    read = [frozenset(key for key, name in net if name.startswith("data")) for net in data]
    assert sorted((keys for keys in read if len(keys) > 1), key=sorted) == chained(diagram)
    drops = {key for net in earth for key, name in net if name == "earth"}
    assert {cell.key for cell in all_cells(diagram) if cell.earth and not ends_in_earth(cell.symbol)} == drops
    for net in earth:
        if not any(key == "met" for key, _ in net):
            (end,) = [key for key, _ in net if key.endswith("/earth")]
            assert (end.removesuffix("/earth"), "earth") in net
    if diagram.earth:
        (bar,) = [net for net in earth if any(key == "met" for key, _ in net)]
        assert len([key for key, _ in bar if key.startswith("met/")]) == len(diagram.earth.taps)


@examples(10)
@given(systems())
def test_systems_have_no_defect_and_read_back(diagram: Diagram) -> None:
    plan = arrange(diagram, catalogue)
    assert defects(plan, diagram) == []
    check_reading(plan, diagram)


@examples(10)
@given(wild())
def test_wild_trees_have_no_defect_and_read_back(diagram: Diagram) -> None:
    plan = arrange(diagram, catalogue)
    # Without an alignment a data device may stand above a foreign enclosure that its cable then has to pass.
    assert [text for text in defects(plan, diagram) if not text.startswith("data wire")] == []
    check_reading(plan, diagram)


@examples(8)
@given(systems())
def test_turned_systems_have_no_defect_and_read_back(diagram: Diagram) -> None:
    plan = arrange(diagram, catalogue, turned=True)
    assert [text for text in defects(plan, diagram) if not text.startswith("data wire")] == []
    check_reading(plan, diagram)


def test_the_usual_system_fits_on_a3() -> None:
    """Fourteen devices in a row in 385 mm; two inputs in 90 mm.

    ISO 5457 A3 landscape: 420 x 297 mm less margins of 20 and 10 mm (from memory): 390 mm of drawing space.
    """
    diagram = replace(one_inverter(), free=(), chains=(), earth=None)
    plan = arrange(diagram, catalogue)
    assert defects(plan, diagram) == []
    assert plan.width_mm <= 385.0
    assert plan.height_mm <= 90.0


def test_the_worked_system_has_no_defect() -> None:
    plan = arrange(one_inverter(), catalogue)
    assert defects(plan, one_inverter()) == []
    check_reading(plan, one_inverter())


@pytest.mark.parametrize("count", [1, 2, 3, 10])
def test_a_data_cable_in_row_order_crosses_each_inverter_output_but_one(count: int) -> None:
    """A spine past n outputs that all go to one busbar need not cross the first one: n - 1 crossings."""
    plan = arrange(inverters_on_one_bus(count), catalogue)
    assert plan.crossings_count == count - 1


def test_equal_diagrams_give_equal_plans() -> None:
    assert arrange(one_inverter(), catalogue) == arrange(one_inverter(), catalogue)


def test_the_main_path_is_straight() -> None:
    plan = arrange(replace(one_inverter(), free=(), chains=(), earth=None), catalogue)
    path = ("net", "m", "qs", "bar", "f1", "rcd", "wac", "qi", "t1", "in1", "spd1", "q1", "w1", "qr1", "pv1")
    assert len({cell.at[1] for cell in plan.cells if cell.key in path}) == 1


@pytest.mark.parametrize("count", [0, 1, 8, 30])
def test_an_earth_bar_wider_than_the_diagram_goes_on_in_further_rows(count: int) -> None:
    taps = tuple(EarthTap(f"WE{i}", above(f"-WE{i}", "16 mm² Cu"), flags=(i,)) for i in range(count))
    diagram = Diagram(Cell("net", "network"), earth=EarthBar("met", above("-XE1"), taps))
    plan = arrange(diagram, catalogue)
    assert defects(plan, diagram) == []
    check_reading(plan, diagram)
    assert plan.width_mm <= 120.0
    rows = {cell.at[1] for cell in plan.cells if cell.key.startswith("met/")}
    assert len(rows) == count if count < 2 else len(rows) > 1


def test_taps_get_narrower_lines_where_all_of_them_then_stand_in_one_row() -> None:
    """Three taps of about 45 mm do not fit the 120 mm of the bar, but do so on two lines each."""
    taps = tuple(EarthTap(f"WE{i}", above(f"-WE{i}", "equipotential bonding bar")) for i in range(3))
    diagram = Diagram(Cell("net", "network"), earth=EarthBar("met", above("-XE1"), taps))
    plan = arrange(diagram, catalogue)
    assert defects(plan, diagram) == []
    assert plan.width_mm <= 120.0
    cells = [cell for cell in plan.cells if cell.key.startswith("met/")]
    assert len({cell.at[1] for cell in cells}) == 1
    assert [len(cell.labels) for cell in cells] == [3, 3, 3]  # designation and the two lines


def test_a_chain_may_only_name_cells_of_the_diagram() -> None:
    diagram = Diagram(Cell("net", "network"), chains=(BusChain("bus", steps=(BusStep("net"), BusStep("t9"))),))
    with pytest.raises(ValueError, match="t9"):
        arrange(diagram, catalogue)
