"""Every cell at its place.

Before: stacks, columns, heights. After: PlacedCells and PlacedFlags in millimetres of the diagram, symbols stretched to
the true distances of their children's rows, so that each terminal lies on the axis of the row it serves.
"""

from __future__ import annotations

from sld.layout.passes.grid import Catalogue, Shape, earth_pin_of
from sld.layout.passes.measured import Measured
from sld.layout.plan import PlacedCell, PlacedFlag
from sld.symbols.stroke import Text

__all__ = ["chain_names_of", "earth_cells_of", "flags_of", "placed_cells_of"]


def placed_cells_of(measured: Measured, catalogue: Catalogue) -> tuple[PlacedCell, ...]:
    """Return all cells of the tree and the free ones, in preorder: node i of the tree is item i."""
    cells = []
    rows, heights, stacks = measured.rows, measured.heights, measured.stacks
    for place, node in enumerate(measured.tree.nodes):
        x, y = measured.columns.origin_mm[place], heights.axis_mm[rows.axis[place]]
        shape: Shape = catalogue.symbol(node.cell.symbol)
        stack, span, box, strip = stacks[place], (0.0, 0.0), shape.box, None
        if node.spans:
            feeds = tuple(heights.axis_mm[rows.axis[child]] - y for child in node.children)
            shape = spanning = catalogue.stretched(node.cell.symbol, feeds)
            box, strip = (spanning.core, spanning.strip) if spanning.core else (spanning.box, None)
            span = (y - heights.axis_mm[rows.head[place]], heights.axis_mm[rows.foot[place]] - y)
        pins = {name: (x + dx, y + dy) for name, (dx, dy) in shape.pins}
        for port in measured.cabling.ports[place]:
            edge = stacks[place].form.box
            if port.name not in pins or (pins[port.name][1] < y) != port.top or pins[port.name][0] != x + port.x_mm:
                pins[port.name] = (x + port.x_mm, y + (edge.top_mm if port.top else edge.bottom_mm))
        if stacks[place].earth:
            dx, dy = earth_pin_of(shape)
            pins["earth"] = (x + dx, y + dy)
        above, below = heights.axis_mm[stack.upper_row], heights.axis_mm[stack.lower_row]
        labels = [text.moved(x, above) for text in stack.upper] + [text.moved(x, below) for text in stack.lower]
        cells.append(
            PlacedCell(
                node.cell.key,
                node.cell.symbol,
                node.cell.status,
                (x, y),
                span,
                box.moved(x, y),
                tuple(pins.items()),
                tuple(labels),
                node.cell.alike,
                strip.moved(x, y) if strip else None,
                boxed=stack.boxed.moved(x, below) if stack.boxed else None,
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
        x, y = measured.columns.origin_mm[place], measured.heights.axis_mm[measured.stacks[place].lower_row]
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
    columns, heights = measured.columns, measured.heights
    return tuple(
        PlacedFlag(
            number,
            node.cell.key,
            box.moved(columns.origin_mm[place], heights.axis_mm[measured.stacks[place].upper_row]),
        )
        for place, node in enumerate(measured.tree.nodes)
        for number, box in measured.stacks[place].flags
    )


def chain_names_of(measured: Measured) -> tuple[Text, ...]:
    """Return the names of data chains at their lines."""
    columns, heights = measured.columns, measured.heights
    return tuple(
        text.moved(columns.origin_mm[place], heights.axis_mm[stack.upper_row])
        for place, stack in enumerate(measured.stacks)
        for text in stack.names
    )
