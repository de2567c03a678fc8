"""What differs between devices that are drawn once: the lengths of their cables, and what follows from them."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from sld.documents.cell import Cell, Designations, State
from sld.documents.drawing.measures import Measured
from sld.documents.section import Column, Table
from sld.layout.diagram.ranges import joined, listed
from sld.layout.plan import Plan
from sld.words import Sayable, phrase

__all__ = ["differences"]

_COLUMNS = (Column(phrase("Designation"), 1.0, short=phrase("Designation")), Column(phrase("Value"), right=True))


def differences(measured: Mapping[str, Measured], plans: Iterable[Plan]) -> Table:
    """Return the table of what is drawn once and not alike, a line for each value; without lines where there is none.

    measured: by key, what may differ.
    """
    rows: list[tuple[Cell, ...]] = []
    for cell in (cell for plan in plans for cell in plan.cells if cell.alike):
        alike: dict[Sayable, list[Measured]] = {}
        for each in (measured[key] for key in (cell.key, *cell.alike) if key in measured):
            alike.setdefault(each.value.text, []).append(each)
        if len(alike) > 1:
            rows += [(_named([each.designation for each in of]), of[0].value) for of in alike.values()]
    return Table("differences", phrase("Drawn once, equal but for"), _COLUMNS, tuple(rows))


def _named(names: list[str]) -> Cell:
    """Return designations as a list; on paper their numbers alone where that is shorter: -TB1, 2, 11, 12-WD1."""
    whole = joined(names)
    short = min((each for each in (whole, listed(names, len(names))) if each), key=len)
    return Cell(Designations(((whole,),), short=((short,),)), State.GIVEN)
