"""The change-over switch: two sources on its contacts, what they feed on the blade. Lengths in modules."""

from __future__ import annotations

from typing import Any

from sld.symbols.element import Graphic
from sld.symbols.registry import BUILT_UP, graphic
from sld.symbols.spans import body_of, feeds_of
from sld.words import phrase

__all__ = ["Changeover"]


@graphic("changeover", phrase("Change-over switch, way I to the network"),
         "IEC 60617 S00232 (old 07-02-04), from memory, in a box S00059", ansi=BUILT_UP, stretches=True)  # fmt: skip
class Changeover(Graphic):
    """The board on the left, way I to the network on the right; way II comes in at the second row on the left.

    Where the second source is drawn elsewhere, way II ends in a terminal on the edge of the box.
    """

    def __init__(self, *, feeds_m: tuple[float, ...] | None = None, **placement: Any) -> None:
        super().__init__(**placement)
        bottom, top = body_of(feeds_m)
        (common, y), *second = feeds_of(feeds_m).items()
        self.add_rectangle(1.0, bottom, 6.0, top + 1.0)
        self.add_line((0.0, y), (2.25, y))
        self.add_line((2.25, y), (4.0, y + 0.5))
        self.add_line((4.0, y + 0.5), (5.25, y + 0.5), (5.25, 0.0), (7.0, 0.0))
        self.add_text("I", 4.6, y + 1.15)
        self.add_pin(common, 0.0, y)
        below = second[0][1] if second else y - 1.5
        self.add_line((4.0, y - 0.5), (4.5, y - 0.5), (4.5, below), (0.0 if second else 1.25, below))
        self.add_text("II", 3.4, y - 0.8)
        for name, height in second:
            self.add_pin(name, 0.0, height)
        if not second:
            self.add_circle(1.0, below, 0.25)
        self.add_pin("supply", 7.0)
        self.strip_count = len(self.segments)
