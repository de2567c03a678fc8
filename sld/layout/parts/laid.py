"""The diagram of each sheet laid out: of parts that have the same form, and so the same size, one is.

Parts are cut, joined and compared by their sizes; the plans of those that stay are made last.
"""

from __future__ import annotations

from collections.abc import Callable, Hashable
from dataclasses import field
from operator import is_
from typing import Protocol

from sld.frozen import dataclass, replace
from sld.layout.diagram.branch import branch
from sld.layout.diagram.diagram import Cell, Diagram
from sld.layout.diagram.wrapping import LOW, LOWEST, MANNERS, Manner, lines_wrapped
from sld.layout.parts.alike import Forms
from sld.layout.parts.cut_places import Room
from sld.layout.parts.extents import Extents, extents_of
from sld.layout.parts.part_diagram import PartDiagrams
from sld.layout.plan import Plan

__all__ = ["Arrange", "Fits", "Layer", "Part"]

_LOWEST_ROW_MM = 12.0
"""No row needs less: where so many do not fit, only low ones are tried."""

_MANY_ROWS = 6
"""So many rows of strings, which are much alike, may be as low as they can: their lines are then wider."""

_MOST_KNOWN = 256
"""So many parts are remembered."""

_MOST_CELLS = 400
"""The plan of a larger part that does not fit is not kept: it is cut and not asked for again."""

Fits = Callable[[Plan], bool]


class Arrange(Protocol):
    """What lays a diagram out."""

    def __call__(self, diagram: Diagram, *, turned: bool = False) -> Plan:
        """Return its plan. turned: the way to the supply leads down."""


@dataclass(frozen=True, slots=True)
class Part:
    """The trees of one sheet, and how they are laid out. fits: whether they fit it.

    like: the trees that `plan` is of, these or others of the same form; it has their size.
    """

    trees: tuple[Cell, ...]
    first: bool
    manner: Manner
    turned: bool
    fits: bool
    plan: Plan
    like: tuple[Cell, ...]

    def extents(self) -> Extents:
        """Return the room that the branches of the first tree take."""
        return extents_of(self.trees[0], self.plan, self.like[0])


@dataclass(frozen=True, slots=True)
class Layer:
    """What lays sheets out. fits: whether a plan fits the sheet. room: what it has at most.

    undivided: plans of the whole, by their manner: it is tried for sheets of each size.
    """

    made_from: PartDiagrams
    arrange: Arrange
    fits: Fits
    room: Room
    forms: Forms
    undivided: dict[Manner, Plan]
    known: dict[Hashable, Part] = field(default_factory=dict)

    def part(self, trees: tuple[Cell, ...], first: bool) -> Part:
        """Return the sheet with these trees."""
        names = tuple(cell.key for top in trees for cell in branch(top))
        whole = self._whole(trees, first)
        form = None if first or len(names) > _MOST_CELLS else self.forms.of(whole)
        name = names if form is None else form
        found = self.known.get(name)
        if found is not None:
            return replace(found, trees=trees, first=first)
        found = self._part(whole, trees, first)
        if found.fits or form is not None:
            if len(self.known) >= _MOST_KNOWN:
                del self.known[next(iter(self.known))]
            self.known[name] = found
        return found

    def _whole(self, trees: tuple[Cell, ...], first: bool) -> Diagram:
        """Return the diagram of a sheet, which is to use the width of it."""
        return replace(self.made_from.diagram(trees, first), width_mm=self.room.width_mm)

    def _part(self, whole: Diagram, trees: tuple[Cell, ...], first: bool) -> Part:
        """Arrange a sheet; where it is too wide, narrower lines are tried, where it is too tall, lower rows."""

        def laid(manner: Manner, turned: bool = False) -> Part:
            is_whole = trees[0] is self.made_from.whole.root and not turned
            plan = self.undivided.get(manner) if is_whole else None
            if plan is None:
                plan = self.arrange(lines_wrapped(whole, manner, turned=turned), turned=turned)
            if is_whole:
                self.undivided[manner] = plan
            return Part(trees, first, manner, turned, self.fits(plan), plan, trees)

        made: list[Part] = []
        rows_count = sum(not cell.children for top in trees for cell in branch(top))
        for manner in MANNERS if rows_count * _LOWEST_ROW_MM <= self.room.height_mm else ():
            made.append(laid(manner))
            if made[-1].fits:
                return made[-1]
            if made[-1].plan.width_mm <= self.room.width_mm:
                break
            if first and len(trees) == 1 and (turned := laid(manner, turned=True)).fits:
                return turned
        if made and made[-1].plan.height_mm <= self.room.height_mm:
            return made[0]
        part = laid(LOW)
        strings_count = sum(cell.aligned == "string" for top in trees for cell in branch(top))
        too_wide = part.plan.width_mm > self.room.width_mm
        if part.fits or strings_count < _MANY_ROWS or (first and too_wide):
            return part
        lowest = laid(LOWEST)
        return lowest if too_wide or lowest.plan.width_mm <= self.room.width_mm else part

    def finished(self, part: Part) -> tuple[Diagram, Plan]:
        """Return the diagram of a part and its own plan."""
        whole = lines_wrapped(self._whole(part.trees, part.first), part.manner, turned=part.turned)
        return whole, part.plan if all(map(is_, part.like, part.trees)) else self.arrange(whole, turned=part.turned)
