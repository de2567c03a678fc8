"""Rows: one a leaf, in preorder; a parent on the row of its middle child."""

from __future__ import annotations

from itertools import pairwise

import pytest
from lettering import drawn

from sld.layout.diagram.diagram import Cell, Diagram, Join
from sld.layout.passes.arrange import arrange
from sld.layout.passes.rows import rows_of
from sld.layout.passes.tree import tree_of
from sld.symbols import catalogue


def fan(count: int, join: Join = Join.TRUNK) -> Cell:
    return Cell("p", "x", join=join, children=tuple(Cell(f"c{i}", "x") for i in range(count)))


@pytest.mark.parametrize(("count", "row"), [(1, 0), (2, 0), (3, 1), (4, 1), (5, 2)])
def test_parent_takes_the_lower_median(count: int, row: int) -> None:
    rows = rows_of(tree_of(Diagram(fan(count))))
    assert rows.axis[0] == row
    assert rows.axis[1:] == tuple(range(count))


@pytest.mark.parametrize(("join", "head", "foot"), [(Join.TRUNK, 1, 1), (Join.SPAN, 0, 2)])
def test_a_stretched_cell_reaches_from_its_first_to_its_last_child(join: Join, head: int, foot: int) -> None:
    rows = rows_of(tree_of(Diagram(fan(3, join))))
    assert (rows.head[0], rows.axis[0], rows.foot[0]) == (head, 1, foot)


def test_rows_are_never_closer_than_two_modules() -> None:
    """Terminals without a word beside them, the lowest of all symbols: 2 · 2.5 mm."""
    terminals = tuple(drawn(f"x{number}", "terminal") for number in range(3))
    plan = arrange(Diagram(Cell("bar", "busbar", join=Join.SPAN, children=terminals)), catalogue)
    heights = [dict(cell.pins)["supply"][1] for cell in plan.cells if cell.symbol == "terminal"]
    assert [low - high for high, low in pairwise(heights)] == [5.0, 5.0]


def test_free_cells_have_rows_of_their_own_below_the_tree() -> None:
    rows = rows_of(tree_of(Diagram(fan(2), free=(Cell("k1", "x"), Cell("k2", "x")))))
    assert rows.axis[-2:] == (2, 3)
    assert rows.count == 4


def test_a_key_may_occur_once_only() -> None:
    with pytest.raises(ValueError, match="'c0'"):
        tree_of(Diagram(fan(2), free=(Cell("c0", "x"),)))
