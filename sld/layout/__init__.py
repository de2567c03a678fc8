"""System -> Diagram -> Plan: what is drawn with which words, what once for many, then where everything is. No ink.

`diagram/` says what, `passes/` where, `parts/` on which of several sheets; each knows only those before it.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from contextlib import suppress
from dataclasses import field
from itertools import product

from sld.frozen import dataclass
from sld.layout.diagram.chart import chart
from sld.layout.diagram.diagram import Diagram
from sld.layout.diagram.equals import drawn_once, for_all, without_copies
from sld.layout.diagram.flags import by_device, numbered, numbered_in_parts, with_revised
from sld.layout.diagram.fold import folded
from sld.layout.diagram.trunk import trunk_of
from sld.layout.diagram.wrapping import MANNERS, Manner, lines_wrapped, worded
from sld.layout.parts.cut_places import Room
from sld.layout.parts.overview import overviews
from sld.layout.parts.part_diagram import PartDiagrams, part_diagrams_of
from sld.layout.parts.parts import Divided, Parts, all_parts, divided
from sld.layout.passes.arrange import TooLargeError, Wanted
from sld.layout.passes.arrange import arrange as arranged
from sld.layout.plan import Plan
from sld.layout.stacked import stacked
from sld.model.system import System
from sld.steps import Ratings
from sld.symbols import catalogue

__all__ = ["Drawable", "Parts", "Room", "Wanted", "arrange", "by_device", "diagram_of", "numbered", "numbered_in_parts"]

_OVERVIEW_WAYS = ((Manner(45.0), False), (Manner(28.0), False), (Manner(28.0), True))
"""How an overview is set, and whether its way to the supply is led down: the others where the first is too wide."""

_OVERVIEW_SHARES = (0.5, 2 / 3, 1.0)
"""Shares of the height of sheet 1 that an overview may take, one after the other."""


def arrange(diagram: Diagram, *, turned: bool = False, wanted: Wanted | None = None) -> Plan:
    """Return the places of a diagram drawn with the symbols of its family. turned: the way to the supply leads down.

    wanted: whether a plan of at least a size is of use. Raises TooLargeError where it is not.
    """
    return arranged(diagram, catalogue.family(diagram.symbols), turned=turned, wanted=wanted)


def diagram_of(system: System, ratings: Ratings, flags: Mapping[str, tuple[int, ...]]) -> Diagram:
    """Return what is to be drawn of a system, its lines whole. flags: numbers of the warning flags by device key.

    Equal branches are drawn once unless the spec says otherwise.
    """
    flags = with_revised(flags, system)
    groups = drawn_once(system, flags)
    if groups:
        once = folded(chart(without_copies(system, groups), ratings, flags), system.drawing.draw_once_from)
        if (diagram := for_all(once, system, groups)) is not None:
            return diagram
    whole = chart(system, ratings, flags)
    return whole if system.drawing.unfold else folded(whole, system.drawing.draw_once_from)


def _but_for_lengths(diagram: Diagram, system: System) -> Diagram:
    """Return the diagram with branches drawn once that differ in lengths alone, unless the spec says otherwise."""
    return diagram if system.drawing.unfold else folded(diagram, system.drawing.draw_once_from, but_for_lengths=True)


@dataclass(frozen=True, slots=True)
class Division:
    """The diagrams of a drawing divided among sheets, not laid out yet."""

    diagrams: tuple[Divided, ...]

    @property
    def sheets_count(self) -> int:
        """Return how many sheets there are."""
        return sum(len(each.parts) for each in self.diagrams)

    def laid_out(self) -> Parts:
        """Return the parts with their plans."""
        return all_parts([each.laid_out() for each in self.diagrams])


@dataclass(frozen=True, slots=True)
class Drawable:
    """What is drawn of each system of a drawing, and the ways to lay it out.

    It is laid out in several proportions, in parts, as an overview of these; several systems stand below each other.
    whole: what the overview is made of, where that is another diagram. Each proportion is laid out once, however often
    it is asked for.
    """

    drawn: tuple[tuple[Diagram, System], ...]
    whole: tuple[tuple[Diagram, System], ...] = ()
    _made: dict[tuple[Manner, bool], Plan] = field(default_factory=dict, init=False, repr=False, compare=False)
    _said: list[Diagram] = field(default_factory=list, init=False, repr=False, compare=False)

    def shortened(self) -> Drawable | None:
        """Return it with branches drawn once that differ in lengths alone, None where there are none."""
        found = tuple((_but_for_lengths(diagram, system), system) for diagram, system in self.drawn)
        same = all(new is old for (new, _), (old, _) in zip(found, self.drawn, strict=True))
        return None if same else Drawable(found, self.drawn)

    @property
    def symbols(self) -> str:
        """Return the family of its symbols."""
        return self.drawn[0][0].symbols

    def plans(self, wanted: Wanted | None = None) -> Iterator[Plan]:
        """Yield the diagram in several proportions, the preferred one first, each made when it is asked for.

        wanted: whether a plan of at least a width and a height (mm) is of use; those that are not are left out.
        """
        said = self._in_words()
        ways = (False, True) if all(map(trunk_of, said)) else (False,)
        for way in product(MANNERS, ways):
            if way not in self._made:
                manner, turned = way
                wrapped = [lines_wrapped(each, manner, turned=turned) for each in said]
                with suppress(TooLargeError):
                    self._made[way] = stacked([arrange(each, turned=turned, wanted=wanted) for each in wrapped])
            if way in self._made:
                yield self._made[way]

    def _in_words(self) -> list[Diagram]:
        """Return the diagrams with their lines in words, which are said once."""
        if not self._said:
            self._said.extend(worded(diagram) for diagram, _ in self.drawn)
        return self._said

    def divided(self, sheets: Iterable[tuple[Callable[[Plan], bool], Room]]) -> Iterator[Division]:
        """Yield the diagram divided among sheets of each kind: whether a plan fits one, and what it has at most."""
        self._made.clear()  # plans of a whole field are large, and none is asked for again
        wholes: list[tuple[PartDiagrams, dict[Manner, Plan]]]
        wholes = [(part_diagrams_of(diagram), {}) for diagram in self._in_words()]
        for fits, room in sheets:
            yield Division(tuple(divided(whole, arrange, fits, room, known) for whole, known in wholes))

    def overview(self, made: Parts, fits: Callable[[Plan, float], bool]) -> tuple[Plan, dict[str, tuple[str, ...]]]:
        """Return the overview of the diagram in parts and what its cells refer to.

        fits: whether a plan takes no more than a share of the height of a sheet. One is looked for that leaves room.
        """
        sheet_of = {
            key: number
            for number, plan in enumerate(made.plans, 2)
            for cell in plan.cells
            for key in (cell.key, *cell.alike)
        }
        ways = (self.whole, self.drawn) if self.whole else (self.drawn,)
        for manner, turned in _OVERVIEW_WAYS:
            tried: list[tuple[Plan, dict[str, tuple[str, ...]]]] = []
            for plan, references in (each for way in ways for each in _overviews(way, sheet_of, manner, turned=turned)):
                if fits(plan, _OVERVIEW_SHARES[0]):
                    return plan, references
                tried.append((plan, references))
            for share in _OVERVIEW_SHARES[1:]:
                for plan, references in tried:
                    if fits(plan, share):
                        return plan, references
        return tried[-1]  # its sheet is a larger one then


_Drawn = tuple[tuple[Diagram, System], ...]


def _overviews(
    drawn: _Drawn, sheet_of: Mapping[str, int], manner: Manner, *, turned: bool
) -> Iterator[tuple[Plan, dict[str, tuple[str, ...]]]]:
    """Yield overviews, the one that shows most first. sheet_of: the number of the sheet that each cell is on."""
    for way in zip(*(overviews(diagram, system, sheet_of) for diagram, system in drawn), strict=True):
        down = turned and all(trunk_of(each) for each, _ in way)
        wrapped = [lines_wrapped(each, manner, turned=down) for each, _ in way]
        plan = stacked([arrange(each, turned=down) for each in wrapped])
        yield plan, {key: names for _, references in way for key, names in references.items()}
