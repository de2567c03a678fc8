"""How much room each branch takes in a plan: what a cut above it would free."""

from __future__ import annotations

from collections.abc import Mapping

from sld.frozen import dataclass
from sld.layout.diagram.branch import branch
from sld.layout.diagram.diagram import Cell
from sld.layout.plan import PlacedCell, Plan
from sld.symbols.stroke import Box
from sld.symbols.typeface import text_box

__all__ = ["Extents", "extents_of"]


@dataclass(frozen=True, slots=True)
class Extents:
    """Boxes by the key of the cell. own: of the cell with its labels; branch: of it and all that feeds it."""

    own: Mapping[str, Box]
    branch: Mapping[str, Box]

    def height_mm(self, cell: Cell) -> float:
        """Return how tall the branch of a cell is."""
        return self.branch[cell.key].height_mm


def extents_of(tree: Cell, plan: Plan, drawn: Cell) -> Extents:
    """Return the room that the branches of a tree take in a plan. drawn: the tree of the same form that it is of."""
    placed = {cell.key: cell for cell in plan.cells}
    own: dict[str, Box] = {}
    whole: dict[str, Box] = {}
    for cell, like in zip(reversed(list(branch(tree))), reversed(list(branch(drawn))), strict=True):
        box = _box(placed[like.key])
        if f"{like.key}/earth" in placed:
            box = box.joined(_box(placed[f"{like.key}/earth"]))
        own[cell.key] = box
        for child in cell.children:
            box = box.joined(whole[child.key])
        whole[cell.key] = box
    return Extents(own, whole)


def _box(cell: PlacedCell) -> Box:
    box = cell.box
    for label in cell.labels:
        box = box.joined(text_box(label))
    return box
