"""Pass 6, first half: the lower label lines of every cell, those of its data chains included.

Before: the tree. After: a chain's designation stands at its first device; each device of a chain has the text of its
step (address, termination). The lengths of data cables are left to the schedule.
"""

from __future__ import annotations

from collections.abc import Sequence

from sld.layout.diagram import BusChain
from sld.layout.tree import Tree
from sld.symbols.typeface import text_width_mm

__all__ = ["lower_lines_of"]

_LINE_MM = 26.0
"""Longer lines about chains are broken at blanks."""


def lower_lines_of(tree: Tree, chains: Sequence[BusChain]) -> tuple[tuple[str, ...], ...]:
    """Return the lower label lines of each node."""
    lines = [list(node.cell.below) for node in tree.nodes]
    for chain in chains:
        for number, step in enumerate(chain.steps):
            for text in (chain.text if number == 0 else "", step.text):
                lines[tree.index[step.key]].extend(_broken(text))
    return tuple(tuple(found) for found in lines)


def _broken(text: str) -> list[str]:
    """Return the text broken at blanks."""
    lines: list[str] = []
    for word in text.split():
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and text_width_mm(longer) <= _LINE_MM:
            lines[-1] = longer
        else:
            lines.append(word)
    return lines
