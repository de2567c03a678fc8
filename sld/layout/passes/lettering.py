"""The label lines of every cell in letters: here what is still to be said is said, in the language of the diagram.

Before: the tree. After: each node has its upper and lower lines and the one at its conductor to earth as text, not yet
placed. What a data chain has to say stands below its devices. The lengths of data cables are left to the schedule.
"""

from __future__ import annotations

from collections.abc import Container, Iterable, Mapping, Sequence
from dataclasses import field
from functools import lru_cache

from sld.frozen import dataclass, replace
from sld.layout.diagram.bus_words import bus_lines
from sld.layout.diagram.diagram import BusChain, Diagram, EarthTap
from sld.layout.diagram.filling import together
from sld.layout.diagram.line import Line, Role, joined
from sld.layout.diagram.wrapping import broken, is_below_input
from sld.layout.passes.cabling import Cabling
from sld.layout.passes.tree import Tree
from sld.layout.plan import Referring
from sld.symbols.stroke import Text
from sld.words import Language, sequence

__all__ = [
    "TAP_LINES_MM",
    "TAP_LINE_MM",
    "Letters",
    "about_chains",
    "lettered",
    "letters_of",
    "tap_letters",
    "with_names",
]

_CHAIN_LINE_MM = 26.0
"""Longer lines about chains are broken."""

_INVERTER_LINE_MM, _WIDE_INVERTER_LINE_MM, _SHORT_LINE_MM = 46.0, 60.0, 30.0
"""Longer lines of an inverter are two; the second where they stand below all that feeds it, the last beside rows."""

_FEEDING_LINES = 2
"""So many lines has what feeds an input at most where an inverter's line may go on below it."""

TAP_LINE_MM = 42.0
"""Longer names of what is bonded are broken: the bar would widen the sheet."""

TAP_LINES_MM = (52.0, 42.0, 38.0, 34.0, 30.0, 26.0)
"""Widths among which each is chosen where the bar has to fit one row."""


@dataclass(frozen=True, slots=True)
class Letters:
    """The lines of a cell. along: beside its conductor; earth: at its conductor to earth; None where there is none.

    from_left, to_right: they begin, or end, at the edge of the symbol, as at the ends of a diagram; else centred.
    deep: the lower ones begin a line lower, so that long ones go on below what is said of the cable beside them.
    beside: those of what hangs from the wire stand on its right, so that rows need less height.
    to_left: all of them stand on the left of the symbol, which no conductor leaves, the upper ones in one line.
    below_input: the lower ones end at the edge of the symbol, below those of the input on its left.
    names: those of data chains, at the branches in these ports. boxed: the lower ones stand in a box.
    low: the row needs as little height as it can; after: then the lines stand on the right of the symbol, above and
    below its conductor.
    """

    upper: tuple[Text, ...]
    lower: tuple[Text, ...]
    earth: Text | None
    along: Text | None = None
    from_left: bool = False
    to_right: bool = False
    deep: bool = False
    beside: bool = False
    to_left: bool = False
    below_input: bool = False
    names: Mapping[int, Text] = field(default_factory=dict)
    boxed: bool = False
    low: bool = False
    after: bool = False


def lettered(lines: Iterable[Line], language: Language) -> tuple[Text, ...]:
    """Return lines in letters, those without any left out."""
    found = (_text(line, language) for line in joined(lines))
    return tuple(text for text in found if text.text)


def _text(line: Line, language: Language) -> Text:
    text = language.say(line.said)
    return Referring.roomy(text, line.references_count) if line.references_count else Text((0.0, 0.0), text)


def about_chains(chains: Iterable[BusChain], language: Language, named: Container[str]) -> dict[str, list[Line]]:
    """Return what the data chains have to say below their devices, by key. named: those with their name at the line."""
    found: dict[str, list[Line]] = {}
    for chain in chains:
        for key, line in bus_lines(chain, named=chain.key in named):
            found.setdefault(key, []).extend(broken((line,), _CHAIN_LINE_MM, language))
    return found


def letters_of(
    tree: Tree, about: Mapping[str, Sequence[Line]], diagram: Diagram, bonded: Container[int], *, goes_on: bool
) -> tuple[Letters, ...]:  # fmt: skip
    """Return the lines of each node in letters. about: what data chains have to say, by key.

    bonded: nodes whose conductor to earth has no line of its own. goes_on: the first root is no end of the diagram.
    """
    found, language, narrow, low = [], diagram.language, diagram.narrow, diagram.low
    few_free = tree.has_few_free
    for place, node in enumerate(tree.nodes):
        cell = node.cell
        earth = _text(cell.earth, language) if cell.earth and place not in bonded else None
        along = _text(cell.along, language) if cell.along else None
        inverter = is_below_input(cell) and not (narrow or low)
        told, more = (*cell.below, *about.get(cell.key, ())), len(about.get(cell.key, ()))
        if low and cell.aligned == "inverter":
            told = together(told, _INVERTER_LINE_MM, language)
        if inverter and more == 1:  # more of them are one line that was broken
            told = together(told, _line_mm(tree, place), language)
        elif cell.aligned == "inverter" and more and not (narrow or low):
            told = (*cell.below[:-1], *together(told[len(cell.below) - 1 :], _SHORT_LINE_MM, language))
        lower = lettered(told, language)
        is_last, is_first = not node.children and not node.free, node.parent < 0 and not node.free
        is_first = is_first and not node.spans and not (goes_on and place == 0)
        above = () if cell.enclosure == cell.key else cell.above  # else the caption of its frame names it
        from_left = is_last and not is_first
        if cell.boxed:
            above, lower = (), lettered((*cell.above, *told), language)
        parent = tree.nodes[node.parent].cell if node.parent >= 0 else None
        deep = from_left and parent is not None and parent.along is not None and bool(parent.below)
        upper = lettered(above, language)
        found.append(
            Letters(
                upper, lower, earth, along, from_left, is_first, deep, not narrow, node.free and few_free, inverter,
                boxed=cell.boxed, low=low, after=low and cell.aligned == "inverter",
            )
        )  # fmt: skip
    return tuple(found)


def _line_mm(tree: Tree, place: int) -> float:
    """Return how wide a line of an inverter may be that stands below those of its only input."""
    (terminal,) = tree.nodes[place].children
    feeding = [tree.nodes[each].cell for each in tree.nodes[terminal].children]
    is_low = len(feeding) == 1 and len(feeding[0].below) <= _FEEDING_LINES
    return _WIDE_INVERTER_LINE_MM if is_low else _INVERTER_LINE_MM


def with_names(letters: Sequence[Letters], cabling: Cabling, diagram: Diagram) -> tuple[Letters, ...]:
    """Return the lines of the nodes with the names of the data chains that stand at a branch."""
    found = list(letters)
    for chain in diagram.chains:
        text = Text((0.0, 0.0), diagram.language.say(sequence([chain.said, chain.protocol], " ")))
        if text.text and chain.key in cabling.named:
            node, port = cabling.named[chain.key]
            found[node] = replace(found[node], names={**found[node].names, port: text})
    return tuple(found)


@lru_cache(maxsize=512)
def tap_letters(tap: EarthTap, language: Language, width_mm: float = TAP_LINE_MM) -> tuple[Text, ...]:
    """Return the lines of a terminal of the earth bar in letters, its name broken at a width, at a narrow one all.

    They are kept: the bar is the same in all plans of a diagram.
    """
    lines = joined(tap.lines)
    names = tuple(replace(line, role=Role.NAME) for line in lines if line.role is Role.DESIGNATION)
    further = tuple(line for line in lines if line.role is not Role.DESIGNATION)
    if width_mm < TAP_LINE_MM:
        further = together(broken(further, width_mm, language), width_mm, language)
    return lettered((*broken(names, width_mm, language), *further), language)
