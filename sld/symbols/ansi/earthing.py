"""ANSI family: grounding, hanging from its one terminal. Lengths in modules."""

from __future__ import annotations

from typing import Any

from sld.symbols.ansi.parts import ground
from sld.symbols.element import Graphic
from sld.symbols.registry import graphic
from sld.words import phrase

__all__ = ["NamedGround"]


@graphic("protective_earth", phrase("Equipment grounding conductor"),
         "ground, IEEE 315 item 3.9.1, from memory; the letters of NFPA 70", family="ANSI", hangs=True,
         letters="EGC")  # fmt: skip
@graphic("functional_earth", phrase("Functional ground"), "ground, IEEE 315 item 3.9.1, from memory, with our text",
         family="ANSI", hangs=True, letters="FG")  # fmt: skip
class NamedGround(Graphic):
    """The ground sign with letters beside its lead that say what it is for."""

    def __init__(self, *, letters: str, **placement: Any) -> None:
        super().__init__(**placement)
        ground(self, 0.0, 0.0, 1.5)
        self.add_text(letters, 0.25, -0.75, align="left")
        self.add_pin("feed", 0.0)
