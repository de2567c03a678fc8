"""Label lines: wrapped before the passes, and between passes 5 and 6 the lower lines of every cell.

Before: the tree. After: a chain's designation stands at its first device; each device of a chain has the text of its
step (address, termination). The lengths of data cables are left to the schedule.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from sld.layout.diagram import BusChain, Cell, Diagram
from sld.layout.fold import names_of
from sld.layout.labels import wrapped
from sld.layout.tree import Tree

__all__ = ["lines_wrapped", "lower_lines_of"]

_LINE_MM = 26.0
"""Longer lines about chains are wrapped."""


def lines_wrapped(diagram: Diagram, width_mm: float) -> Diagram:
    """Return the diagram with the label lines of all cells wrapped between words at a width."""
    root, *others = (_wrapped_branch(cell, width_mm) for cell in (*diagram.trees, *diagram.free))
    count = len(diagram.further)
    return replace(diagram, root=root, further=tuple(others[:count]), free=tuple(others[count:]))


def _wrapped_branch(top: Cell, width_mm: float) -> Cell:
    """Return a branch with its lines wrapped, built from the leaves so that depth is no limit."""
    cells, waiting = [], [top]
    while waiting:
        cells.append(waiting.pop())
        waiting.extend(reversed(cells[-1].children))
    done: list[Cell] = []
    for cell in reversed(cells):
        children = tuple(done.pop() for _ in cell.children)
        designation, names = names_of(cell)
        above = (*designation, *wrapped(names, width_mm))
        done.append(replace(cell, above=above, below=wrapped(cell.below, width_mm), children=children))
    return done[0]


def lower_lines_of(tree: Tree, chains: Sequence[BusChain]) -> tuple[tuple[str, ...], ...]:
    """Return the lower label lines of each node."""
    lines = [list(node.cell.below) for node in tree.nodes]
    for chain in chains:
        for number, step in enumerate(chain.steps):
            text = ", ".join(part for part in (chain.text if number == 0 else "", step.text) if part)
            lines[tree.index[step.key]].extend(wrapped((text,), _LINE_MM) if text else ())
    return tuple(tuple(found) for found in lines)
