"""How each kind of conductor is drawn: apart by width and pattern; a role lets a renderer add colour, which tells no
more than these do."""

from __future__ import annotations

from dataclasses import dataclass

from sld.layout.diagram.diagram import LineKind
from sld.sheet.ink import thinner_mm
from sld.symbols.stroke import Circle, Dash, Fill, Point, Polyline, Stroke
from sld.words import Phrase, phrase

__all__ = ["DOT_MM", "LINES", "LineStyle", "bar", "conductor", "dot"]

BAR_MM = 0.7

DOT_MM = 0.6
"""Radius of a junction dot."""


@dataclass(frozen=True, slots=True)
class LineStyle:
    """Line width, line pattern (ISO 128-2 by its meaning), and what the legend says."""

    width_mm: float
    dash: Dash
    meaning: Phrase


LINES: dict[LineKind, LineStyle] = {
    LineKind.AC: LineStyle(0.5, Dash.CONTINUOUS, phrase("AC power")),
    LineKind.DC: LineStyle(0.35, Dash.CONTINUOUS, phrase("DC power")),
    LineKind.EARTH: LineStyle(0.35, Dash.DOTTED, phrase("Earthing and bonding")),
    LineKind.DATA: LineStyle(0.25, Dash.DATA, phrase("Data")),
}


def conductor(points: tuple[Point, ...], kind: LineKind, status: str = "new") -> Polyline:
    """Return a wire; between existing devices half as wide, to a future one a power conductor is dashed."""
    style = LINES[kind]
    if status == "existing":
        return Polyline(points, thinner_mm(style.width_mm), style.dash, role=kind.value)
    dash = Dash.DASHED if status == "future" and style.dash is Dash.CONTINUOUS else style.dash
    return Polyline(points, style.width_mm, dash, role=kind.value)


def bar(points: tuple[Point, ...], kind: LineKind) -> Stroke:
    """Return a bar that conductors are connected to, such as the main earthing terminal: one thick line."""
    return Polyline(points, BAR_MM, role=kind.value)


def dot(at: Point, kind: LineKind | None = None) -> Stroke:
    """Return the junction dot: these conductors are connected. kind: theirs, None for a dot that stands for any."""
    return Circle(at, DOT_MM, 0.25, Fill.INK, kind.value if kind else "")
