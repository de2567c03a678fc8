"""Where power comes from or goes to: network, transformer, generator, PV, battery, load, charge point. In modules."""

from __future__ import annotations

from typing import Any

from sld.symbols.element import Graphic
from sld.symbols.parts import ac_sign, arrow_head
from sld.symbols.registry import BUILT_UP, graphic
from sld.words import phrase

__all__ = ["Battery", "ChargePoint", "Generator", "Load", "Network", "PhotovoltaicArray", "PhotovoltaicModule",
           "PhotovoltaicString", "Transformer", "battery_box"]  # fmt: skip


@graphic("network", phrase("Public network"), "no number asserted; our geometry")
class Network(Graphic):
    """A square hatched crosswise at 45 degrees."""

    def __init__(self, **placement: Any) -> None:
        super().__init__(**placement)
        self.add_line((0.0, 0.0), (1.0, 0.0))
        self.add_rectangle(1.0, -1.5, 4.0, 1.5)
        for offset in (0.75, 1.5, 2.25, 3.0, 3.75, 4.5, 5.25):  # where x + y is constant, from the lower left corner
            low, high = max(0.0, offset - 3.0), min(3.0, offset)
            self.add_line((1.0 + low, offset - low - 1.5), (1.0 + high, offset - high - 1.5))
            self.add_line((1.0 + low, 1.5 - offset + low), (1.0 + high, 1.5 - offset + high))
        self.add_axis_pins(4.0)


@graphic("transformer", phrase("Transformer, two windings"), "IEC 60617 S00841 (old 06-09-01), from memory")
class Transformer(Graphic):
    """Two circles that overlap."""

    def __init__(self, **placement: Any) -> None:
        super().__init__(**placement)
        self.add_line((0.0, 0.0), (1.0, 0.0))
        self.add_circle(2.5, 0.0, 1.5)
        self.add_circle(4.5, 0.0, 1.5)
        self.add_line((6.0, 0.0), (7.0, 0.0))
        self.add_axis_pins(7.0)


@graphic("generator", phrase("Generator"), "IEC 60617 S00819 (old 06-04-01), from memory",
         ansi="IEEE 315 item 13.1, from memory")  # fmt: skip
class Generator(Graphic):
    """A circle with G over the sign of alternating current."""

    def __init__(self, **placement: Any) -> None:
        super().__init__(**placement)
        self.add_circle(2.0, 0.0, 2.0)
        self.add_line((4.0, 0.0), (5.0, 0.0))
        self.add_text("G", 2.0, 0.5, height_mm=2.5)
        ac_sign(self, 1.4, -0.85)
        self.add_axis_pins(5.0)
        self.add_pin("earth", 2.0, -2.0)


def _module(g: Graphic, left_m: float, right_m: float, y_m: float = 0.0) -> None:
    """Draw one PV module two modules of the grid tall: a rectangle with a V that points towards the network."""
    g.add_rectangle(left_m, y_m - 1.0, right_m, y_m + 1.0)
    g.add_line((left_m, y_m + 1.0), (left_m + 0.55 * (right_m - left_m), y_m), (left_m, y_m - 1.0))


@graphic("pv_module", phrase("PV module"), "IEC 60617 S00908 (old 06-18-06), from memory; no light arrows",
         ansi=BUILT_UP)  # fmt: skip
class PhotovoltaicModule(Graphic):
    """One module."""

    def __init__(self, **placement: Any) -> None:
        super().__init__(**placement)
        _module(self, 0.0, 2.0)
        self.add_line((2.0, 0.0), (3.0, 0.0))
        self.add_axis_pins(3.0)
        self.add_pin("earth", 1.0, -1.0)


@graphic("pv_string", phrase("PV string"), "built from IEC 60617 S00908 (old 06-18-06), from memory; no light arrows",
         ansi=BUILT_UP)  # fmt: skip
class PhotovoltaicString(Graphic):
    """Two modules joined by a broken line: a string of several in series."""

    def __init__(self, **placement: Any) -> None:
        super().__init__(**placement)
        _module(self, 0.0, 2.0)
        self.add_line((2.0, 0.0), (2.35, 0.0))
        self.add_line((2.65, 0.0), (3.0, 0.0))
        _module(self, 3.0, 5.0)
        self.add_line((5.0, 0.0), (6.0, 0.0))
        self.add_axis_pins(6.0)
        self.add_pin("earth", 1.0, -1.0)


@graphic("pv_array", phrase("PV array of several strings"), "built from IEC 60617 S00908 (old 06-18-06), from memory",
         ansi=BUILT_UP)  # fmt: skip
class PhotovoltaicArray(Graphic):
    """A module in front of two more."""

    def __init__(self, **placement: Any) -> None:
        super().__init__(**placement)
        _module(self, 1.0, 4.0)
        self.add_line((0.5, 0.0), (0.5, 1.5), (3.5, 1.5), (3.5, 1.0))
        self.add_line((1.0, -0.5), (0.5, -0.5), (0.5, 0.0))
        self.add_line((0.0, 0.0), (0.0, 2.0), (3.0, 2.0), (3.0, 1.5))
        self.add_line((0.5, 0.0), (0.0, 0.0))
        self.add_line((4.0, 0.0), (5.0, 0.0))
        self.add_axis_pins(5.0)
        self.add_pin("earth", 2.0, -1.0)


def battery_box(g: Graphic) -> None:
    """Draw a battery of several cells in a box from x = 0 to 3, four modules tall."""
    g.add_rectangle(0.0, -2.0, 3.0, 2.0)
    g.add_line((1.5, 1.55), (1.5, 1.0))
    g.add_line((0.6, 1.0), (2.4, 1.0))
    g.add_line((1.05, 0.45), (1.95, 0.45))
    g.add_line((1.5, 0.45), (1.5, 0.2))
    g.add_line((1.5, -0.2), (1.5, -0.45))
    g.add_line((0.6, -0.45), (2.4, -0.45))
    g.add_line((1.05, -1.0), (1.95, -1.0))
    g.add_line((1.5, -1.0), (1.5, -1.55))
    g.add_line((0.6, 1.45), (1.0, 1.45))
    g.add_line((0.8, 1.25), (0.8, 1.65))


@graphic("battery", phrase("Battery"), "IEC 60617 S00898 (old 06-15-01), from memory, in a box S00059",
         ansi="IEEE 315 item 2.5, from memory, in a box")  # fmt: skip
class Battery(Graphic):
    """Cells in a box."""

    def __init__(self, **placement: Any) -> None:
        super().__init__(**placement)
        battery_box(self)
        self.add_line((3.0, 0.0), (4.0, 0.0))
        self.add_axis_pins(4.0)
        self.add_pin("earth", 2.0, -2.0)
        self.add_pin("data", 3.0, -2.0)
        self.add_pin("data2", 1.0, -2.0)


@graphic("load", phrase("Load"), "arrow on a conductor, common practice, no source",
         ansi="arrow on a conductor, common practice, no source")  # fmt: skip
class Load(Graphic):
    """An arrow that leads away from the network."""

    def __init__(self, **placement: Any) -> None:
        super().__init__(**placement)
        arrow_head(self, (0.0, 0.0), (-1.0, 0.0), 0.9)
        self.add_line((0.7, 0.0), (2.0, 0.0))
        self.add_axis_pins(2.0)


@graphic("charge_point", phrase("Charge point for electric vehicles"), "no number asserted; our geometry",
         ansi=BUILT_UP)  # fmt: skip
class ChargePoint(Graphic):
    """A box with a socket on its lower edge."""

    def __init__(self, **placement: Any) -> None:
        super().__init__(**placement)
        self.add_rectangle(0.0, -2.0, 4.0, 2.0)
        self.add_text("EV", 2.0, 0.55, height_mm=2.5)
        self.add_arc(2.0, -2.0, 0.9, 0.9, 0.0, 180.0)
        self.add_line((2.0, -1.1), (2.0, -0.7))
        self.add_line((4.0, 0.0), (5.0, 0.0))
        self.add_axis_pins(5.0)
        self.add_pin("earth", 1.0, -2.0)
        self.add_pin("data", 3.0, -2.0)
        self.add_pin("data2", 2.0, -2.0)
