"""Designations in the row of an inverter without the inverter: `-QB1` beside `-TB1` is `-TB1-QB1`.

A reference designation may be given from the object that it belongs to on, where that is clear from the place
(IEC 81346-1, from memory). Here the object is the inverter that the row leads to.
"""

from __future__ import annotations

from collections.abc import Container

from sld.frozen import replace
from sld.layout.diagram.branch import branch
from sld.layout.diagram.diagram import Cell, Diagram
from sld.layout.diagram.line import Line, Role
from sld.words import Verbatim

__all__ = ["inverters_of", "names_of_inverter", "owners_of", "relative"]


def inverters_of(diagram: Diagram) -> frozenset[str]:
    """Return the designations of the inverters that are drawn."""
    cells = (cell for top in diagram.trees for cell in branch(top))
    return frozenset(name for cell in cells for name in names_of_inverter(cell))


def names_of_inverter(cell: Cell) -> tuple[str, ...]:
    """Return the designations of a cell that is an inverter, none of another."""
    return tuple(filter(None, map(_name, cell.above))) if cell.aligned == "inverter" else ()


def owners_of(cell: Cell) -> tuple[str, ...]:
    """Return for each line above a cell from what its designation would go on, empty where from nothing."""
    return tuple(map(_owner, cell.above))


def relative(cell: Cell, inverters: Container[str]) -> tuple[Line, ...]:
    """Return the lines above a cell, its designation from its inverter on where that is drawn too."""
    return tuple(_shortened(line, inverters) for line in cell.above)


def _name(line: Line) -> str:
    return line.said.text if line.role is Role.DESIGNATION and isinstance(line.said, Verbatim) else ""


def _owner(line: Line) -> str:
    name = _name(line)
    return name[: max(name.find("-", 1), 0)]


def _shortened(line: Line, inverters: Container[str]) -> Line:
    owner = _owner(line)
    return replace(line, said=Verbatim(_name(line)[len(owner) :])) if owner in inverters else line
