"""Where everything is from left to right.

Before: lanes, cabling, stacks, least distances of lanes. After: symbols stand about the axis of their lane, which lies
on the grid; what a row holds at one height is apart from each other. In the channel on the right of a lane there is,
from the left, a place for the right edges of frames that end at the lane, one for each data track, one or two for the
trunks of the next lane, and one for the left edges of frames that begin there; nothing else reaches into a channel that
has any of these. Captions fit into their frames, left of the first data track inside.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import field

from sld.frozen import dataclass, replace
from sld.layout.passes.beside import apart_of
from sld.layout.passes.cabling import Cabling
from sld.layout.passes.free_cells import RUNS_APART_MM, put_free_aside, tracks_beside_free
from sld.layout.passes.grid import CLEARANCE_MM, FRAME_MM, offset_mm, up_to_grid_mm
from sld.layout.passes.lanes import Lanes
from sld.layout.passes.rows import Rows
from sld.layout.passes.stack import Stack
from sld.layout.passes.tree import Tree
from sld.symbols.stroke import MODULE_MM
from sld.symbols.typeface import SLACK_MM, text_width_mm
from sld.words.phrase import NO_BREAK

__all__ = ["Channel", "Columns", "Edges", "columns_of", "has_trunk", "wrapped"]

_CAPTION_LINES = 3
"""A caption is broken into about this many lines before a frame is widened for it."""

_TOLERANCE_MM = 0.01

_LANES_APART_MM = 2.0
"""Least distance of a lane from a wire on its left."""


@dataclass(frozen=True, slots=True)
class Channel:
    """What runs vertically on the right of a lane. trunks_mm: for children above and below the parent's axis."""

    frame_right_mm: float
    tracks_mm: tuple[float, ...]
    trunks_mm: tuple[float, float]
    frame_left_mm: float


@dataclass(frozen=True, slots=True)
class Columns:
    """origin_mm: the x of each node's symbol. channels: by lane; channel i lies right of lane i and left of lane i - 1.

    captions: the lines of each frame's caption.
    """

    origin_mm: tuple[float, ...]
    channels: tuple[Channel, ...]
    captions: tuple[tuple[str, ...], ...]
    width_mm: float
    start_mm: float = 0.0

    def frame_left_mm(self, lane: int) -> float:
        """Return the left edge of frames that begin at this lane."""
        return _frame_left_mm(self.channels, lane, self.start_mm)


@dataclass(frozen=True, slots=True)
class Edges:
    """start_mm: what is left free at the left edge. widened_mm: how much wider frames become later on, by number."""

    start_mm: float
    widened_mm: Mapping[int, float]


@dataclass(slots=True)
class _Widths:
    """Extents about the axis of each lane, which places its channel needs, and what is added for captions.

    apart_mm: least distances of axes, by left and right lane.
    """

    left_mm: list[float]
    right_mm: list[float]
    frame_right: list[bool]
    frame_left: list[bool]
    tracks_count: Sequence[int]
    trunks_count: list[int]
    apart_mm: Mapping[tuple[int, int], float]
    added_mm: list[float] = field(default_factory=list)
    start_mm: float = 0.0


@dataclass(frozen=True, slots=True)
class _Positions:
    """Axis and right edge of each lane, the channels, and where all ends."""

    axis_mm: tuple[float, ...]
    right_mm: tuple[float, ...]
    channels: tuple[Channel, ...]
    width_mm: float


def has_trunk(tree: Tree, place: int) -> bool:
    """Return whether the children of a node are joined by a trunk."""
    node = tree.nodes[place]
    return len(node.children) > 1 and not node.spans


def columns_of(
    tree: Tree, rows: Rows, lanes: Lanes, cabling: Cabling, stacks: Sequence[Stack], edges: Edges
) -> Columns:  # fmt: skip
    """Return all x."""
    offsets = [offset_mm(stack.form) for stack in stacks]
    widths = _widths(tree, rows, lanes, cabling, stacks, offsets)
    widths.start_mm = edges.start_mm
    widths.apart_mm = apart_of(rows, lanes, stacks, offsets)
    near = tracks_beside_free(tree, lanes, cabling, stacks, offsets)
    for lane, tracks in near.items():
        widths.right_mm[lane] = max(widths.right_mm[lane], tracks[-1])
    extents = _block_lanes(lanes)
    texts = lanes.frames.captions
    at = _positions(widths)
    for frame, ((right, left), text) in enumerate(zip(extents, texts, strict=True)):
        added_mm = edges.widened_mm.get(frame, 0.0)
        while (missing := _least_caption_mm(text) - _caption_room_mm(widths, at, right, left, added_mm)) > 0:
            widths.added_mm[_caption_ends_at(widths, right, left)] += missing + _TOLERANCE_MM
            at = _positions(widths)  # rounding may swallow some of it: once more then
    lines = tuple(
        wrapped(text, _caption_room_mm(widths, at, right, left, edges.widened_mm.get(frame, 0.0)))
        for frame, ((right, left), text) in enumerate(zip(extents, texts, strict=True))
    )
    channels = tuple(
        replace(channel, tracks_mm=tuple(at.axis_mm[lane] + x for x in near[lane])) if lane in near else channel
        for lane, channel in enumerate(at.channels)
    )
    origin = [at.axis_mm[lane] + offset for lane, offset in zip(lanes.of, offsets, strict=True)]
    free = {place: rows.axis[place] for place, node in enumerate(tree.nodes) if node.free and tree.has_few_free}
    put_free_aside(origin, free, lanes, cabling, stacks, [channel.tracks_mm for channel in channels])
    return Columns(tuple(origin), channels, lines, at.width_mm, edges.start_mm)


def _frame_left_mm(channels: Sequence[Channel], lane: int, start_mm: float) -> float:
    """Return the left edge of frames that begin at a lane: where lanes begin for the left-most one."""
    return channels[lane + 1].frame_left_mm if lane + 1 < len(channels) else start_mm


def _block_lanes(lanes: Lanes) -> list[tuple[int, int]]:
    """Return the right-most and left-most lane of each frame."""
    found: list[list[int]] = [[] for _ in lanes.frames.enclosure]
    for lane, frame in zip(lanes.of, lanes.frames.of, strict=True):
        if frame >= 0:
            found[frame].append(lane)
    return [(min(members), max(members)) for members in found]


def _widths(
    tree: Tree, rows: Rows, lanes: Lanes, cabling: Cabling, stacks: Sequence[Stack], offsets: Sequence[float]
) -> _Widths:  # fmt: skip
    """Return the measured extents of every lane and the places in every channel."""
    n = lanes.count
    tracks = [0 if lane in cabling.near else count for lane, count in enumerate(cabling.tracks_count)]
    widths = _Widths([0.0] * n, [0.0] * n, [False] * n, [False] * n, tracks, [0] * n, {}, [0.0] * n)
    for place, (lane, stack, offset) in enumerate(zip(lanes.of, stacks, offsets, strict=True)):
        widths.left_mm[lane] = max(widths.left_mm[lane], stack.left_mm - offset)
        widths.right_mm[lane] = max(widths.right_mm[lane], stack.right_mm + offset)
        if has_trunk(tree, place):
            children = tree.nodes[place].children
            both = rows.axis[children[0]] < rows.axis[place] < rows.axis[children[-1]]
            widths.trunks_count[lane] = max(widths.trunks_count[lane], 2 if both else 1)
    for right, left in _block_lanes(lanes):
        widths.frame_right[right] = True
        widths.frame_left[left] = True
    return widths


def _caption_room_mm(widths: _Widths, at: _Positions, right: int, left: int, widened_mm: float) -> float:
    """Return the width for a caption: from the left edge of the frame to its right edge or the first data track."""
    start, end = _frame_left_mm(at.channels, left, widths.start_mm), _caption_ends_at(widths, right, left)
    if end != right:
        return at.right_mm[end] - start - CLEARANCE_MM / 2
    return at.channels[right].frame_right_mm + widened_mm - start - CLEARANCE_MM


def _caption_ends_at(widths: _Widths, right: int, left: int) -> int:
    """Return the lane at whose right end a caption has to end: the first one with a data track inside the frame."""
    return next((lane for lane in range(left, right, -1) if widths.tracks_count[lane]), right)


def _least_caption_mm(text: str) -> float:
    """Return the least width a caption is broken to."""
    words = max((text_width_mm(word) for word in text.split(" ")), default=0.0)
    return max(words, text_width_mm(text) / _CAPTION_LINES) + SLACK_MM


def wrapped(text: str, room_mm: float) -> tuple[str, ...]:
    """Return the text broken at common spaces into lines no wider than the room."""
    lines: list[str] = []
    for word in filter(None, text.split(" ")):
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and text_width_mm(longer) + SLACK_MM <= room_mm:
            lines[-1] = longer
        else:
            lines.append(word)
    return tuple(line.replace(NO_BREAK, " ") for line in lines)


def _positions(widths: _Widths) -> _Positions:
    """Return the x of lanes and channels, from the left-most lane to the right."""
    count = len(widths.left_mm)
    axis, edge = [0.0] * count, [0.0] * count
    channels: list[Channel] = []
    free_from = widths.start_mm + (FRAME_MM if widths.frame_left[-1] else 0.0)
    x = 0.0
    for lane in range(count - 1, -1, -1):
        least = free_from + widths.left_mm[lane]
        for other in range(count - 1, lane, -1):
            if (other, lane) in widths.apart_mm:
                least = max(least, axis[other] + widths.apart_mm[other, lane])
        axis[lane] = up_to_grid_mm(least)
        x = edge[lane] = max(x, axis[lane] + widths.right_mm[lane]) + widths.added_mm[lane]
        channel, end, room_from = _channel(widths, lane, x)
        channels.append(channel)
        if end > x:
            x, free_from = end, room_from
    return _Positions(tuple(axis), tuple(edge), tuple(reversed(channels)), x)


def _channel(widths: _Widths, lane: int, x: float) -> tuple[Channel, float, float]:
    """Return the channel on the right of a lane that ends at x, where it ends, and from where on there is room again.

    A channel that needs nothing ends where it begins.
    """
    at = x
    frame_right = at + FRAME_MM
    if widths.frame_right[lane]:
        at = frame_right
    tracks = []
    for _ in range(widths.tracks_count[lane]):
        tracks.append(up_to_grid_mm(at + RUNS_APART_MM))
        at = tracks[-1]
    trunks_count = widths.trunks_count[lane - 1] if lane else 0
    first = up_to_grid_mm(at + RUNS_APART_MM)
    trunks = (first, first + MODULE_MM * max(0, trunks_count - 1))
    at = trunks[1] if trunks_count else at
    runs = bool(tracks) or trunks_count > 0
    frame_left = at + (RUNS_APART_MM if runs else FRAME_MM)
    free_from = at + (_LANES_APART_MM if runs else FRAME_MM)
    if lane and widths.frame_left[lane - 1]:
        at = frame_left
        free_from = at + FRAME_MM
    return Channel(frame_right, tuple(tracks), trunks, frame_left), at, free_from
