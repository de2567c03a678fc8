"""The check of the other tests is itself put to the test: a plan with one thing out of place must not pass."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest
from plan_check import defects
from plan_reader import power_nets, read_nets
from worked_diagrams import one_inverter

from sld.layout.passes.arrange import arrange
from sld.layout.plan import Plan
from sld.symbols import catalogue

DIAGRAM = one_inverter()
PLAN = arrange(DIAGRAM, catalogue)


def _move_cell(key: str, dx_mm: float, dy_mm: float) -> Callable[[Plan], Plan]:
    def change(plan: Plan) -> Plan:
        cells = tuple(replace(c, box=c.box.moved(dx_mm, dy_mm)) if c.key == key else c for c in plan.cells)
        return replace(plan, cells=cells)

    return change


def _move_labels(key: str, dx_mm: float, dy_mm: float) -> Callable[[Plan], Plan]:
    def change(plan: Plan) -> Plan:
        cells = tuple(
            replace(c, labels=tuple(replace(t, at=(t.at[0] + dx_mm, t.at[1] + dy_mm)) for t in c.labels))
            if c.key == key
            else c
            for c in plan.cells
        )
        return replace(plan, cells=cells)

    return change


def _bend_first_wire(plan: Plan) -> Plan:
    return replace(plan, wires=(replace(plan.wires[0], points=((0.0, 1.0), (9.0, 1.0))), *plan.wires[1:]))


@pytest.mark.parametrize(
    ("change", "message"),
    [
        (lambda plan: plan, None),
        (_move_cell("f1", 60.0, 0.0), "symbol"),
        (_move_labels("wac", 0.0, -4.0), "wire"),
        (_move_labels("qi", 25.0, 0.0), "text"),
        (lambda plan: replace(plan, width_mm=plan.width_mm - 5.0), "outside"),
        (lambda plan: replace(plan, dots=plan.dots[1:]), "dot: False"),
        (lambda plan: replace(plan, dots=(*plan.dots, plan.wires[0].points[0])), None),
        (lambda plan: replace(plan, dots=(*plan.dots, plan.dots[0])), "twice"),
        (lambda plan: replace(plan, flags=plan.flags[1:]), "flag"),
        (lambda plan: replace(plan, frames=()), "in 0 frames"),
        (lambda plan: replace(plan, frames=tuple(replace(f, box=f.box.grown(25.0)) for f in plan.frames)), "in frame"),
        (lambda plan: replace(plan, crossings_count=plan.crossings_count + 1), "crossings"),
        (_bend_first_wire, "end"),
        (lambda plan: replace(plan, wires=(*plan.wires, plan.wires[0])), "along"),
        (lambda plan: replace(plan, cells=plan.cells[1:]), "missing"),
    ],
)  # fmt: skip
def test_the_check_notices(change: Callable[[Plan], Plan], message: str | None) -> None:
    found = defects(change(PLAN), DIAGRAM)
    if message is None:
        assert found == []
    else:
        assert any(message in text for text in found)


def test_the_reader_notices_a_missing_wire() -> None:
    assert power_nets(DIAGRAM) <= read_nets(PLAN)
    for number, wire in enumerate(PLAN.wires):
        if wire.net.endswith((":feed", ":feed1", ":feed2")):
            cut = replace(PLAN, wires=PLAN.wires[:number] + PLAN.wires[number + 1 :])
            assert not power_nets(DIAGRAM) <= read_nets(cut)
