"""Lines set for rows of little height, where many stand below each other: one line above a symbol, one below it.

The first of several lines stands behind the designation; what a cable is along its conductor, behind its designation;
what strings are below theirs; an inverter's lines on its right. Nothing is left out.
"""

from __future__ import annotations

from collections.abc import Sequence

from sld.frozen import replace
from sld.layout.diagram.diagram import Cell
from sld.layout.diagram.filling import Broken, few, together
from sld.layout.diagram.line import Line
from sld.symbols.typeface import text_width_mm
from sld.words import Language, sequence

__all__ = ["low"]

_STRING_MM = 80.0
"""Lines of strings go on below their cable and what follows it."""

_WIDEST_MM = 52.0
"""Wider lines below a symbol are two."""


def low(cell: Cell, above: Sequence[Line], language: Language, broken: Broken) -> Cell:
    """Return a cell with its lines set so. above: its designation and names."""
    if cell.along is not None:
        said = sequence([*(line.said for line in above), cell.along.said], " ")
        return replace(cell, above=(), along=replace(cell.along, said=said), below=_one(cell.below, language, broken))
    if cell.aligned == "string" and cell.below and above:
        said = sequence([*(line.said for line in above), cell.below[0].said], " ")
        first = replace(above[0], said=said, references_count=cell.below[0].references_count)
        return replace(cell, above=(), below=together((first, *cell.below[1:]), _STRING_MM, language))
    if cell.symbol == "continued_left" and len(above) == len(cell.below) == 1:
        return replace(cell, above=(replace(cell.below[0], references_count=above[0].references_count),), below=())
    if len(above) == 1 and len(cell.below) > 1:
        first = cell.below[0]
        said = sequence([above[0].said, first.said], " ")
        behind = replace(above[0], said=said, references_count=first.references_count)
        return replace(cell, above=(behind,), below=_one(cell.below[1:], language, broken))
    return replace(cell, above=together(above, _WIDEST_MM, language), below=_one(cell.below, language, broken))


def _one(lines: Sequence[Line], language: Language, broken: Broken) -> tuple[Line, ...]:
    """Return lines as one, as two where that were too wide."""
    if not lines:
        return ()
    for count in (1, 2):
        found = few(lines, _WIDEST_MM, count, language, broken)
        if all(text_width_mm(language.say(line.said)) <= _WIDEST_MM for line in found):
            return found
    return found
