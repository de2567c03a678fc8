"""How each kind of conductor is drawn: apart by width and pattern; a role lets a renderer add colour, which tells no
more than these do."""

from __future__ import annotations

from sld.frozen import dataclass
from sld.layout.diagram.bus_words import MEDIUM_WORDS
from sld.layout.diagram.diagram import LineKind, Medium
from sld.sheet.ink import thinner_mm
from sld.symbols.stroke import Circle, Dash, Fill, Point, Polyline, Stroke
from sld.words import Sayable, phrase, sequence

__all__ = ["DATA_LINES", "DOT_MM", "LINES", "LineStyle", "bar", "conductor", "dot"]

BAR_MM = 0.7

DOT_MM = 0.6
"""Radius of a junction dot."""


@dataclass(frozen=True, slots=True)
class LineStyle:
    """Line width, line pattern (ISO 128-2 by its meaning), and what the legend says."""

    width_mm: float
    dash: Dash
    meaning: Sayable


LINES: dict[LineKind, LineStyle] = {
    LineKind.AC: LineStyle(0.5, Dash.CONTINUOUS, phrase("AC power")),
    LineKind.DC: LineStyle(0.35, Dash.CONTINUOUS, phrase("DC power")),
    LineKind.EARTH: LineStyle(0.35, Dash.DOTTED, phrase("Earthing and bonding")),
    LineKind.DATA: LineStyle(0.25, Dash.LONG_SHORT, phrase("Data")),
}


_DASHES = {
    Medium.RS485: Dash.LONG_SHORT,
    Medium.ETHERNET: Dash.DOUBLE_DASH,
    Medium.WIRELESS: Dash.SPACED,
    Medium.PULSE: Dash.DOUBLE_DOT,
    Medium.TRIP: Dash.DOT,
}

DATA_LINES: dict[Medium, LineStyle] = {
    medium: LineStyle(0.25, dash, sequence([LINES[LineKind.DATA].meaning, MEDIUM_WORDS[medium]], ": "))
    for medium, dash in _DASHES.items()
}
"""How each data line is drawn. None is dashed as what is future is."""


def conductor(points: tuple[Point, ...], kind: LineKind, status: str = "new", medium: Medium | None = None) -> Polyline:
    """Return a wire; between existing devices half as wide, to a future one a power conductor is dashed."""
    style = DATA_LINES[medium] if medium else LINES[kind]
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
