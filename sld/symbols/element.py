"""The base of all graphical symbols: a schemdraw Element drawn in modules, x right, y up, origin at the left terminal.

One drawing unit is the module M = 2.5 mm. Line widths and letter sizes are kept in points, as schemdraw wants them, so
that a symbol may also be placed in a schemdraw Drawing with `inches_per_unit=2.5 / 25.4`.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from schemdraw import elements
from schemdraw.segments import Segment, SegmentArc, SegmentBezier, SegmentCircle, SegmentPoly, SegmentText
from schemdraw.types import Linestyle

from sld.symbols.stroke import MODULE_MM, Dash, Point
from sld.symbols.typeface import FAMILY, font_size_mm

__all__ = ["DASH_STYLE", "INK", "LINE_MM", "MM_PER_PT", "PAPER", "Graphic"]

MM_PER_PT = 25.4 / 72
LINE_MM = 0.25
"""One line width for symbols and connections (IEC 61082-1, from memory)."""

INK = "black"
PAPER = "white"

DASH_STYLE: dict[Dash, Linestyle] = {
    Dash.CONTINUOUS: "-", Dash.DASHED: "--", Dash.DOTTED: ":", Dash.PROPERTY: "-.",
}  # fmt: skip
"""schemdraw's name of each line pattern a symbol may use, that of the nearest pattern where it has none of its own."""


class Graphic(elements.Element):
    """A symbol. Subclasses add strokes and pins in `__init__`; nothing is inherited from a drawing.

    strip_count: how many strokes, the first ones, span the rows of its feeds; the others stand about its axis.
    """

    def __init_subclass__(cls) -> None:
        super().__init_subclass__()  # type: ignore[no-untyped-call]

    def __init__(self, **placement: Any) -> None:
        super().__init__(**placement)
        self.strip_count = 0
        self.elmparams["theta"] = 0  # otherwise schemdraw turns it with the element placed before
        self.elmparams["lw"] = LINE_MM / MM_PER_PT
        self.elmparams["capstyle"] = "butt"

    def add_line(self, *points: Point, dash: Dash = Dash.CONTINUOUS, width_mm: float = LINE_MM) -> None:
        """Add straight segments through `points` (M); `width_mm` is the line width."""
        self.segments.append(Segment(list(points), lw=width_mm / MM_PER_PT, ls=DASH_STYLE[dash], capstyle="butt"))

    def add_polygon(self, *points: Point, fill: str | None = None) -> None:
        """Add a closed outline through `points` (M), filled with INK or PAPER or not at all."""
        self.segments.append(SegmentPoly(list(points), closed=True, fill=fill, lw=LINE_MM / MM_PER_PT, ls="-"))

    def add_rectangle(
        self, left_m: float, bottom_m: float, right_m: float, top_m: float, fill: str | None = None
    ) -> None:
        """Add an upright rectangle by its four sides (M)."""
        self.add_polygon((left_m, bottom_m), (right_m, bottom_m), (right_m, top_m), (left_m, top_m), fill=fill)

    def add_circle(self, x_m: float, y_m: float, radius_m: float, fill: str | None = None) -> None:
        """Add a circle (M)."""
        self.segments.append(SegmentCircle((x_m, y_m), radius_m, fill=fill, lw=LINE_MM / MM_PER_PT, ls="-"))

    def add_arc(
        self, x_m: float, y_m: float, rx_m: float, ry_m: float, start_deg: float = 0.0, end_deg: float = 360.0
    ) -> None:
        """Add part of an axis-parallel ellipse (M), counter-clockwise from `start_deg` to `end_deg`; default all."""
        self.segments.append(
            SegmentArc((x_m, y_m), 2 * rx_m, 2 * ry_m, theta1=start_deg, theta2=end_deg, lw=LINE_MM / MM_PER_PT, ls="-")
        )

    def add_curve(self, points: Sequence[Point]) -> None:
        """Add one cubic Bezier curve by its four points (M)."""
        self.segments.append(SegmentBezier(list(points), lw=LINE_MM / MM_PER_PT, ls="-", capstyle="butt"))

    def add_text(self, text: str, x_m: float, y_m: float, height_mm: float = 1.8, align: str = "center") -> None:
        """Add a line of text: its capitals, `height_mm` tall, centred on y (M); it is centred on x or starts there."""
        baseline_m = y_m - height_mm / 2 / MODULE_MM
        self.segments.append(
            SegmentText(
                (x_m, baseline_m), text, align=("left" if align == "left" else "center", "base"),
                fontsize=font_size_mm(height_mm) / MM_PER_PT, font=FAMILY,
            )
        )  # fmt: skip

    def add_pin(self, name: str, x_m: float, y_m: float = 0.0) -> None:
        """Name a terminal at (x, y) in M; it becomes a schemdraw anchor."""
        self.anchors[name] = (x_m, y_m)

    def add_axis_pins(self, length_m: float) -> None:
        """Name the two terminals on the wire axis: `feed` at the origin, `supply` at `length_m` (M)."""
        self.add_pin("feed", 0.0)
        self.add_pin("supply", length_m)
