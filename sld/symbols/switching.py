"""Switching devices on the wire axis, open, as in the rest position. Power enters at the left. Lengths in modules."""

from __future__ import annotations

from typing import Any

from sld.symbols.element import Graphic
from sld.symbols.parts import (
    along_blade,
    arrow_head,
    bar,
    contact_circle,
    cross,
    make_contact,
    semicircle,
)  # fmt: skip
from sld.symbols.registry import graphic
from sld.words import phrase

__all__ = ["CircuitBreaker", "Contactor", "Disconnector", "RapidShutdown", "SwitchDisconnector"]


@graphic("disconnector", phrase("Disconnector"), "IEC 60617 S00288 (old 07-13-06), from memory")
class Disconnector(Graphic):
    """A bar at the fixed contact: it isolates, but does not switch load."""

    def __init__(self, **placement: Any) -> None:
        super().__init__(**placement)
        make_contact(self)
        bar(self, 1.0)
        self.add_axis_pins(4.0)


@graphic("switch_disconnector", phrase("Switch-disconnector"), "IEC 60617 S00290 (old 07-13-08), from memory")
class SwitchDisconnector(Graphic):
    """A bar and a circle at the fixed contact: it isolates and switches load."""

    def __init__(self, **placement: Any) -> None:
        super().__init__(**placement)
        make_contact(self, lead_m=0.75)
        bar(self, 0.75)
        contact_circle(self)
        self.add_axis_pins(4.0)


@graphic("circuit_breaker", phrase("Miniature circuit-breaker"),
         "IEC 60617 S00287 (old 07-13-05), from memory", adjustable=False)  # fmt: skip
@graphic("moulded_case_breaker", phrase("Moulded-case circuit-breaker"),
         "IEC 60617 S00287 (old 07-13-05) with the sign of adjustability, from memory", adjustable=True)  # fmt: skip
class CircuitBreaker(Graphic):
    """A cross at the fixed contact and a release block on the blade; an oblique arrow through it where adjustable."""

    def __init__(self, *, adjustable: bool, **placement: Any) -> None:
        super().__init__(**placement)
        make_contact(self, gap_m=0.8)
        cross(self)
        self.add_polygon(*(along_blade(x, y) for x, y in ((-0.4, -0.4), (0.4, -0.4), (0.4, 0.4), (-0.4, 0.4))))
        if adjustable:
            start, tip = (1.45, -1.4), (2.6, 0.48)
            self.add_line(start, (tip[0] - 0.2, tip[1] - 0.2 * 1.88 / 1.15))
            arrow_head(self, tip, (1.15, 1.88))
        self.add_axis_pins(4.0)


@graphic("contactor", phrase("Contactor"), "IEC 60617 S00284 (old 07-13-02), from memory")
class Contactor(Graphic):
    """A half circle at the fixed contact."""

    def __init__(self, **placement: Any) -> None:
        super().__init__(**placement)
        make_contact(self, lead_m=0.65)
        semicircle(self)
        self.add_axis_pins(4.0)


@graphic("rapid_shutdown", phrase("Remote DC switching for rapid shutdown"),
         "IEC 60617 S00284 (old 07-13-02), from memory, with our text")  # fmt: skip
class RapidShutdown(Contactor):
    """A contactor with the text RSD over it."""

    def __init__(self, **placement: Any) -> None:
        super().__init__(**placement)
        self.add_text("RSD", 2.0, 1.1)
