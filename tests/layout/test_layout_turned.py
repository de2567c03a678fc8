"""The way to the supply that is turned down: where what is said of its devices stands. Our own rules, no source."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import pytest
from lettering import below, drawn
from worked_diagrams import one_inverter

from sld.layout.diagram.diagram import BusChain, BusStep, Enclosure
from sld.layout.diagram.line import Line, Role
from sld.layout.diagram.symbol_of import OWNERSHIP_BOUNDARY
from sld.layout.diagram.trunk import trunk_of
from sld.layout.passes.arrange import arrange
from sld.layout.passes.turned import Turned, turned_of, with_trunk
from sld.layout.passes.way import Way, way_of
from sld.layout.plan import Frame, PlacedCell, Plan
from sld.symbols import catalogue
from sld.symbols.stroke import Box, Text
from sld.symbols.typeface import text_box
from sld.words import verbatim

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


def test_no_terminal_lies_beyond_a_symbol_that_leads_down() -> None:
    """So that its lower edge is where it ends."""
    for name in catalogue.names():
        shape = catalogue.turned(name)
        assert all(y <= shape.box.bottom_mm for _, (_, y) in shape.pins), name


def test_a_boundary_of_ownership_says_whose_is_what_above_and_below_it() -> None:
    diagram = one_inverter()
    meter = replace(diagram.root.children[0], symbol=OWNERSHIP_BOUNDARY, below=())
    root = replace(diagram.root, children=(meter,))
    plan = arrange(replace(diagram, root=root, chains=(), free=()), catalogue, turned=True)
    upper, lower = cells(plan)["m"].labels
    assert (upper.text, lower.text) == ("↑ customer", "network ↓")
    assert upper.at[1] < lower.at[1]


@pytest.mark.parametrize("said", ["4 × 35 mm²", "the conductors lead in underground from the street, " * 6])
def test_words_of_the_supply_are_clear_of_it_and_within_the_diagram(said: str) -> None:
    """On its left where there is room, 1.2 mm before it, in the middle of its height; else below it."""
    plan = turned(below=below(said))
    net = cells(plan)["net"]
    text = words(net)
    assert 0.0 <= text.left_mm < text.right_mm <= plan.width_mm
    if len(said) > 99:
        assert text.top_mm >= net.box.bottom_mm + 0.9
    else:
        assert net.box.left_mm - text.right_mm == pytest.approx(1.2, abs=0.4)
        assert (text.top_mm + text.bottom_mm) / 2 == pytest.approx((net.box.top_mm + net.box.bottom_mm) / 2, abs=0.5)


def placed(*terminated: bool, from_mm: float = 100.0, foot_mm: float = 60.0) -> tuple[Way, Turned]:
    """The way of the worked diagram, a breaker more at its bar, right of a place; the meter in so many chains."""
    chains = tuple(
        BusChain(f"bus{n}", steps=(BusStep("m", terminated=each), BusStep("t1"))) for n, each in enumerate(terminated)
    )
    worked = one_inverter()
    (meter,) = worked.root.children
    (switch,) = meter.children
    (bar,) = switch.children
    bar = replace(bar, children=(*bar.children, drawn("f9", "circuit_breaker")))
    root = replace(worked.root, children=(replace(meter, children=(replace(switch, children=(bar,)),)),))
    diagram = replace(worked, root=root, chains=chains, free=())
    trunk = trunk_of(diagram)
    assert trunk is not None
    way = way_of(trunk, diagram, {}, catalogue)
    return way, turned_of(way, diagram, (90.0, 20.0), from_mm, foot_mm)


def test_the_frame_of_the_rows_is_widened_by_what_it_holds_of_the_way() -> None:
    """And by the distance of two frames, 1.6 mm."""
    way, found = placed()
    (board,) = [frame.box for frame in found.frames if frame.key == "db"]
    assert way.widens_mm == pytest.approx(board.width_mm + 1.6)


@pytest.mark.parametrize(("terminated", "apart_mm"), [(False, 2.5), (True, 10.0)])
def test_tracks_stand_a_module_apart_four_with_a_resistor_between_them(terminated: bool, apart_mm: float) -> None:
    _, found = placed(terminated, False)
    first, second = (run.x_mm for run in found.runs)
    assert first - second == pytest.approx(apart_mm)
    upper, lower = (drop for run in found.runs for drop in run.drops)
    assert (upper.terminal, lower.terminal) == ("data", "data2")
    assert upper.at != lower.at
    assert {upper.at, lower.at} <= {at for cell in found.cells if cell.key == "m" for _, at in cell.pins}


@pytest.mark.parametrize("terminated", [False, True])
def test_a_track_and_what_is_on_its_left_stand_between_the_rows_and_the_way(terminated: bool) -> None:
    """What is on its left is known before the way is placed, but for roundings up to the grid of 2.5 mm."""
    more = []
    for from_mm in (100.0 + tenths / 10 for tenths in range(25)):
        way, found = placed(terminated, from_mm=from_mm)
        (run,) = found.runs
        assert from_mm < run.x_mm < min(frame.box.left_mm for frame in found.frames)
        more.append(run.x_mm - from_mm - 2.5 - way.before_tracks_mm)
    assert 0.0 <= min(more) < 2.5


def test_the_caption_of_a_frame_stands_in_it_beside_the_conductor_above_the_first_device() -> None:
    diagram = one_inverter()
    (meter,) = diagram.root.children
    root = replace(diagram.root, children=(replace(meter, enclosure="mb"),))
    boxes = (
        *diagram.enclosures,
        Enclosure("mb", verbatim("-U2 Cabinet of the meters and of all that belongs to them")),
    )
    plan = arrange(replace(diagram, root=root, enclosures=boxes, chains=(), free=()), catalogue, turned=True)
    (frame,) = [each for each in plan.frames if each.key == "mb"]
    device = cells(plan)["m"]
    lines = [frame.caption, *[text for text in plan.texts if frame.box.left_mm < text.at[0] < frame.box.right_mm
                              and frame.box.top_mm < text.at[1] < frame.box.bottom_mm]]  # fmt: skip
    assert " ".join(text.text for text in lines).startswith("-U2 Cabinet of the")
    for text in map(text_box, lines):
        assert frame.box.top_mm < text.top_mm < text.bottom_mm < device.box.top_mm
        assert device.at[0] < text.left_mm < text.right_mm < frame.box.right_mm


@pytest.mark.parametrize(
    ("foot_mm", "notch"),
    [
        (40.0, Box(0.0, 30.0, 50.0, 40.0)),  # lower than the rows: they leave free what is on its left
        (30.0, None),
        (25.0, Box(45.0, 25.0, 70.0, 30.0)),  # higher: free is what is below it, on their right
    ],
)
def test_a_frame_that_goes_on_is_notched_where_one_of_its_feet_is_higher(foot_mm: float, notch: Box | None) -> None:
    rows = Frame("db", Box(0.0, 10.0, 45.0, 30.0), Text((1.0, 12.0), "-U1"))
    goes_on = Frame("db", Box(50.0, 5.0, 70.0, foot_mm), Text((0.0, 0.0), ""))
    (frame,), room_mm = with_trunk((rows,), Turned(frames=[goes_on]), 80.0)
    assert frame.box == Box(0.0, 10.0, 70.0, max(30.0, foot_mm))
    assert (frame.caption.text, frame.notch) == ("-U1", notch)
    assert room_mm == (47.5 if foot_mm > 30.0 else 80.0)  # a module beside it


def test_words_on_the_left_of_the_supply_are_a_module_below_the_rows() -> None:
    """Where the rows reach too far down for that, the words are below the supply."""
    to_left = []
    for foot_mm in range(20, 120):
        _, found = placed(foot_mm=foot_mm)
        net = found.cells[-1]
        assert found.bottom_mm >= max(words(net).bottom_mm, net.box.bottom_mm)
        if words(net).right_mm < net.box.left_mm:
            to_left.append(foot_mm)
            assert words(net).top_mm >= foot_mm + 2.5
        else:
            assert words(net).top_mm > net.box.bottom_mm
    assert 0 < len(to_left) < 100


def with_terminals(count: int) -> Plan:
    """The worked diagram turned, its earth bar with so many terminals."""
    diagram = one_inverter()
    assert diagram.earth is not None
    earth = replace(diagram.earth, taps=(diagram.earth.taps * count)[:count])
    return arrange(replace(diagram, earth=earth, chains=(), free=()), catalogue, turned=True)


@pytest.mark.parametrize("terminals_count", [1, 2, 4, 8, 16])
def test_the_earth_bar_stands_beside_the_way_and_ends_before_the_words_of_the_supply(terminals_count: int) -> None:
    plan = with_terminals(terminals_count)
    net = cells(plan)["net"]
    bar = next(cell for cell in plan.cells if cell.key == "met")
    assert bar.box.top_mm < net.box.bottom_mm
    taps = [cell for cell in plan.cells if cell.key.startswith("met/") and cell.labels]
    assert len(taps) == terminals_count
    assert max(words(tap).right_mm for tap in taps) + 2.5 <= words(net).left_mm


def test_the_earth_bar_is_right_below_what_stands_over_it() -> None:
    """Not below what stands on its right: a bar of one terminal is no lower where the way reaches further down."""
    bars = []
    for lines in ((), ("one", "two", "three", "four", "five", "six")):
        diagram = one_inverter()
        root = replace(diagram.root, below=tuple(Line(Role.NAME, verbatim(line)) for line in lines))
        plan = arrange(replace(diagram, root=root, chains=(), free=()), catalogue, turned=True)
        bars.append(next(cell.box.top_mm for cell in plan.cells if cell.key == "met"))
        over = [cell for cell in plan.cells if not cell.turned and not cell.key.startswith("met")]
        lower_mm = max(box.bottom_mm for cell in over for box in (cell.box, *map(text_box, cell.labels)))
        assert lower_mm <= bars[-1]
    assert bars[0] == bars[1]
