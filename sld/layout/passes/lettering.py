"""The label lines of every cell in letters: here what is still to be said is said, in the language of the diagram.

Before: the tree. After: each node has its upper and lower lines and the one at its conductor to earth as text, not yet
placed. What a data chain has to say stands below its devices. The lengths of data cables are left to the schedule.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from sld.layout.diagram.bus_words import bus_lines
from sld.layout.diagram.diagram import BusChain, EarthTap
from sld.layout.diagram.line import Line, Role
from sld.layout.diagram.wrapping import broken
from sld.layout.passes.tree import Tree
from sld.layout.plan import Referring
from sld.symbols.stroke import Text
from sld.words import Language

__all__ = ["Letters", "lettered", "letters_of", "tap_letters"]

_CHAIN_LINE_MM = 26.0
"""Longer lines about chains are broken."""

_TAP_LINE_MM = 42.0
"""Longer names of what is bonded are broken: the bar would widen the sheet."""


@dataclass(frozen=True, slots=True)
class Letters:
    """The lines of a cell. earth: at its conductor to earth, None where it has none."""

    upper: tuple[Text, ...]
    lower: tuple[Text, ...]
    earth: Text | None


def lettered(lines: Iterable[Line], language: Language) -> tuple[Text, ...]:
    """Return lines in letters, those without any left out."""
    found = (_text(line, language) for line in lines)
    return tuple(text for text in found if text.text)


def _text(line: Line, language: Language) -> Text:
    text = language.say(line.said)
    return Referring.roomy(text, line.references_count) if line.references_count else Text((0.0, 0.0), text)


def letters_of(tree: Tree, chains: Iterable[BusChain], language: Language) -> tuple[Letters, ...]:
    """Return the lines of each node in letters."""
    about_chains: list[list[Line]] = [[] for _ in tree.nodes]
    for chain in chains:
        for key, line in bus_lines(chain):
            about_chains[tree.index[key]].extend(broken((line,), _CHAIN_LINE_MM, language))
    found = []
    for node, further in zip(tree.nodes, about_chains, strict=True):
        cell = node.cell
        earth = _text(cell.earth, language) if cell.earth else None
        found.append(Letters(lettered(cell.above, language), lettered((*cell.below, *further), language), earth))
    return tuple(found)


def tap_letters(tap: EarthTap, language: Language) -> tuple[Text, ...]:
    """Return the lines of a terminal of the earth bar in letters."""
    lines = (
        part
        for line in tap.lines
        for part in (broken((line,), _TAP_LINE_MM, language) if line.role is Role.NAME else (line,))
    )
    return lettered(lines, language)
