"""The boundary of ownership between network operator and customer. Lengths in modules."""

from __future__ import annotations

from typing import Any

from sld.symbols.element import Graphic
from sld.symbols.registry import graphic
from sld.symbols.stroke import Dash
from sld.words import phrase

__all__ = ["OwnershipBoundary"]

_SOURCE = "long-dashed double-dotted line, ISO 128-2 line 05, from memory"
_TOP_M, _BOTTOM_M = 1.2, -4.6
"""The upright line is a dash, two dots and a dash long, 14.5 mm at a width of 0.25 mm; the upper dash crosses the wire,
so that the dots are seen."""


@graphic("ownership_boundary", phrase("Boundary of ownership"), _SOURCE)
class OwnershipBoundary(Graphic):
    """An upright line across the wire."""

    def __init__(self, **placement: Any) -> None:
        super().__init__(**placement)
        self.add_line((0.0, 0.0), (4.0, 0.0))
        self.add_line((2.0, _TOP_M), (2.0, _BOTTOM_M), dash=Dash.PROPERTY)
        self.add_axis_pins(4.0)
