"""Every cell at its place.

Before: stacks, columns, heights. After: PlacedCells and PlacedFlags in millimetres of the diagram, symbols stretched to
the true distances of their children's rows, so that each terminal lies on the axis of the row it serves.
"""

from __future__ import annotations

from sld.layout.passes.grid import Catalogue, earth_pin_of
from sld.layout.passes.measured import Measured
from sld.layout.plan import PlacedCell, PlacedFlag

__all__ = ["earth_cells_of", "flags_of", "placed_cells_of"]


def placed_cells_of(measured: Measured, catalogue: Catalogue) -> tuple[PlacedCell, ...]:
    """Return all cells of the tree and the free ones, in preorder: node i of the tree is item i."""
    cells = []
    rows, heights, stacks = measured.rows, measured.heights, measured.stacks
    for place, node in enumerate(measured.tree.nodes):
        x, y = measured.columns.origin_mm[place], heights.axis_mm[rows.axis[place]]
        if node.spans:
            feeds = tuple(heights.axis_mm[rows.axis[child]] - y for child in node.children)
            shape = catalogue.stretched(node.cell.symbol, feeds)
        else:
            shape = catalogue.symbol(node.cell.symbol)
        pins = {name: (x + dx, y + dy) for name, (dx, dy) in shape.pins}
        for port in measured.cabling.ports[place]:
            pins.setdefault(port.name, (x + port.x_mm, y + (shape.box.top_mm if port.top else shape.box.bottom_mm)))
        if stacks[place].earth:
            dx, dy = earth_pin_of(shape)
            pins["earth"] = (x + dx, y + dy)
        head, foot = heights.axis_mm[rows.head[place]], heights.axis_mm[rows.foot[place]]
        stack = stacks[place]
        labels = [text.moved(x, head) for text in stack.upper] + [text.moved(x, foot) for text in stack.lower]
        span = (y - head, foot - y) if node.spans else (0.0, 0.0)
        cells.append(
            PlacedCell(
                node.cell.key,
                node.cell.symbol,
                node.cell.status,
                (x, y),
                span,
                shape.box.moved(x, y),
                tuple(pins.items()),
                tuple(labels),
                node.cell.alike,
            )
        )
    return tuple(cells)


def earth_cells_of(measured: Measured, catalogue: Catalogue) -> tuple[PlacedCell, ...]:
    """Return the symbols for earth that hang from cells; the key of each is its cell's with /earth."""
    cells = []
    for place, node in enumerate(measured.tree.nodes):
        drop = measured.stacks[place].earth
        if drop is None:
            continue
        shape = catalogue.symbol(node.cell.earth_symbol)
        x, y = measured.columns.origin_mm[place], measured.heights.axis_mm[measured.rows.foot[place]]
        at = (x + drop.at[0], y + drop.at[1])
        pins = {name: (at[0] + dx, at[1] + dy) for name, (dx, dy) in shape.pins}
        cells.append(
            PlacedCell(
                f"{node.cell.key}/earth",
                node.cell.earth_symbol,
                node.cell.status,
                at,
                (0.0, 0.0),
                shape.box.moved(*at),
                tuple(pins.items()),
                (drop.label.moved(x, y),),
            )
        )
    return tuple(cells)


def flags_of(measured: Measured) -> tuple[PlacedFlag, ...]:
    """Return the flags beside the cells."""
    rows, columns, heights = measured.rows, measured.columns, measured.heights
    return tuple(
        PlacedFlag(number, node.cell.key, box.moved(columns.origin_mm[place], heights.axis_mm[rows.head[place]]))
        for place, node in enumerate(measured.tree.nodes)
        for number, box in measured.stacks[place].flags
    )
