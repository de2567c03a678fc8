"""Nothing lies on anything else, and the connections read back from the drawing are those of the diagram."""

from __future__ import annotations

from collections import Counter

from diagrams import systems, wild
from hypothesis import HealthCheck, given, settings
from plan_check import defects
from plan_reader import links, power_nets, read_nets

from sld.layout.arrange import arrange
from sld.layout.diagram import Diagram
from sld.layout.plan import Plan
from sld.symbols import catalogue

THOROUGH = settings(max_examples=150, deadline=None, derandomize=True, suppress_health_check=list(HealthCheck))


def check_reading(plan: Plan, diagram: Diagram) -> None:
    nets = read_nets(plan)
    data = {net for net in nets if any(name.startswith("data") for _, name in net)}
    earth = {net for net in nets if any(name == "earth" or key == "met" for key, name in net)}
    assert nets - data - earth == power_nets(diagram)
    read = []
    for net in data:
        assert len(net) == 2, net
        (a,) = [key for key, name in net if name.startswith("data_out")]
        (b,) = [key for key, name in net if name.startswith("data_in")]
        read.append((a, b))
    assert sorted(read) == links(diagram)
    drops = {key for net in earth for key, name in net if name == "earth"}
    assert {cell.key for cell in plan.cells if f"{cell.key}/earth" in {c.key for c in plan.cells}} == drops
    for net in earth:
        if not any(key == "met" for key, _ in net):
            assert sorted(Counter(key.removesuffix("/earth") for key, _ in net).values()) == [2]
    if diagram.earth:
        (bar,) = [net for net in earth if any(key == "met" for key, _ in net)]
        assert len([key for key, _ in bar if key.startswith("met/")]) == len(diagram.earth.taps)


@THOROUGH
@given(systems())
def test_systems_have_no_defect_and_read_back(diagram: Diagram) -> None:
    plan = arrange(diagram, catalogue)
    assert defects(plan, diagram) == []
    check_reading(plan, diagram)


@THOROUGH
@given(wild())
def test_wild_trees_have_no_defect_and_read_back(diagram: Diagram) -> None:
    plan = arrange(diagram, catalogue)
    # Without an alignment a data device may stand above a foreign enclosure that its cable then has to pass.
    assert [text for text in defects(plan, diagram) if not text.startswith("data wire")] == []
    check_reading(plan, diagram)
