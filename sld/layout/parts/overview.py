"""The overview of a diagram that is drawn on several sheets: supply, boards and inverters, and where each is drawn.

Between them stands what the supply goes through: breakers, meters, main switches, interface protection.

It is a Diagram of its own, arranged as any other. Nothing in it is a part of the system: the keys of its cells begin
with `overview/`, and each names the place of the cell that it stands for.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from sld.frozen import replace
from sld.layout.diagram.branch import branch
from sld.layout.diagram.capacity import Capacity, of_inverters
from sld.layout.diagram.diagram import Cell, Diagram, Join
from sld.layout.diagram.fold import names_of
from sld.layout.diagram.line import Line, Role
from sld.layout.diagram.ranges import joined
from sld.layout.parts.marks import REFERENCE, designation_of, is_busbar
from sld.model.system import System
from sld.words import Sayable, amount, sequence

__all__ = ["OVERVIEW", "overviews"]

OVERVIEW = "overview/"


def overviews(
    diagram: Diagram, system: System, sheet_of: Mapping[str, int]
) -> Iterator[tuple[Diagram, dict[str, tuple[str, ...]]]]:  # fmt: skip
    """Yield overviews and what their cells refer to: with each inverter, with those of one sheet as one, with none.

    diagram: the whole one. sheet_of: the number of the sheet that each of its cells is on.
    """
    capacities = of_inverters(system)
    for merged, with_inverters in ((False, True), (True, True), (False, False)):
        root = _tree(diagram.root, capacities, sheet_of if merged else {}, with_inverters)
        references: dict[str, tuple[str, ...]] = {cell.key: (cell.key.removeprefix(OVERVIEW),) for cell in branch(root)}
        yield Diagram(root, symbols=diagram.symbols, language=diagram.language), references


def _tree(root: Cell, capacities: Mapping[str, Capacity], sheet_of: Mapping[str, int], with_inverters: bool) -> Cell:
    """Return the tree of what an overview shows, built from the leaves."""
    found: dict[str, list[tuple[Cell, Capacity, int]]] = {}
    for cell in reversed(list(branch(root))):
        below = [each for child in cell.children for each in found.pop(child.key)]
        total = sum((capacity for _, capacity, _ in below), Capacity())
        if cell.aligned == "inverter":
            own = sum((capacities.get(key, Capacity()) for key in (cell.key, *cell.alike)), Capacity())
            found[cell.key] = [(_shown(cell, (own.line(),), ()), own, sheet_of.get(cell.key, 0))]
        elif is_busbar(cell) or cell is root:
            drawn = [each for each in below if with_inverters or each[0].aligned != "inverter"]
            children = _by_sheet(drawn) if sheet_of else [each for each, _, _ in drawn]
            lines = (*_of_role(cell, Role.SUPPLY), *_of_role(cell, Role.SETTING)) if cell is root else (total.line(),)
            found[cell.key] = [(_shown(cell, lines, tuple(children)), total, 0)]
        elif _is_gone_through(cell, [each for each, _, _ in below]):
            found[cell.key] = [(_shown(cell, cell.below[:1], (below[0][0],), referring=False), total, 0)]
        else:
            found[cell.key] = below
    return found[root.key][0][0]


def _is_gone_through(cell: Cell, below: Sequence[Cell]) -> bool:
    """Return whether all that a board feeds in flows through an apparatus."""
    if len(below) != 1 or below[0].aligned == "inverter":
        return False
    return cell.along is None and not cell.symbol.startswith("surge")


def _of_role(cell: Cell, role: Role) -> tuple[Line, ...]:
    return tuple(line for line in cell.below if line.role is role)


def _shown(cell: Cell, below: tuple[Line, ...], children: tuple[Cell, ...], *, referring: bool = True) -> Cell:
    """Return a cell of the overview for one of the diagram. referring: the last line says where that is."""
    own, names = names_of(cell)
    above = (Line(Role.DESIGNATION, sequence((line.said for line in own), " ")), *names)
    if is_busbar(cell):
        above = (Line(Role.DESIGNATION, sequence((line.said for line in above), " ")),)
    join = cell.join if cell.join is Join.SPAN and children else Join.TRUNK
    lines = _referring(below) if referring else below
    return Cell(
        OVERVIEW + cell.key, cell.symbol, above, lines, aligned=cell.aligned, kind=cell.kind, status=cell.status,
        join=join, children=children, boxed=cell.boxed,
    )  # fmt: skip


def _referring(lines: tuple[Line, ...]) -> tuple[Line, ...]:
    """Return lines the last of which says where the device is drawn."""
    return (*lines[:-1], replace(lines[-1], references_count=1)) if lines else (REFERENCE,)


def _by_sheet(cells: list[tuple[Cell, Capacity, int]]) -> list[Cell]:
    """Return the cells with inverters that follow each other on one sheet made one."""
    runs: list[list[tuple[Cell, Capacity, int]]] = []
    for each in cells:
        last = runs[-1][-1] if runs else None
        if last and each[0].aligned == "inverter" == last[0].aligned and each[2] == last[2]:
            runs[-1].append(each)
        else:
            runs.append([each])
    return [_one(run) if len(run) > 1 else run[0][0] for run in runs]


def _one(run: list[tuple[Cell, Capacity, int]]) -> Cell:
    total = sum((capacity for _, capacity, _ in run), Capacity())
    name = joined(designation_of(cell) for cell, *_ in run)
    said: Sayable = sequence([amount(total.inverters_count, "×"), name], " ")
    return replace(
        run[0][0], above=(Line(Role.DESIGNATION, said),), below=_referring((total.line(),)), status="new"
    )  # fmt: skip
