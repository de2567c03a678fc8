"""Diagrams of several supply points on one sheet: below each other, every wire and device as in its own plan."""

from __future__ import annotations

from pathlib import Path

import pytest
from plan_reader import read_nets

from sld import layout, run
from sld.layout.diagram.wrapping import Manner, lines_wrapped, worded
from sld.layout.plan import Plan
from sld.layout.stacked import stacked
from sld.symbols.stroke import MODULE_MM


@pytest.fixture(scope="module")
def made() -> tuple[list[Plan], Plan]:
    """The plans of the diagrams behind the two supply points of a spec, and these as one."""
    checked = run.check(Path("tests/printed/twin.yaml"))
    whole = [layout.diagram_of(part.system, part.ratings, {}) for part in checked.parts]
    said = [lines_wrapped(worded(each), Manner(40.0)) for each in whole]
    plans = [layout.arrange(each) for each in said]
    return plans, stacked(plans)


def test_nothing_overlaps(made: tuple[list[Plan], Plan]) -> None:
    plans, both = made
    upper = max(box.bottom_mm for cell in both.cells[: len(plans[0].cells)] for box in [cell.box])
    lower = min(box.top_mm for cell in both.cells[len(plans[0].cells) :] for box in [cell.box])
    assert upper < lower
    assert both.height_mm >= sum(plan.height_mm for plan in plans)
    assert both.width_mm == max(plan.width_mm for plan in plans)


def test_the_connections_are_those_of_the_two_and_none_between(made: tuple[list[Plan], Plan]) -> None:
    plans, both = made
    assert read_nets(both) == read_nets(plans[0]) | read_nets(plans[1])
    keys = [{cell.key for cell in plan.cells} for plan in plans]
    assert not keys[0] & keys[1]
    for net in read_nets(both):
        assert len({0 if key in keys[0] else 1 for key, _ in net if key}) <= 1


def test_terminals_stay_on_the_grid(made: tuple[list[Plan], Plan]) -> None:
    for cell in made[1].cells:
        for _, (x, y) in cell.pins:
            assert x / MODULE_MM == pytest.approx(round(x / MODULE_MM), abs=1e-6)
            assert y / MODULE_MM == pytest.approx(round(y / MODULE_MM), abs=1e-6)


def test_a_single_plan_is_left_as_it_is(made: tuple[list[Plan], Plan]) -> None:
    assert stacked(made[0][:1]) is made[0][0]
