"""Where everything is: the result of the layout, in millimetres from the upper left corner of the diagram.

No ink: the sheet puts strokes on the page. Terminals, wires and lanes lie on the 2.5 mm grid.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from sld.frozen import dataclass, replace
from sld.layout.diagram.diagram import LineKind, Medium
from sld.symbols.stroke import Box, Point, Text
from sld.symbols.typeface import text_box, text_width_mm

__all__ = ["Frame", "PlacedCell", "PlacedFlag", "Plan", "Referring", "Wire"]

_WIDEST_REFERENCE = "/000.AA00"
_BETWEEN = " … "
"""Between the references to the first and the last of several places."""


@dataclass(frozen=True, slots=True)
class Referring(Text):
    """A line that ends in references to places on other sheets: as long as all of them are open, with room for them.

    text: with the widest references there are. own: without any. references_count: how many there are.
    """

    own: str = ""
    references_count: int = 1

    @classmethod
    def roomy(cls, own: str, references_count: int) -> Referring:
        """Return the line with room for so many references."""
        text = _ended(own, [_WIDEST_REFERENCE] * references_count)
        return cls((0.0, 0.0), text, own=own, references_count=references_count)

    def moved(self, dx_mm: float, dy_mm: float) -> Referring:
        """Return the line moved."""
        return replace(self, at=(self.at[0] + dx_mm, self.at[1] + dy_mm))

    def written(self, references: Sequence[str], *, centred: bool) -> Text:
        """Return the line with its references, in the middle of its room or at its beginning; empty ones left out."""
        text = _ended(self.own, references)
        spare_mm = text_width_mm(self.text, self.height_mm) - text_width_mm(text, self.height_mm)
        return Text((self.at[0] + (spare_mm / 2 if centred else 0.0), self.at[1]), text, self.height_mm)


def _ended(own: str, references: Sequence[str]) -> str:
    return " ".join(part for part in (own, _BETWEEN.join(filter(None, references))) if part)


@dataclass(frozen=True, slots=True)
class PlacedCell:
    """A symbol at its place.

    at: where the symbol's origin lies, i.e. its left terminal `feed`; of a stretched symbol the left end of its axis.
    span_mm: how far above and below its axis the first and last terminal of a stretched symbol lie (0, 0 elsewhere).
    pins: positions of the terminals: `supply` (towards the network) and `feed`, or `feed1`, `feed2`, ... of a stretched
    symbol (towards the strings), plus `earth`, `data`, `data2` and so on where the cell has them. labels: placed text
    lines. alike: keys of the further devices that the symbol stands for. box: of what stands about the axis; strip: of
    the terminals of a symbol that spans rows besides. turned: it leads down instead of to the right. boxed: the thin
    box around its labels, where they have one.

    Besides the diagram's cells there are: KEY/earth, the symbol for earth that hangs from the cell KEY; KEY/data or
    KEY/data2, the terminating resistor of a bus at its branch to that terminal; the earth bar,
    without a symbol (its ink is the wires of its net); BAR/DESIGNATION, the end of each of its taps, without a symbol
    where the tap has none.
    """

    key: str
    symbol: str
    status: str
    at: Point
    span_mm: tuple[float, float]
    box: Box
    pins: tuple[tuple[str, Point], ...]
    labels: tuple[Text, ...]
    alike: tuple[str, ...] = ()
    strip: Box | None = None
    turned: bool = False
    boxed: Box | None = None

    def boxes(self) -> Iterator[Box]:
        """Yield the boxes of all that it shows: symbol, terminals, labels and what is around these."""
        yield from (box for box in (self.box, self.strip, self.boxed) if box)
        yield from map(text_box, self.labels)


@dataclass(frozen=True, slots=True)
class Wire:
    """A conductor: an orthogonal polyline between terminals, or between a terminal and a junction.

    ends: the two (key, terminal) pairs it connects; a trunk's shared point is written as ("", "") and lies in `dots`.
    medium: of a data line.
    """

    kind: LineKind
    points: tuple[Point, ...]
    ends: tuple[tuple[str, str], tuple[str, str]]
    net: str = ""
    medium: Medium | None = None


@dataclass(frozen=True, slots=True)
class Frame:
    """An enclosure's frame and the first line of its caption; further lines are among the texts of the Plan.

    An enclosure that no one frame can hold without foreign cells has several frames. notch: the lower right or lower
    left corner of the box where it is not a part of the frame.
    """

    key: str
    box: Box
    caption: Text
    notch: Box | None = None

    @property
    def corners(self) -> tuple[Point, ...]:
        """Return the corners in their order."""
        b, cut = self.box, self.notch
        upper = ((b.left_mm, b.top_mm), (b.right_mm, b.top_mm))
        right, left = (b.right_mm, b.bottom_mm), (b.left_mm, b.bottom_mm)
        if cut is None:
            return (*upper, right, left)
        if cut.left_mm > b.left_mm:
            return (*upper, (b.right_mm, cut.top_mm), (cut.left_mm, cut.top_mm), (cut.left_mm, b.bottom_mm), left)
        return (*upper, right, (cut.right_mm, b.bottom_mm), (cut.right_mm, cut.top_mm), (b.left_mm, cut.top_mm))

    def holds(self, box: Box) -> bool:
        """Return whether a part of a box is in the frame."""
        cut = self.notch
        if cut is None:
            return self.box.meets(box)
        beside = box.left_mm >= cut.left_mm if cut.left_mm > self.box.left_mm else box.right_mm <= cut.right_mm
        return self.box.meets(box) and not (beside and box.top_mm >= cut.top_mm)


@dataclass(frozen=True, slots=True)
class PlacedFlag:
    """A numbered warning flag: a triangle whose box is `box`, standing beside the cell `key`."""

    number: int
    key: str
    box: Box


@dataclass(frozen=True, slots=True)
class Plan:
    """The placed diagram. width_mm x height_mm is all it covers, texts included.

    symbols: the family of symbols that it was measured with, and is to be drawn with. terse: as of its diagram.
    bands_mm: from where to where each diagram reaches down, where several stand below each other.
    """

    width_mm: float
    height_mm: float
    cells: tuple[PlacedCell, ...]
    wires: tuple[Wire, ...]
    dots: tuple[Point, ...]
    frames: tuple[Frame, ...]
    flags: tuple[PlacedFlag, ...]
    texts: tuple[Text, ...]
    crossings_count: int = 0
    symbols: str = "IEC"
    terse: bool = False
    bands_mm: tuple[tuple[float, float], ...] = ()
