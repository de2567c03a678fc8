"""Devices of the data network: boxes with their function in words, and the parts of a bus. Lengths in modules."""

from __future__ import annotations

from typing import Any

from sld.symbols.element import Graphic
from sld.symbols.registry import BUILT_UP, graphic
from sld.words import phrase

__all__ = ["DataDevice", "TerminationResistor", "WirelessLink"]


_ASSEMBLY = "circuit assembly, IEEE 315 item 16.1, from memory"


def _box(g: Graphic, width_m: float) -> None:
    """Draw the box of a data device, two modules tall about the axis, and name its terminals."""
    g.add_rectangle(0.0, -1.0, width_m, 1.0)
    g.add_axis_pins(width_m)
    g.add_pin("data", 1.0, 1.0)
    g.add_pin("data2", 2.0, 1.0)


@graphic(
    "logger",
    phrase("Data logger"),
    "function box, IEC 60617 S00059 (old 02-01-01), from memory",
    ansi=_ASSEMBLY,
    text="LOG",
    width_m=4.0,
)
@graphic(
    "energy_manager",
    phrase("Energy management system"),
    "function box, IEC 60617 S00059 (old 02-01-01), from memory",
    ansi=_ASSEMBLY,
    text="EMS",
    width_m=4.0,
)
@graphic(
    "router",
    phrase("Router"),
    "function box, IEC 60617 S00059 (old 02-01-01), from memory",
    ansi=_ASSEMBLY,
    text="ROUTER",
    width_m=6.0,
)
@graphic(
    "communication_module",
    phrase("Communication module"),
    "function box, IEC 60617 S00059 (old 02-01-01), from memory",
    ansi=_ASSEMBLY,
    text="COM",
    width_m=4.0,
)
class DataDevice(Graphic):
    """A box with its function in words; data terminals on the upper edge, 1 M and 2 M from the left."""

    def __init__(self, *, text: str, width_m: float, **placement: Any) -> None:
        super().__init__(**placement)
        _box(self, width_m)
        self.add_text(text, width_m / 2, 0.0, height_mm=1.8 if len(text) > 3 else 2.5)


@graphic(
    "wireless",
    phrase("Wireless link"),
    "antenna, IEC 60617 S01102 (old 10-04-01), from memory, in a box S00059",
    ansi=f"antenna, IEEE 315 item 2.3, from memory, in a box; {BUILT_UP}",
)
class WirelessLink(Graphic):
    """A box with an antenna and the waves it sends."""

    def __init__(self, **placement: Any) -> None:
        super().__init__(**placement)
        _box(self, 4.0)
        self.add_line((1.3, -0.75), (1.3, -0.2))
        self.add_polygon((1.3, -0.2), (0.75, 0.7), (1.85, 0.7))
        for radius in (0.5, 0.85, 1.2):
            self.add_arc(1.75, 0.15, radius, radius, -30.0, 30.0)


@graphic("termination_resistor", phrase("Termination resistor, 120 Ω"),
         "IEC 60617 S00555 (old 04-01-01), 120 Ω by TIA-485-A, both from memory")  # fmt: skip
class TerminationResistor(Graphic):
    """The resistor across a bus, at a device of its chain."""

    def __init__(self, **placement: Any) -> None:
        super().__init__(**placement)
        self.add_rectangle(0.0, -0.4, 2.0, 0.4)
        self.add_pin("feed", 0.0)
