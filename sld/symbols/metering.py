"""Meters on the wire: integrating instruments for energy. Lengths in modules."""

from __future__ import annotations

from typing import Any

from sld.symbols.element import Graphic
from sld.symbols.parts import arrow_head
from sld.symbols.registry import graphic
from sld.words import phrase

__all__ = ["Meter", "TransformerMeter"]


def _two_way_arrow(g: Graphic, x_m: float, y_m: float, half_m: float) -> None:
    """Draw a level arrow with a head at both ends."""
    g.add_line((x_m - half_m + 0.3, y_m), (x_m + half_m - 0.3, y_m))
    arrow_head(g, (x_m - half_m, y_m), (-1.0, 0.0))
    arrow_head(g, (x_m + half_m, y_m), (1.0, 0.0))


@graphic("meter", phrase("Energy meter"), "IEC 60617 S00933 (old 08-04-03), from memory", both_ways=False)
@graphic("meter_bidirectional", phrase("Energy meter for both directions"),
         "variant of IEC 60617 S00933 (old 08-04-03), from memory", both_ways=True)  # fmt: skip
class Meter(Graphic):
    """A box with a strip along its top, as integrating instruments have; in it an arrow for import and export.

    The data terminals are on the lower edge.
    """

    def __init__(self, *, both_ways: bool, **placement: Any) -> None:
        super().__init__(**placement)
        self.add_line((0.0, 0.0), (1.0, 0.0))
        self.add_rectangle(1.0, -2.0, 4.0, 2.0)
        self.add_line((1.0, 1.0), (4.0, 1.0))
        self.add_text("kWh", 2.5, -0.5)
        if both_ways:
            _two_way_arrow(self, 2.5, 1.5, 1.0)
        self.add_line((4.0, 0.0), (5.0, 0.0))
        self.add_axis_pins(5.0)
        self.add_pin("data", 2.0, -2.0)
        self.add_pin("data2", 3.0, -2.0)


@graphic("meter_ct", phrase("Energy meter with current transformers"),
         "IEC 60617 S00850 and S00933 (old 06-09-10, 08-04-03), from memory", hangs=True)  # fmt: skip
class TransformerMeter(Graphic):
    """A current transformer on the wire; the meter hangs below it on a secondary circuit marked with two strokes."""

    def __init__(self, **placement: Any) -> None:
        super().__init__(**placement)
        self.add_line((0.0, 0.0), (4.0, 0.0))
        self.add_circle(2.0, 0.0, 0.9)
        self.add_line((2.0, -0.9), (2.0, -2.0))
        for y in (-1.3, -1.6):
            self.add_line((1.7, y - 0.17), (2.3, y + 0.17))
        self.add_rectangle(0.5, -5.0, 3.5, -2.0)
        self.add_line((0.5, -2.9), (3.5, -2.9))
        self.add_text("kWh", 2.0, -3.95)
        self.add_axis_pins(4.0)
        self.add_pin("data", 1.0, -5.0)
        self.add_pin("data2", 2.0, -5.0)
