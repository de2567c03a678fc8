"""Where the data cables of one device leave it.

Before: its symbol, and which chains go on up or down from it. After: each chain has a terminal and a strip beside the
body of its own, in which its branch goes to the right, in an order in which the branches of a device cross none of the
others.
"""

from __future__ import annotations

from collections.abc import Sequence

from sld.frozen import dataclass
from sld.layout.passes.grid import Shape, down_to_grid_mm, earth_pin_of, pin_of, up_to_grid_mm
from sld.symbols.stroke import MODULE_MM, Point

__all__ = ["Port", "Use", "ports_of"]

TERMINATION_MM = 3 * MODULE_MM
"""How far a terminating resistor reaches from its terminal: one module along its lead, two of its own."""

_OWN = ("data", "data2")
"""Terminals that symbols have."""


@dataclass(frozen=True, slots=True)
class Use:
    """A chain at a device. chain: its number. down: the rest is below the device. over: it leads over all rows."""

    chain: int
    terminated: bool
    down: bool
    over: bool = False


@dataclass(frozen=True, slots=True)
class Port:
    """A data terminal in use. x_mm: from the symbol's origin. top: on the upper edge. strip: which of the strips beside
    that edge, counted from the body, its branch leaves in. terminated: a resistor is in the strip before that, on the
    right of the terminal.
    """

    name: str
    x_mm: float
    top: bool
    strip: int
    terminated: bool = False

    @property
    def right_mm(self) -> float:
        """Return how far what belongs to the terminal reaches to the right."""
        return self.x_mm + (TERMINATION_MM if self.terminated else 0.0)


@dataclass(frozen=True, slots=True)
class _Place:
    """A place for a terminal on the edge of a symbol, its own one where that is on the same edge."""

    name: str
    x_mm: float
    top: bool


def ports_of(shape: Shape, uses: Sequence[Use], *, at_side: bool) -> tuple[tuple[Port, ...], tuple[int, ...]]:
    """Return the terminals of a device, and the number of that of each use. uses: in the order from above.

    at_side: its labels are on its left, so that what goes down may leave at the lower edge; the names of chains stand
    at the branches above it.
    """
    places = _both_edges(shape, uses) if at_side else _over_or_on_one_edge(shape, uses)
    order = sorted(range(len(places)), key=lambda number: _from_above(places[number]))
    terminated = [False] * len(places)
    for use, number in zip(uses, order, strict=True):
        terminated[number] = use.terminated
    ports = []
    for place, resistor in zip(places, terminated, strict=True):  # the right-most one leaves next to the body
        within = [also for other, also in zip(places, terminated, strict=True)
                  if other.top == place.top and other.x_mm > place.x_mm]  # fmt: skip
        strip = len(within) + sum(within) + 1 + resistor
        strip = 2 * strip - 1 if at_side and place.top else strip
        ports.append(Port(place.name, place.x_mm, place.top, strip, resistor))
    return tuple(ports), tuple(order)


def _from_above(place: _Place) -> tuple[bool, float]:
    """Return what places are sorted by: above the body the left-most branch is the upper one, below it the lower."""
    return not place.top, place.x_mm if place.top else -place.x_mm


def _own(shape: Shape) -> list[Point]:
    """Return the terminals that a symbol has."""
    return [pin for name in _OWN if (pin := pin_of(shape, name))]


def _beside(shape: Shape, uses: Sequence[Use]) -> list[Point]:
    """Return the terminals of what has its labels on the left: near its lines, or with room for resistors within."""
    inner = [x for x in sorted(_grid(shape, True)) if shape.box.left_mm < x < shape.box.right_mm]
    if not any(use.terminated for use in uses):
        inner.reverse()
    return [(x, shape.box.top_mm) for x in inner]


def _over_or_on_one_edge(shape: Shape, uses: Sequence[Use]) -> list[_Place]:
    """Return a place for each use: on the upper edge for those that lead over all rows."""
    over_count = sum(use.over for use in uses)
    places = _one_edge(shape, _own(shape), len(uses) - over_count)
    free = [x for x in _grid(shape, True) if x not in {place.x_mm for place in places if place.top}]
    return [*places, *(_Place(_name(len(places) + n), x, True) for n, x in enumerate(free[:over_count]))]


def _one_edge(shape: Shape, own: Sequence[Point], count: int) -> list[_Place]:
    """Return so many places: its own first, then free grid places on the same edge, then on the other.

    More than a symbol has places share its last one; no known device needs that many.
    """
    top = not own or own[0][1] < 0
    chosen = [(x, top) for x, _ in own[:count]]
    taken = {x for x, _ in own}
    spare = [(x, top) for x in _grid(shape, top) if x not in taken] + [(x, not top) for x in _grid(shape, not top)]
    while len(chosen) < count:
        chosen.append(spare.pop(0) if len(spare) > 1 else spare[0])
    return [_Place(_name(number), x, edge) for number, (x, edge) in enumerate(chosen)]


def _both_edges(shape: Shape, uses: Sequence[Use]) -> list[_Place]:
    """Return a place for each use: on the lower edge for those that go down, else as on one edge."""
    down_count = sum(use.down for use in uses)
    own = _beside(shape, uses)
    above = _one_edge(shape, own, len(uses) - down_count)
    below = sorted(_grid(shape, False)[:down_count])
    if len(below) < down_count or not all(place.top for place in above):
        return _one_edge(shape, own, len(uses))
    return [*above, *(_Place(_name(number), x, False) for number, x in enumerate(below, len(above)))]


def _name(number: int) -> str:
    return "data" if number == 0 else f"data{number + 1}"


def _grid(shape: Shape, top: bool) -> list[float]:
    """Return the grid places on an edge, from the middle outwards, without that of the conductor to earth."""
    left, right = up_to_grid_mm(shape.box.left_mm), down_to_grid_mm(shape.box.right_mm)
    places = [left + MODULE_MM * i for i in range(max(1, round((right - left) / MODULE_MM) + 1))]
    middle = (shape.box.left_mm + shape.box.right_mm) / 2
    places.sort(key=lambda x: (abs(x - middle), x))
    earth = earth_pin_of(shape)
    return [x for x in places if top or x != earth[0]] or places
