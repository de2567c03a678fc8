"""ANSI family: the utility and the transformer. Lengths in modules."""

from __future__ import annotations

from typing import Any

from sld.symbols.ansi.parts import scallops
from sld.symbols.element import Graphic
from sld.symbols.parts import ac_sign
from sld.symbols.registry import graphic
from sld.words import phrase

__all__ = ["Network", "Transformer"]


@graphic("network", phrase("Utility supply"), "circle with the sign of alternating current, common practice, no source",
         family="ANSI")  # fmt: skip
class Network(Graphic):
    """A circle with a sine in it."""

    def __init__(self, **placement: Any) -> None:
        super().__init__(**placement)
        self.add_line((0.0, 0.0), (1.0, 0.0))
        self.add_circle(2.5, 0.0, 1.5)
        ac_sign(self, 1.6, 0.0, 1.8)
        self.add_axis_pins(4.0)


@graphic("transformer", phrase("Transformer, two windings"), "IEEE 315 item 6.4, from memory", family="ANSI")
class Transformer(Graphic):
    """Two windings that face each other."""

    def __init__(self, **placement: Any) -> None:
        super().__init__(**placement)
        self.add_line((0.0, 0.0), (2.75, 0.0))
        scallops(self, 2.75, 1.0, 4, 0.4)
        scallops(self, 4.25, -1.0, 4, 0.4)
        self.add_line((4.25, 0.0), (7.0, 0.0))
        self.add_axis_pins(7.0)
