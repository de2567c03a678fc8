"""The data cables and the terminating resistors on them.

Before: cabling, placed cells. After: each chain is one net of orthogonal wires through the strips, channel tracks and
foot tracks reserved for it, with a dot where three of them meet; tracks at the foot lie below all rows. A terminating
resistor stands at the branch to its device, between that and the body; of a device beside the lanes beside its track.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import field
from itertools import pairwise

from sld.frozen import dataclass
from sld.layout.diagram.diagram import LineKind, Medium
from sld.layout.passes.cabling import Drop, Run
from sld.layout.passes.grid import CLEARANCE_MM, Catalogue, up_to_grid_mm
from sld.layout.passes.heights import Heights
from sld.layout.passes.measured import Measured
from sld.layout.passes.ports import Port
from sld.layout.passes.turned import OutsideRun
from sld.layout.plan import PlacedCell, Wire
from sld.symbols.stroke import MODULE_MM, Point

__all__ = ["DataWires", "data_wires_of", "foot_track_mm"]

_JOINT = ("", "")
_RESISTOR = "termination_resistor"


@dataclass(slots=True)
class DataWires:
    """Wires, the dots on them, and a cell for each resistor; its key is its device's with its terminal's: KEY/data."""

    wires: list[Wire] = field(default_factory=list)
    dots: list[Point] = field(default_factory=list)
    resistors: list[PlacedCell] = field(default_factory=list)


def foot_track_mm(heights: Heights, track: int) -> float:
    """Return the y of a track at the foot."""
    return up_to_grid_mm(heights.foot_mm + CLEARANCE_MM) + MODULE_MM * track


def data_wires_of(
    measured: Measured, cells: Sequence[PlacedCell], outside: Sequence[OutsideRun], media: Mapping[str, Medium],
    catalogue: Catalogue,
) -> DataWires:  # fmt: skip
    """Return the wires of all chains. cells: all of the tree, node i is item i. media: of each chain."""
    found = DataWires()
    by_chain: dict[str, list[Run]] = {run.chain: [] for run in outside}
    for run in measured.cabling.runs:
        by_chain.setdefault(run.chain, []).append(run)
    beyond = {run.chain: run for run in outside}
    for chain, runs in by_chain.items():
        net = _Net(measured, cells, chain, media[chain], found)
        for run in runs:
            net.run(run, catalogue)
        ends = [(net.x(run), net.foot_mm(run)) for run in runs if run.foot >= 0]
        if chain in beyond:
            ends += net.outside(beyond[chain], ends[0][1] if ends else None, catalogue)
        for left, right in pairwise(sorted(ends)):
            net.wire([left, right], _JOINT)
        found.dots.extend(point for point, count in net.meeting.items() if count > 2)
    return found


@dataclass(slots=True)
class _Net:
    """The wires of one chain. meeting: how many of its wires end in each joint."""

    measured: Measured
    cells: Sequence[PlacedCell]
    chain: str
    medium: Medium
    found: DataWires
    meeting: Counter[Point] = field(default_factory=Counter)

    def run(self, run: Run, catalogue: Catalogue) -> None:
        """Draw what one lane has of the chain."""
        if run.straight:
            self.straight(run)
            return
        x = self.x(run)
        ends = [(x, self._strip(drop)) for drop in run.drops]
        for drop, joint in zip(run.drops, ends, strict=True):
            port = self.measured.cabling.ports[drop.node][drop.port]
            cell = self.cells[drop.node]
            pin = dict(cell.pins)[port.name]
            corner = (pin[0], joint[1])
            if drop.terminated:
                tap = self._terminated(cell, port, joint[1], catalogue)
                self.wire([pin, tap], (cell.key, port.name))
                self.wire([tap, corner, joint], _JOINT)
            else:
                self.wire([pin, corner, joint], (cell.key, port.name))
        joints = [*ends, *([(x, self.foot_mm(run))] if run.foot >= 0 else [])]
        for above, below in pairwise(sorted(set(joints), key=lambda point: point[1])):
            self.wire([above, below], _JOINT)

    def _terminated(self, cell: PlacedCell, port: Port, level: float, catalogue: Catalogue) -> Point:
        """Draw a resistor between the branch of a device, which is at a level, and its body; return where it joins."""
        tap = (dict(cell.pins)[port.name][0], level + (MODULE_MM if port.top else -MODULE_MM))
        key, lead = f"{cell.key}/{port.name}", (tap[0] + MODULE_MM, tap[1])
        self._resistor(key, cell.status, lead, lead, catalogue)
        self.wire([tap, lead], _JOINT, (key, "feed"))
        return tap

    def straight(self, run: Run) -> None:
        """Join two devices from edge to edge."""
        cells = [self.cells[drop.node] for drop in run.drops]
        names = [self.measured.cabling.ports[drop.node][drop.port].name for drop in run.drops]
        upper, lower = (dict(cell.pins)[name] for cell, name in zip(cells, names, strict=True))
        level = self._strip(run.drops[1])
        points = [upper, (upper[0], level), (lower[0], level), lower]
        self.wire(points, (cells[0].key, names[0]), (cells[1].key, names[1]))

    def outside(self, run: OutsideRun, foot_mm: float | None, catalogue: Catalogue) -> list[Point]:
        """Draw what is on the right of all lanes; return where it meets the track at the foot, if there is one."""
        corners = [] if foot_mm is None else [(run.x_mm, foot_mm)]
        for drop in run.drops:
            joint = (run.x_mm, drop.at[1])
            self.wire([drop.at, joint], (drop.key, drop.terminal))
            if drop.terminated:
                width = catalogue.symbol(_RESISTOR).box.width_mm
                end = (joint[0] - MODULE_MM, joint[1])
                self._resistor(f"{drop.key}/{drop.terminal}", drop.status, (end[0] - width, end[1]), end, catalogue)
                self.wire([joint, end], _JOINT, (f"{drop.key}/{drop.terminal}", "feed"))
        upright = sorted({*corners, *((run.x_mm, drop.at[1]) for drop in run.drops)}, key=lambda point: point[1])
        for above, below in pairwise(upright):
            self.wire([above, below], _JOINT)
        return corners

    def _resistor(self, key: str, status: str, origin: Point, pin: Point, catalogue: Catalogue) -> None:
        box = catalogue.symbol(_RESISTOR).box.moved(*origin)
        self.found.resistors.append(PlacedCell(key, _RESISTOR, status, origin, (0.0, 0.0), box, (("feed", pin),), ()))

    def wire(self, points: Sequence[Point], start: tuple[str, str], end: tuple[str, str] = _JOINT) -> None:
        """Draw one wire."""
        kept = tuple(point for number, point in enumerate(points) if number == 0 or point != points[number - 1])
        for at, name in ((kept[0], start), (kept[-1], end)):
            if name == _JOINT:
                self.meeting[at] += 1
        self.found.wires.append(Wire(LineKind.DATA, kept, (start, end), self.chain, self.medium))

    def x(self, run: Run) -> float:
        """Return the x of the track of a run."""
        return self.measured.columns.channels[run.lane].tracks_mm[run.track]

    def foot_mm(self, run: Run) -> float:
        """Return the y of the track at the foot of a run, or of that above all rows."""
        if run.over:
            return self.measured.heights.over_mm
        return foot_track_mm(self.measured.heights, run.foot)

    def _strip(self, drop: Drop) -> float:
        """Return the y of the strip in which a branch leaves its device."""
        port, stack = self.measured.cabling.ports[drop.node][drop.port], self.measured.stacks[drop.node]
        axis = self.measured.heights.axis_mm
        if port.top:
            return axis[stack.upper_row] + stack.strip_top_mm - MODULE_MM * port.strip
        return axis[stack.lower_row] + stack.strip_bottom_mm + MODULE_MM * port.strip
