"""Rounding to the drawing grid, the clearances, and the shape that the passes ask of a symbol catalogue."""

from __future__ import annotations

import math
from typing import Protocol

from sld.symbols.stroke import MODULE_MM, Box, Point

__all__ = [
    "CLEARANCE_MM",
    "FRAMES_APART_MM",
    "FRAME_MM",
    "GAP_MM",
    "Catalogue",
    "Shape",
    "down_to_grid_mm",
    "earth_pin_of",
    "offset_mm",
    "pin_of",
    "up_to_grid_mm",
]

CLEARANCE_MM = MODULE_MM
"""Least distance of what stands below all rows from them."""

FRAME_MM = 1.3
"""Distance of a frame from what it holds."""

FRAMES_APART_MM = 1.6
"""Distance of two frames: the least that is read as two."""

GAP_MM = 0.6
"""Distance of labels from the symbol; the text's own ascent and descent come on top."""

_TOLERANCE = 1e-6


class Shape(Protocol):
    """What the layout needs to know of a symbol: its extents and its terminals about its own origin."""

    @property
    def box(self) -> Box:
        """Return the extents of all strokes."""

    @property
    def pins(self) -> tuple[tuple[str, Point], ...]:
        """Return the named terminals."""

    @property
    def hangs(self) -> bool:
        """Return whether the body hangs below the wire; without a terminal `earth` it then ends in earth itself."""

    @property
    def strip(self) -> Box | None:
        """Return the extents of what spans the rows of the feeds, None where nothing does."""


class Spanning(Shape, Protocol):
    """A symbol stretched over several rows."""

    @property
    def core(self) -> Box | None:
        """Return the extents of what stands about the axis, None where nothing does."""


class Catalogue(Protocol):
    """Where symbols come from: the module `sld.symbols.catalogue` or one of its families."""

    def symbol(self, name: str) -> Shape:
        """Return the symbol of this name."""

    def turned(self, name: str) -> Shape:
        """Return the symbol of this name that leads down."""

    def stretched(self, name: str, feeds_mm: tuple[float, ...]) -> Spanning:
        """Return the symbol stretched to have terminals `feed1`, `feed2`, ... at these offsets from its axis."""


def up_to_grid_mm(length_mm: float) -> float:
    """Return the length rounded up to a whole number of modules."""
    return math.ceil(length_mm / MODULE_MM - _TOLERANCE) * MODULE_MM


def down_to_grid_mm(length_mm: float) -> float:
    """Return the length rounded down to a whole number of modules."""
    return math.floor(length_mm / MODULE_MM + _TOLERANCE) * MODULE_MM


def pin_of(shape: Shape, *names: str) -> Point | None:
    """Return the place of the first of these terminals that the symbol has, or None."""
    pins = dict(shape.pins)
    return next((pins[name] for name in names if name in pins), None)


def earth_pin_of(shape: Shape) -> Point:
    """Return the terminal for the conductor to earth.

    A symbol without one gets it on its lower edge, at the grid place next to the middle that no other terminal has.
    """
    own = pin_of(shape, "earth")
    if own:
        return own
    box = shape.box
    middle = (box.left_mm + box.right_mm) / 2
    taken = {x for _, (x, y) in shape.pins if y > 0}
    first, last = up_to_grid_mm(box.left_mm), max(up_to_grid_mm(box.left_mm), down_to_grid_mm(box.right_mm))
    places = [first + MODULE_MM * number for number in range(round((last - first) / MODULE_MM) + 1)]
    free = [x for x in places if x not in taken] or places
    return (min(free, key=lambda x: (abs(x - middle), x)), box.bottom_mm)


def offset_mm(shape: Shape) -> float:
    """Return where a symbol's origin lies from the axis of its lane, so that it stands about the axis on the grid."""
    supply = dict(shape.pins).get("supply", (0.0, 0.0))[0]
    return -MODULE_MM * (round(supply / MODULE_MM) // 2)
