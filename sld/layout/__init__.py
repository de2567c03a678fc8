"""System -> Diagram -> Plan: what is drawn with which words, what once for many, then where everything is. No ink."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping

from sld.layout import arrange as _arrange
from sld.layout.chart import chart
from sld.layout.diagram import Diagram
from sld.layout.flags import by_device, numbered
from sld.layout.fold import folded
from sld.layout.labels import LINE_WIDTHS_MM
from sld.layout.lines import lines_wrapped
from sld.layout.plan import Plan
from sld.model.system import System
from sld.rate import Ratings
from sld.symbols import catalogue

__all__ = ["arrange", "by_device", "numbered", "plans"]


def arrange(diagram: Diagram) -> Plan:
    """Return the places of a diagram drawn with the symbols of its family."""
    return _arrange.arrange(diagram, catalogue.family(diagram.symbols))


def plans(system: System, ratings: Ratings, flags: Mapping[str, tuple[int, ...]]) -> Iterator[Plan]:
    """Yield the diagram of a system in several proportions, the preferred one first, each made when it is asked for.

    flags: numbers of the warning flags by device key. Equal branches are drawn once unless the spec says otherwise.
    """
    diagram = chart(system, ratings, flags, math.inf)  # whole lines, wrapped once it is known what is drawn
    if not system.drawing.unfold:
        diagram = folded(diagram, system.drawing.fold_from)
    for width_mm in LINE_WIDTHS_MM:
        yield arrange(lines_wrapped(diagram, width_mm))
