"""What the village hall looks like when its way to the supply is turned down: a table of facts. Common practice."""

from __future__ import annotations

from functools import cache
from itertools import pairwise
from pathlib import Path

import pytest

from sld import run
from sld.layout.diagram.diagram import LineKind
from sld.layout.plan import PlacedCell, Plan
from sld.sheet.ink import strokes_box
from sld.symbols.catalogue import family
from sld.symbols.stroke import Box, Polyline
from sld.symbols.typeface import text_box

SPECS = Path(__file__).parents[2] / "specs"


@cache
def plan(name: str = "village-hall") -> Plan:
    return run.draw(run.check(SPECS / f"{name}.yaml")).diagrams[0].plan


def cells(symbol: str) -> list[PlacedCell]:
    return [cell for cell in plan().cells if cell.symbol.startswith(symbol)]


def wires(name: str) -> list[Box]:
    return [
        Box(min(a[0], b[0]), min(a[1], b[1]), max(a[0], b[0]), max(a[1], b[1]))
        for wire in plan(name).wires
        for a, b in pairwise(wire.points)
    ]


@pytest.mark.parametrize("of", ["IEC", "ANSI"])
def test_an_inverter_is_a_square_of_ten_millimetres_beside_its_terminal_strip(of: str) -> None:
    (inverter,) = cells("inverter")
    strokes = family(of).symbol(inverter.symbol).strokes
    shapes = [strokes_box([each]) for each in strokes if isinstance(each, Polyline) and each.closed]
    assert (10.0, 10.0) in [(round(box.width_mm, 1), round(box.height_mm, 1)) for box in shapes]
    assert inverter.strip is not None
    inputs = {cell.at[1] for cell in cells("terminal")}
    assert inverter.strip.top_mm < min(inputs) < max(inputs) < inverter.strip.bottom_mm


def test_what_stands_along_a_cable_is_above_its_conductor_and_clear_of_it() -> None:
    for cable in (cell for cell in cells("cable") if not cell.turned):
        along = next(text for text in cable.labels if "mm²" in text.text)
        assert 0.25 < cable.at[1] - text_box(along).bottom_mm < 1.5


def test_designations_of_devices_in_a_row_stand_on_one_level() -> None:
    rows: dict[float, set[float]] = {}
    for cell in plan().cells:
        if cell.symbol.startswith(("cable", "circuit_breaker", "switch_disconnector")) and not cell.turned:
            rows.setdefault(cell.at[1], set()).add(cell.labels[0].at[1])
    assert [len(levels) for levels in rows.values()] == [1] * len(rows)
    assert len(rows) >= 3


def test_one_conductor_bonds_the_frames_of_both_arrays_and_reaches_the_bar() -> None:
    bonded = [wire for wire in plan().wires if wire.kind is LineKind.EARTH and wire.points[0][0] == wire.points[-1][0]]
    left = min(wire.points[0][0] for wire in bonded)
    spine = [wire for wire in bonded if wire.points[0][0] == left]
    arrays = sorted(cell.at[1] for cell in cells("pv_"))
    assert len(arrays) == 2
    assert min(point[1] for wire in spine for point in wire.points) == arrays[0]
    bar = max(
        (wire for wire in plan().wires if wire.kind is LineKind.EARTH and wire.points[0][1] == wire.points[-1][1]),
        key=lambda wire: wire.points[0][1],
    )
    assert max(point[1] for wire in spine for point in wire.points) == bar.points[0][1]


def test_the_frame_of_a_board_that_is_higher_on_the_right_has_a_notch_beside_the_network() -> None:
    frame = next(each for each in plan("weir-house").frames if each.key == "boards.main")
    assert frame.notch is not None
    assert (frame.notch.right_mm, frame.notch.bottom_mm) == (frame.box.right_mm, frame.box.bottom_mm)
    inside = [cell for cell in plan("weir-house").cells if cell.turned and cell.box.bottom_mm < frame.notch.top_mm]
    beyond = [cell for cell in plan("weir-house").cells if cell.turned and cell.box.top_mm > frame.notch.top_mm]
    assert (len(inside), [cell.symbol for cell in beyond][-1]) == (3, "network")
    assert all(frame.notch.left_mm < cell.box.left_mm for cell in beyond)


def test_the_caption_of_a_board_has_its_rating() -> None:
    (frame,) = plan().frames
    assert "80 A," in " ".join([frame.caption.text, *(text.text for text in plan().texts)])


@pytest.mark.parametrize("name", ["village-hall", "weir-house", "valley-school"])
def test_no_conductor_runs_through_a_caption(name: str) -> None:
    texts = [*(frame.caption for frame in plan(name).frames), *plan(name).texts]
    assert [t.text for t in texts if any(text_box(t).meets(wire.grown(0.25)) for wire in wires(name))] == []


def test_devices_that_are_turned_down_stand_on_one_conductor() -> None:
    turned = [cell for cell in plan().cells if cell.turned]
    assert len({cell.at[0] for cell in turned}) == 1
    assert [cell.at[1] for cell in turned] == sorted(cell.at[1] for cell in turned)
    *others, supply = turned
    assert all(text_box(text).left_mm > cell.at[0] for cell in others for text in cell.labels)
    assert all(text_box(text).right_mm < supply.box.left_mm for text in supply.labels)


@pytest.mark.parametrize("name", ["village-hall", "weir-house"])
def test_an_inverter_has_its_designation_and_at_most_three_lines(name: str) -> None:
    inverters = [cell for cell in plan(name).cells if cell.symbol.startswith("inverter")]
    assert [[text.text for text in cell.labels] for cell in inverters if len(cell.labels) > 1 + 3] == []
