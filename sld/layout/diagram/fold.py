"""Equal branches drawn once with their number, before the passes: Diagram -> Diagram.

Common practice of single-line diagrams: of equal branches one is drawn, with their number at its first conductor.

Before: a Diagram as charted. After: of each run of at least so many neighbouring children of a SPAN cell whose branches
are equal, the first is left. It says how many it stands for and what they come to (`sums.py`), and names all:
`-TB1…60-FC1` is `-TB1-FC1` to `-TB60-FC1`.
Branches are equal when all that is drawn and printed of them is (symbols, values, flags, status, conductors,
enclosures, places on data chains), but for designations that count up by one from branch to branch. Where so much is
asked, lengths, what follows from them, places that are numbered and flags may differ too: the two ends of a value are
said, the flags of all are there. Every key that is not drawn any more is among `Cell.alike` of one that is.

Time grows with the number of cells, times the logarithm of it where equal branches are nested deep.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import field, fields
from operator import attrgetter

from sld.frozen import dataclass, replace
from sld.layout.diagram.branch import branch, rebuilt
from sld.layout.diagram.diagram import BusChain, BusStep, Cell, Diagram, Join
from sld.layout.diagram.line import Line, Role
from sld.layout.diagram.series import advance, between, likeness, pattern, spanning
from sld.layout.diagram.sums import with_sum
from sld.words import NOTHING, Sayable, amount

__all__ = ["FOLD_FROM", "folded", "names_of"]

FOLD_FROM = 4
"""So many equal branches are folded unless the spec says otherwise."""

_drawn_of = attrgetter(
    *(each.name for each in fields(Cell) if each.name not in ("key", "above", "enclosure", "children", "alike"))
)
"""All fields of a cell that must be equal as they are, those added to it later included."""

_drawn_but_for_lengths_of = attrgetter(
    *(each.name for each in fields(Cell)
      if each.name not in ("key", "above", "below", "along", "flags", "enclosure", "children", "alike"))
)  # fmt: skip
"""All fields of a cell that must be equal as they are where lengths may differ."""

_BRANCHES_AND_DESIGNATION = (Role.COUNT, Role.DESIGNATION)

_Step = tuple[object, ...]
_Visit = tuple[int, int, int]
"""Chain, and the first and last place in it."""


@dataclass(slots=True)
class _Folding:
    """What is known while folding.

    captions: of each enclosure. members: how many cells each enclosure has. visits: where each cell is on the chains.
    ids: a number for each structure met, equal for equal ones. drawn: the cell drawn for each that is not.
    but_for_lengths: whether branches are equal whose lengths differ.
    """

    captions: dict[str, Sayable]
    members: Counter[str]
    visits: dict[str, tuple[_Visit, ...]]
    but_for_lengths: bool
    ids: dict[tuple[object, ...], int] = field(default_factory=dict)
    drawn: dict[str, str] = field(default_factory=dict)


def folded(diagram: Diagram, fold_from: int = FOLD_FROM, *, but_for_lengths: bool = False) -> Diagram:
    """Return the diagram with equal branches drawn once.

    fold_from: the least number of them, at least 2. but_for_lengths: those too that differ in lengths alone.
    """
    if fold_from < 2:
        raise ValueError(f"branches are folded from 2 on, not from {fold_from}")
    every = [cell for top in (*diagram.trees, *diagram.free) for cell in branch(top)]
    state = _Folding(
        {each.key: each.caption for each in diagram.enclosures},
        Counter(cell.enclosure for cell in every),
        _visits(diagram.chains),
        but_for_lengths,
    )
    root = _folded_tree(diagram.root, state, fold_from)
    if not state.drawn:
        return diagram
    enclosures = tuple(
        replace(each, caption=state.captions[each.key]) for each in diagram.enclosures if each.key in state.captions
    )
    chains = tuple(_folded_chain(chain, state.drawn) for chain in diagram.chains)
    return replace(diagram, root=root, enclosures=enclosures, chains=chains)


def names_of(cell: Cell) -> tuple[tuple[Line, ...], tuple[Line, ...]]:
    """Return the lines above a cell in two parts: number of branches and designation, and what else it is called."""
    own = tuple(line for line in cell.above if line.role in _BRANCHES_AND_DESIGNATION)
    return own, tuple(line for line in cell.above if line.role not in _BRANCHES_AND_DESIGNATION)


def _visits(chains: Sequence[BusChain]) -> dict[str, tuple[_Visit, ...]]:
    """Return for each device its places on the chains."""
    found: dict[str, tuple[_Visit, ...]] = {}
    for number, chain in enumerate(chains):
        for place, step in enumerate(chain.steps):
            found[step.key] = (*found.get(step.key, ()), (number, place, place))
    return found


def _folded_tree(root: Cell, state: _Folding, fold_from: int) -> Cell:
    """Return the tree folded from the leaves up, so that branches are compared with their own branches folded."""
    done: list[tuple[Cell, int]] = []
    cells: list[tuple[Cell, str]] = []
    waiting = [(root, "")]
    while waiting:
        cell, around = waiting.pop()
        cells.append((cell, around))
        waiting.extend((child, cell.enclosure) for child in reversed(cell.children))
    for cell, around in reversed(cells):
        below = [done.pop() for _ in cell.children]
        if cell.join is Join.SPAN and len(below) >= fold_from:
            below = _folded_children(below, state, fold_from)
        children = tuple(child for child, _ in below)
        if any(a is not b for a, b in zip(children, cell.children, strict=False)) or len(below) < len(cell.children):
            cell = replace(cell, children=children)
        done.append((cell, _structure(cell, around, [number for _, number in below], state)))
    return done[0][0]


def _structure(cell: Cell, around: str, below: Sequence[int], state: _Folding) -> int:
    """Return the number of a branch's structure: all that must be equal, designations without their numbers."""
    caption = state.captions.get(cell.enclosure, NOTHING)
    like = likeness if state.but_for_lengths else pattern
    enclosure = "=" if cell.enclosure == around else like(caption)
    chains = tuple(chain for chain, _, _ in state.visits.get(cell.key, ()))
    above = tuple((line.role, pattern(line.said)) for line in cell.above)
    drawn = _but_for_lengths(cell) if state.but_for_lengths else _drawn_of(cell)
    what = (drawn, above, bool(cell.enclosure), enclosure, chains, len(cell.alike), tuple(below))
    return state.ids.setdefault(what, len(state.ids))


def _but_for_lengths(cell: Cell) -> tuple[object, ...]:
    """Return what must be equal of a cell where lengths may differ, and places by their numbers."""
    below = tuple(
        replace(each, said=likeness(each.said, names=_is_place(each, cell)))
        for each in (*cell.below, *((cell.along,) if cell.along else ()))
    )
    return _drawn_but_for_lengths_of(cell), below, cell.along is None


def _folded_children(
    children: Sequence[tuple[Cell, int]], state: _Folding, fold_from: int
) -> list[tuple[Cell, int]]:  # fmt: skip
    """Return the children with each run of equal branches made one."""
    runs: list[list[tuple[Cell, int]]] = []
    steps: list[_Step | None] = []
    for child, number in children:
        if runs and runs[-1][-1][1] == number:
            step = _step(runs[-1][-1][0], child, state)
            if step is not None and steps[-1] in (None, step):
                runs[-1].append((child, number))
                steps[-1] = step
                continue
        runs.append([(child, number)])
        steps.append(None)
    found: list[tuple[Cell, int]] = []
    for run in runs:
        if len(run) < fold_from:
            found += run
        else:
            number = state.ids.setdefault((len(run), run[0][1]), len(state.ids))
            found.append((_merged([child for child, _ in run], state), number))
    return found


def _step(before: Cell, after: Cell, state: _Folding) -> _Step | None:
    """Return how a branch of the same structure follows another, None where the two cannot be drawn as one.

    A run may hold only branches that follow each other in the same manner, so that its designations are a range.
    """
    steps: list[object] = []
    matched: dict[str, str] = {}
    inside: Counter[str] = Counter()
    for a, b in zip(branch(before), branch(after), strict=True):
        numbered = zip((*a.above, *_places(a)), (*b.above, *_places(b)), strict=True)
        steps.extend(advance(old.said, new.said) for old, new in numbered)
        if a.enclosure:
            if matched.setdefault(a.enclosure, b.enclosure) != b.enclosure:
                return None
            inside.update((a.enclosure,) if a.enclosure == b.enclosure else (a.enclosure, b.enclosure))
        visits, further = state.visits.get(a.key, ()), state.visits.get(b.key, ())
        steps.extend(_neighbours(old, new) for old, new in zip(visits, further, strict=True))
    if len(set(matched.values())) < len(matched):
        return None
    for name, other in matched.items():
        if name != other:  # each has its own: then nothing else may be in either
            if inside[name] != state.members[name] or inside[other] != state.members[other]:
                return None
            steps.append(advance(state.captions.get(name, NOTHING), state.captions.get(other, NOTHING)))
    return None if None in steps else tuple(steps)


def _places(cell: Cell) -> tuple[Line, ...]:
    """Return the lines that say where a device is."""
    return tuple(line for line in cell.below if _is_place(line, cell))


def _is_place(line: Line, cell: Cell) -> bool:
    """Return whether a line says where a device is; of strings it says where they face."""
    return line.role is Role.PLACE and cell.aligned != "string"


def _neighbours(visit: _Visit, after: _Visit) -> str | None:
    """Return on which side of a device of a chain another one comes next, None where it does not."""
    if visit[0] != after[0]:
        return None
    if after[1] == visit[2] + 1:
        return "after"
    return "before" if after[2] == visit[1] - 1 else None


def _merged(run: Sequence[Cell], state: _Folding) -> Cell:
    """Return the first branch of a run, standing for all."""
    cells: list[Cell] = []
    captions: dict[str, Sayable] = {}
    for alike in zip(*(branch(top) for top in run), strict=True):
        first, last = alike[0], alike[-1]
        above = tuple(
            replace(old, said=between(old.said, new.said)) for old, new in zip(first.above, last.above, strict=True)
        )
        if not cells:
            above = (Line(Role.COUNT, amount(len(run), "×")), replace(above[0], after=" "), *above[1:])
        first = _spanning(alike) if state.but_for_lengths else first
        others = (*first.alike, *(key for cell in alike[1:] for key in (cell.key, *cell.alike)))
        cells.append(replace(first, above=above, alike=others))
        for cell in alike[1:]:
            state.drawn[cell.key] = first.key
            state.members[cell.enclosure] -= 1
        boxes = dict.fromkeys(cell.enclosure for cell in alike)
        told = [state.captions[name] for name in boxes if name in state.captions]
        if len(told) > 1:
            captions[first.enclosure] = spanning([between(told[0], told[-1]), *told[1:]])
        visits = [state.visits.get(cell.key, ()) for cell in alike]
        state.visits[first.key] = tuple(
            (each[0][0], min(low for _, low, _ in each), max(high for _, _, high in each))
            for each in zip(*visits, strict=True)
        )
    for top in run[1:]:
        for cell in branch(top):
            if cell.enclosure and not state.members[cell.enclosure]:
                state.captions.pop(cell.enclosure, None)
    state.captions.update(captions)
    return rebuilt(with_sum(cells, len(run)))


def _spanning(alike: Sequence[Cell]) -> Cell:
    """Return the first of equal cells with the lines and the flags of all."""
    first = alike[0]
    flags = tuple(dict.fromkeys(number for cell in alike for number in cell.flags))
    lengths = [cell.along.said for cell in alike if cell.along]
    along = replace(first.along, said=spanning(lengths)) if first.along else None
    below = []
    for lines in zip(*(cell.below for cell in alike), strict=True):
        ends = between(lines[0].said, lines[-1].said) if _is_place(lines[0], first) else lines[0].said
        below.append(replace(lines[0], said=spanning([ends, *(line.said for line in lines[1:])])))
    return replace(first, flags=flags, along=along, below=tuple(below))


def _folded_chain(chain: BusChain, drawn: dict[str, str]) -> BusChain:
    """Return the chain led through the cells that are drawn, once through each run."""

    def place(key: str) -> str:
        while key in drawn:
            key = drawn[key]
        return key

    runs: list[list[BusStep]] = []
    for step in chain.steps:
        if runs and step.key != runs[-1][-1].key and place(step.key) == place(runs[-1][-1].key):
            runs[-1].append(step)
        else:
            runs.append([step])
    steps = tuple(
        run[0]
        if len(run) == 1
        else replace(run[0], key=place(run[0].key), terminated=any(step.terminated for step in run), alike=tuple(run))
        for run in runs
    )
    return replace(chain, steps=steps)
