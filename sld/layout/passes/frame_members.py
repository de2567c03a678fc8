"""Which cells one frame can go around.

Before: tree and rows. After: the members of each enclosure are shared out to frames whose rows are contiguous, every
row of a frame holding a member. Members in rows apart from each other, or below a foreign cell, have frames of their
own: the enclosure is then drawn in parts, each with its caption.
"""

from __future__ import annotations

from collections.abc import Container, Mapping

from sld.frozen import dataclass
from sld.layout.passes.rows import Rows
from sld.layout.passes.tree import Tree

__all__ = ["FrameMembers", "frame_members_of"]


@dataclass(frozen=True, slots=True)
class FrameMembers:
    """of: the frame of each node, -1 for none. enclosure: the enclosure of each frame. tops: the members of each frame
    whose parent is no member. captions: the text of each frame.
    """

    of: tuple[int, ...]
    enclosure: tuple[str, ...]
    tops: tuple[tuple[int, ...], ...]
    captions: tuple[str, ...]

    @property
    def members(self) -> tuple[tuple[int, ...], ...]:
        """Return the members of each frame in preorder."""
        found: list[list[int]] = [[] for _ in self.enclosure]
        for place, frame in enumerate(self.of):
            if frame >= 0:
                found[frame].append(place)
        return tuple(tuple(places) for places in found)


def frame_members_of(tree: Tree, rows: Rows, apart: Container[str], captions: Mapping[str, str]) -> FrameMembers:
    """Return the members of each frame. apart: enclosures whose connected parts must not be taken together in one.

    captions: by the key of the enclosure.
    """
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
        frame = latest.get((name, node.free), -1)
        adjoins = frame >= 0 and rows.last[tops[frame][-1]] + 1 == rows.first[place]
        if name in apart or not adjoins:
            nested = frame >= 0 and rows.last[tops[frame][-1]] >= rows.first[place]
            frame = len(enclosure)
            enclosure.append(name)
            tops.append([])
            if not nested:  # what comes after a nested part adjoins the part around it
                latest[(name, node.free)] = frame
        tops[frame].append(place)
        of[place] = frame
    texts = tuple(captions.get(name, name) for name in enclosure)
    return FrameMembers(tuple(of), tuple(enclosure), tuple(tuple(places) for places in tops), texts)
