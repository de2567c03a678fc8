"""Which cells one frame can go around.

Before: tree and rows. After: the members of each enclosure are grouped into blocks whose rows are contiguous, every row
of a block holding a member. Members in rows apart from each other, or below a foreign cell, form blocks of their own:
the enclosure is then drawn in parts, each with its caption.
"""

from __future__ import annotations

from collections.abc import Container
from dataclasses import dataclass

from sld.layout.passes.rows import Rows
from sld.layout.passes.tree import Tree

__all__ = ["Blocks", "blocks_of"]


@dataclass(frozen=True, slots=True)
class Blocks:
    """of: the block of each node, -1 for none. enclosure: the enclosure of each block. tops: the members of each block
    whose parent is no member.
    """

    of: tuple[int, ...]
    enclosure: tuple[str, ...]
    tops: tuple[tuple[int, ...], ...]

    @property
    def members(self) -> tuple[tuple[int, ...], ...]:
        """Return the members of each block in preorder."""
        found: list[list[int]] = [[] for _ in self.enclosure]
        for place, block in enumerate(self.of):
            if block >= 0:
                found[block].append(place)
        return tuple(tuple(places) for places in found)


def blocks_of(tree: Tree, rows: Rows, apart: Container[str]) -> Blocks:
    """Return the blocks. apart: enclosures whose connected parts must not be taken together in one frame."""
    of: list[int] = [-1] * len(tree.nodes)
    enclosure: list[str] = []
    tops: list[list[int]] = []
    latest: dict[tuple[str, bool], int] = {}
    for place, node in enumerate(tree.nodes):
        name = node.cell.enclosure
        if not name:
            continue
        if node.parent >= 0 and tree.nodes[node.parent].cell.enclosure == name:
            of[place] = of[node.parent]
            continue
        block = latest.get((name, node.free), -1)
        adjoins = block >= 0 and rows.last[tops[block][-1]] + 1 == rows.first[place]
        if name in apart or not adjoins:
            nested = block >= 0 and rows.last[tops[block][-1]] >= rows.first[place]
            block = len(enclosure)
            enclosure.append(name)
            tops.append([])
            if not nested:  # what comes after a nested part adjoins the part around it
                latest[(name, node.free)] = block
        tops[block].append(place)
        of[place] = block
    return Blocks(tuple(of), tuple(enclosure), tuple(tuple(places) for places in tops))
