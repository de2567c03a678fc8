"""The Plan put on the page: its cells, wires, frames and flags as groups of strokes in page millimetres."""

from __future__ import annotations

import re
from collections.abc import Container, Iterator, Mapping
from itertools import pairwise
from typing import Protocol

from sld.documents.section import FlagForm
from sld.frozen import replace
from sld.layout.diagram.diagram import LineKind
from sld.layout.diagram.flags import REVISED
from sld.layout.diagram.symbol_of import OWNERSHIP_BOUNDARY
from sld.layout.plan import PlacedCell, Plan, Wire
from sld.sheet.conductor import LINES, bar, conductor, dot
from sld.sheet.ink import for_status, moved
from sld.sheet.listings import flag_strokes, revision_strokes
from sld.sheet.sheet import LAYERS, Group
from sld.symbols.stroke import Box, Circle, Dash, Fill, Point, Polyline, Stroke, Text
from sld.symbols.typeface import printable
from sld.words import Sayable

__all__ = ["Drawn", "SymbolSource", "place", "symbol_strokes"]

_OF_CONDUCTORS = frozenset(("busbar", "terminal", *(f"cable_{count}" for count in range(1, 6))))
"""Symbols that are nothing but a part of the conductor."""

_BOX_MM = 0.18
"""Width of the line around the lines of a label."""


class Drawn(Protocol):
    """What is read of a symbol: what it is called, its strokes about its origin, the box around them."""

    @property
    def title(self) -> Sayable:
        """Return the name for the legend."""

    @property
    def strokes(self) -> tuple[Stroke, ...]:
        """Return the strokes."""

    @property
    def box(self) -> Box:
        """Return the extent."""


class SymbolSource(Protocol):
    """The symbol catalogue or one of its families: anything with these two functions."""

    def symbol(self, name: str) -> Drawn:
        """Return a symbol."""

    def turned(self, name: str) -> Drawn:
        """Return a symbol that leads down."""

    def stretched(self, name: str, feeds_mm: tuple[float, ...]) -> Drawn:
        """Return a symbol stretched over feeding terminals at these heights relative to its axis, y down."""


def symbol_strokes(cell: PlacedCell, symbols: SymbolSource) -> tuple[Stroke, ...]:
    """Return the strokes of a cell's symbol about the symbol's own origin; none for a cell without a symbol."""
    if not cell.symbol:
        return ()
    if cell.span_mm == (0.0, 0.0):
        return (symbols.turned if cell.turned else symbols.symbol)(cell.symbol).strokes
    feeds = tuple(at[1] - cell.at[1] for name, at in cell.pins if re.fullmatch(r"feed\d+", name))
    return symbols.stretched(cell.symbol, feeds).strokes


def _clean(text: Text) -> Text:
    shown = printable(text.text)
    return text if shown == text.text else replace(text, text=shown)


def _wire_status(wire: Wire, statuses: Mapping[str, str]) -> str:
    """Return future where either end is future, existing where both are existing."""
    ends = [statuses[key] for key, _ in wire.ends if key in statuses]
    if "future" in ends:
        return "future"
    return "existing" if ends and all(status == "existing" for status in ends) else "new"


def _is_bar(wire: Wire, bars: Container[str]) -> bool:
    """Return whether a wire is the body of a cell without a symbol, such as the main earthing terminal."""
    return any(key in bars and terminal.startswith(("left", "right")) for key, terminal in wire.ends)


def _frames(plan: Plan, texts: Mapping[str, str]) -> Iterator[Group]:
    for frame in plan.frames:
        border = Polyline(frame.corners, 0.25, Dash.BOUNDARY, closed=True)
        yield Group(f"frame-{frame.key}", "enclosure", (border, _clean(frame.caption)), texts.get(frame.key, ""))


def _ends(wire: Wire, texts: Mapping[str, str]) -> str:
    """Return what a wire connects, in the first words that its devices' texts begin with: their designations."""
    names = [texts[key].split(maxsplit=1)[0] for key, _ in wire.ends if texts.get(key)]
    return " – ".join(names)


def _wires(plan: Plan, texts: Mapping[str, str]) -> Iterator[Group]:
    statuses = {cell.key: cell.status for cell in plan.cells}
    lines: dict[str, set[str]] = {}
    for wire in plan.wires:
        if wire.medium:
            lines.setdefault(wire.net, set()).update(statuses[key] for key, _ in wire.ends if key in statuses)
    bars = {cell.key for cell in plan.cells if not cell.symbol}
    for number, wire in enumerate(plan.wires, 1):
        status = _wire_status(wire, statuses)
        if status == "existing" and lines.get(wire.net, {status}) != {status}:
            status = "new"  # a data line is there when all of its devices are
        is_bar = _is_bar(wire, bars)
        line = bar(wire.points, wire.kind) if is_bar else conductor(wire.points, wire.kind, status, wire.medium)
        yield Group(f"wire-{number}", wire.kind.value, (line,), _ends(wire, texts), status)


def _on(point: Point, wire: Wire) -> bool:
    """Return whether a point lies on an orthogonal wire."""
    for (x1, y1), (x2, y2) in pairwise(wire.points):
        if (
            min(x1, x2) - 0.01 <= point[0] <= max(x1, x2) + 0.01
            and min(y1, y2) - 0.01 <= point[1] <= max(y1, y2) + 0.01
        ):
            return True
    return False


def _dots(plan: Plan) -> Iterator[Group]:
    """Yield the junction dots, one group for each kind of conductor."""
    ends: dict[Point, LineKind] = {}
    for wire in plan.wires:
        for point in wire.points:
            ends.setdefault(point, wire.kind)
    kinds: dict[LineKind, list[Stroke]] = {kind: [] for kind in LineKind}
    for point in plan.dots:
        kind = ends.get(point) or next((w.kind for w in plan.wires if _on(point, w)), LineKind.AC)
        kinds[kind].append(dot(point, kind))
    for kind, strokes in kinds.items():
        if strokes:
            yield Group(f"junctions-{kind.value}", kind.value, tuple(strokes))


def _rounded(point: Point) -> Point:
    return (round(point[0], 2), round(point[1], 2))


def _with_leads(strokes: tuple[Stroke, ...], ends: Mapping[Point, LineKind], symbol: str) -> tuple[Stroke, ...]:
    """Return a symbol's strokes with its terminal leads as wide as the power conductors that end there, in their role.

    Without this the line of a conductor would be broken by a thin black stretch at each device. What is nothing but a
    part of the conductor takes its role whole.
    """
    drawn: list[Stroke] = []
    role = next(iter(ends.values())).value if ends and symbol in _OF_CONDUCTORS else ""
    for stroke in strokes:
        if role and isinstance(stroke, Polyline | Circle):
            stroke = replace(stroke, role=role)
        lead = isinstance(stroke, Polyline) and not stroke.closed and stroke.width_mm < LINES[LineKind.AC].width_mm
        drawn += _lead(stroke, ends) if lead and isinstance(stroke, Polyline) else [_dotted(stroke, ends)]
    return tuple(drawn)


def _lead(stroke: Polyline, ends: Mapping[Point, LineKind]) -> list[Stroke]:
    """Return a stroke of a symbol, its first stretch as its conductor where one ends there."""
    points = stroke.points
    if _rounded(points[-1]) in ends:
        points = points[::-1]
    kind = ends.get(_rounded(points[0]))
    if kind is None or min(abs(a - b) for a, b in zip(*points[:2], strict=True)) > 0.01:
        return [stroke]
    lead = Polyline(points[:2], LINES[kind].width_mm, stroke.dash, role=kind.value)
    return [lead, replace(stroke, points=points[1:])] if len(points) > 2 else [lead]


def _dotted(stroke: Stroke, ends: Mapping[Point, LineKind]) -> Stroke:
    """Return a stroke; a junction dot on the axis of its conductor in the role of that."""
    if not isinstance(stroke, Circle) or stroke.fill is not Fill.INK or stroke.role:
        return stroke
    cx, cy = stroke.centre
    kind = next((kind for (x, y), kind in ends.items() if min(abs(x - cx), abs(y - cy)) < 0.01), None)
    return replace(stroke, role=kind.value) if kind else stroke


def _lengthened(stroke: Stroke, room: Box) -> Stroke:
    """Return a stroke; the line of a boundary as long as there is room for it."""
    if not isinstance(stroke, Polyline) or stroke.dash is not Dash.PROPERTY:
        return stroke
    x, y = (room.left_mm + room.right_mm) / 2, (room.top_mm + room.bottom_mm) / 2
    upright = room.height_mm > room.width_mm
    ends = ((x, room.top_mm), (x, room.bottom_mm)) if upright else ((room.left_mm, y), (room.right_mm, y))
    return replace(stroke, points=ends)


def _cells(plan: Plan, symbols: SymbolSource, texts: Mapping[str, str]) -> Iterator[Group]:
    power = [wire for wire in plan.wires if wire.kind in (LineKind.AC, LineKind.DC)]
    ends = {_rounded(point): wire.kind for wire in power for point in (wire.points[0], wire.points[-1])}
    for cell in plan.cells:
        placed = tuple(moved(stroke, *cell.at) for stroke in symbol_strokes(cell, symbols))
        if cell.symbol == OWNERSHIP_BOUNDARY and cell.strip:
            placed = tuple(_lengthened(stroke, cell.strip) for stroke in placed)
        own = {at: ends[at] for _, pin in cell.pins if (at := _rounded(pin)) in ends}
        drawn = for_status(_with_leads(placed, own, cell.symbol), cell.status)
        labels = [_clean(label) for label in cell.labels]
        title, origin = texts.get(cell.key, ""), cell.at if cell.symbol else None
        yield Group(cell.key, "symbol", (*drawn, *labels), title, cell.status, cell.symbol, origin, "", cell.alike)


def _boxes(plan: Plan) -> Iterator[Group]:
    for cell in plan.cells:
        if cell.boxed:
            left, top, right, bottom = cell.boxed
            corners = ((left, top), (right, top), (right, bottom), (left, bottom))
            yield Group(f"box-{cell.key}", "label", (Polyline(corners, _BOX_MM, closed=True),))


def _flags(
    plan: Plan, texts: Mapping[str, str], forms: Mapping[int, FlagForm], revision: str
) -> Iterator[Group]:  # fmt: skip
    for flag in plan.flags:
        if flag.number == REVISED:
            yield Group(f"revision-{flag.key}", "flag", revision_strokes(revision, flag.box))
            continue
        key = f"flag-{flag.number}"
        strokes = flag_strokes(flag.number, flag.box, forms.get(flag.number, FlagForm.ADVICE))
        yield Group(f"{key}-{flag.key}", "flag", strokes, texts.get(key, ""))


def _distinct(groups: list[Group]) -> list[Group]:
    """Return the groups with a number added to each key that was used before."""
    seen: dict[str, int] = {}
    distinct = []
    for group in groups:
        seen[group.key] = count = seen.get(group.key, 0) + 1
        distinct.append(group if count == 1 else replace(group, key=f"{group.key}-{count}"))
    return distinct


def place(
    plan: Plan, symbols: SymbolSource, texts: Mapping[str, str], at: Point, forms: Mapping[int, FlagForm],
    revision: str = "",
) -> tuple[Group, ...]:  # fmt: skip
    """Return the groups of the diagram with its upper left corner at a point, in drawing order.

    texts: what a pointer resting on a device says, by the key of the cell or enclosure, or "flag-1" for flag 1.
    forms: of the flags, by their numbers. revision: the index of the newest one.
    """
    dx_mm, dy_mm = at
    groups = [
        *_frames(plan, texts), *_wires(plan, texts), *_dots(plan), *_cells(plan, symbols, texts),
        *_boxes(plan), *_flags(plan, texts, forms, revision),
    ]  # fmt: skip
    if plan.texts:
        groups.append(Group("labels", "label", tuple(_clean(text) for text in plan.texts)))
    groups.sort(key=lambda group: LAYERS.index(group.layer))
    return tuple(
        Group(
            group.key,
            group.layer,
            tuple([moved(stroke, dx_mm, dy_mm) for stroke in group.strokes]),
            group.title,
            group.status,
            group.kind,
            (group.at[0] + dx_mm, group.at[1] + dy_mm) if group.at else None,
            group.section,
            group.stands_for,
        )
        for group in _distinct(groups)
    )
