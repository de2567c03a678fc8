"""The layout: from a Diagram to a Plan in one chain of passes, each linear in what is drawn.

Read it from top to bottom; `PASSES` names the modules in this order, and each states what holds before and after it. No
pass looks back, and none chooses at random or searches: nothing overlaps because each thing has room of its own,
measured before it is placed.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import partial
from itertools import count

from sld.frozen import replace
from sld.layout.diagram.diagram import Diagram
from sld.layout.diagram.trunk import trunk_of
from sld.layout.passes.bonding import SPINE_MM, bonding_of
from sld.layout.passes.cabling import Cabling, cabling_of
from sld.layout.passes.columns import Edges, columns_of
from sld.layout.passes.crossings import crossings_count
from sld.layout.passes.data_wiring import data_wires_of, foot_track_mm
from sld.layout.passes.earth_bar import LEAST_WIDTH_MM, PlacedEarthBar, placed_earth_bar_of
from sld.layout.passes.framing import frames_of
from sld.layout.passes.grid import CLEARANCE_MM, Catalogue, up_to_grid_mm
from sld.layout.passes.heights import heights_of
from sld.layout.passes.lanes import Lanes, lanes_of
from sld.layout.passes.lettering import about_chains, letters_of, with_names
from sld.layout.passes.lower_edge import lower_edge_mm
from sld.layout.passes.measured import Measured
from sld.layout.passes.placing import chain_names_of, earth_cells_of, flags_of, placed_cells_of
from sld.layout.passes.rows import Rows, rows_of
from sld.layout.passes.shapes import Form, shapes_of
from sld.layout.passes.spine import spine_of
from sld.layout.passes.stack import stack_of
from sld.layout.passes.tree import tree_of
from sld.layout.passes.turned import Turned, turned_of, with_trunk
from sld.layout.passes.way import Way, way_of
from sld.layout.passes.wiring import earth_wires_of, power_wires_of
from sld.layout.plan import Plan
from sld.symbols.stroke import MODULE_MM

__all__ = ["TooLargeError", "Wanted", "arrange"]

Wanted = Callable[[float, float], bool]
"""Whether a plan of at least a width and a height (mm) is of any use."""


class TooLargeError(Exception):
    """A plan was given up, because of the size it has at least."""


def arrange(diagram: Diagram, catalogue: Catalogue, *, turned: bool = False, wanted: Wanted | None = None) -> Plan:
    """Return where everything of the diagram is, in millimetres from its upper left corner.

    turned: what all rows have in common is led down on their right, where there is enough of it. wanted: asked once the
    least width, and then the least height, is known. Raises TooLargeError where it says no, ValueError where two cells
    have one key or a data chain names a device that is not in the diagram.
    """
    trunk = trunk_of(diagram) if turned else None
    tree = tree_of(replace(diagram, root=trunk.top) if trunk else diagram)
    rows = rows_of(tree, from_the_top=trunk is not None)
    lanes = lanes_of(tree, rows, diagram)
    forms = shapes_of(tree, catalogue)
    cabling = cabling_of(tree, rows, lanes, forms, diagram.chains, trunk.keys if trunk else ())
    bonding = bonding_of(tree, forms, diagram.earth)
    about = about_chains(diagram.chains, diagram.language, cabling.named)
    letters = letters_of(tree, about, diagram, bonding.nodes, goes_on=trunk is not None)
    letters = with_names(letters, cabling, diagram)
    stacks = [
        stack_of(node.cell, letters[place], forms[place], cabling.ports[place], _ends(rows, forms, place), catalogue)
        for place, node in enumerate(tree.nodes)
    ]
    way = way_of(trunk, diagram, about, catalogue) if trunk else None
    edges = Edges(2 * SPINE_MM if bonding.nodes else 0.0, _widened(way, lanes, cabling))
    columns = columns_of(tree, rows, lanes, cabling, stacks, edges)
    _ask(wanted, columns.width_mm, 0.0)
    heights = heights_of(tree, rows, lanes, cabling, stacks, columns)
    _ask(wanted, columns.width_mm, heights.foot_mm)
    measured = Measured(tree, rows, lanes, cabling, stacks, columns, heights)
    cells = placed_cells_of(measured, catalogue)
    earths, flags = earth_cells_of(measured, catalogue), flags_of(measured)
    power, dots = power_wires_of(tree, lanes, columns, cells)
    frames, texts = frames_of(lanes, columns, heights)
    down = (
        turned_of(way, diagram, dict(cells[0].pins)["supply"], columns.width_mm, _least_foot_mm(measured))
        if way
        else Turned()
    )
    data = data_wires_of(measured, cells, down.runs, {each.key: each.medium for each in diagram.chains}, catalogue)
    wires, dots = power + earth_wires_of(cells, earths) + tuple(data.wires) + tuple(down.wires), dots + tuple(data.dots)
    frames, room_mm = with_trunk(frames, down, columns.width_mm)
    cells += earths + tuple(data.resistors) + tuple(down.cells)
    flags, texts = flags + tuple(down.flags), texts + chain_names_of(measured) + tuple(down.texts)
    foot = foot_track_mm(heights, cabling.foot_count - 1) if cabling.foot_count else heights.foot_mm
    width, height = max(columns.width_mm, down.right_mm), foot
    bonded, room_mm = bonding.line.said if bonding.line else None, min(room_mm, down.free_to_mm)
    if diagram.earth is not None:
        if not trunk or down.bottom_mm <= height or room_mm < LEAST_WIDTH_MM:  # nothing, or no room, beside it
            height, room_mm = max(height, down.bottom_mm), max(width, diagram.width_mm)
        placed = partial(placed_earth_bar_of, diagram.earth, diagram.language, room_mm, bonded, catalogue)
        bar = _raised(placed, height, partial(lower_edge_mm, cells, wires, frames, (flags, texts)))
        cells, wires, dots = cells + bar.cells, wires + bar.wires, dots + bar.dots
        flags, texts = flags + bar.flags, texts + bar.texts
        width, height, foot = max(width, bar.width_mm), max(height, bar.height_mm), bar.y_mm
    spine = spine_of(bonding, cells, foot, diagram, catalogue)
    cells = tuple(map(dict(spine.cells).get, count(), cells)) + ((spine.end,) if spine.end else ())
    wires, dots = wires + spine.wires, dots + spine.dots
    width, height = max(width, spine.right_mm), max(height, spine.height_mm, down.bottom_mm)
    return Plan(
        width, height, cells, wires, dots, frames, flags, texts, crossings_count(wires), diagram.symbols, diagram.terse
    )


def _ask(wanted: Wanted | None, width_mm: float, height_mm: float) -> None:
    """Give up a plan of at least that size where it is not wanted. Raises TooLargeError."""
    if wanted and not wanted(width_mm, height_mm):
        raise TooLargeError


def _widened(way: Way | None, lanes: Lanes, cabling: Cabling) -> dict[int, float]:
    """Return how much wider the frame becomes that goes on around the trunk, for its caption."""
    over = any(run.over for run in cabling.runs)
    return {lanes.frames.of[0]: way.before_tracks_mm if over else way.widens_mm} if way else {}


def _least_foot_mm(measured: Measured) -> float:
    """Return how far down the rows reach, with the tracks of data chains below them."""
    tracks_mm = CLEARANCE_MM + MODULE_MM * measured.cabling.foot_count if measured.cabling.foot_count else 0.0
    return up_to_grid_mm(measured.heights.foot_mm) + tracks_mm


def _raised(
    placed: Callable[[float], PlacedEarthBar], height_mm: float, lower_edge: Callable[[float], float]
) -> PlacedEarthBar:
    """Return the earth bar right below what stands over it. placed: at an upper edge. height_mm: of all above it."""
    bar = placed(height_mm + CLEARANCE_MM)
    least_mm = up_to_grid_mm(lower_edge(bar.width_mm + CLEARANCE_MM))
    return placed(least_mm + CLEARANCE_MM) if least_mm < height_mm else bar


def _ends(rows: Rows, forms: Sequence[Form], place: int) -> tuple[int, int]:
    """Return the rows that the labels of a node hang on: those of its axis, of a bar the first and the last one."""
    if forms[place].has_core:
        return rows.axis[place], rows.axis[place]
    return rows.head[place], rows.foot[place]
