"""The few kinds of ink there are: polyline, circle, arc, curve, text. All lengths in millimetres, x right, y down.

Symbols are made of strokes about their own origin; a sheet is made of strokes in page coordinates. Renderers
know nothing else.
"""

from __future__ import annotations

from enum import Enum
from typing import NamedTuple

from sld.frozen import dataclass

__all__ = [
    "MODULE_MM",
    "Arc",
    "Box",
    "Circle",
    "Curve",
    "Dash",
    "Fill",
    "Point",
    "Polyline",
    "Stroke",
    "Text",
    "box_between",
]

Point = tuple[float, float]
"""(x, y) in millimetres."""

MODULE_MM = 2.5
"""The module M of the drawing grid: terminals lie on whole multiples of it."""


class Dash(Enum):
    """Line patterns of ISO 128-2 (from memory); the value is dash lengths in multiples of the line width.

    Those that mean one thing alone are named by it. In the order of the standard: 01 continuous, 02 dashed, 03 spaced,
    04 boundary, 05 property, 07 dotted, 08 long and short, 10 dash and dot, 11 two dashes, 12 two dots.
    """

    CONTINUOUS = ()
    DASHED = (12.0, 3.0)
    BOUNDARY = (24.0, 3.0, 0.5, 3.0)
    PROPERTY = (24.0, 3.0, 0.5, 3.0, 0.5, 3.0)
    DOTTED = (0.5, 3.0)
    SPACED = (12.0, 18.0)
    DOT = (12.0, 3.0, 0.5, 3.0)
    DOUBLE_DASH = (12.0, 3.0, 12.0, 3.0, 0.5, 3.0)
    DOUBLE_DOT = (12.0, 3.0, 0.5, 3.0, 0.5, 3.0)
    LONG_SHORT = (24.0, 3.0, 6.0, 3.0)


class Fill(Enum):
    """What a closed shape is filled with."""

    NONE = "none"
    INK = "ink"
    PAPER = "paper"


@dataclass(frozen=True, slots=True)
class Polyline:
    """Straight segments through `points`; closed joins the last to the first.

    role: what a conductor carries (dc, ac, earth, data), which a drawing in colour shows; empty for all other ink.
    """

    points: tuple[Point, ...]
    width_mm: float = 0.25
    dash: Dash = Dash.CONTINUOUS
    closed: bool = False
    fill: Fill = Fill.NONE
    role: str = ""


@dataclass(frozen=True, slots=True)
class Circle:
    """A full circle. role: as of a polyline, for the dot where conductors are connected."""

    centre: Point
    radius_mm: float
    width_mm: float = 0.25
    fill: Fill = Fill.NONE
    role: str = ""


@dataclass(frozen=True, slots=True)
class Arc:
    """Part of an axis-parallel ellipse, from `start_deg` to `end_deg`, clockwise on the page, 0 at three o'clock."""

    centre: Point
    radius_x_mm: float
    radius_y_mm: float
    start_deg: float
    end_deg: float
    width_mm: float = 0.25


@dataclass(frozen=True, slots=True)
class Curve:
    """A chain of cubic Bezier curves: 1 + 3 n points."""

    points: tuple[Point, ...]
    width_mm: float = 0.25


@dataclass(frozen=True, slots=True)
class Text:
    """One line of horizontal text. `at` is the start of its baseline; height_mm is the height of its capitals."""

    at: Point
    text: str
    height_mm: float = 2.5

    def moved(self, dx_mm: float, dy_mm: float) -> Text:
        """Return the line moved."""
        return Text((self.at[0] + dx_mm, self.at[1] + dy_mm), self.text, self.height_mm)


Stroke = Polyline | Circle | Arc | Curve | Text


class Box(NamedTuple):
    """An upright rectangle: left, top, right, bottom in millimetres.

    A tuple, since many more are made than of all else: it takes a third of the time of a class of fields.
    """

    left_mm: float
    top_mm: float
    right_mm: float
    bottom_mm: float

    @property
    def width_mm(self) -> float:
        """Return the width."""
        return self.right_mm - self.left_mm

    @property
    def height_mm(self) -> float:
        """Return the height."""
        return self.bottom_mm - self.top_mm

    def moved(self, dx_mm: float, dy_mm: float) -> Box:
        """Return the box moved."""
        return Box(self.left_mm + dx_mm, self.top_mm + dy_mm, self.right_mm + dx_mm, self.bottom_mm + dy_mm)

    def grown(self, by_mm: float) -> Box:
        """Return the box with a margin added on every side."""
        return Box(self.left_mm - by_mm, self.top_mm - by_mm, self.right_mm + by_mm, self.bottom_mm + by_mm)

    def joined(self, other: Box) -> Box:
        """Return the smallest box around both."""
        return Box(
            min(self.left_mm, other.left_mm),
            min(self.top_mm, other.top_mm),
            max(self.right_mm, other.right_mm),
            max(self.bottom_mm, other.bottom_mm),
        )

    def meets(self, other: Box) -> bool:
        """Return whether the two share area (touching edges do not count)."""
        return (
            self.left_mm < other.right_mm
            and other.left_mm < self.right_mm
            and self.top_mm < other.bottom_mm
            and other.top_mm < self.bottom_mm
        )


def box_between(start: Point, end: Point) -> Box:
    """Return the box whose opposite corners are the ends of a segment."""
    (x1, y1), (x2, y2) = start, end
    return Box(min(x1, x2), min(y1, y2), max(x1, x2), max(y1, y2))
