"""Label lines put together so that there are few of them: lines side by side in their order, none left out.

Three lines below a symbol are what a row has room for; a label beside a conductor that leads down is filled to its
width.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

from sld.layout.diagram.line import Line
from sld.symbols.typeface import text_width_mm
from sld.words import Language, sequence, verbatim

__all__ = ["Broken", "few", "filled", "together"]

Broken = Callable[[Line, float], tuple[Line, ...]]
"""A line broken at a width."""

_WIDER_MM = 2.0
"""So much wider is the next width tried."""


def filled(lines: Sequence[Line], width_mm: float, language: Language, broken: Broken) -> tuple[Line, ...]:
    """Return the lines broken at a width, each beginning behind the one before as far as they fit."""
    found: list[Line] = []
    for line in lines:
        first, *further = broken(line, width_mm)
        longer = _behind(found[-1], first, language) if found else None
        if longer is not None and text_width_mm(language.say(longer.said)) <= width_mm:
            found[-1] = longer
        else:
            found.append(first)
        found += further
    return tuple(found)


def together(lines: Sequence[Line], width_mm: float, language: Language) -> tuple[Line, ...]:
    """Return lines that were broken, each beginning behind the one before as far as they fit a width."""
    return filled(lines, width_mm, language, lambda line, _: (line,))


def few(
    lines: Sequence[Line], width_mm: float, most_count: int, language: Language, broken: Broken
) -> tuple[Line, ...]:  # fmt: skip
    """Return the lines broken at a width; where they are more than so many, put together and as wide as that needs."""
    found = tuple(part for line in lines for part in broken(line, width_mm))
    least_count = max(most_count, sum(bool(line.references_count) for line in lines))
    if len(found) > least_count:
        width_mm = max(text_width_mm(language.say(line.said)) for line in found)
    while len(found) > least_count:
        width_mm += _WIDER_MM
        found = filled(lines, width_mm, language, broken)
    return found


def _behind(line: Line, after: Line, language: Language) -> Line | None:
    """Return a line with the next one behind it, None where one has room for references."""
    if line.references_count or after.references_count:
        return None
    return Line(line.role, verbatim(sequence([line.said, after.said]).said(language)))
