"""Where a tree that is too large for a sheet is cut: at boards, at the ways of a busbar, at inverters, else anywhere.

Each function looks at the tree as it would be drawn and returns the next cut, nothing where it has none to offer.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.frozen import dataclass
from sld.layout.diagram.branch import branch
from sld.layout.diagram.diagram import Cell, LineKind
from sld.layout.diagram.symbol_of import OWNERSHIP_BOUNDARY
from sld.layout.parts.extents import Extents
from sld.layout.parts.marks import is_busbar, is_mark
from sld.layout.plan import Plan

__all__ = ["MARK_HEIGHT_MM", "MARK_WIDTH_MM", "Room", "busbar_of", "children_to_cut", "deep_cuts", "feeders"]

MARK_WIDTH_MM = 30.0
MARK_HEIGHT_MM = 15.0
"""About what a mark takes with its words."""


@dataclass(frozen=True, slots=True)
class Room:
    """What a sheet has for a diagram at most."""

    width_mm: float
    height_mm: float


@dataclass(frozen=True, slots=True)
class _Edge:
    """parent and child, and how many cells are above the child."""

    parent: Cell
    child: Cell
    depth: int

    @property
    def may_be_cut(self) -> bool:
        """Return whether marks at both of its ends could name what is at the other."""
        return OWNERSHIP_BOUNDARY not in (self.parent.symbol, self.child.symbol)


def _edges(tree: Cell) -> Iterator[_Edge]:
    """Yield the edges that can be cut, from the root down; none at a mark, which stands for a cut already."""
    waiting = [(tree, 0)]
    while waiting:
        parent, depth = waiting.pop()
        for child in reversed(parent.children):
            waiting.append((child, depth + 1))
        if not is_mark(parent):
            yield from (_Edge(parent, child, depth + 1) for child in parent.children if not is_mark(child))


def feeders(tree: Cell, plan: Plan, extents: Extents, room: Room) -> set[str]:
    """Return the sub-boards to be drawn on other sheets: the keys of the first cells that are not in the board above.

    Those that reach too far to the left, else the largest ones until the rest has the height of a sheet.
    """
    busbars = _with_busbars(tree)
    found: list[Cell] = []
    covered: set[str] = set()
    for edge in _edges(tree):
        leaves = edge.parent.enclosure and edge.child.enclosure != edge.parent.enclosure
        if edge.parent.key in covered:
            covered.add(edge.child.key)
        elif leaves and edge.may_be_cut and edge.child.key in busbars:
            covered.add(edge.child.key)
            found.append(edge.child)
    deep = {cell.key for cell in found if extents.branch[cell.key].left_mm < plan.width_mm - room.width_mm}
    excess_mm = plan.height_mm - room.height_mm
    if deep or excess_mm <= 0:
        return deep
    chosen: set[str] = set()
    for cell in sorted(found, key=extents.height_mm, reverse=True):
        if excess_mm <= 0:
            break
        chosen.add(cell.key)
        excess_mm -= max(extents.height_mm(cell) - MARK_HEIGHT_MM, 0.0)
    return chosen


def _with_busbars(tree: Cell) -> set[str]:
    """Return the keys of all cells that are, or have in their branch, a busbar."""
    found: set[str] = set()
    for cell in reversed(list(branch(tree))):
        if is_busbar(cell) or any(child.key in found for child in cell.children):
            found.add(cell.key)
    return found


def busbar_of(tree: Cell, extents: Extents) -> Cell | None:
    """Return the busbar that most of a tree hangs on: the first one met on the way along the tallest branches."""
    cell = tree
    while not is_busbar(cell):
        if not cell.children:
            return None
        cell = max(cell.children, key=extents.height_mm)
    return cell


def deep_cuts(tree: Cell, plan: Plan, extents: Extents, room: Room) -> set[str]:
    """Return where to cut a tree that is too wide, so that what is left of the cuts is drawn on other sheets.

    On each way to a cell that is too far to the left: where it leaves a board, else at an inverter, else at a junction
    box, else at the last cell for which there is room.
    """
    limit_mm = plan.width_mm - room.width_mm
    best: dict[str, tuple[tuple[int, int], str]] = {}
    chosen: set[str] = set()
    above: dict[str, str] = {}
    for edge in _edges(tree):
        above[edge.child.key] = edge.parent.key
        found = best.get(edge.parent.key)
        if edge.may_be_cut and extents.own[edge.parent.key].left_mm - MARK_WIDTH_MM >= limit_mm:
            here = ((_rank(edge), -edge.depth), edge.child.key)
            found = here if found is None else min(found, here)
        if found is not None:
            best[edge.child.key] = found
            if not edge.child.children and extents.branch[edge.child.key].left_mm < limit_mm:
                chosen.add(found[1])
    return {key for key in chosen if not _below_another(key, chosen, above)}


def _rank(edge: _Edge) -> int:
    """Return how natural a cut is, 0 the most."""
    leaves = edge.parent.enclosure and edge.child.enclosure != edge.parent.enclosure
    if leaves and edge.child.kind is LineKind.AC:
        return 0
    if edge.parent.aligned == "inverter" or edge.child.aligned == "inverter":
        return 1
    return 2 if edge.parent.enclosure != edge.child.enclosure else 3


def _below_another(key: str, chosen: set[str], above: dict[str, str]) -> bool:
    """Return whether one of the other cuts is on the way to the root."""
    while key in above:
        key = above[key]
        if key in chosen:
            return True
    return False


def children_to_cut(tree: Cell, plan: Plan, extents: Extents, room: Room) -> set[str]:
    """Return which branches of a tree without a busbar are drawn on other sheets because it is too tall.

    At the first cell with several branches the last ones, as many as needed; where nothing is left to be cut there,
    at the next one on the tallest branch.
    """
    cell = tree
    while cell.children:
        open_ones = [child for child in cell.children if not is_mark(child)]
        if len(cell.children) > 1 and len(open_ones) > 1 and not is_mark(cell):
            excess_mm = plan.height_mm - room.height_mm
            chosen: set[str] = set()
            for child in reversed(open_ones[1:]):
                if excess_mm <= 0 and chosen:
                    break
                saved_mm = extents.height_mm(child) - MARK_HEIGHT_MM
                if saved_mm > 0:
                    chosen.add(child.key)
                    excess_mm -= saved_mm
            if chosen:
                return chosen
        if not open_ones:
            break
        cell = max(open_ones, key=extents.height_mm)
    return set()
