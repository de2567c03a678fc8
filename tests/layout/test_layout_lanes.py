"""Lanes: the least ones in which every frame can hold its members and nothing else."""

from __future__ import annotations

import pytest

from sld.layout.diagram.diagram import BusChain, BusStep, Cell, Diagram, Join
from sld.layout.passes.lanes import Lanes, lanes_of
from sld.layout.passes.rows import rows_of
from sld.layout.passes.tree import tree_of


def c(key: str, *children: Cell, box: str = "", aligned: str = "") -> Cell:
    return Cell(key, "x", children=children, enclosure=box, aligned=aligned, join=Join.SPAN)


def lanes(root: Cell, *chained: str) -> tuple[dict[str, int], Lanes]:
    diagram = Diagram(root, chains=(BusChain("bus", steps=tuple(BusStep(key) for key in chained)),))
    tree = tree_of(diagram)
    found = lanes_of(tree, rows_of(tree), diagram)
    return {node.cell.key: lane for node, lane in zip(tree.nodes, found.of, strict=True)}, found


PLAIN = c("r", c("a", c("b")), c("d"))
BOARD = c("r", c("bar", c("f1", c("w1"), box="u"), c("f2", c("i2", c("w2"), box="u"), box="u"), box="u"))
ALIGNED = c("r", c("a", c("t1", aligned="t")), c("t2", c("s"), aligned="t"))
OPPOSED = c("r", c("a", c("b", aligned="y"), aligned="x"), c("d", c("e", aligned="x"), aligned="y"))
TWO_INPUTS = c("t", c("spd", c("q1", c("s1"), box="j")), c("q2", c("s2"), box="j"))


@pytest.mark.parametrize(
    ("root", "expected"),
    [
        pytest.param(PLAIN, {"r": 0, "a": 1, "b": 2, "d": 1}, id="depth"),
        pytest.param(
            BOARD, {"r": 0, "bar": 1, "f1": 2, "w1": 4, "f2": 2, "i2": 3, "w2": 4}, id="feeders left of the board"
        ),
        pytest.param(ALIGNED, {"r": 0, "a": 1, "t1": 2, "t2": 2, "s": 3}, id="one word, one lane"),
        pytest.param(OPPOSED, {"r": 0, "a": 1, "b": 2, "d": 1, "e": 2}, id="alignments that contradict are given up"),
        pytest.param(
            TWO_INPUTS, {"t": 0, "spd": 1, "q1": 2, "s1": 3, "q2": 2, "s2": 3}, id="what is fed right of the box"
        ),
    ],
)  # fmt: skip
def test_lanes(root: Cell, expected: dict[str, int]) -> None:
    assert lanes(root)[0] == expected


SPLIT = c("t", c("q1", c("s1"), box="j"), c("w"), c("q3", c("s3"), box="j"))
NESTED = c("r", c("a", c("b", c("d", box="u")), box="u"))
KNOT = c("r", c("a", c("b", box="v"), box="u"), c("d", c("e", box="u"), box="v"))


@pytest.mark.parametrize(
    ("root", "frames"),
    [
        pytest.param(TWO_INPUTS, ["j"], id="neighbouring rows: one frame"),
        pytest.param(SPLIT, ["j", "j"], id="a foreign row between: two frames"),
        pytest.param(NESTED, ["u", "u"], id="a foreign cell between: two frames"),
        pytest.param(KNOT, ["u", "v", "v", "u"], id="two boxes each feeding the other: in parts"),
    ],
)
def test_frames(root: Cell, frames: list[str]) -> None:
    assert list(lanes(root)[1].frames.enclosure) == frames


def test_no_frame_lies_across_the_channel_of_the_data_cable() -> None:
    def tree() -> Cell:
        other = c("x1", c("x2", c("x3", box="o"), box="o"), box="o")
        return c("r", c("t1", aligned="inverter"), other, c("t2", aligned="inverter"))

    assert lanes(tree())[0]["t1"] == 1
    with_data = lanes(tree(), "t1", "t2")[0]
    assert with_data["t1"] > with_data["x3"]


def test_frames_that_aligned_data_devices_feed_or_stand_in_leave_them_aligned() -> None:
    fed = c("r", c("t1", c("s1", box="o"), aligned="inverter"), c("a", c("t2", aligned="inverter")))
    around = c("r", c("t1", aligned="inverter", box="o"), c("a", c("t2", aligned="inverter")))
    for root in (fed, around):
        found = lanes(root, "t1", "t2")[0]
        assert found["t1"] == found["t2"] == 2


@pytest.mark.parametrize(("count", "abreast"), [(2, 1), (3, 1), (6, 1), (7, 3), (9, 3)])
def test_many_cells_outside_the_tree_stand_three_abreast(count: int, abreast: int) -> None:
    """So that many take little more height than a few, which stand below each other. No source: our own rule."""
    root = c("r", c("a", c("b", c("d", c("e", c("t", aligned="inverter"))))))
    diagram = Diagram(root, free=tuple(c(f"k{number}") for number in range(count)))
    tree = tree_of(diagram)
    found = lanes_of(tree, rows_of(tree), diagram)
    assert len({lane for node, lane in zip(tree.nodes, found.of, strict=True) if node.free}) == abreast
