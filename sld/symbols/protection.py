"""Protective devices: fuses, residual current devices, surge protection, relays, diode. Lengths in modules."""

from __future__ import annotations

from typing import Any

from sld.symbols.element import INK, Graphic
from sld.symbols.parts import (
    along_blade,
    arrow_head,
    bar,
    contact_circle,
    cross,
    make_contact,
    protective_earth_sign,
)  # fmt: skip
from sld.symbols.registry import graphic
from sld.symbols.stroke import Dash
from sld.words import phrase

__all__ = ["BlockingDiode", "Fuse", "FuseSwitchDisconnector", "InsulationMonitor", "InterfaceProtection",
           "ResidualCurrentDevice", "SurgeProtection"]  # fmt: skip


@graphic("fuse", phrase("Fuse"), "IEC 60617 S00362 (old 07-21-01), from memory")
class Fuse(Graphic):
    """A rectangle with the wire running through it."""

    def __init__(self, **placement: Any) -> None:
        super().__init__(**placement)
        self.add_line((0.0, 0.0), (4.0, 0.0))
        self.add_rectangle(0.5, -0.5, 3.5, 0.5)
        self.add_axis_pins(4.0)


@graphic("fuse_switch_disconnector", phrase("Fuse-switch-disconnector"), "IEC 60617 S00370 (old 07-21-09), from memory")
class FuseSwitchDisconnector(Graphic):
    """A switch-disconnector whose blade carries the fuse-link."""

    def __init__(self, **placement: Any) -> None:
        super().__init__(**placement)
        make_contact(self, lead_m=0.75)
        bar(self, 0.75)
        contact_circle(self)
        self.add_polygon(*(along_blade(x, y) for x, y in ((-0.7, -0.25), (0.7, -0.25), (0.7, 0.25), (-0.7, 0.25))))
        self.add_axis_pins(4.0)


@graphic("rcd", phrase("Residual current device"),
         "built from IEC 60617 S00290 and a residual current sensor, no number asserted",
         overcurrent=False)  # fmt: skip
@graphic("rcbo", phrase("Residual current circuit-breaker with overcurrent protection"),
         "built from IEC 60617 S00287 and a residual current sensor, no number asserted", overcurrent=True)  # fmt: skip
class ResidualCurrentDevice(Graphic):
    """A switch tripped by a summation current transformer around the wire; with overcurrent release a breaker."""

    def __init__(self, *, overcurrent: bool, **placement: Any) -> None:
        super().__init__(**placement)
        if overcurrent:
            make_contact(self, gap_m=0.8, end_m=5.0)
            cross(self)
            self.add_polygon(*(along_blade(x, y) for x, y in ((-0.4, -0.4), (0.4, -0.4), (0.4, 0.4), (-0.4, 0.4))))
            joins = along_blade(0.0, -0.4)
        else:
            make_contact(self, lead_m=0.75, end_m=5.0)
            bar(self, 0.75)
            contact_circle(self)
            joins = along_blade(0.0, 0.0)
        link_y = -1.42  # so that the dashed link ends in a dash, not in a gap
        self.add_arc(4.0, 0.0, 0.4, 1.1)
        self.add_line((4.0, -1.1), (4.0, link_y), (joins[0], link_y), joins, dash=Dash.DASHED)
        self.add_text("IΔ", 3.0, link_y - 0.65)
        self.add_axis_pins(5.0)


@graphic("surge_protection_1", phrase("Surge protective device, type 1"),
         "IEC 60617 S00373 (old 07-22-03), from memory; type by IEC 61643-11",
         hangs=True, class_text="T1", length_m=3.0)  # fmt: skip
@graphic("surge_protection_2", phrase("Surge protective device, type 2"),
         "IEC 60617 S00373 (old 07-22-03), from memory; type by IEC 61643-11",
         hangs=True, class_text="T2", length_m=3.0)  # fmt: skip
@graphic("surge_protection_1_2", phrase("Surge protective device, types 1 and 2"),
         "IEC 60617 S00373 (old 07-22-03), from memory; type by IEC 61643-11",
         hangs=True, class_text="T1+T2", length_m=5.0)  # fmt: skip
class SurgeProtection(Graphic):
    """A branch from the wire down to protective earth: a rectangle with an arrow head, its type beside it."""

    def __init__(self, *, class_text: str, length_m: float, **placement: Any) -> None:
        super().__init__(**placement)
        self.add_line((0.0, 0.0), (length_m, 0.0))
        self.add_circle(1.0, 0.0, 0.2, fill=INK)
        self.add_line((1.0, 0.0), (1.0, -1.0))
        self.add_rectangle(0.5, -1.9, 1.5, -0.5)
        arrow_head(self, (1.0, -1.4), (0.0, -1.0), 0.6)
        protective_earth_sign(self, 1.0, -1.9, 0.75)
        self.add_text(class_text, 1.7, -1.2, align="left")
        self.add_axis_pins(length_m)


@graphic("interface_protection", phrase("Interface protection with coupling switch"),
         "measuring relay, IEC 60617 S00327 (old 07-16-01), from memory; our arrangement", hangs=True)  # fmt: skip
class InterfaceProtection(Graphic):
    """A coupling switch, and beside the wire the relay that opens it: it measures on the network side of the switch."""

    def __init__(self, **placement: Any) -> None:
        super().__init__(**placement)
        make_contact(self, end_m=8.0)
        self.add_circle(6.0, 0.0, 0.2, fill=INK)
        self.add_line((6.0, 0.0), (6.0, -0.8))
        self.add_rectangle(4.0, -4.8, 8.0, -0.8)
        self.add_text("U< U>", 6.0, -2.05)
        self.add_text("f< f>", 6.0, -3.55)
        blade = along_blade(0.0, 0.0)
        self.add_line((4.0, -2.0), (blade[0], -2.0), blade, dash=Dash.DASHED)
        arrow_head(self, blade, (0.0, 1.0))
        self.add_axis_pins(8.0)


@graphic(
    "interface_relay",
    phrase("Interface protection relay"),
    "measuring relay, IEC 60617 S00327 (old 07-16-01), from memory; our arrangement",
    hangs=True,
)
class InterfaceRelay(Graphic):
    """A voltage and frequency relay on the wire; the trip line to the switch that it opens is drawn apart."""

    def __init__(self, **placement: Any) -> None:
        super().__init__(**placement)
        self.add_line((0.0, 0.0), (4.0, 0.0))
        self.add_circle(2.0, 0.0, 0.2, fill=INK)
        self.add_line((2.0, 0.0), (2.0, -0.8))
        self.add_rectangle(0.0, -4.8, 4.0, -0.8)
        self.add_text("U< U>", 2.0, -2.05)
        self.add_text("f< f>", 2.0, -3.55)
        self.add_axis_pins(4.0)


@graphic(
    "insulation_monitor",
    phrase("Insulation monitoring device"),
    "measuring relay, IEC 60617 S00327 (old 07-16-01), from memory; our arrangement",
    hangs=True,
)
class InsulationMonitor(Graphic):
    """A measuring device between the wire and protective earth."""

    def __init__(self, **placement: Any) -> None:
        super().__init__(**placement)
        self.add_line((0.0, 0.0), (4.0, 0.0))
        self.add_circle(2.0, 0.0, 0.2, fill=INK)
        self.add_line((2.0, 0.0), (2.0, -0.8))
        self.add_rectangle(0.5, -2.6, 3.5, -0.8)
        self.add_text("RISO", 2.0, -1.7)
        protective_earth_sign(self, 2.0, -2.6, 0.75)
        self.add_axis_pins(4.0)


@graphic("blocking_diode", phrase("Blocking diode"), "IEC 60617 S00641 (old 05-03-01), from memory",
         ansi="IEEE 315 item 8.5.1, from memory")  # fmt: skip
class BlockingDiode(Graphic):
    """A triangle pointing towards the network, against a bar."""

    def __init__(self, **placement: Any) -> None:
        super().__init__(**placement)
        self.add_line((0.0, 0.0), (4.0, 0.0))
        self.add_polygon((1.3, 0.75), (1.3, -0.75), (2.6, 0.0))
        self.add_line((2.6, -0.75), (2.6, 0.75))
        self.add_axis_pins(4.0)
