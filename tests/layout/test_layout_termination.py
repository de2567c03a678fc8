"""A terminating resistor at each end of a bus: TIA-485-A has one across each end of the cable (from memory)."""

from __future__ import annotations

import pytest
from plan_check import defects

from sld.layout import arrange
from sld.layout.diagram.diagram import BusChain, BusStep, Cell, Diagram, LineKind
from sld.layout.plan import PlacedCell, Plan
from sld.words import verbatim

BOARD = Cell(
    "board", "busbar",
    children=(Cell("meter", "meter", children=(Cell("one", "inverter_3ph", kind=LineKind.AC),)),),
)  # fmt: skip


def planned(*steps: BusStep, symbols: str = "IEC") -> Plan:
    free = (Cell("logger", "logger", kind=LineKind.DATA), Cell("router", "router", kind=LineKind.DATA))
    root = Cell("net", "network", children=(BOARD,))
    diagram = Diagram(root, free=free, chains=(BusChain("bus", verbatim("-WF1"), steps),), symbols=symbols)
    plan = arrange(diagram)
    assert defects(plan, diagram) == []
    return plan


def resistors(plan: Plan) -> list[PlacedCell]:
    return [cell for cell in plan.cells if cell.symbol == "termination_resistor"]


@pytest.mark.parametrize("symbols", ["IEC", "ANSI"])
@pytest.mark.parametrize(
    "ends", [("one", "logger"), ("meter", "one"), ("logger", "meter"), ("router", "one"), ("one",), ()]
)
def test_a_resistor_stands_at_each_terminated_device(ends: tuple[str, ...], symbols: str) -> None:
    path = dict.fromkeys((*ends[:1], "one", "meter", "logger", "router"))
    for end in ends[1:]:
        path = {**{key: None for key in path if key != end}, end: None}
    plan = planned(*(BusStep(key, terminated=key in ends) for key in path), symbols=symbols)
    assert sorted(cell.key for cell in resistors(plan)) == sorted(f"{key}/data" for key in ends)


def test_a_resistor_is_on_the_branch_to_its_device_between_that_and_the_body() -> None:
    """So that it takes no width beside the bus: right of the terminal, one module before the branch turns."""
    plan = planned(BusStep("one", terminated=True), BusStep("logger", terminated=True))
    for resistor in resistors(plan):
        (lead,) = [wire for wire in plan.wires if any(key == resistor.key for key, _ in wire.ends)]
        device = resistor.key.removesuffix("/data")
        (branch,) = [wire for wire in plan.wires if wire.ends[0] == (device, "data")]
        assert lead.points[0] == branch.points[-1]
        cell = next(each for each in plan.cells if each.key == device)
        (onward,) = [wire for wire in plan.wires if wire.points[0] == branch.points[-1] and wire != lead]
        level, at = onward.points[-1][1], lead.points[-1]
        assert at == resistor.at
        assert min(abs(edge - at[1]) for edge in (cell.box.top_mm, cell.box.bottom_mm)) < abs(
            min((cell.box.top_mm, cell.box.bottom_mm), key=lambda edge: abs(edge - level)) - level
        )
        assert at[0] > branch.points[0][0]


def test_without_termination_there_is_none() -> None:
    assert resistors(planned(BusStep("one"), BusStep("logger"))) == []
