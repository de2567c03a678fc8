"""The form of a part: two that differ in numbers of as many digits alone have the same, and so plans of the same size.

All digits of the font are equally wide (`tests/layout` holds it to that), lines are broken between words, and where
equal words matter (frames, data cables, conductors to earth) the form tells which of them are.
"""

from __future__ import annotations

from collections.abc import Hashable, Iterable
from typing import NamedTuple

from sld.layout.diagram.branch import branch
from sld.layout.diagram.diagram import BusChain, Cell, Diagram
from sld.layout.diagram.line import Line
from sld.layout.diagram.relative import names_of_inverter, owners_of
from sld.words import NOTHING, Language, Sayable

__all__ = ["Forms"]

_DIGITS = str.maketrans("123456789", "000000000")

_MOST_CELLS = 20_000
"""Of so many cells the forms are kept."""


class _Known(NamedTuple):
    """What is known of a cell, and the cell, so that no other takes its identity.

    form: without what it depends on others for. inverters: the designations it has as an inverter. owners: the
    designations that its own would be told from on.
    """

    cell: Cell
    form: Hashable
    inverters: tuple[str, ...]
    owners: tuple[str, ...]


class Forms:
    """Tells the form of diagrams in one language and one family of symbols."""

    def __init__(self, language: Language) -> None:
        self._language = language
        self._cells: dict[int, _Known] = {}

    def of(self, diagram: Diagram) -> Hashable | None:
        """Return the form of a diagram, None where it has what is on the first sheet alone, or equal data devices."""
        if diagram.earth is not None or any(step.alike for chain in diagram.chains for step in chain.steps):
            return None
        cells = [self._known(cell) for top in (*diagram.trees, *diagram.free) for cell in branch(top)]
        inverters = {name for known in cells for name in known.inverters}
        places = {known.cell.key: place for place, known in enumerate(cells)}
        enclosures: dict[str, int] = {}
        earths: dict[Line, int] = {}
        return (
            len(diagram.trees),
            tuple(
                (
                    known.form,
                    enclosures.setdefault(known.cell.enclosure, len(enclosures)),
                    tuple(owner in inverters for owner in known.owners),
                    earths.setdefault(known.cell.earth, len(earths)) if known.cell.earth else None,
                )
                for known in cells
            ),
            tuple((enclosures.get(each.key), self._text(each.caption)) for each in diagram.enclosures),
            tuple(self._chain(chain, places) for chain in diagram.chains),
        )

    def _known(self, cell: Cell) -> _Known:
        known = self._cells.get(id(cell))
        if known is None:
            if len(self._cells) >= _MOST_CELLS:
                self._cells.clear()
            known = self._cells[id(cell)] = _Known(cell, self._form(cell), names_of_inverter(cell), owners_of(cell))
        return known

    def _form(self, cell: Cell) -> Hashable:
        single = tuple(self._lines(filter(None, (line,))) for line in (cell.along, cell.earth))
        words = (cell.symbol, cell.aligned, cell.earth_symbol, cell.status, cell.kind.value, cell.join.value)
        counts = (len(cell.children), len(cell.flags), bool(cell.alike), cell.enclosure == cell.key)
        return self._lines(cell.above), self._lines(cell.below), single, words, counts

    def _lines(self, lines: Iterable[Line]) -> Hashable:
        return tuple(
            (
                each.role.value,
                self._text(each.said),
                each.references_count,
                each.after,
                self._text(each.bare or NOTHING),
            )
            for each in lines
        )

    def _chain(self, chain: BusChain, places: dict[str, int]) -> Hashable:
        steps = tuple((places.get(each.key), each.terminated, _digits_count(each.address)) for each in chain.steps)
        return self._text(chain.said), self._text(chain.protocol), chain.settings_told, chain.medium.value, steps

    def _text(self, said: Sayable) -> str:
        """Return a text as it is before its lines are broken, with every digit the same."""
        return said.said(self._language).translate(_DIGITS)


def _digits_count(number: int | None) -> int:
    return 0 if number is None else len(str(number))
