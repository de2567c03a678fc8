"""ANSI family: the terminating resistor of a bus. Lengths in modules."""

from __future__ import annotations

from typing import Any

from sld.symbols.element import Graphic
from sld.symbols.registry import graphic
from sld.words import phrase

__all__ = ["TerminationResistor"]


@graphic("termination_resistor", phrase("Termination resistor, 120 Ω"),
         "IEEE 315 item 2.1, 120 Ω by TIA-485-A, both from memory", family="ANSI")  # fmt: skip
class TerminationResistor(Graphic):
    """A level zigzag."""

    def __init__(self, **placement: Any) -> None:
        super().__init__(**placement)
        turns = [(0.25 + 0.3 * number, 0.4 if number % 2 == 0 else -0.4) for number in range(6)]
        self.add_line((0.0, 0.0), *turns, (2.0, 0.0))
        self.add_pin("feed", 0.0)
