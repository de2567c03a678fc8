"""The data cables.

Before: cabling, placed cells. After: one orthogonal wire for each link of a chain, through the strips, channel tracks
and foot tracks reserved for it; tracks at the foot lie below all rows.
"""

from __future__ import annotations

from collections.abc import Sequence

from sld.layout.diagram.diagram import LineKind
from sld.layout.passes.cabling import Port
from sld.layout.passes.grid import CLEARANCE_MM, up_to_grid_mm
from sld.layout.passes.heights import Heights
from sld.layout.passes.measured import Measured
from sld.layout.plan import PlacedCell, Wire
from sld.symbols.stroke import MODULE_MM, Point

__all__ = ["data_wires_of", "foot_track_mm"]


def foot_track_mm(heights: Heights, track: int) -> float:
    """Return the y of a track at the foot."""
    return up_to_grid_mm(heights.foot_mm + CLEARANCE_MM) + MODULE_MM * track


def data_wires_of(measured: Measured, cells: Sequence[PlacedCell]) -> tuple[Wire, ...]:
    """Return the wires of all chains, each from the device that comes first in its chain to the next."""
    wires = []
    cabling, heights = measured.cabling, measured.heights
    for link in cabling.links:
        halves: list[list[Point]] = []
        ends: list[tuple[str, str]] = []
        for node, number, track in zip(link.nodes, link.ports, link.tracks, strict=True):
            port = cabling.ports[node][number]
            pin = dict(cells[node].pins)[port.name]
            strip = _strip_mm(port, measured, node)
            x = measured.columns.channels[measured.lanes.of[node]].tracks_mm[track]
            half = [pin, (pin[0], strip), (x, strip)]
            if link.foot >= 0:
                half.append((x, foot_track_mm(heights, link.foot)))
            halves.append(half)
            ends.append((cells[node].key, port.name))
        points = halves[0] + halves[1][::-1]
        wires.append(Wire(LineKind.DATA, _without_repeats(points), (ends[0], ends[1]), link.chain))
    return tuple(wires)


def _strip_mm(port: Port, measured: Measured, node: int) -> float:
    """Return the y of the strip in which a port's cable leaves its device."""
    rows, heights, stack = measured.rows, measured.heights, measured.stacks[node]
    if port.top:
        return heights.axis_mm[rows.head[node]] + stack.strip_top_mm - MODULE_MM * port.strip
    return heights.axis_mm[rows.foot[node]] + stack.strip_bottom_mm + MODULE_MM * port.strip


def _without_repeats(points: Sequence[Point]) -> tuple[Point, ...]:
    """Return the points without those equal to the one before."""
    return tuple(point for number, point in enumerate(points) if number == 0 or point != points[number - 1])
