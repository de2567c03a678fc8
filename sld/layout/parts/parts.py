"""A diagram that fits no one sheet, drawn on several: each a readable part, joined by marks that refer to each other.

Sub-boards come on sheets of their own first; a busbar with more ways than a sheet has room for goes on from sheet to
sheet; what is too wide is cut where it leaves its board or at its inverter. Small parts that follow each other
and have no mark in common share a sheet. Every part is arranged as any diagram is, so that nothing overlaps in it. What
cannot be cut any further is left as it is, for a larger sheet.

Time grows with the number of cells, times the depth of boards behind boards.
"""

from __future__ import annotations

from collections import deque
from collections.abc import Mapping, Sequence

from sld.frozen import dataclass
from sld.layout.diagram.branch import branch
from sld.layout.diagram.diagram import Cell, Diagram
from sld.layout.diagram.ranges import joined
from sld.layout.diagram.wrapping import Manner
from sld.layout.parts.alike import Forms
from sld.layout.parts.cut import continued, cut_above, cut_busbar, cut_from, rejoined, up_to_way
from sld.layout.parts.cut_places import (
    MARK_HEIGHT_MM,
    MARK_WIDTH_MM,
    Room,
    busbar_of,
    children_to_cut,
    deep_cuts,
    feeders,
)
from sld.layout.parts.extents import Extents
from sld.layout.parts.laid import Arrange, Fits, Layer, Part
from sld.layout.parts.marks import CONTINUED, designation_of, goes_on, is_busbar, is_mark, other_end
from sld.layout.parts.part_diagram import PartDiagrams, part_diagrams_of
from sld.layout.plan import Plan
from sld.symbols.stroke import Box
from sld.words import Sayable, phrase, sequence, verbatim

__all__ = ["Divided", "Parts", "all_parts", "divided", "parts_of"]

_ROUNDS_COUNT = 40
"""So often a part is made smaller before it is taken as it is."""

_LOWER_FACTOR = 1.3
"""Sheets made one are tried where together they are at most so much too tall: their rows may be made lower."""


@dataclass(frozen=True, slots=True)
class Parts:
    """The plans of the sheets in their order, what each is the plan of, its title, and the references between them.

    references: by the key of a placed cell the keys of the cells whose places it names, in their order.
    """

    plans: tuple[Plan, ...]
    diagrams: tuple[Diagram, ...]
    titles: tuple[Sayable, ...]
    references: Mapping[str, tuple[str, ...]]


@dataclass(frozen=True, slots=True)
class _Cutter:
    """What a diagram is cut with. order: where each cell comes in it."""

    layer: Layer
    order: Mapping[str, int]

    @property
    def room(self) -> Room:
        """Return what a sheet has at most."""
        return self.layer.room

    def parts(self, root: Cell) -> list[Part]:
        """Return the sheets of a tree, what is cut off after what it was cut from."""
        found: list[Part] = []
        waiting = deque([root])
        while waiting:
            part, off = self._reduced(waiting.popleft(), first=not found)
            found.append(part)
            waiting.extendleft(sorted(off, key=self._place, reverse=True))
        return self._rejoined(found)

    def _rejoined(self, parts: Sequence[Part]) -> list[Part]:
        """Return the sheets with those put back that fit where they were cut off after all, what is left of them."""
        found: list[Part] = []
        with_mark: dict[str, int] = {}
        for part in parts:
            place = with_mark.get(cut_from(part.trees[0]) or "")
            if place is not None and self._may_join(found[place], part):
                other = found[place]
                both = self.layer.part((rejoined(other.trees[0], part.trees[0]),), other.first)
                if both.fits:
                    found[place] = both
                    with_mark |= dict.fromkeys(_marks(part.trees), place)
                    continue
            with_mark |= dict.fromkeys(_marks(part.trees), len(found))
            found.append(part)
        return found

    def _may_join(self, one: Part, other: Part) -> bool:
        """Return whether one part may hold another that was cut off it: beside it, with low rows and short lines."""
        width_mm, height_mm = one.plan.width_mm + other.plan.width_mm, max(one.plan.height_mm, other.plan.height_mm)
        return width_mm < _LOWER_FACTOR * self.room.width_mm and height_mm < self.room.height_mm

    def together(self, parts: Sequence[Part]) -> list[Part]:
        """Return the sheets with small ones that follow each other made one."""
        found = [parts[0]]
        for part in parts[1:]:
            last = found[-1]
            height_mm = last.plan.height_mm + part.plan.height_mm
            if height_mm < _LOWER_FACTOR * self.room.height_mm and not _refer(last.trees, part.trees):
                both = self.layer.part((*last.trees, *part.trees), last.first)
                if both.fits:
                    found[-1] = both
                    continue
            found.append(part)
        return found

    def _place(self, tree: Cell) -> int:
        """Return where the first cell of a tree that is of the diagram, or cut off it, comes in it."""
        keys = (cell.key.removesuffix("/to") for cell in branch(tree))
        return next(self.order[key] for key in keys if key in self.order)

    def _reduced(self, tree: Cell, first: bool) -> tuple[Part, list[Cell]]:
        """Return the sheet that a tree begins on, and the trees cut off it."""
        off: list[Cell] = []
        for _ in range(_ROUNDS_COUNT):
            part = self.layer.part((tree,), first)
            if part.fits:
                break
            tree, further = self._cut(tree, part)
            if not further:
                break
            off += further
        return part, off

    def _cut(self, tree: Cell, part: Part) -> tuple[Cell, list[Cell]]:
        """Return a tree with some of it cut off, and that; nothing is cut off where there is no place to cut."""
        plan, extents = part.plan, part.extents()
        above = feeders(tree, plan, extents, self.room)
        if not above:
            busbar = busbar_of(tree, extents)
            wide = plan.width_mm > self.room.width_mm
            if busbar is not None and not (wide and self._is_too_wide(busbar, extents)):
                starts = self._starts(tree, busbar, part, extents)
                if starts:
                    return cut_busbar(tree, busbar, starts)
            if wide:
                above = deep_cuts(tree, plan, extents, self.room)
            above = above or children_to_cut(tree, plan, extents, self.room)
        return cut_above(tree, above)

    def _is_too_wide(self, busbar: Cell, extents: Extents) -> bool:
        """Return whether a busbar with its ways is too wide even without what it is fed through."""
        width_mm = extents.own[busbar.key].right_mm - extents.branch[busbar.key].left_mm
        return width_mm + MARK_WIDTH_MM > self.room.width_mm

    def _starts(self, tree: Cell, busbar: Cell, part: Part, extents: Extents) -> list[int]:
        """Return before which ways a busbar is cut, so that each part fits a sheet if it can; nowhere: no ways.

        The sheet of its supply may be left without any way, one that begins at a mark has one at least.
        """
        boxes = [extents.branch[way.key] for way in busbar.children if not goes_on(way)]
        count, least = len(boxes), int(is_mark(tree) and tree.children[0].key == busbar.key)
        limit_mm = part.plan.width_mm - self.room.width_mm
        foot_mm = part.plan.height_mm - boxes[-1].bottom_mm if boxes else 0.0
        end = 0
        while end < count and boxes[end].left_mm >= limit_mm:
            if boxes[end].bottom_mm + foot_mm + MARK_HEIGHT_MM > self.room.height_mm:
                break
            end += 1
        end = max(min(end, count - 1), least)
        while least < end < count and not self._fits(up_to_way(tree, busbar, end), part.first):
            end -= 1
        starts = []
        while end < count:
            starts.append(end)
            end = self._end(busbar, end, boxes)
        return starts

    def _end(self, busbar: Cell, start: int, boxes: Sequence[Box]) -> int:
        """Return up to which way a busbar that goes on before the way `start` fits a sheet."""
        end = len(boxes)
        while end > start + 1 and boxes[end - 1].bottom_mm - boxes[start].top_mm > self.room.height_mm:
            end -= 1
        while end > start + 1:
            if self._fits(continued(busbar, start, end), False):
                break
            end -= 1
        return end

    def _fits(self, tree: Cell, first: bool) -> bool:
        return self.layer.part((tree,), first).fits


@dataclass(frozen=True, slots=True)
class Divided:
    """A diagram divided among sheets; their plans are made when they are asked for."""

    layer: Layer
    parts: tuple[Part, ...]

    def laid_out(self) -> Parts:
        """Return the plans of the sheets, with all that is said of them."""
        made_from = self.layer.made_from
        diagrams, plans = zip(*map(self.layer.finished, self.parts), strict=True)
        references: dict[str, tuple[str, ...]] = {}
        sheet_of: dict[str, int] = {}
        for number, (part, laid) in enumerate(zip(self.parts, diagrams, strict=True)):
            cells = [cell for top in part.trees for cell in branch(top)]
            references |= made_from.references([*cells, *laid.free])
            sheet_of |= {cell.key: number for cell in cells}
        titles = tuple(map(_title, self.parts))
        return Parts(plans, diagrams, titles, references | _of_terminals(made_from, sheet_of))


def divided(
    made_from: PartDiagrams, arrange: Arrange, fits: Fits, room: Room, undivided: dict[Manner, Plan]
) -> Divided:
    """Return a diagram on several sheets. fits: whether a plan fits a sheet. room: what a sheet has at most.

    undivided: plans of the whole that are known; those that are made are added. A part for which the room does not
    suffice, and that cannot be cut, does not fit.
    """
    whole = made_from.whole
    layer = Layer(made_from, arrange, fits, room, Forms(whole.language), undivided)
    cutter = _Cutter(layer, {cell.key: place for place, cell in enumerate(branch(whole.root))})
    return Divided(layer, tuple(cutter.together(cutter.parts(whole.root))))


def parts_of(diagram: Diagram, arrange: Arrange, fits: Fits, room: Room) -> Parts:
    """Return the parts of a diagram, laid out: as `divided` does it."""
    return divided(part_diagrams_of(diagram), arrange, fits, room, {}).laid_out()


def all_parts(several: Sequence[Parts]) -> Parts:
    """Return the parts of several diagrams one after the other."""
    return Parts(
        tuple(plan for each in several for plan in each.plans),
        tuple(diagram for each in several for diagram in each.diagrams),
        tuple(title for each in several for title in each.titles),
        {key: names for each in several for key, names in each.references.items()},
    )


def _refer(some: Sequence[Cell], others: Sequence[Cell]) -> bool:
    """Return whether a mark in some trees refers to one in the others."""
    marks = _marks(others)
    return any(other_end(key) in marks for key in _marks(some))


def _marks(trees: Sequence[Cell]) -> set[str]:
    """Return the keys of the marks in some trees."""
    return {cell.key for top in trees for cell in branch(top) if is_mark(cell)}


def _of_terminals(made_from: PartDiagrams, sheet_of: Mapping[str, int]) -> dict[str, tuple[str, ...]]:
    """Return the first cell on the first and on the last other sheet that each terminal of the earth bar earths."""
    bar = made_from.whole.earth
    found: dict[str, tuple[str, ...]] = {}
    if bar is None:
        return found
    for name, keys in made_from.drops.items():
        firsts: dict[int, str] = {}
        for key in keys:
            firsts.setdefault(sheet_of[key], key)
        elsewhere = [f"{firsts[number]}/earth" for number in sorted(firsts) if number != 0]
        ends = (elsewhere[0], elsewhere[-1]) if len(elsewhere) > 1 else (*elsewhere, "", "")[:2]
        found[f"{bar.key}/{name}"] = ends
    return found


def _title(part: Part) -> Sayable:
    """Return what a sheet shows: its boards, else its inverters, else what its trees begin with."""
    cells = [cell for top in part.trees for cell in branch(top)]
    busbars = [cell for cell in cells if is_busbar(cell)]
    boards: dict[Sayable, None] = {}
    for cell in busbars:
        whole = len(busbars) == 1 and CONTINUED not in cell.key
        name = sequence((line.said for line in cell.above), " ") if whole else verbatim(designation_of(cell))
        boards[phrase("{what} (continued)", what=name) if CONTINUED in cell.key else name] = None
    inverters = joined(designation_of(cell) for cell in cells if cell.aligned == "inverter")
    begins = joined(designation_of(next(cell for cell in branch(top) if not is_mark(cell))) for top in part.trees)
    shown = sequence([sequence(boards), inverters], ": ") if boards or inverters else verbatim(begins)
    return sequence([phrase("supply"), shown]) if part.first else shown
