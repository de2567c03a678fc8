"""Label lines wrapped between words at a width, all cells of a diagram at once: Diagram -> Diagram."""

from __future__ import annotations

from dataclasses import replace

from sld.layout.diagram.diagram import Cell, Diagram
from sld.layout.diagram.fold import names_of
from sld.layout.diagram.labels import wrapped

__all__ = ["lines_wrapped"]


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
