"""How far things stand from each other, in diagrams of a few cells measured by hand. Our own rules; no source."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from itertools import pairwise

import pytest
from lettering import drawn

from sld.layout.diagram.diagram import Cell, Diagram, Join
from sld.layout.diagram.line import Line, Role
from sld.layout.passes.beside import apart_of
from sld.layout.passes.cabling import Cabling, Drop, Run
from sld.layout.passes.columns import Channel, Columns
from sld.layout.passes.heights import heights_of
from sld.layout.passes.lanes import lanes_of
from sld.layout.passes.lettering import letters_of
from sld.layout.passes.ports import Port
from sld.layout.passes.rows import rows_of
from sld.layout.passes.shapes import Form, shapes_of
from sld.layout.passes.stack import Stack, stack_of
from sld.layout.passes.tree import tree_of
from sld.symbols import catalogue
from sld.symbols.catalogue import Symbol
from sld.symbols.stroke import Box, Text
from sld.symbols.typeface import text_box
from sld.words import verbatim

CORE = Box(0.0, -1.0, 5.0, 1.0)
"""The body of every cell measured by hand."""

CHANNEL = Channel(45.0, (50.0,), (52.5, 52.5), 55.0)
"""What runs vertically on the right of the first lane, one track of a data chain."""

APART_MM = 1.2
"""Between two things at the same height, or one above the other."""


def stack(form: Form, row: int = 0, lower: tuple[Box, ...] = ()) -> Stack:
    """The contents of a cell: its body, and boxes that hang on its row."""
    return Stack(form, row, row, 0.0, 5.0, 1.0, 1.0, -2.5, 2.5, boxes=([form.box], list(lower)))


def apart(root: Cell, lower: Mapping[str, Box], strip: Box | None = None) -> dict[tuple[int, int], float]:
    """The least distances of lanes. lower: boxes by key. strip: of the root."""
    diagram = Diagram(root)
    tree = tree_of(diagram)
    rows = rows_of(tree)
    stacks = []
    for place, node in enumerate(tree.nodes):
        form = Form(CORE, (), hangs=False, strip=strip if place == 0 else None)
        box = lower.get(node.cell.key)
        stacks.append(stack(form, rows.axis[place], lower=(box,) if box else ()))
    return apart_of(rows, lanes_of(tree, rows, diagram), stacks, [0.0] * len(stacks))


PAIR = Cell("right", "x", children=(Cell("left", "x"),))
FAN = Cell("right", "x", join=Join.SPAN, children=tuple(Cell(key, "x") for key in ("s0", "s1")))


def test_things_as_far_down_as_one_looks_are_apart_as_well() -> None:
    """From 90 mm below the axis on nothing is told apart by its height: 30 mm of text on 15 and 1.2 mm beside it."""
    reaching = {"left": Box(0.0, 80.0, 30.0, 100.0), "right": Box(-15.0, 95.0, 5.0, 98.0)}
    assert apart(PAIR, reaching) == {(1, 0): pytest.approx(30.0 + 15.0 + APART_MM)}


@pytest.mark.parametrize("shift_mm", [0.0, -5.0])
def test_a_strip_is_moved_with_its_symbol(shift_mm: float) -> None:
    """What is on its right is 1.2 mm from where it then ends."""
    three = replace(FAN, children=(*FAN.children, Cell("s2", "x")))
    root = Cell("net", "x", children=(three,))
    tree = tree_of(Diagram(root))
    rows = rows_of(tree)
    strip = Form(CORE, (), hangs=False, strip=Box(0.0, -1.0, 8.0, 1.0))
    plain = Form(CORE, (), hangs=False)
    stacks = [stack(strip if node.spans else plain, rows.axis[place]) for place, node in enumerate(tree.nodes)]
    offsets = [shift_mm if node.spans else 0.0 for node in tree.nodes]
    found = apart_of(rows, lanes_of(tree, rows, Diagram(root)), stacks, offsets)
    assert found[1, 0] == pytest.approx(8.0 + shift_mm + APART_MM)


def test_what_is_below_the_foot_of_a_strip_may_reach_under_it() -> None:
    """In the last row a strip ends a millimetre below the axis; before it, it goes on to the next row."""
    low = Box(0.0, 3.0, 40.0, 6.0)
    strip = Box(0.0, -1.0, 1.0, 1.0)
    beside = 5.0 + APART_MM
    assert apart(FAN, {"s1": low}, strip)[1, 0] == pytest.approx(beside)
    assert apart(FAN, {"s0": low}, strip)[1, 0] == pytest.approx(40.0 + APART_MM)


def test_a_row_keeps_away_from_the_foot_of_a_strip_above_it() -> None:
    """The strip ends 8.5 mm below its last row, 1 mm is free, a body reaches up 1 mm: the next module is 12.5 mm."""
    diagram = Diagram(FAN, free=(Cell("k", "x"),))
    tree = tree_of(diagram)
    rows = rows_of(tree)
    stacks = [
        stack(Form(CORE, (), hangs=False, strip=Box(0.0, -1.0, 1.0, 8.5) if node.spans else None), rows.axis[place])
        for place, node in enumerate(tree.nodes)
    ]
    columns = Columns((20.0, 5.0, 5.0, 20.0), (CHANNEL, CHANNEL), (), 60.0)
    cabling = Cabling((), ((),) * 4, (0, 0), 0, {})
    *_, foot, free = heights_of(tree, rows, lanes_of(tree, rows, diagram), cabling, stacks, columns).axis_mm
    assert free - foot == 12.5


def test_a_branch_that_leaves_downwards_takes_no_height_above_its_row() -> None:
    """A text ends 8.5 mm below the row above, 1 mm is free below it: the axis lies on the next module, at 10 mm."""
    diagram = Diagram(Cell("above", "x"), free=(Cell("k", "x"),))
    tree = tree_of(diagram)
    rows = rows_of(tree)
    form = Form(CORE, (), hangs=False)
    stacks = [stack(form, 0, lower=(Box(20.0, 0.0, 40.0, 8.5),)), stack(form, 1)]
    run = Run("bus", 0, (Drop(1, 0, 0, False),), track=0, foot=-1)
    cabling = Cabling((run,), ((), (Port("data", 2.5, False, 1),)), (1,), 0, {})
    columns = Columns((0.0, 0.0), (CHANNEL,), (), 60.0)
    upper, lower = heights_of(tree, rows, lanes_of(tree, rows, diagram), cabling, stacks, columns).axis_mm
    assert lower - upper == 10.0


def test_lines_begin_lower_at_the_last_device_of_a_row_only() -> None:
    """Beside a conductor with words along and below it: theirs are then above those that go on to the right."""
    cable = drawn("w", "cable_2", lower=("25 m",), along=Line(Role.NAME, verbatim("-W1")))
    last = replace(cable, children=(drawn("g", "pv_string", lower=("12 × 430 W",)),))
    middle = replace(cable, key="w2", children=(drawn("q", "fuse", lower=("16 A",), children=(last,)),))
    tree = tree_of(Diagram(drawn("net", "network", children=(middle,))))
    found = letters_of(tree, {}, Diagram(tree.nodes[0].cell), (), goes_on=False)
    assert {node.cell.key: each.deep for node, each in zip(tree.nodes, found, strict=True)} == {
        "net": False, "w2": False, "q": False, "w": False, "g": True,
    }  # fmt: skip


class Asked:
    """The symbols, and between which feeds they were asked for."""

    def __init__(self) -> None:
        self.feeds_mm: list[tuple[float, ...]] = []

    def symbol(self, name: str) -> Symbol:
        return catalogue.symbol(name)

    def turned(self, name: str) -> Symbol:
        return catalogue.turned(name)

    def stretched(self, name: str, feeds_mm: tuple[float, ...]) -> Symbol:
        self.feeds_mm.append(feeds_mm)
        return catalogue.stretched(name, feeds_mm)


@pytest.mark.parametrize(("count", "middle"), [(1, 0), (2, 0), (3, 1), (4, 1), (5, 2)])
def test_a_stretched_symbol_is_measured_with_its_axis_at_the_feed_of_its_row(count: int, middle: int) -> None:
    """That of its middle child, of two the upper one, as its row is."""
    ways = tuple(drawn(f"f{number}", "fuse") for number in range(count))
    tree = tree_of(Diagram(drawn("bar", "inverter_3ph", join=Join.SPAN, children=ways)))
    asked = Asked()
    shapes_of(tree, asked)
    (feeds,) = asked.feeds_mm
    assert [number for number, y in enumerate(feeds) if y == 0.0] == [middle]
    assert all(upper < lower for upper, lower in pairwise(feeds))
    assert rows_of(tree).axis[0] == middle


@pytest.mark.parametrize("low", [False, True])
def test_what_stands_along_a_conductor_belongs_to_its_height(low: bool) -> None:
    """It is as far above the axis as its letters reach, and the lines above it are clear of it."""
    cable = drawn("w", "cable_2", ("-W1",), along=Line(Role.NAME, verbatim("H1Z2Z2-K 6")))
    diagram = Diagram(drawn("net", "network", children=(replace(cable, children=(drawn("g", "fuse"),)),)), low=low)
    tree = tree_of(diagram)
    letters = letters_of(tree, {}, diagram, (), goes_on=False)
    (form,) = [form for node, form in zip(tree.nodes, shapes_of(tree, catalogue), strict=True) if node.cell.key == "w"]
    bare = stack_of(replace(cable, above=()), replace(letters[1], upper=()), form, (), (0, 0), catalogue)
    (along,) = bare.upper
    assert bare.above_mm >= -text_box(along).top_mm
    said: dict[str, Text] = {text.text: text for text in stack_of(cable, letters[1], form, (), (0, 0), catalogue).upper}
    assert text_box(said["-W1"]).bottom_mm <= text_box(said["H1Z2Z2-K 6"]).top_mm
