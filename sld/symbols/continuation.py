"""Marks where a connection goes on on another sheet. Lengths in modules."""

from __future__ import annotations

from typing import Any

from sld.symbols.element import Graphic
from sld.symbols.registry import graphic
from sld.words import phrase

__all__ = ["ContinuedData", "ContinuedLeft", "ContinuedRight"]

SOURCE = "arrow at the interruption of a line, IEC 61082-1, from memory; the outline is our own"


@graphic("continued_left", phrase("Line goes on at /sheet.zone"), SOURCE)
class ContinuedLeft(Graphic):
    """A flat arrow that points away from the network, on the end of the wire that comes from there."""

    def __init__(self, **placement: Any) -> None:
        super().__init__(**placement)
        self.add_polygon((0.0, 0.0), (0.6, 0.5), (2.0, 0.5), (2.0, -0.5), (0.6, -0.5))
        self.add_axis_pins(2.0)


@graphic("continued_right", phrase("Line comes from /sheet.zone"), SOURCE)
class ContinuedRight(Graphic):
    """A flat arrow that points towards the network, on the end of the wire that comes from the strings."""

    def __init__(self, **placement: Any) -> None:
        super().__init__(**placement)
        self.add_polygon((2.0, 0.0), (1.4, 0.5), (0.0, 0.5), (0.0, -0.5), (1.4, -0.5))
        self.add_axis_pins(2.0)


@graphic("continued_data", phrase("Data cable goes on at /sheet.zone"), SOURCE)
class ContinuedData(Graphic):
    """A flat arrow with its data terminals where the box of a data device has them."""

    def __init__(self, **placement: Any) -> None:
        super().__init__(**placement)
        self.add_polygon((4.0, 0.0), (3.0, 1.0), (0.0, 1.0), (0.0, -1.0), (3.0, -1.0))
        self.add_text("DATA", 1.6, 0.0)
        self.add_axis_pins(4.0)
        self.add_pin("data", 1.0, 1.0)
        self.add_pin("data2", 2.0, 1.0)
