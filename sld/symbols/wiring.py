"""Conductors and connections: busbar, cables with their conductor count, terminals, plugs. Lengths in modules."""

from __future__ import annotations

from math import cos, radians, sin
from typing import Any

from sld.symbols.element import INK, Graphic
from sld.symbols.registry import graphic
from sld.symbols.spans import body_of, feeds_of
from sld.words import phrase

__all__ = ["BUSBAR_MM", "Busbar", "Cable", "PlugConnector", "Terminal"]

BUSBAR_MM = 0.7


@graphic("busbar", phrase("Busbar"), "thick conductor, common practice, no source", stretches=True,
         ansi="thick conductor, common practice, no source")  # fmt: skip
class Busbar(Graphic):
    """An upright thick line; all its terminals lie on it."""

    def __init__(self, *, feeds_m: tuple[float, ...] | None = None, **placement: Any) -> None:
        super().__init__(**placement)
        bottom, top = body_of(feeds_m)
        self.strip_count = 1
        self.add_line((0.0, bottom), (0.0, top), width_mm=BUSBAR_MM)
        for name, y in feeds_of(feeds_m).items():
            self.add_pin(name, 0.0, y)
        self.add_pin("supply", 0.0)


_CONDUCTORS = "strokes for the number of conductors, IEEE 315 item 3.1, from memory"


@graphic("cable_1", phrase("Cable with 1 conductor"), "IEC 60617 S00002 (old 03-01-02), from memory",
         ansi=_CONDUCTORS, conductors_count=1)  # fmt: skip
@graphic("cable_2", phrase("Cable with 2 conductors"), "IEC 60617 S00002 (old 03-01-02), from memory",
         ansi=_CONDUCTORS, conductors_count=2)  # fmt: skip
@graphic("cable_3", phrase("Cable with 3 conductors"), "IEC 60617 S00002 (old 03-01-02), from memory",
         ansi=_CONDUCTORS, conductors_count=3)  # fmt: skip
@graphic("cable_4", phrase("Cable with 4 conductors"), "IEC 60617 S00003 (old 03-01-03), from memory",
         ansi=_CONDUCTORS, conductors_count=4)  # fmt: skip
@graphic("cable_5", phrase("Cable with 5 conductors"), "IEC 60617 S00003 (old 03-01-03), from memory",
         ansi=_CONDUCTORS, conductors_count=5)  # fmt: skip
class Cable(Graphic):
    """A wire with a stroke for each conductor; from four on one stroke and the number."""

    def __init__(self, *, conductors_count: int, **placement: Any) -> None:
        super().__init__(**placement)
        self.add_line((0.0, 0.0), (2.0, 0.0))
        strokes = conductors_count if conductors_count <= 3 else 1
        dx, dy = 0.6 * cos(radians(60)), 0.6 * sin(radians(60))
        for number in range(strokes):
            x = 1.0 + 0.4 * (number - (strokes - 1) / 2)
            self.add_line((x - dx, -dy), (x + dx, dy))
        if conductors_count > 3:
            self.add_text(str(conductors_count), 1.15, -0.72, align="left")
        self.add_axis_pins(2.0)


@graphic("terminal", phrase("Terminal"), "IEC 60617 S00017 (old 03-02-02), from memory",
         ansi="IEEE 315 item 5.1, from memory")  # fmt: skip
class Terminal(Graphic):
    """An open circle in the wire."""

    def __init__(self, **placement: Any) -> None:
        super().__init__(**placement)
        self.add_line((0.0, 0.0), (0.75, 0.0))
        self.add_circle(1.0, 0.0, 0.25)
        self.add_line((1.25, 0.0), (2.0, 0.0))
        self.add_axis_pins(2.0)


@graphic(
    "branch_connector",
    phrase("Branch connector"),
    "plug connector, IEC 60617 S00033 (old 03-03-05), and junction S00016 (03-02-01), from memory; our arrangement",
)
class BranchConnector(Graphic):
    """A plug connector behind the junction of two lines."""

    def __init__(self, **placement: Any) -> None:
        super().__init__(**placement)
        self.add_line((0.0, 0.0), (1.5, 0.0))
        self.add_arc(1.9, 0.0, 0.4, 0.4, 90.0, 270.0)
        self.add_rectangle(1.75, -0.15, 2.5, 0.15, fill=INK)
        self.add_line((2.5, 0.0), (3.0, 0.0))
        self.add_circle(0.75, 0.0, 0.15, fill=INK)
        self.add_line((0.75, 0.0), (0.25, 0.75))
        self.add_axis_pins(3.0)


@graphic("plug_connector", phrase("Plug connector"), "IEC 60617 S00033 (old 03-03-05), from memory")
class PlugConnector(Graphic):
    """A socket, open towards the plug that enters it."""

    def __init__(self, **placement: Any) -> None:
        super().__init__(**placement)
        self.add_line((0.0, 0.0), (0.5, 0.0))
        self.add_arc(0.9, 0.0, 0.4, 0.4, 90.0, 270.0)
        self.add_rectangle(0.75, -0.15, 1.5, 0.15, fill=INK)
        self.add_line((1.5, 0.0), (2.0, 0.0))
        self.add_axis_pins(2.0)
