"""Equal inverters that will be drawn once: charted and folded as one, then given the number and the names of all.

It comes to what folding all of them comes to, without a cell for each. Where that is not certain, because something in
the diagram tells one from the others, `drawn_once` leaves them as they are.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import pairwise
from types import MappingProxyType

from sld.frozen import replace
from sld.layout.diagram import ranges
from sld.layout.diagram.branch import branch, rebuilt
from sld.layout.diagram.diagram import Cell, Diagram
from sld.layout.diagram.line import Line, Role
from sld.layout.diagram.series import advance, between
from sld.layout.diagram.sums import with_sum
from sld.model.copies import Copy
from sld.model.device import Busbar, InverterUnit
from sld.model.system import System
from sld.words import amount
from sld.words.names import renamed

__all__ = ["drawn_once", "for_all", "without_copies"]

Groups = Mapping[str, tuple[Copy, ...]]
"""Copies by the key of the inverter that they are equal to."""


def drawn_once(system: System, flags: Mapping[str, tuple[int, ...]]) -> Groups:
    """Return the groups of equal inverters that are drawn as one. flags: numbers of the warning flags by device key."""
    if system.drawing.unfold or not system.copies:
        return {}
    chained = {system.devices[node.device].owner for chain in system.chains for node in chain.nodes}
    chained |= {system.devices[key].owner for link in system.links
                for name in (link.from_device, link.to_device) for key in system.names[name]}  # fmt: skip
    return {
        first: copies
        for first, copies in system.copies.items()
        if len(copies) + 1 >= system.drawing.draw_once_from
        and chained.isdisjoint((first, *(copy.key for copy in copies)))
        and _is_alone(system, first, copies)
        and _counts_up(system, first, copies)
        and _is_flagged_alike(system, first, copies, flags)
    }


def _is_alone(system: System, first: str, copies: Sequence[Copy]) -> bool:
    """Return whether the inverters hang on a busbar, and no other might be drawn with them."""
    own = {first, *(copy.key for copy in copies)}
    type_name = next(unit.type_name for unit in system.of(InverterUnit) if unit.key == first)
    alike = (unit.key for unit in system.every(InverterUnit) if unit.type_name == type_name)
    at_board = isinstance(system.devices[_top(system, first)[1]], Busbar)
    return at_board and own.issuperset(alike)


def _top(system: System, first: str) -> tuple[str, str]:
    """Return the key of the first device of the circuit of an inverter, and that of what it hangs on."""
    key = first
    while system.devices[parent := system.devices[key].parent].owner == first:
        key = parent
    return key, parent


def _counts_up(system: System, first: str, copies: Sequence[Copy]) -> bool:
    """Return whether all names go on by one from each inverter to the next."""
    names = [system.devices[key].designation for key in (first, *(copy.key for copy in copies))]
    steps = {ranges.advance(old, new) for old, new in pairwise(names)}
    if len(steps) > 1 or not steps.isdisjoint((None, 0)):
        return False
    for box in copies[0].enclosures:
        captions = [system.enclosures[each] for each in (box, *(copy.enclosures[box] for copy in copies))]
        if len(further := {advance(old, new) for old, new in pairwise(captions)}) > 1 or None in further:
            return False
    return True


def _is_flagged_alike(
    system: System, first: str, copies: Sequence[Copy], flags: Mapping[str, tuple[int, ...]]
) -> bool:  # fmt: skip
    own = {key: flags.get(key, ()) for key, device in system.devices.items() if device.owner == first}
    return all(flags.get(copy.key_of(key), ()) == numbers for copy in copies for key, numbers in own.items())


def without_copies(system: System, groups: Groups) -> System:
    """Return a system in which no way leads to the copies."""
    children = dict(system.children)
    boxes = set()
    for first, copies in groups.items():
        top, board = _top(system, first)
        left_out = {copy.key_of(top) for copy in copies}
        children[board] = tuple(key for key in children[board] if key not in left_out)
        boxes |= {box for copy in copies for box in copy.enclosures.values()}
    enclosures = {key: caption for key, caption in system.enclosures.items() if key not in boxes}
    return replace(system, children=MappingProxyType(children), enclosures=MappingProxyType(enclosures))


def for_all(diagram: Diagram, system: System, groups: Groups) -> Diagram | None:
    """Return a folded diagram without copies with what it draws once standing for them too.

    None where something that is printed of a first one is not so of its copies.
    """
    captions = {each.key: each.caption for each in diagram.enclosures}
    for copies in groups.values():
        for box, last in copies[-1].enclosures.items():
            if captions.get(box) != system.enclosures[box]:
                return None
            captions[box] = between(system.enclosures[box], system.enclosures[last])
    tops = {_top(system, first)[0] for first in groups}
    cells: list[Cell] = []
    for cell in branch(diagram.root):
        device = system.devices.get(cell.key)
        copies = groups.get(device.owner, ()) if device is not None else ()
        if copies and not _is_said_of_all(cell, copies[-1]):
            return None
        cells.append(_of_all(cell, copies, counts=cell.key in tops) if copies else cell)
    for place in [place for place, cell in enumerate(cells) if cell.key in tops]:
        end = place + sum(1 for _ in branch(cells[place]))
        cells[place:end] = with_sum(cells[place:end], len(groups[system.devices[cells[place].key].owner]) + 1)
    enclosures = tuple(replace(each, caption=captions[each.key]) for each in diagram.enclosures)
    return replace(diagram, root=rebuilt(cells), enclosures=enclosures)


def _is_said_of_all(cell: Cell, copy: Copy) -> bool:
    lines = (*cell.below, *([cell.along] if cell.along else ()))
    return all(renamed(line.said, copy.named) is line.said for line in lines)


def _of_all(cell: Cell, copies: Sequence[Copy], *, counts: bool) -> Cell:
    """Return a cell that stands for those of the copies too. counts: it says how many there are."""
    above = []
    for line in cell.above:
        last = renamed(line.said, copies[-1].named)
        assert not isinstance(last, str | int)
        above.append(line if last is line.said else replace(line, said=between(line.said, last)))
    if counts:
        above = [Line(Role.COUNT, amount(len(copies) + 1, "×")), replace(above[0], after=" "), *above[1:]]
    others = (copy.key_of(key) for copy in copies for key in (cell.key, *cell.alike))
    return replace(cell, above=tuple(above), alike=(*cell.alike, *others))
