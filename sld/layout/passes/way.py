"""The way to the supply that is turned down, measured before the rows are placed: its devices and their label lines.

Before: the trunk, its labels set for the side of a conductor that leads down. After: how far it reaches to both sides,
so that the frame of the rows that goes on around its first devices is known to be as much wider.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from sld.frozen import dataclass
from sld.layout.diagram.diagram import BusChain, Cell, Diagram
from sld.layout.diagram.line import Line, Role
from sld.layout.diagram.symbol_of import OWNERSHIP_BOUNDARY
from sld.layout.diagram.trunk import Trunk
from sld.layout.passes.grid import FRAME_MM, FRAMES_APART_MM, Catalogue, Shape
from sld.layout.passes.lettering import lettered
from sld.layout.passes.stack import FLAG_MM, PADDING_MM, line_pitch_mm
from sld.symbols.stroke import MODULE_MM, Text
from sld.symbols.typeface import SLACK_MM, text_width_mm
from sld.words import phrase, unbroken

__all__ = ["FLAG_FOOT_MM", "FLAG_PITCH_MM", "SIDES_OF_LEVEL", "Item", "Way", "track_mm", "way_of"]

SIDES_OF_LEVEL = (Line(Role.NAME, unbroken(phrase("↑ customer"))), Line(Role.NAME, unbroken(phrase("network ↓"))))
"""Whose the installation is above and below a level boundary of ownership."""

_APART_MM = 1.2
_LABEL_FROM_MM = 4.0
"""Labels begin no nearer to the conductor, so that those of narrow symbols stand below each other."""
FLAG_PITCH_MM = FLAG_MM + 0.75
FLAG_FOOT_MM = 0.25


@dataclass(frozen=True, slots=True)
class Item:
    """A cell measured: its turned symbol, its label lines.

    is_supply: it is the end of the way, whose lines stand on the left or below.
    """

    cell: Cell
    shape: Shape
    lines: tuple[Text, ...]
    is_supply: bool

    @property
    def label_from_mm(self) -> float:
        """Return where its label begins, from the conductor."""
        return max(self.shape.box.right_mm + _APART_MM, _LABEL_FROM_MM)

    @property
    def widest_mm(self) -> float:
        """Return how wide its lines are, with the box that they stand in."""
        around_mm = 2 * PADDING_MM if self.cell.boxed else 0.0
        return max((text_width_mm(text.text) + SLACK_MM for text in self.lines), default=0.0) + around_mm

    @property
    def lines_mm(self) -> float:
        """Return the height of its label and flags on its right."""
        if self.is_supply:
            return FLAG_MM if self.cell.flags else 0.0
        return self.drop_mm + max(line_pitch_mm() * len(self.lines), line_pitch_mm() if self.cell.flags else 0.0)

    @property
    def drop_mm(self) -> float:
        """Return how much lower its first line is because of the flags, which stand on the foot of it."""
        return FLAG_MM + FLAG_FOOT_MM - line_pitch_mm() if self.cell.flags else 0.0

    @property
    def right_mm(self) -> float:
        """Return how far it reaches to the right of the conductor."""
        flags_mm = FLAG_PITCH_MM * len(self.cell.flags)
        if self.is_supply:
            return self.label_from_mm + flags_mm
        first_mm = text_width_mm(self.lines[0].text) + SLACK_MM + flags_mm if self.lines else flags_mm
        return self.label_from_mm + max(first_mm, self.widest_mm)


@dataclass(frozen=True, slots=True)
class Way:
    """A trunk measured. items: from the rows on. chains: those of its devices, which take tracks_mm on its left.

    hang_mm, right_mm: how far its devices reach to the left, and with their labels to the right of the conductor.
    """

    trunk: Trunk
    items: tuple[Item, ...]
    chains: tuple[BusChain, ...]
    tracks_mm: float
    hang_mm: float
    right_mm: float

    @property
    def widens_mm(self) -> float:
        """Return how much wider it makes the frame of the rows where that goes on around its first devices."""
        goes_on = self.items[0].cell.enclosure and self.items[0].cell.enclosure == self.trunk.top.enclosure
        return self.hang_mm + self.right_mm + FRAMES_APART_MM + 2 * FRAME_MM if goes_on else 0.0

    @property
    def before_tracks_mm(self) -> float:
        """Return how much of that is on the left of a data line that comes down to its devices."""
        return min(self.widens_mm, self.tracks_mm + FRAMES_APART_MM - 2 * MODULE_MM) if len(self.chains) == 1 else 0.0


def way_of(trunk: Trunk, diagram: Diagram, about: Mapping[str, Sequence[Line]], catalogue: Catalogue) -> Way:
    """Return the trunk measured. about: what data chains say of its devices."""
    items = tuple(_item(cell, about.get(cell.key, ()), diagram, catalogue) for cell in reversed(trunk.cells))
    chains = tuple(chain for chain in diagram.chains if any(step.key in trunk.keys for step in chain.steps))
    tracks_mm = sum(track_mm(chain, trunk) for chain in chains)
    hang_mm, right_mm = max(-item.shape.box.left_mm for item in items), max(item.right_mm for item in items)
    right_mm = max(right_mm, items[-1].widest_mm - hang_mm)
    return Way(trunk, items, chains, tracks_mm, hang_mm, right_mm)


def _item(cell: Cell, about: Sequence[Line], diagram: Diagram, catalogue: Catalogue) -> Item:
    shape = catalogue.turned(cell.symbol)
    along = (cell.along,) if cell.along else ()
    above = SIDES_OF_LEVEL if cell.symbol == OWNERSHIP_BOUNDARY else cell.above
    named = () if cell.enclosure == cell.key else above
    lines = lettered((*named, *along, *cell.below, *about), diagram.language)
    return Item(cell, shape, lines, cell.key == diagram.root.key)


def track_mm(chain: BusChain, trunk: Trunk) -> float:
    """Return how wide the track of a chain is: with a resistor on its left where one is needed."""
    resistor = any(step.terminated for step in chain.steps if step.key in trunk.keys)
    return MODULE_MM * (4 if resistor else 1)
