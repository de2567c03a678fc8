"""What is to be drawn, before its place is known: a tree of cells from the network to the strings, and overlays.

The layout passes read nothing else. `chart.py` beside it makes a Diagram from the System and its ratings.
"""

from __future__ import annotations

from enum import Enum

from sld.frozen import dataclass
from sld.layout.diagram.capacity import Capacity
from sld.layout.diagram.line import Line
from sld.words import ENGLISH, NOTHING, Language, Sayable

__all__ = [
    "BusChain", "BusStep", "Cell", "Diagram", "EarthBar", "EarthTap", "Enclosure", "Join", "LineKind", "Medium",
]  # fmt: skip


class LineKind(Enum):
    """What a conductor carries; drawn apart by pattern, never by colour alone."""

    AC = "ac"
    DC = "dc"
    DATA = "data"
    EARTH = "earth"


class Medium(Enum):
    """What a data line is; drawn apart by pattern, and told at the line."""

    RS485 = "RS-485"
    ETHERNET = "ethernet"
    WIRELESS = "wireless"
    PULSE = "pulse"
    TRIP = "trip"


class Join(Enum):
    """How the children of a cell meet it.

    TRUNK: they are connected to each other (parallel strings): a vertical trunk with junction dots, one terminal at the
    cell. SPAN: each has its own terminal; the cell is stretched over the rows of its children (an inverter's inputs, a
    busbar's ways).
    """

    TRUNK = "trunk"
    SPAN = "span"


@dataclass(frozen=True, slots=True)
class Cell:
    """One device, cable or terminal of the diagram, or the boundary of ownership: KEY/ownership_boundary behind KEY.

    key: the device's key in the System, unique. symbol: its name in the catalogue. above and below: label lines on the
    two sides of the wire, the designation first. along: beside the wire, of a conductor. flags: numbers of the flags
    beside it. enclosure: key of the enclosure it sits in, or empty. aligned: cells with one non-empty word share a
    lane. kind: what the conductor from this cell towards its parent carries. earth: of the conductor to earth, if there
    is one. earth_symbol: what it ends in. status: new, existing or future. join: how the children meet it. children:
    what feeds it, from the top row down. alike: keys of the devices that the cell stands for besides its own, drawn
    once with it. boxed: its lines stand in a thin box. capacity: what strings or an inverter come to, with all that are
    drawn once with them.
    """

    key: str
    symbol: str
    above: tuple[Line, ...] = ()
    below: tuple[Line, ...] = ()
    along: Line | None = None
    flags: tuple[int, ...] = ()
    enclosure: str = ""
    aligned: str = ""
    kind: LineKind = LineKind.AC
    earth: Line | None = None
    earth_symbol: str = "protective_earth"
    status: str = "new"
    join: Join = Join.TRUNK
    children: tuple[Cell, ...] = ()
    alike: tuple[str, ...] = ()
    boxed: bool = False
    capacity: Capacity | None = None


@dataclass(frozen=True, slots=True)
class Enclosure:
    """A dash-dotted frame around the cells that name it: a board, a junction box. `caption`: designation and name."""

    key: str
    caption: Sayable


@dataclass(frozen=True, slots=True)
class BusStep:
    """One device of a chain. terminated: with a resistor. alike: the steps of equal devices that are drawn once."""

    key: str
    designation: str = ""
    address: int | None = None
    terminated: bool = False
    alike: tuple[BusStep, ...] = ()


@dataclass(frozen=True, slots=True)
class BusChain:
    """Devices joined one after the other by a data line, in this order. said: its designation, or its medium in words.

    settings_told: address and termination are written beside each device. protocol: with its medium, written where the
    line has room.
    """

    key: str
    said: Sayable = NOTHING
    steps: tuple[BusStep, ...] = ()
    settings_told: bool = True
    protocol: Sayable = NOTHING
    medium: Medium = Medium.RS485


@dataclass(frozen=True, slots=True)
class EarthTap:
    """One terminal of the earth bar. lines: of its label (designation, section, what it goes to)."""

    designation: str
    lines: tuple[Line, ...]
    symbol: str = ""
    flags: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class EarthBar:
    """The main earthing terminal with its taps, drawn as a bar at the foot of the diagram."""

    key: str
    lines: tuple[Line, ...]
    taps: tuple[EarthTap, ...]
    flags: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class Diagram:
    """Everything to be placed. root: the public network; free: cells outside the power tree (logger, router).

    symbols: the family of symbols of the catalogue that it is drawn with.
    further: the roots of more trees, placed below the first one; a whole system has none, a sheet of it may.
    language: that its lines are said in when they are broken and measured. terse: what schedules have is left to them.
    narrow: labels are set so that columns need little width, not rows little height. low: rows need as little height as
    they can.
    width_mm: what a sheet has for it, where that is known: what stands at its foot may be as wide.
    """

    root: Cell
    enclosures: tuple[Enclosure, ...] = ()
    free: tuple[Cell, ...] = ()
    chains: tuple[BusChain, ...] = ()
    earth: EarthBar | None = None
    symbols: str = "IEC"
    further: tuple[Cell, ...] = ()
    language: Language = ENGLISH
    terse: bool = False
    narrow: bool = False
    low: bool = False
    width_mm: float = 0.0

    @property
    def trees(self) -> tuple[Cell, ...]:
        """Return the roots of all power trees, from the top down."""
        return (self.root, *self.further)
