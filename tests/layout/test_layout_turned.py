"""The way to the supply that is turned down: where what is said of its devices stands. Our own rules, no source."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import pytest
from lettering import below
from worked_diagrams import one_inverter

from sld.layout.passes.arrange import arrange
from sld.layout.plan import PlacedCell, Plan
from sld.symbols import catalogue
from sld.symbols.stroke import Box
from sld.symbols.typeface import text_box

WAY = ("m", "qs", "net")
"""What of the worked diagram has all rows in common, the supply last."""


def turned(**supply: object) -> Plan:
    """The worked diagram turned. supply: what is other of its supply."""
    diagram = one_inverter()
    root = replace(diagram.root, **supply)  # type: ignore[arg-type]
    return arrange(replace(diagram, root=root, chains=(), free=()), catalogue, turned=True)


def cells(plan: Plan) -> dict[str, PlacedCell]:
    return {cell.key: cell for cell in plan.cells if cell.turned}


def words(cell: PlacedCell) -> Box:
    boxes = [text_box(text) for text in cell.labels]
    whole = boxes[0]
    for each in boxes[1:]:
        whole = whole.joined(each)
    return whole


def test_all_that_is_common_stands_below_each_other_down_to_the_supply() -> None:
    found = cells(turned())
    assert list(found)[-1] == "net"
    assert set(WAY) <= set(found)
    assert len({cell.at[0] for cell in found.values()}) == 1
    assert all(upper.box.bottom_mm < lower.box.top_mm for upper, lower in pairwise(found.values()))


@pytest.mark.parametrize("key", ["m", "qs"])
def test_words_stand_on_the_right_in_the_middle_of_their_device(key: str) -> None:
    """Or 4 mm beside the conductor, where the symbol is narrow; flags behind the first line, in its height."""
    plan = turned()
    cell = cells(plan)[key]
    flags = [flag.box for flag in plan.flags if flag.key == key]
    said = words(cell)
    assert said.left_mm == pytest.approx(max(cell.box.right_mm + 1.2, cell.at[0] + 4.0))
    top = min([said.top_mm, *(flag.top_mm for flag in flags)])
    reach = max(cell.box.bottom_mm, *(y for _, (_, y) in cell.pins))
    assert (top + said.bottom_mm) / 2 == pytest.approx((cell.at[1] + reach) / 2, abs=0.7)
    first = text_box(cell.labels[0])
    assert [flag.left_mm for flag in flags] == sorted(flag.left_mm for flag in flags)
    assert all(left.right_mm < right.left_mm for left, right in pairwise([first, *flags]))
    assert len(flags) == {"m": 0, "qs": 2}[key]
    assert all(flag.left_mm - first.right_mm > 0.7 and abs(flag.bottom_mm - first.bottom_mm) < 0.5 for flag in flags)


@pytest.mark.parametrize("boxed", [False, True])
def test_the_box_of_the_supply_holds_its_words(boxed: bool) -> None:
    """On the left of the supply, or below it; nothing of another device is in it."""
    plan = turned(boxed=boxed, below=below("Ik 6 kA", "0.35 Ω", "4 × 35 mm²"))
    net = cells(plan)["net"]
    said = words(net)
    assert said.right_mm < net.box.left_mm or said.top_mm > net.box.bottom_mm
    assert (net.boxed is not None) == boxed
    if net.boxed:
        assert net.boxed.left_mm < said.left_mm < said.right_mm < net.boxed.right_mm
        assert net.boxed.top_mm < said.top_mm < said.bottom_mm < net.boxed.bottom_mm
        margins = said.left_mm - net.boxed.left_mm, said.top_mm - net.boxed.top_mm
        assert margins[0] == pytest.approx(net.boxed.right_mm - said.right_mm, abs=0.5)
        assert margins[1] == pytest.approx(net.boxed.bottom_mm - said.bottom_mm, abs=0.4)
        others = [text_box(text) for cell in plan.cells if cell.key != "net" for text in cell.labels]
        assert not [each for each in others if each.meets(net.boxed)]


def test_the_frame_of_the_rows_goes_on_around_what_is_in_the_same_enclosure() -> None:
    plan = turned()
    found = cells(plan)
    (board,) = [frame.box for frame in plan.frames if frame.key == "db"]
    inside = found["qs"]
    assert board.left_mm < inside.box.left_mm < words(inside).right_mm < board.right_mm
    assert board.top_mm < inside.box.top_mm < inside.box.bottom_mm < board.bottom_mm
    assert 0.0 < found["m"].box.top_mm - board.bottom_mm < 5.0
    for key in ("m", "net"):
        assert not found[key].box.meets(board)
    assert plan.width_mm >= max(words(cell).right_mm for cell in found.values())
