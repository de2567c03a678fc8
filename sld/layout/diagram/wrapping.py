"""Label lines broken at a width, all cells of a diagram at once: Diagram -> Diagram. Here words are chosen.

A line is broken at common spaces; what belongs together has no-break spaces inside, of which those between a symbol and
its value give way where both together are too wide.
"""

from __future__ import annotations

from dataclasses import replace

from sld.layout.diagram.branch import branch, rebuilt
from sld.layout.diagram.diagram import Cell, Diagram
from sld.layout.diagram.line import Line, Role
from sld.symbols.typeface import text_width_mm
from sld.words import Language, verbatim
from sld.words.phrase import LOOSE, NO_BREAK

__all__ = ["LINE_WIDTHS_MM", "broken", "lines_wrapped"]

LINE_WIDTHS_MM = (24.5, 19.0, 15.0)
"""Lines beside a symbol are broken at one of these widths, so that one long name does not widen a whole lane; the
narrower ones make a diagram that is narrower and taller."""

_FAR_TOO_LONG_FACTOR = 1.6
"""A single word up to this multiple of the width stands on a line of its own, a longer one is torn."""

_WHOLE = (Role.COUNT, Role.DESIGNATION)


def lines_wrapped(diagram: Diagram, width_mm: float) -> Diagram:
    """Return the diagram with the label lines of all cells broken at a width; designations stay whole."""
    language = diagram.language

    def wrapped(top: Cell) -> Cell:
        return rebuilt([
            replace(
                cell,
                above=tuple(part for each in cell.above for part in _parts(each, width_mm, language)),
                below=broken(cell.below, width_mm, language),
            )
            for cell in branch(top)
        ])  # fmt: skip

    root, *others = (wrapped(top) for top in (*diagram.trees, *diagram.free))
    count = len(diagram.further)
    return replace(diagram, root=root, further=tuple(others[:count]), free=tuple(others[count:]))


def _parts(line: Line, width_mm: float, language: Language) -> tuple[Line, ...]:
    return (line,) if line.role in _WHOLE else broken((line,), width_mm, language)


def broken(lines: tuple[Line, ...], width_mm: float, language: Language) -> tuple[Line, ...]:
    """Return the lines with each broken at a width; what has room for references is left whole."""
    found: list[Line] = []
    for line in lines:
        if line.references_count:
            found.append(line)
            continue
        rows = _rows(line.said.said(language), width_mm)
        found += [line] if len(rows) == 1 else [Line(line.role, verbatim(row)) for row in rows]
    return tuple(found)


def _rows(text: str, width_mm: float) -> list[str]:
    """Return a text in rows."""
    found: list[str] = []
    row = ""
    for word in filter(None, text.split(" ")):
        for part in _torn(word, width_mm):
            longer = f"{row} {part}" if row else part
            if row and _width_mm(longer) > width_mm:
                found.append(row)
                longer = part
            row = longer
    return [*found, row]


def _width_mm(text: str) -> float:
    return text_width_mm(text.replace(NO_BREAK, " ").replace(LOOSE, " "))


def _torn(word: str, width_mm: float) -> list[str]:
    """Return a word in parts that fit, where it is too long for a line with its symbol, or far too long at all."""
    if LOOSE in word and _width_mm(word) > width_mm:
        return [part for each in word.split(LOOSE) for part in _torn(each, width_mm)]
    if NO_BREAK in word or LOOSE in word or text_width_mm(word) <= _FAR_TOO_LONG_FACTOR * width_mm:
        return [word]
    parts = [""]
    for sign in word:
        if text_width_mm(parts[-1] + sign) > width_mm:
            parts.append("")
        parts[-1] += sign
    return parts
