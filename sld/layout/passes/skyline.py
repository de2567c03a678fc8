"""How far down each part of the width is taken, row by row."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import field
from math import ceil, floor

from sld.frozen import dataclass

__all__ = ["Content", "Skyline"]

_STEP_MM = 1.25
"""So fine that a label beside a terminal strip is not below it."""

Content = tuple[float, float, float, float]
"""From x, to x, how far above and how far below the axis of a row (mm)."""


@dataclass(slots=True)
class Skyline:
    """The lower edge of what is placed so far, by steps of the width; above all of them is `top_mm`."""

    top_mm: float
    edge_mm: list[float] = field(default_factory=list)

    def axis_mm(self, row: Iterable[Content], apart_mm: float) -> float:
        """Return the least axis at which the contents of a row are so far below all that is above them."""
        least = 0.0
        for left, right, above, _ in row:
            taken = max(self.edge_mm[floor(left / _STEP_MM) : ceil(right / _STEP_MM)], default=self.top_mm)
            least = max(least, taken + apart_mm + above)
        return least

    def take(self, row: Iterable[Content], axis_mm: float) -> None:
        """Take the room of a row."""
        edge_mm = self.edge_mm
        for left, right, _, below in row:
            first = max(floor(left / _STEP_MM), 0)
            last = max(ceil(right / _STEP_MM), first + 1)
            if len(edge_mm) < last:
                edge_mm += [self.top_mm] * (last - len(edge_mm))
            bottom = axis_mm + below
            edge_mm[first:last] = [bottom if mm < bottom else mm for mm in edge_mm[first:last]]
