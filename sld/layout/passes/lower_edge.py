"""How far down what is placed reaches over a part of the width, so that what comes below it need not be lower."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from itertools import pairwise

from sld.layout.plan import Frame, PlacedCell, PlacedFlag, Wire
from sld.symbols.stroke import Box, Text, box_between
from sld.symbols.typeface import text_box

__all__ = ["lower_edge_mm"]


def lower_edge_mm(
    cells: Iterable[PlacedCell], wires: Iterable[Wire], frames: Iterable[Frame],
    beside: tuple[Sequence[PlacedFlag], Sequence[Text]], to_mm: float,
) -> float:  # fmt: skip
    """Return the lower edge of all that begins on the left of `to_mm`. beside: flags and texts of no cell."""

    def boxes() -> Iterator[Box]:
        for cell in cells:
            yield from cell.boxes()
        for wire in wires:
            yield from (box_between(start, end) for start, end in pairwise(wire.points))
        yield from (frame.box for frame in frames)
        yield from (flag.box for flag in beside[0])
        yield from map(text_box, beside[1])

    return max((box.bottom_mm for box in boxes() if box.left_mm < to_mm), default=0.0)
