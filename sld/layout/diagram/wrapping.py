"""Label lines broken at a width, all cells of a diagram at once: Diagram -> Diagram. Here words are chosen.

A line is broken at common spaces; what belongs together has no-break spaces inside.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from sld.layout.diagram.branch import branch
from sld.layout.diagram.diagram import Cell, Diagram
from sld.layout.diagram.line import Line, Role
from sld.symbols.typeface import text_width_mm
from sld.words import Language, verbatim
from sld.words.phrase import NO_BREAK, SOFT_HYPHEN

__all__ = ["LINE_WIDTHS_MM", "broken", "lines_wrapped", "worded"]

LINE_WIDTHS_MM = (46.0, 28.0, 19.0)
"""Lines beside a symbol are broken at one of these widths, so that one long name does not widen a whole lane; the
narrower ones make a diagram that is narrower and taller."""

_FAR_TOO_LONG_FACTOR = 1.2
"""A single word up to this multiple of the width stands on a line of its own, a longer one is torn."""

_WHOLE = (Role.COUNT, Role.DESIGNATION, Role.TYPE, Role.CONDUCTORS)


def lines_wrapped(diagram: Diagram, width_mm: float) -> Diagram:
    """Return the diagram with the label lines of all cells broken at a width; designations stay whole.

    Types of cables stand beside them in the widest form only; the schedule of cables has them too.
    """
    roomy = width_mm == LINE_WIDTHS_MM[0]

    def wrapped(lines: tuple[Line, ...]) -> tuple[Line, ...]:
        return broken(tuple(each for each in lines if roomy or each.role is not Role.TYPE), width_mm, diagram.language)

    return _with_lines(diagram, wrapped)


def worded(diagram: Diagram) -> Diagram:
    """Return the diagram with its lines in words: said once where several widths are to be tried."""

    def said(lines: tuple[Line, ...]) -> tuple[Line, ...]:
        return tuple(replace(line, said=verbatim(line.said.said(diagram.language))) for line in lines)

    return _with_lines(diagram, said)


def _with_lines(diagram: Diagram, change: Callable[[tuple[Line, ...]], tuple[Line, ...]]) -> Diagram:
    """Return the diagram with the lines of all cells changed."""

    def changed(top: Cell) -> Cell:
        stack: list[Cell] = []
        for cell in reversed(list(branch(top))):
            children = tuple(stack.pop() for _ in cell.children)
            along = change((cell.along,))[0] if cell.along else None
            stack.append(
                replace(cell, above=change(cell.above), below=change(cell.below), along=along, children=children)
            )
        return stack[0]

    root, *others = (changed(top) for top in (*diagram.trees, *diagram.free))
    count = len(diagram.further)
    return replace(diagram, root=root, further=tuple(others[:count]), free=tuple(others[count:]))


def broken(lines: tuple[Line, ...], width_mm: float, language: Language) -> tuple[Line, ...]:
    """Return the lines with each broken at a width; designations, what stands along a conductor and what has room for
    references stay whole.
    """
    found: list[Line] = []
    for line in lines:
        if line.references_count or line.role in _WHOLE:
            found.append(line)
        else:
            found += [Line(line.role, verbatim(row)) for row in _rows(line.said.said(language), width_mm)]
    return tuple(found)


def _rows(text: str, width_mm: float) -> list[str]:
    """Return a text in rows."""
    if "  " not in text and _width_mm(text) <= width_mm:
        return [text.replace(SOFT_HYPHEN, "")]
    found: list[str] = []
    row = ""
    for word in filter(None, text.split(" ")):
        for part in _torn(word, width_mm):
            longer = f"{row} {part}" if row else part
            if row and _width_mm(longer) > width_mm:
                found.append(row)
                longer = part
            row = longer
    return [each.replace(SOFT_HYPHEN, "") for each in (*found, row)]


def _width_mm(text: str) -> float:
    return text_width_mm(text.replace(NO_BREAK, " ").replace(SOFT_HYPHEN, ""))


def _torn(word: str, width_mm: float) -> list[str]:
    """Return a word in parts that fit, where it is too long for a line with its symbol, or far too long at all."""
    if SOFT_HYPHEN in word and _width_mm(word) > width_mm:
        return _divided(word.split(SOFT_HYPHEN), width_mm)
    if NO_BREAK in word or _width_mm(word) <= _FAR_TOO_LONG_FACTOR * width_mm:
        return [word]
    parts = [""]
    for sign in word:
        if text_width_mm(parts[-1] + sign) > width_mm:
            parts.append("")
        parts[-1] += sign
    return parts


def _divided(parts: list[str], width_mm: float) -> list[str]:
    """Return a word divided where its catalogue allows it, in as few rows as there may be."""
    found = [parts[0]]
    for part in parts[1:]:
        if _width_mm(f"{found[-1]}{part}-") <= width_mm:
            found[-1] += part
        else:
            found.append(part)
    return [*(f"{part}-" for part in found[:-1]), found[-1]]
