"""The overview of a diagram that is drawn on several sheets: supply, boards and inverters, and where each is drawn.

It is a Diagram of its own, arranged as any other. Nothing in it is a part of the system: the keys of its cells begin
with `overview/`, and each names the place of the cell that it stands for.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from sld.layout.diagram.branch import branch
from sld.layout.diagram.diagram import Cell, Diagram, Join
from sld.layout.diagram.fold import names_of
from sld.layout.diagram.ranges import joined
from sld.layout.parts.marks import designation_of, is_busbar
from sld.layout.parts.reference import PLACEHOLDER
from sld.model.device import InverterUnit, StringGroup
from sld.model.system import System
from sld.quantity import shown

__all__ = ["OVERVIEW", "Capacity", "capacity_of", "overviews"]

OVERVIEW = "overview/"


@dataclass(frozen=True, slots=True)
class Capacity:
    """What inverters come to: how many they are, their highest apparent power, their strings."""

    inverters_count: int = 0
    apparent_power_va: float = 0.0
    strings_count: int = 0

    def __add__(self, other: Capacity) -> Capacity:
        return Capacity(
            self.inverters_count + other.inverters_count,
            self.apparent_power_va + other.apparent_power_va,
            self.strings_count + other.strings_count,
        )

    def words(self) -> str:
        """Return power and number of strings."""
        plural = "" if self.strings_count == 1 else "s"
        return f"{shown(self.apparent_power_va / 1000)} kVA, {self.strings_count} string{plural}"


def capacity_of(system: System) -> dict[str, Capacity]:
    """Return what each inverter comes to, by its key."""
    strings: dict[str, int] = {}
    for group in system.of(StringGroup):
        strings[group.owner] = strings.get(group.owner, 0) + group.given.count
    return {unit.key: Capacity(1, unit.apparent_power_va, strings.get(unit.key, 0)) for unit in system.of(InverterUnit)}


def overviews(
    diagram: Diagram, system: System, sheet_of: Mapping[str, int]
) -> Iterator[tuple[Diagram, dict[str, tuple[str, ...]]]]:  # fmt: skip
    """Yield overviews and what their cells refer to: with each inverter, with those of one sheet as one, with none.

    diagram: the whole one. sheet_of: the number of the sheet that each of its cells is on.
    """
    capacities = capacity_of(system)
    for merged, with_inverters in ((False, True), (True, True), (False, False)):
        root = _tree(diagram.root, capacities, sheet_of if merged else {}, with_inverters)
        references: dict[str, tuple[str, ...]] = {cell.key: (cell.key.removeprefix(OVERVIEW),) for cell in branch(root)}
        yield Diagram(root, symbols=diagram.symbols), references


def _tree(root: Cell, capacities: Mapping[str, Capacity], sheet_of: Mapping[str, int], with_inverters: bool) -> Cell:
    """Return the tree of what an overview shows, built from the leaves."""
    found: dict[str, list[tuple[Cell, Capacity, int]]] = {}
    for cell in reversed(list(branch(root))):
        below = [each for child in cell.children for each in found.pop(child.key)]
        total = sum((capacity for _, capacity, _ in below), Capacity())
        if cell.aligned == "inverter":
            own = sum((capacities.get(key, Capacity()) for key in (cell.key, *cell.alike)), Capacity())
            lines = (own.words(), PLACEHOLDER)
            found[cell.key] = [(_shown(cell, lines, ()), own, sheet_of.get(cell.key, 0))]
        elif is_busbar(cell) or cell is root:
            drawn = [each for each in below if with_inverters or each[0].aligned != "inverter"]
            children = _by_sheet(drawn) if sheet_of else [each for each, _, _ in drawn]
            words = cell.below[:3] if cell is root else (total.words(),)
            found[cell.key] = [(_shown(cell, (*words, PLACEHOLDER), tuple(children)), total, 0)]
        elif cell.symbol == "transformer":
            words = (*cell.below[:1], PLACEHOLDER)
            found[cell.key] = [(_shown(cell, words, tuple(each for each, _, _ in below)), total, 0)]
        else:
            found[cell.key] = below
    return found[root.key][0][0]


def _shown(cell: Cell, below: tuple[str, ...], children: tuple[Cell, ...]) -> Cell:
    """Return a cell of the overview for one of the diagram."""
    designation, names = names_of(cell)
    return Cell(
        OVERVIEW + cell.key, cell.symbol, (" ".join(designation), *names), below, aligned=cell.aligned, kind=cell.kind,
        status=cell.status, join=cell.join if cell.join is Join.SPAN and children else Join.TRUNK, children=children,
    )  # fmt: skip


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
    return replace(
        run[0][0], above=(f"{total.inverters_count} × {name}",), below=(total.words(), PLACEHOLDER), status="new"
    )
