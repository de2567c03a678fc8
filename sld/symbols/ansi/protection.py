"""ANSI family: fuses, ground-fault devices, surge arresters and relays. Lengths in modules.

Numbers in relays are the device function numbers of IEEE C37.2: 27 undervoltage, 59 overvoltage, 81 frequency, 64
ground fault detection (from memory).
"""

from __future__ import annotations

from typing import Any

from sld.symbols.ansi.parts import blade, breaker_arc, ground, link_to, wave
from sld.symbols.element import INK, Graphic
from sld.symbols.parts import arrow_head
from sld.symbols.registry import graphic
from sld.symbols.stroke import Dash
from sld.words import phrase

__all__ = ["Fuse", "FusedSwitch", "GroundFaultDevice", "InsulationMonitor", "InterfaceProtection", "SurgeArrester"]

_ARRESTER = "IEEE 315 item 9.3, from memory; type by IEC 61643-11, not by UL 1449"


@graphic("fuse", phrase("Fuse"), "IEEE 315 item 9.1, from memory", family="ANSI")
class Fuse(Graphic):
    """One period of a wave in the wire."""

    def __init__(self, **placement: Any) -> None:
        super().__init__(**placement)
        self.add_line((0.0, 0.0), (0.75, 0.0))
        wave(self, 0.75, 3.25, 0.55)
        self.add_line((3.25, 0.0), (4.0, 0.0))
        self.add_axis_pins(4.0)


@graphic("fuse_switch_disconnector", phrase("Fused disconnect switch"), "IEEE 315 items 4.6 and 9.1, from memory",
         family="ANSI")  # fmt: skip
class FusedSwitch(Graphic):
    """A disconnect switch with a fuse behind it."""

    def __init__(self, **placement: Any) -> None:
        super().__init__(**placement)
        blade(self, hinge_m=2.0, length_m=1.4, end_m=2.3)
        wave(self, 2.3, 3.7, 0.4)
        self.add_line((3.7, 0.0), (4.0, 0.0))
        self.add_axis_pins(4.0)


@graphic("rcd", phrase("Ground-fault protective device"), "IEEE 315 item 4.6 and a sensor around the wire, from memory",
         family="ANSI", overcurrent=False)  # fmt: skip
@graphic("rcbo", phrase("Circuit breaker with ground-fault protection"),
         "IEEE 315 item 9.4 and a sensor around the wire, from memory", family="ANSI", overcurrent=True)  # fmt: skip
class GroundFaultDevice(Graphic):
    """A switch or breaker tripped by a sensor around all conductors of the wire."""

    def __init__(self, *, overcurrent: bool, **placement: Any) -> None:
        super().__init__(**placement)
        if overcurrent:
            joins = breaker_arc(self, end_m=5.0)
        else:
            tip = blade(self, end_m=5.0)
            joins = ((tip[0] + 3.0) / 2, tip[1] / 2)
        level_m = 1.3 if overcurrent else 1.5  # so that the dashed link ends in a dash, not in a gap
        self.add_arc(4.0, 0.0, 0.4, 1.1)
        link_to(self, 4.0, 1.1, joins, level_m)
        self.add_text("GF", 3.0, level_m + 0.65)
        self.add_axis_pins(5.0)


@graphic("surge_protection_1", phrase("Surge arrester, type 1"), _ARRESTER, family="ANSI", hangs=True,
         class_text="T1", length_m=3.0)  # fmt: skip
@graphic("surge_protection_2", phrase("Surge arrester, type 2"), _ARRESTER, family="ANSI", hangs=True,
         class_text="T2", length_m=3.0)  # fmt: skip
@graphic("surge_protection_1_2", phrase("Surge arrester, types 1 and 2"), _ARRESTER, family="ANSI", hangs=True,
         class_text="T1+T2", length_m=5.0)  # fmt: skip
class SurgeArrester(Graphic):
    """A branch from the wire down to ground over a gap between two arrow heads, its type beside it."""

    def __init__(self, *, class_text: str, length_m: float, **placement: Any) -> None:
        super().__init__(**placement)
        self.add_line((0.0, 0.0), (length_m, 0.0))
        self.add_circle(1.0, 0.0, 0.2, fill=INK)
        self.add_line((1.0, 0.0), (1.0, -0.8))
        arrow_head(self, (1.0, -1.35), (0.0, -1.0), 0.6)
        arrow_head(self, (1.0, -1.6), (0.0, 1.0), 0.6)
        ground(self, 1.0, -2.15, 0.85, 0.8)
        self.add_text(class_text, 1.7, -1.45, align="left")
        self.add_axis_pins(length_m)


@graphic("interface_protection", phrase("Interface protection with coupling switch"),
         "relay, IEEE 315 item 9.5, with numbers of IEEE C37.2, from memory; our arrangement",
         family="ANSI", hangs=True)  # fmt: skip
class InterfaceProtection(Graphic):
    """A contact, and beside the wire the relay that trips it: it measures on the network side of the contact."""

    def __init__(self, **placement: Any) -> None:
        super().__init__(**placement)
        tip = blade(self, end_m=8.0)
        self.add_circle(6.0, 0.0, 0.2, fill=INK)
        self.add_line((6.0, 0.0), (6.0, -0.4))
        self.add_circle(6.0, -2.4, 2.0)
        self.add_text("27/59", 6.0, -1.8)
        self.add_text("81", 6.0, -3.1)
        joins = ((tip[0] + 3.0) / 2, tip[1] / 2)
        self.add_line((4.0, -2.4), (joins[0], -2.4), joins, dash=Dash.DASHED)  # through the open contact
        self.add_axis_pins(8.0)


@graphic("interface_relay", phrase("Interface protection relay"),
         "relay, IEEE 315 item 9.5, with numbers of IEEE C37.2, from memory; our arrangement", family="ANSI",
         hangs=True)  # fmt: skip
class InterfaceRelay(Graphic):
    """A voltage and frequency relay on the wire; the trip line to the contact that it opens is drawn apart."""

    def __init__(self, **placement: Any) -> None:
        super().__init__(**placement)
        self.add_line((0.0, 0.0), (4.0, 0.0))
        self.add_circle(2.0, 0.0, 0.2, fill=INK)
        self.add_line((2.0, 0.0), (2.0, -0.4))
        self.add_circle(2.0, -2.4, 2.0)
        self.add_text("27/59", 2.0, -1.8)
        self.add_text("81", 2.0, -3.1)
        self.add_axis_pins(4.0)


@graphic("insulation_monitor", phrase("Ground fault detector"),
         "relay, IEEE 315 item 9.5, with number of IEEE C37.2, from memory; our arrangement", family="ANSI",
         hangs=True)  # fmt: skip
class InsulationMonitor(Graphic):
    """A detecting relay between the wire and ground."""

    def __init__(self, **placement: Any) -> None:
        super().__init__(**placement)
        self.add_line((0.0, 0.0), (4.0, 0.0))
        self.add_circle(2.0, 0.0, 0.2, fill=INK)
        self.add_line((2.0, 0.0), (2.0, -0.7))
        self.add_circle(2.0, -1.7, 1.0)
        self.add_text("64", 2.0, -1.7)
        ground(self, 2.0, -2.7, 0.8, 0.8)
        self.add_axis_pins(4.0)
