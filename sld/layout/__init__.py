"""System -> Diagram -> Plan: what is drawn with which words, then where everything is. No ink."""

from __future__ import annotations

from sld.layout import arrange as _arrange
from sld.layout.chart import chart
from sld.layout.diagram import Diagram
from sld.layout.flags import by_device, numbered
from sld.layout.labels import LINE_WIDTHS_MM
from sld.layout.plan import Plan
from sld.symbols import catalogue

__all__ = ["LINE_WIDTHS_MM", "arrange", "by_device", "chart", "numbered"]


def arrange(diagram: Diagram) -> Plan:
    """Return the places of a diagram drawn with the symbols of the catalogue."""
    return _arrange.arrange(diagram, catalogue)
