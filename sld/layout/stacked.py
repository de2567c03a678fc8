"""Plans of several diagrams as one: each below the one before it, with nothing between them that connects them."""

from __future__ import annotations

from collections.abc import Sequence

from sld.frozen import replace
from sld.layout.passes.grid import CLEARANCE_MM, down_to_grid_mm, up_to_grid_mm
from sld.layout.plan import Frame, PlacedCell, Plan
from sld.symbols.stroke import Point

__all__ = ["stacked"]

_GAP_MM = 4 * CLEARANCE_MM


def stacked(plans: Sequence[Plan]) -> Plan:
    """Return plans below each other as one plan, their networks on the right; an empty plan takes no room.

    A single one is returned as it is.
    """
    first, *others = [plan for plan in plans if plan.cells] or plans[:1]
    if not others:
        return first
    width_mm = max(plan.width_mm for plan in (first, *others))
    moved, bands, y_mm = [], [], 0.0
    for plan in (first, *others):
        moved.append(_Moved(down_to_grid_mm(width_mm - plan.width_mm), y_mm).plan(plan))
        bands.append((y_mm, y_mm + plan.height_mm))
        y_mm = up_to_grid_mm(y_mm + plan.height_mm + _GAP_MM)
    return Plan(
        width_mm,
        max(plan.height_mm for plan in moved),
        tuple(each for plan in moved for each in plan.cells),
        tuple(each for plan in moved for each in plan.wires),
        tuple(each for plan in moved for each in plan.dots),
        tuple(each for plan in moved for each in plan.frames),
        tuple(each for plan in moved for each in plan.flags),
        tuple(each for plan in moved for each in plan.texts),
        sum(plan.crossings_count for plan in moved),
        first.symbols,
        bands_mm=tuple(bands),
    )


class _Moved:
    """Moves what is placed to the right and down."""

    def __init__(self, dx_mm: float, dy_mm: float) -> None:
        self._by_mm = (dx_mm, dy_mm)

    def plan(self, plan: Plan) -> Plan:
        """Return a plan moved, as high as it then reaches down."""
        return replace(
            plan,
            height_mm=plan.height_mm + self._by_mm[1],
            cells=tuple(map(self._cell, plan.cells)),
            wires=tuple(replace(wire, points=tuple(map(self._point, wire.points))) for wire in plan.wires),
            dots=tuple(map(self._point, plan.dots)),
            frames=tuple(map(self._frame, plan.frames)),
            flags=tuple(replace(flag, box=flag.box.moved(*self._by_mm)) for flag in plan.flags),
            texts=tuple(text.moved(*self._by_mm) for text in plan.texts),
        )

    def _point(self, point: Point) -> Point:
        return (point[0] + self._by_mm[0], point[1] + self._by_mm[1])

    def _cell(self, cell: PlacedCell) -> PlacedCell:
        return replace(
            cell,
            at=self._point(cell.at),
            box=cell.box.moved(*self._by_mm),
            pins=tuple((name, self._point(pin)) for name, pin in cell.pins),
            labels=tuple(text.moved(*self._by_mm) for text in cell.labels),
            strip=cell.strip and cell.strip.moved(*self._by_mm),
            boxed=cell.boxed and cell.boxed.moved(*self._by_mm),
        )

    def _frame(self, frame: Frame) -> Frame:
        notch = frame.notch and frame.notch.moved(*self._by_mm)
        return replace(frame, box=frame.box.moved(*self._by_mm), caption=frame.caption.moved(*self._by_mm), notch=notch)
