"""The diagram of one sheet: some trees of a system with the enclosures, data cables and earthing that belong to them.

Before: trees cut out of a whole diagram. After: a Diagram of its own. A data cable that leaves the sheet ends in a mark
and goes on at the mark of its other end; the earth bar and the data devices are on the first sheet, and conductors to
the bar from other sheets name the place of their terminal.
"""

from __future__ import annotations

from collections.abc import Container, Iterable, Sequence

from sld.frozen import dataclass, replace
from sld.layout.diagram.branch import branch, rebuilt
from sld.layout.diagram.diagram import BusChain, BusStep, Cell, Diagram, EarthBar
from sld.layout.diagram.line import Line, Role
from sld.layout.parts.marks import CONTINUED, REFERENCE, designation_of, is_mark, other_end
from sld.words import NOTHING, Phrase, phrase, verbatim

__all__ = ["PartDiagrams", "part_diagrams_of"]


@dataclass(frozen=True, slots=True)
class PartDiagrams:
    """What the diagrams of single sheets are made from.

    whole: the diagram with room for references in it. visits: the places of each device on the chains, as (chain,
    place). names: its designation. drops: the keys of the cells earthed by each terminal of the earth bar. terminals:
    the one that each of these cells is earthed by.
    """

    whole: Diagram
    visits: dict[str, tuple[tuple[int, int], ...]]
    names: dict[str, str]
    drops: dict[str, tuple[str, ...]]
    terminals: dict[str, str]

    def diagram(self, trees: Sequence[Cell], first: bool) -> Diagram:
        """Return the diagram of a sheet with these trees; the first one has the earth bar and the data devices."""
        free = self.whole.free if first else ()
        cells = [cell for top in (*trees, *free) for cell in branch(top)]
        enclosures = {cell.enclosure for cell in cells}
        going_on = {cell.enclosure for cell in cells if CONTINUED in cell.key}
        chains, marks = self._chains(cells)
        return Diagram(
            trees[0],
            tuple(
                replace(each, caption=phrase("{what} (continued)", what=each.caption)) if each.key in going_on else each
                for each in self.whole.enclosures
                if each.key in enclosures
            ),
            (*free, *marks),
            chains,
            self.whole.earth if first else None,
            self.whole.symbols,
            tuple(trees[1:]),
            self.whole.language,
        )

    def _chains(self, cells: Iterable[Cell]) -> tuple[tuple[BusChain, ...], list[Cell]]:
        """Return the stretches of data cable on a sheet, and the marks at their ends."""
        stretches: list[list[tuple[int, int]]] = []
        for number, place in sorted(visit for cell in cells for visit in self.visits.get(cell.key, ())):
            if stretches and stretches[-1][-1] == (number, place - 1):
                stretches[-1].append((number, place))
            else:
                stretches.append([(number, place)])
        chains, marks = [], []
        for stretch in stretches:
            chain = self.whole.chains[stretch[0][0]]
            start, end = stretch[0][1], stretch[-1][1]
            steps = list(chain.steps[start : end + 1])
            if start > 0:
                marks.append(self._mark(chain, start - 1, is_next=False))
                steps.insert(0, BusStep(marks[-1].key))
            if end + 1 < len(chain.steps):
                marks.append(self._mark(chain, end, is_next=True))
                steps.append(BusStep(marks[-1].key))
            said, key = chain.said if start == 0 else NOTHING, f"{chain.key}+{start}" if start else chain.key
            chains.append(replace(chain, key=key, said=said, steps=tuple(steps)))
        return tuple(chains), marks

    def _mark(self, chain: BusChain, place: int, *, is_next: bool) -> Cell:
        """Return the mark at one end of the cable between this place of a chain and the next one.

        is_next: the mark stands for the device at the next place.
        """
        word, far = ("to", chain.steps[place + 1]) if is_next else ("from", chain.steps[place])
        name = self.names[far.key]
        said = self._to(chain, name) if is_next else self._from(chain, name)
        return Cell(f"{chain.key}/{place}/{word}", "continued_data", (REFERENCE,), (Line(Role.LINK, said),))

    def _to(self, chain: BusChain, name: str) -> Phrase:
        if chain.said:
            return phrase("{cable} to {device}", cable=chain.said, device=name)
        return phrase("to {device}", device=name)

    def _from(self, chain: BusChain, name: str) -> Phrase:
        if chain.said:
            return phrase("{cable} from {device}", cable=chain.said, device=name)
        return phrase("from {device}", device=name)

    def references(self, cells: Iterable[Cell]) -> dict[str, tuple[str, ...]]:
        """Return which places the cells of a sheet refer to: by key, in the order of their references."""
        bar = self.whole.earth
        found: dict[str, tuple[str, ...]] = {}
        for cell in cells:
            if is_mark(cell):
                found[cell.key] = (other_end(cell.key),)
            elif bar is not None and cell.key in self.terminals:
                terminal = f"{bar.key}/{self.terminals[cell.key]}"
                found[cell.key] = found[f"{cell.key}/earth"] = (terminal,)
        return found


def part_diagrams_of(whole: Diagram) -> PartDiagrams:
    """Return a whole diagram made ready to be drawn on several sheets."""
    every = [cell for top in (*whole.trees, *whole.free) for cell in branch(top)]
    visits: dict[str, tuple[tuple[int, int], ...]] = {}
    for number, chain in enumerate(whole.chains):
        for place, step in enumerate(chain.steps):
            visits[step.key] = (*visits.get(step.key, ()), (number, place))
    names = {cell.key: designation_of(cell) for cell in every}
    taps = {verbatim(tap.designation): tap.designation for tap in whole.earth.taps} if whole.earth else {}
    terminals = {cell.key: taps[cell.earth.said] for cell in every if cell.earth and cell.earth.said in taps}
    drops: dict[str, list[str]] = {}
    for key, terminal in terminals.items():
        drops.setdefault(terminal, []).append(key)
    roomy = replace(
        whole,
        root=rebuilt([_with_room(cell) if cell.key in terminals else cell for cell in branch(whole.root)]),
        earth=_with_references(whole.earth, drops) if whole.earth else None,
    )
    return PartDiagrams(roomy, visits, names, {name: tuple(keys) for name, keys in drops.items()}, terminals)


def _with_room(cell: Cell) -> Cell:
    """Return a cell whose conductor to earth has room for the place of its terminal."""
    return replace(cell, earth=replace(cell.earth, references_count=1) if cell.earth else None)


def _with_references(bar: EarthBar, drops: Container[str]) -> EarthBar:
    """Return the earth bar with room for the places of the first and the last cell that each terminal earths."""
    known: set[str] = set()
    taps = []
    for tap in bar.taps:
        if tap.designation in drops and tap.designation not in known:
            known.add(tap.designation)
            tap = replace(tap, lines=(*tap.lines, Line(Role.REFERENCE, NOTHING, references_count=2)))
        taps.append(tap)
    return replace(bar, taps=tuple(taps))
