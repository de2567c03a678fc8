"""ANSI family: switching devices on the wire axis, open. Lengths in modules."""

from __future__ import annotations

from typing import Any

from sld.symbols.ansi.parts import BLADE_DEG, adjusted, blade, breaker_arc, chevron, contact_bars
from sld.symbols.element import Graphic
from sld.symbols.registry import graphic
from sld.words import phrase

__all__ = ["CircuitBreaker", "Contactor", "DisconnectSwitch", "PlugConnection", "RapidShutdown"]


@graphic(
    "disconnector",
    phrase("Disconnect switch, not for load break"),
    "IEEE 315 item 4.6, from memory",
    family="ANSI",
    breaks_load=False,
)
@graphic("switch_disconnector", phrase("Disconnect switch, load break"),
         "IEEE 315 item 4.6, from memory, with the path of the blade as our mark of load break", family="ANSI",
         breaks_load=True)  # fmt: skip
class DisconnectSwitch(Graphic):
    """A bare blade; where it breaks load, part of the path of its tip is drawn."""

    def __init__(self, *, breaks_load: bool, **placement: Any) -> None:
        super().__init__(**placement)
        blade(self)
        if breaks_load:
            self.add_arc(3.0, 0.0, 2.0, 2.0, 180.0 - BLADE_DEG, 171.0)
        self.add_axis_pins(4.0)


@graphic(
    "circuit_breaker", phrase("Circuit breaker"), "IEEE 315 item 9.4, from memory", family="ANSI", adjustable=False
)
@graphic("moulded_case_breaker", phrase("Molded-case circuit breaker"),
         "IEEE 315 items 9.4 and 1.1 (adjustability), from memory", family="ANSI", adjustable=True)  # fmt: skip
class CircuitBreaker(Graphic):
    """An arc over a gap; an oblique arrow through it where it is adjustable."""

    def __init__(self, *, adjustable: bool, **placement: Any) -> None:
        super().__init__(**placement)
        breaker_arc(self)
        if adjustable:
            adjusted(self, (1.2, -0.6), (2.9, 1.6))
        self.add_axis_pins(4.0)


@graphic("contactor", phrase("Contactor"), "open contact, IEEE 315 item 4.3, from memory", family="ANSI")
class Contactor(Graphic):
    """Two bars across a gap."""

    def __init__(self, **placement: Any) -> None:
        super().__init__(**placement)
        contact_bars(self)
        self.add_axis_pins(4.0)


@graphic(
    "rapid_shutdown",
    phrase("Rapid shutdown device"),
    "open contact, IEEE 315 item 4.3, from memory, with our text",
    family="ANSI",
)
class RapidShutdown(Contactor):
    """A contact with the text RSD over it."""

    def __init__(self, **placement: Any) -> None:
        super().__init__(**placement)
        self.add_text("RSD", 2.0, 1.55)


@graphic("plug_connector", phrase("Plug connector"), "IEEE 315 item 5.3, from memory", family="ANSI")
class PlugConnection(Graphic):
    """One chevron in the other."""

    def __init__(self, **placement: Any) -> None:
        super().__init__(**placement)
        self.add_line((0.0, 0.0), (0.95, 0.0))
        chevron(self, 0.95)
        chevron(self, 1.4)
        self.add_line((1.4, 0.0), (2.0, 0.0))
        self.add_axis_pins(2.0)
