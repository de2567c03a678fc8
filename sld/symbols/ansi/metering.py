"""ANSI family: watthour meters, a circle in its socket. Lengths in modules."""

from __future__ import annotations

from typing import Any

from sld.symbols.element import Graphic
from sld.symbols.parts import arrow_head
from sld.symbols.registry import graphic
from sld.words import phrase

__all__ = ["Meter", "TransformerMeter"]


@graphic("meter", phrase("Watthour meter"), "IEEE 315 item 12.1, from memory, in a box for its socket", family="ANSI",
         both_ways=False)  # fmt: skip
@graphic("meter_bidirectional", phrase("Watthour meter for both directions"),
         "IEEE 315 item 12.1, from memory, in a box for its socket", family="ANSI", both_ways=True)  # fmt: skip
class Meter(Graphic):
    """A circle with WH in a box; over it an arrow for import and export. Data terminals on the lower edge."""

    def __init__(self, *, both_ways: bool, **placement: Any) -> None:
        super().__init__(**placement)
        self.add_line((0.0, 0.0), (1.0, 0.0))
        self.add_rectangle(1.0, -2.0, 4.0, 2.0)
        self.add_circle(2.5, -0.3, 1.2)
        self.add_text("WH", 2.5, -0.3)
        if both_ways:
            self.add_line((1.8, 1.5), (3.2, 1.5))
            arrow_head(self, (1.5, 1.5), (-1.0, 0.0))
            arrow_head(self, (3.5, 1.5), (1.0, 0.0))
        self.add_line((4.0, 0.0), (5.0, 0.0))
        self.add_axis_pins(5.0)
        self.add_pin("data", 2.0, -2.0)
        self.add_pin("data2", 3.0, -2.0)


@graphic("meter_ct", phrase("Watthour meter with current transformers"),
         "IEEE 315 items 6.4 and 12.1, from memory, in a box for its socket", family="ANSI", hangs=True)  # fmt: skip
class TransformerMeter(Graphic):
    """A winding along the wire; the meter hangs below it on a secondary circuit marked with two strokes."""

    def __init__(self, **placement: Any) -> None:
        super().__init__(**placement)
        self.add_line((0.0, 0.0), (4.0, 0.0))
        for x in (1.5, 2.5):
            self.add_arc(x, -0.75, 0.5, 0.5, 0.0, 180.0)
        self.add_line((2.0, -0.75), (2.0, -2.0))
        for y in (-1.2, -1.5):
            self.add_line((1.7, y - 0.17), (2.3, y + 0.17))
        self.add_rectangle(0.5, -5.0, 3.5, -2.0)
        self.add_circle(2.0, -3.5, 1.2)
        self.add_text("WH", 2.0, -3.5)
        self.add_axis_pins(4.0)
        self.add_pin("data", 1.0, -5.0)
        self.add_pin("data2", 2.0, -5.0)
