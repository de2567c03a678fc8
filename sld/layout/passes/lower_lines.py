"""The lower label lines of every cell, with what a data chain has to say there.

Before: the tree. After: a chain's designation stands at its first device; each device of a chain has the text of its
step (address, termination). The lengths of data cables are left to the schedule.
"""

from __future__ import annotations

from collections.abc import Sequence

from sld.layout.diagram.diagram import BusChain
from sld.layout.diagram.labels import wrapped
from sld.layout.passes.tree import Tree

__all__ = ["lower_lines_of"]

_LINE_MM = 26.0
"""Longer lines about chains are wrapped."""


def lower_lines_of(tree: Tree, chains: Sequence[BusChain]) -> tuple[tuple[str, ...], ...]:
    """Return the lower label lines of each node."""
    lines = [list(node.cell.below) for node in tree.nodes]
    for chain in chains:
        for number, step in enumerate(chain.steps):
            text = ", ".join(part for part in (chain.text if number == 0 else "", step.text) if part)
            lines[tree.index[step.key]].extend(wrapped((text,), _LINE_MM) if text else ())
    return tuple(tuple(found) for found in lines)
