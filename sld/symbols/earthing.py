"""Earthing and bonding, hanging from their one terminal, and the warning sign. Lengths in modules."""

from __future__ import annotations

from typing import Any

from sld.symbols.element import INK, Graphic
from sld.symbols.parts import arrow_head, earth_sign, protective_earth_sign
from sld.symbols.registry import BUILT_UP, graphic
from sld.words import phrase

__all__ = ["Earth", "EarthElectrode", "EquipotentialBonding", "FunctionalEarth", "LightningProtection",
           "ProtectiveEarth", "WarningTriangle"]  # fmt: skip


@graphic("earth", phrase("Earth"), "IEC 60617 S00200 (old 02-15-01), from memory", hangs=True,
         ansi="IEEE 315 item 3.9.1, from memory", ansi_title=phrase("Ground"))  # fmt: skip
class Earth(Graphic):
    """Three bars, shorter and shorter."""

    def __init__(self, **placement: Any) -> None:
        super().__init__(**placement)
        self.add_line((0.0, 0.0), (0.0, -1.0))
        earth_sign(self, 0.0, -1.0)
        self.add_pin("feed", 0.0)


@graphic("protective_earth", phrase("Protective earth"), "IEC 60617 S00202 (old 02-15-03), from memory", hangs=True)
class ProtectiveEarth(Graphic):
    """The earth bars in a circle."""

    def __init__(self, **placement: Any) -> None:
        super().__init__(**placement)
        protective_earth_sign(self, 0.0, 0.0)
        self.add_pin("feed", 0.0)


@graphic("functional_earth", phrase("Functional earth"), "IEC 60617 S01408 (old 02-15-02), from memory", hangs=True)
class FunctionalEarth(Graphic):
    """The earth bars under a half circle."""

    def __init__(self, **placement: Any) -> None:
        super().__init__(**placement)
        self.add_line((0.0, 0.0), (0.0, -1.3))
        earth_sign(self, 0.0, -1.3, 0.9, 0.4)
        self.add_arc(0.0, -1.7, 1.3, 1.3, 0.0, 180.0)
        self.add_pin("feed", 0.0)


@graphic(
    "earth_electrode",
    phrase("Earth electrode"),
    "built from IEC 60617 S00200 (old 02-15-01), from memory",
    hangs=True,
    ansi="IEEE 315 item 3.9.1, from memory, with a rod",
    ansi_title=phrase("Grounding electrode"),
)
class EarthElectrode(Graphic):
    """The earth bars with a rod below them."""

    def __init__(self, **placement: Any) -> None:
        super().__init__(**placement)
        self.add_line((0.0, 0.0), (0.0, -1.4))
        earth_sign(self, 0.0, -1.4)
        self.add_line((0.0, -2.2), (0.0, -4.2), width_mm=0.5)
        self.add_pin("feed", 0.0)


@graphic(
    "equipotential_bonding",
    phrase("Equipotential bonding"),
    "IEC 60617 S00204 (old 02-15-05), from memory",
    hangs=True,
    ansi="common connections, IEEE 315 item 3.9.3, from memory",
    ansi_title=phrase("Bonding connection"),
)
class EquipotentialBonding(Graphic):
    """An outlined triangle on its point."""

    def __init__(self, **placement: Any) -> None:
        super().__init__(**placement)
        self.add_line((0.0, 0.0), (0.0, -1.0))
        self.add_polygon((-1.0, -1.0), (1.0, -1.0), (0.0, -1.0 - 3**0.5))
        self.add_pin("feed", 0.0)


@graphic("lightning_protection", phrase("Lightning protection system"), "no number asserted; our geometry", hangs=True,
         ansi=BUILT_UP)  # fmt: skip
class LightningProtection(Graphic):
    """A box with an air terminal on its base and a flash striking it."""

    def __init__(self, **placement: Any) -> None:
        super().__init__(**placement)
        self.add_line((0.0, 0.0), (0.0, -1.0))
        self.add_rectangle(-1.5, -4.0, 1.5, -1.0)
        self.add_line((-1.0, -3.6), (1.0, -3.6))
        self.add_line((0.0, -3.6), (0.0, -2.6))
        self.add_line((0.75, -1.3), (0.15, -1.85), (0.55, -1.95), (0.2, -2.3))
        self.add_polygon((0.0, -2.5), (0.12, -2.2), (0.3, -2.38), fill=INK)
        self.add_pin("feed", 0.0)


@graphic("warning_triangle", phrase("Warning of electricity"), "ISO 7010 W012 without its colour, from memory",
         ansi="ISO 7010 W012 without its colour, which ANSI Z535.3 takes over, both from memory")  # fmt: skip
class WarningTriangle(Graphic):
    """An upright triangle with sides of 8 mm round a flash, its left edge at x = 0, its middle on the axis."""

    def __init__(self, **placement: Any) -> None:
        super().__init__(**placement)
        half = 1.6 * 3**0.5 / 2
        self.add_polygon((0.0, -half), (3.2, -half), (1.6, half))
        self.add_line((1.75, 0.55), (1.35, -0.35), (1.8, -0.25), (1.5, -0.8))
        arrow_head(self, (1.36, -1.1), (-0.3, -0.6), 0.45)
