"""The boundary of ownership, as long as the diagram is high, or across the way to the supply where that leads down.

Before: everything is placed, tables beside the diagram too. After: the boundary has a `strip`, the room of its whole
line, in which nothing else is but the conductor of the supply. The line ends where something stands in its way, and on
a level conductor also where something of the customer stands on the network's side of it. The names of the two sides
stand at its upper end.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from itertools import pairwise

from sld.frozen import dataclass, replace
from sld.layout.diagram.symbol_of import OWNERSHIP_BOUNDARY
from sld.layout.plan import PlacedCell, Plan
from sld.symbols.stroke import MODULE_MM, Box, Text, box_between
from sld.symbols.typeface import ascent_mm, descent_mm, text_box, text_width_mm

__all__ = ["high_boundaries", "with_boundary"]

_MIDDLE_MM = 2 * MODULE_MM
"""Where the line stands on the conductor, from the origin of the symbol."""

_HALF_MM = 0.5
_CLEAR_MM = 1.0
_STEP_MM = 1.0


@dataclass(frozen=True, slots=True)
class _Obstacle:
    """What the line must not meet. beyond: nor stand beyond it. level: what its words alone must not meet."""

    box: Box
    beyond: bool
    level: bool = False


def with_boundary(plan: Plan, taken: Iterable[Box]) -> Plan:
    """Return the plan with the boundaries of ownership in it made long. taken: where something else stands."""
    if all(cell.symbol != OWNERSHIP_BOUNDARY for cell in plan.cells):
        return plan
    also = [_Obstacle(box, False) for box in taken]
    longer = (_longer(cell, plan, also) if cell.symbol == OWNERSHIP_BOUNDARY else cell for cell in plan.cells)
    return replace(plan, cells=tuple(longer))


def high_boundaries(plan: Plan) -> Iterator[Box]:
    """Yield the room of each upright boundary, as high as its diagram: where it stands tables are to leave it room."""
    for cell in plan.cells:
        if cell.symbol == OWNERSHIP_BOUNDARY and not cell.turned:
            x, (top, bottom) = cell.at[0] + _MIDDLE_MM, _band(plan, cell.at[1])
            yield Box(x - _HALF_MM, top, x + _HALF_MM, bottom)


def _band(plan: Plan, y: float) -> tuple[float, float]:
    """Return the upper and lower edge of the diagram of one supply point."""
    return next((each for each in plan.bands_mm if each[0] <= y <= each[1]), (0.0, plan.height_mm))


def _longer(cell: PlacedCell, plan: Plan, also: Sequence[_Obstacle]) -> PlacedCell:
    obstacles = [*_obstacles(cell, plan), *also]
    return _across(cell, plan, obstacles) if cell.turned else _upright(cell, plan, obstacles)


def _upright(cell: PlacedCell, plan: Plan, obstacles: Sequence[_Obstacle]) -> PlacedCell:
    """Return a boundary on a level conductor, from the top to the foot of the diagram where it can be."""
    x, y = cell.at[0] + _MIDDLE_MM, cell.at[1]
    band = _band(plan, y)
    top, bottom = _ends(obstacles, x, y, band)
    labels = _at_the_top(cell, plan, obstacles, x, top)
    if labels is None:
        labels, own = cell.labels, [_Obstacle(text_box(text), False) for text in cell.labels]
        top, bottom = _ends([*obstacles, *own], x, y, band)
    top, bottom = min(top, cell.box.top_mm), max(bottom, cell.box.bottom_mm)
    return replace(cell, labels=labels, strip=Box(x - _HALF_MM, top, x + _HALF_MM, bottom))


def _ends(obstacles: Sequence[_Obstacle], x: float, y: float, band: tuple[float, float]) -> tuple[float, float]:
    """Return how far up and down a line at x is free from y on."""
    top, bottom = band
    for each in obstacles:
        box = each.box
        if each.level:
            continue
        if box.right_mm < x - _CLEAR_MM or (box.left_mm > x + _CLEAR_MM and not each.beyond):
            continue
        if box.bottom_mm <= y:
            top = max(top, box.bottom_mm + _CLEAR_MM)
        elif box.top_mm >= y:
            bottom = min(bottom, box.top_mm - _CLEAR_MM)
    return top, bottom


def _at_the_top(
    cell: PlacedCell, plan: Plan, obstacles: Sequence[_Obstacle], x: float, top: float
) -> tuple[Text, ...] | None:
    """Return the names of the two sides on either side of the upper end of the line, or on its right.

    None where there is no room.
    """
    if len(cell.labels) != 2:
        return None
    customer, network = cell.labels
    height_mm, right = customer.height_mm, x + _CLEAR_MM
    pitch_mm = ascent_mm(height_mm) + descent_mm(height_mm)
    left = x - _CLEAR_MM - text_width_mm(customer.text, height_mm)
    baseline = top + ascent_mm(height_mm)
    while baseline + pitch_mm < cell.at[1]:
        for start, further_mm in ((left, 0.0), (right, pitch_mm)):
            placed = (replace(customer, at=(start, baseline)), replace(network, at=(right, baseline + further_mm)))
            boxes = [text_box(text) for text in placed]
            inside = all(box.left_mm >= 0 and box.right_mm <= plan.width_mm for box in boxes)
            if inside and not any(box.meets(each.box) for box in boxes for each in obstacles):
                return placed
        baseline += _STEP_MM
    return None


def _across(cell: PlacedCell, plan: Plan, obstacles: Sequence[_Obstacle]) -> PlacedCell:
    """Return a boundary on a conductor that leads down, across its column, between the names of the two sides."""
    x, y = cell.at[0], cell.at[1] + _MIDDLE_MM
    column = [each for each in plan.cells if each.turned]
    left = min(each.box.left_mm for each in column)
    right = max(text_box(text).right_mm for each in column for text in each.labels)
    for obstacle in obstacles:
        box = obstacle.box
        if not obstacle.level and box.top_mm < y + _HALF_MM and box.bottom_mm > y - _HALF_MM:
            if box.right_mm <= x:
                left = max(left, box.right_mm + _CLEAR_MM)
            elif box.left_mm >= x:
                right = min(right, box.left_mm - _CLEAR_MM)
    left, right = min(left, cell.box.left_mm), max(right, cell.box.right_mm)
    return replace(cell, strip=Box(left, y - _HALF_MM, right, y + _HALF_MM))


def _obstacles(cell: PlacedCell, plan: Plan) -> Iterator[_Obstacle]:
    """Yield what is in the way of a boundary; what the network has stands on its own side of it."""
    theirs = {each.key for each in plan.cells if each.at[1] == cell.at[1] and each.at[0] > cell.at[0]}
    for each in plan.cells:
        if each.key == cell.key:
            continue
        beyond = each.key.removesuffix("/earth") not in theirs
        for box in (each.box, each.strip, each.boxed, *map(text_box, each.labels)):
            if box is not None:
                yield _Obstacle(box, beyond)
    for wire in plan.wires:
        beyond = all(key not in theirs for key, _ in wire.ends)
        for start, end in pairwise(wire.points):
            yield _Obstacle(box_between(start, end), beyond)
    for frame in plan.frames:
        yield _Obstacle(text_box(frame.caption), True)
        for start, end in pairwise((*frame.corners, frame.corners[0])):
            yield _Obstacle(box_between(start, end), False, level=start[1] == end[1])
    for flag in plan.flags:
        yield _Obstacle(flag.box, flag.key not in theirs)
    for text in plan.texts:
        yield _Obstacle(text_box(text), True)
