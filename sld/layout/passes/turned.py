"""The way to the supply turned down: what all rows have in common stands below each other on their right.

Before: the rows are placed, their common way begins at the upper end of a bar or at the last device. After: a column on
the right of everything, devices from the top down to the network, labels on their right, what hangs on their left; a
frame around what one enclosure has of it, or the frame of the rows widened and lengthened. Tracks for the data chains
of its devices are on its left.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import field
from itertools import groupby

from sld.frozen import dataclass, replace
from sld.layout.diagram.diagram import BusChain, Cell, Diagram, Join
from sld.layout.diagram.trunk import Trunk
from sld.layout.passes.columns import wrapped
from sld.layout.passes.grid import CLEARANCE_MM, FRAME_MM, FRAMES_APART_MM, up_to_grid_mm
from sld.layout.passes.heights import CAPTION_MARGIN_MM
from sld.layout.passes.stack import FLAG_MM, PADDING_MM, line_pitch_mm
from sld.layout.passes.way import FLAG_PITCH_MM, Item, Way, track_mm
from sld.layout.plan import Frame, PlacedCell, PlacedFlag, Wire
from sld.symbols.stroke import MODULE_MM, Box, Point, Text
from sld.symbols.typeface import SLACK_MM, ascent_mm, text_width_mm

__all__ = ["OutsideDrop", "OutsideRun", "Turned", "turned_of", "with_trunk"]

_APART_MM = 1.2
_LABELS_APART_MM = 0.4


@dataclass(frozen=True, slots=True)
class OutsideDrop:
    """The branch of a chain to a device on the right of all lanes. at: its terminal."""

    key: str
    terminal: str
    at: Point
    status: str
    terminated: bool


@dataclass(frozen=True, slots=True)
class OutsideRun:
    """What a chain has on the right of all lanes: a track at x_mm, on the left of its devices, and its branches."""

    chain: str
    x_mm: float
    drops: tuple[OutsideDrop, ...]


@dataclass(slots=True)
class Turned:
    """What is placed of a trunk. frames: by enclosure, those of the rows changed. right_mm, bottom_mm: its edges.
    free_to_mm: so far to the right may stand what is below the rows."""

    cells: list[PlacedCell] = field(default_factory=list)
    wires: list[Wire] = field(default_factory=list)
    frames: list[Frame] = field(default_factory=list)
    texts: list[Text] = field(default_factory=list)
    flags: list[PlacedFlag] = field(default_factory=list)
    runs: list[OutsideRun] = field(default_factory=list)
    right_mm: float = 0.0
    bottom_mm: float = 0.0
    free_to_mm: float = math.inf


def turned_of(way: Way, diagram: Diagram, start: Point, left_mm: float, foot_mm: float) -> Turned:
    """Return the trunk placed. start: where the rows end. left_mm, foot_mm: the edges of everything else."""
    trunk, items, hang_mm = way.trunk, way.items, way.hang_mm
    x = up_to_grid_mm(left_mm + FRAMES_APART_MM + way.tracks_mm + hang_mm + FRAME_MM)
    frame_left, frame_right = x - hang_mm - FRAME_MM, x + way.right_mm + FRAME_MM
    captions = {each.key: diagram.language.typeset(each.caption) for each in diagram.enclosures}
    found = Turned(right_mm=frame_right)
    y = start[1]
    for number, (enclosure, group) in enumerate(groupby(items, key=lambda item: item.cell.enclosure)):
        goes_on = number == 0 and enclosure == trunk.top.enclosure
        lines = wrapped(captions.get(enclosure, enclosure), frame_right - x - CLEARANCE_MM)
        top = y + CLEARANCE_MM
        if enclosure and not goes_on:
            y = top + line_pitch_mm() * len(lines) + CAPTION_MARGIN_MM
        foot = _Foot(y, y)
        for item in group:
            foot = _put_supply(found, item, x, foot, hang_mm, foot_mm) if item.is_supply else _put(found, item, x, foot)
        y = foot.lower_mm + (FRAME_MM if enclosure else 0.0)
        if enclosure:
            _frame(found, enclosure, Box(frame_left, top, frame_right, y), x, lines if not goes_on else ())
    found.bottom_mm = y
    _wire(found, trunk, start, x)
    _runs(found, way.chains, trunk, x - hang_mm - FRAME_MM)
    return found


def with_trunk(frames: tuple[Frame, ...], way: Turned, width_mm: float) -> tuple[tuple[Frame, ...], float]:
    """Return the frames with those of the trunk, and how wide is what stands below the rows at most.

    The first one of the trunk has no caption where it goes on from the rows: then it is a part of the frame there.
    """
    added = list(way.frames)
    room_mm = width_mm
    if added and not added[0].caption.text:
        first = added.pop(0)
        place = next(n for n, frame in enumerate(frames) if frame.key == first.key)
        own = frames[place].box
        around = own.joined(first.box)._replace(top_mm=own.top_mm)
        notch = None
        if around.bottom_mm > own.bottom_mm:
            notch = Box(around.left_mm, own.bottom_mm, first.box.left_mm, around.bottom_mm)
            room_mm = min(room_mm, first.box.left_mm - CLEARANCE_MM)
        elif first.box.bottom_mm < own.bottom_mm:
            notch = Box(own.right_mm, first.box.bottom_mm, around.right_mm, own.bottom_mm)
        frames = (*frames[:place], replace(frames[place], box=around, notch=notch), *frames[place + 1 :])
    return (*frames, *added), room_mm


@dataclass(frozen=True, slots=True)
class _Foot:
    """The lower edges of a symbol and of the label on its right, and how far the one reaches and the other begins."""

    symbol_mm: float
    label_mm: float
    right_mm: float = 0.0
    label_from_mm: float = math.inf

    @property
    def lower_mm(self) -> float:
        """Return the lower one."""
        return max(self.symbol_mm, self.label_mm)

    def least_mm(self, item: Item, reach_mm: float) -> float:
        """Return where an item begins at least: symbols stand below symbols, labels below labels."""
        box, label_above_mm = item.shape.box, (item.lines_mm - reach_mm) / 2
        least = self.symbol_mm + _APART_MM
        under = self.symbol_mm if item.label_from_mm < self.right_mm + _APART_MM else -math.inf
        least = max(least, max(self.label_mm, under) + _LABELS_APART_MM + label_above_mm)
        if box.right_mm + _APART_MM > self.label_from_mm:
            least = max(least, self.label_mm + _APART_MM - box.top_mm)
        return least


def _put(found: Turned, item: Item, x: float, foot: _Foot) -> _Foot:
    """Place one device below what is there; return its lower edges."""
    box = item.shape.box
    reach = box.bottom_mm
    at = (x, up_to_grid_mm(foot.least_mm(item, reach)))
    left, top = x + item.label_from_mm, at[1] + (reach - item.lines_mm) / 2
    found.cells.append(_cell(item, at, _labels(item, left, top + item.drop_mm)))
    _flags(found, item, left + (text_width_mm(item.lines[0].text) + SLACK_MM + 0.75 if item.lines else 0.0), top)
    return _Foot(at[1] + reach, top + item.lines_mm, box.right_mm, item.label_from_mm)


def _put_supply(found: Turned, item: Item, x: float, foot: _Foot, hang_mm: float, free_from_mm: float) -> _Foot:
    """Place the end of the way, its lines on its left where that is free, else below it; return its lower edges."""
    box = item.shape.box
    at = (x, up_to_grid_mm(foot.least_mm(item, box.bottom_mm)))
    around_mm = PADDING_MM if item.cell.boxed else 0.0
    high_mm, foot_mm = line_pitch_mm() * len(item.lines) + 2 * around_mm, at[1] + box.bottom_mm
    left, top = x + box.left_mm - _APART_MM - item.widest_mm, foot_mm - (box.height_mm + high_mm) / 2
    if top < free_from_mm + CLEARANCE_MM or left < 0.0:
        left, top = x - hang_mm, foot_mm + _APART_MM
    else:
        found.free_to_mm = left - CLEARANCE_MM
    labels = _labels(item, left + around_mm, top + around_mm)
    boxed = Box(left, top, left + item.widest_mm, top + high_mm) if item.cell.boxed else None
    found.cells.append(replace(_cell(item, at, labels), boxed=boxed))
    _flags(found, item, x + item.label_from_mm, at[1])
    return _Foot(foot_mm, max(foot_mm, top + high_mm))


def _labels(item: Item, left_mm: float, top_mm: float) -> tuple[Text, ...]:
    """Return the lines of an item from an upper edge down."""
    return tuple(
        text.moved(left_mm, top_mm + line_pitch_mm() * number + ascent_mm(2.5))
        for number, text in enumerate(item.lines)
    )


def _cell(item: Item, at: Point, labels: tuple[Text, ...]) -> PlacedCell:
    cell = item.cell
    pins = tuple((_pin(cell, name), (at[0] + dx, at[1] + dy)) for name, (dx, dy) in item.shape.pins)
    box = item.shape.box.moved(*at)
    return PlacedCell(cell.key, cell.symbol, cell.status, at, (0.0, 0.0), box, pins, labels, cell.alike, turned=True)


def _flags(found: Turned, item: Item, left_mm: float, top_mm: float) -> None:
    """Put the flags of an item side by side."""
    for number in item.cell.flags:
        box = Box(left_mm, top_mm, left_mm + FLAG_MM, top_mm + FLAG_MM)
        found.flags.append(PlacedFlag(number, item.cell.key, box))
        left_mm += FLAG_PITCH_MM


def _pin(cell: Cell, name: str) -> str:
    return "feed1" if name == "feed" and cell.join is Join.SPAN else name


def _frame(found: Turned, enclosure: str, box: Box, x: float, lines: Sequence[str]) -> None:
    """Put a frame, its caption beside the conductor; without caption it is a part of one of the rows."""
    at = (x + CLEARANCE_MM / 2, box.top_mm + CAPTION_MARGIN_MM + ascent_mm(2.5))
    texts = [Text((at[0], at[1] + line_pitch_mm() * number), line) for number, line in enumerate(lines)]
    found.frames.append(Frame(enclosure, box, texts[0] if texts else Text(at, "")))
    found.texts.extend(texts[1:])


def _wire(found: Turned, trunk: Trunk, start: Point, x: float) -> None:
    """Connect the devices, from the rows to the network."""
    child, end = trunk.top, (trunk.top.key, "supply")
    points: list[Point] = [start, (x, start[1])]
    for cell, placed in zip(reversed(trunk.cells), found.cells, strict=True):
        feed = _pin(cell, "feed")
        pins = dict(placed.pins)
        net = f"{cell.key}:{feed}"
        kept = (*points, pins[feed]) if points[-1] != pins[feed] else tuple(points)
        found.wires.append(Wire(child.kind, kept, (end, (cell.key, feed)), net))
        child, end, points = cell, (cell.key, "supply"), [pins["supply"]]


def _runs(found: Turned, chains: Sequence[BusChain], trunk: Trunk, right_mm: float) -> None:
    """Put the tracks of the data chains side by side, the first one next to the devices."""
    placed = {cell.key: cell for cell in found.cells}
    used: dict[str, int] = {}
    x = up_to_grid_mm(right_mm) - MODULE_MM
    for chain in chains:
        drops = []
        for step in {step.key: step for step in chain.steps if step.key in trunk.keys}.values():
            cell = placed[step.key]
            used[step.key] = number = used.get(step.key, 0) + 1
            name = "data" if number == 1 else f"data{number}"
            at = dict(cell.pins).get(name) or (cell.box.left_mm, up_to_grid_mm(cell.box.top_mm + MODULE_MM * number))
            cell = replace(cell, pins=(*(pin for pin in cell.pins if pin[0] != name), (name, at)))
            placed[step.key] = cell
            drops.append(OutsideDrop(step.key, name, at, cell.status, step.terminated))
        found.runs.append(OutsideRun(chain.key, x, tuple(drops)))
        x -= track_mm(chain, trunk)
    found.cells = [placed[cell.key] for cell in found.cells]
