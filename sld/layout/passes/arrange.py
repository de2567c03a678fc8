"""The layout: from a Diagram to a Plan in one chain of passes, each linear in what is drawn.

Read it from top to bottom; `PASSES` names the modules in this order, and each states what holds before and after it. No
pass looks back, and none chooses at random or searches: nothing overlaps because each thing has room of its own,
measured before it is placed.
"""

from __future__ import annotations

from sld.layout.diagram.diagram import Diagram
from sld.layout.passes.cabling import cabling_of
from sld.layout.passes.columns import columns_of
from sld.layout.passes.crossings import crossings_count
from sld.layout.passes.data_wiring import data_wires_of, foot_track_mm
from sld.layout.passes.earth_bar import placed_earth_bar_of
from sld.layout.passes.framing import frames_of
from sld.layout.passes.grid import CLEARANCE_MM, Catalogue
from sld.layout.passes.heights import heights_of
from sld.layout.passes.lanes import lanes_of
from sld.layout.passes.lettering import letters_of
from sld.layout.passes.measured import Measured
from sld.layout.passes.placing import earth_cells_of, flags_of, placed_cells_of
from sld.layout.passes.rows import rows_of
from sld.layout.passes.shapes import shapes_of
from sld.layout.passes.stack import stack_of
from sld.layout.passes.termination import terminations_of
from sld.layout.passes.tree import tree_of
from sld.layout.passes.wiring import earth_wires_of, power_wires_of
from sld.layout.plan import Plan

__all__ = ["arrange"]


def arrange(diagram: Diagram, catalogue: Catalogue) -> Plan:
    """Return where everything of the diagram is, in millimetres from its upper left corner.

    catalogue: where the symbols come from. Raises ValueError where two cells have one key or a data chain names a
    device that is not in the diagram.
    """
    tree = tree_of(diagram)
    rows = rows_of(tree)
    lanes = lanes_of(tree, rows, diagram)
    shapes = shapes_of(tree, catalogue)
    cabling = cabling_of(tree, rows, lanes, shapes, diagram.chains)
    letters = letters_of(tree, diagram.chains, diagram.language)
    stacks = [
        stack_of(node.cell, letters[place], shapes[place], cabling.ports[place], catalogue)
        for place, node in enumerate(tree.nodes)
    ]
    columns = columns_of(tree, rows, lanes, cabling, shapes, stacks)
    heights = heights_of(tree, rows, lanes, stacks, columns)
    measured = Measured(tree, rows, lanes, cabling, stacks, columns, heights)

    cells = placed_cells_of(measured, catalogue)
    earths = earth_cells_of(measured, catalogue)
    flags = flags_of(measured)
    power, dots = power_wires_of(tree, lanes, columns, cells)
    data = data_wires_of(measured, cells)
    ends, leads = terminations_of(measured, cells, catalogue)
    wires = power + earth_wires_of(cells, earths) + data + leads
    frames, texts = frames_of(lanes, columns, heights)
    cells += earths + ends
    width, height = columns.width_mm, heights.foot_mm
    if cabling.foot_count:
        height = foot_track_mm(heights, cabling.foot_count - 1)
    if diagram.earth is not None:
        bar = placed_earth_bar_of(diagram.earth, diagram.language, height + 2 * CLEARANCE_MM, width, catalogue)
        cells, wires, dots = cells + bar.cells, wires + bar.wires, dots + bar.dots
        flags, texts = flags + bar.flags, texts + bar.texts
        width, height = max(width, bar.width_mm), bar.height_mm
    return Plan(width, height, cells, wires, dots, frames, flags, texts, crossings_count(wires), diagram.symbols)
