"""The boundary of ownership between network operator and customer. Lengths in modules."""

from __future__ import annotations

from typing import Any

from sld.symbols.element import Graphic
from sld.symbols.registry import graphic
from sld.symbols.stroke import Dash

__all__ = ["OwnershipBoundary"]

_SOURCE = "long-dashed double-dotted line, ISO 128-2 line 05, from memory; the words are our own"
_TOP_M, _BOTTOM_M = 1.2, -4.6
"""The upright line is a dash, two dots and a dash long, 14.5 mm at a width of 0.25 mm; the upper dash crosses the wire,
so that the dots are seen."""
_LETTERS_MM = 2.5


@graphic("ownership_boundary", "Boundary of ownership", _SOURCE)
class OwnershipBoundary(Graphic):
    """An upright line across the wire; above it whose the installation is on either side."""

    def __init__(self, **placement: Any) -> None:
        super().__init__(**placement)
        self.add_line((0.0, 0.0), (4.0, 0.0))
        self.add_line((2.0, _TOP_M), (2.0, _BOTTOM_M), dash=Dash.PROPERTY)
        self.add_text("← customer", 2.0, 3.8, _LETTERS_MM)
        self.add_text("network →", 2.0, 2.2, _LETTERS_MM)
        self.add_axis_pins(4.0)
