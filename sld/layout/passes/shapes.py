"""The symbols of all cells, measured before the rows have their heights.

Before: the tree. After: each node has a form: what stands about its axis, and of what spans several rows how far it
reaches beyond its first and last one; how long it is between them does not matter yet.
"""

from __future__ import annotations

from sld.frozen import dataclass
from sld.layout.passes.grid import Catalogue
from sld.layout.passes.tree import Tree
from sld.symbols.stroke import MODULE_MM, Box, Point

__all__ = ["LEAST_ROW_PITCH_MM", "Form", "shapes_of"]

LEAST_ROW_PITCH_MM = 2 * MODULE_MM
"""Rows are never closer."""

_FAR_MM = 100 * MODULE_MM
"""Rows this far apart show what of a symbol belongs to its ends and what to its axis."""


@dataclass(frozen=True, slots=True)
class Form:
    """The Shape of a symbol about its own rows.

    box: extents of what stands about the axis; where there is nothing, those of the bar, its upper edge from the head
    row and its lower one from the foot row. strip: of what spans the rows in the same way, None where nothing does.
    """

    box: Box
    pins: tuple[tuple[str, Point], ...]
    hangs: bool
    strip: Box | None = None
    has_core: bool = True


def shapes_of(tree: Tree, catalogue: Catalogue) -> tuple[Form, ...]:
    """Return the form of every node. Raises what the catalogue raises for a name it does not have."""
    forms: list[Form] = []
    for node in tree.nodes:
        if not node.spans:
            shape = catalogue.symbol(node.cell.symbol)
            forms.append(Form(shape.box, shape.pins, shape.hangs))
            continue
        middle = (len(node.children) - 1) // 2
        feeds = tuple(_FAR_MM * (number - middle) for number in range(len(node.children)))
        shape = catalogue.stretched(node.cell.symbol, feeds)
        strip = shape.strip and Box(
            shape.strip.left_mm, shape.strip.top_mm - feeds[0], shape.strip.right_mm, shape.strip.bottom_mm - feeds[-1]
        )
        box = shape.core or strip
        assert box is not None, "a symbol has ink"
        pins = tuple(pin for pin in shape.pins if not pin[0].startswith("feed"))
        forms.append(Form(box, pins, shape.hangs, strip, shape.core is not None))
    return tuple(forms)
