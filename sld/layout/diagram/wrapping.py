"""Label lines broken at a width, all cells of a diagram at once: Diagram -> Diagram. Here words are chosen.

A line is broken at common spaces; what belongs together has no-break spaces inside.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import lru_cache, partial
from operator import is_

from sld.frozen import dataclass, replace
from sld.layout.diagram.branch import branch
from sld.layout.diagram.diagram import Cell, Diagram, EarthBar, Join
from sld.layout.diagram.filling import few, filled
from sld.layout.diagram.line import Line, Role, joined
from sld.layout.diagram.low import low
from sld.layout.diagram.relative import inverters_of, relative
from sld.layout.diagram.trunk import trunk_of
from sld.symbols.typeface import text_width_mm
from sld.words import Language, Verbatim, sequence, verbatim
from sld.words.phrase import NO_BREAK, SOFT_HYPHEN

__all__ = ["LOW", "LOWEST", "MANNERS", "Manner", "broken", "is_below_input", "lines_wrapped", "worded"]


@dataclass(frozen=True, slots=True)
class Manner:
    """How lines beside symbols are set.

    width_mm: where they are broken, so that one long name does not widen a whole lane; a narrower one makes a diagram
    that is narrower and taller. typed: the types of cables stand beside them. terse: what a column of a schedule has
    is left to it (what cables carry, where devices are), and designations begin behind the inverter of their row.
    narrow: columns are to need little width, though rows need more height. low: rows are to need little height: one
    line above and one below a symbol.
    """

    width_mm: float
    typed: bool = False
    terse: bool = False
    narrow: bool = False
    low: bool = False


MANNERS = (
    Manner(46.0, typed=True),
    Manner(28.0),
    Manner(28.0, terse=True),
    Manner(17.5, terse=True, narrow=True),
)
"""The preferred one first, each of the others makes a smaller diagram."""

LOW, LOWEST = Manner(38.0, terse=True), Manner(38.0, terse=True, low=True)
"""For what is too tall: the other one where this is not too wide."""

_MOST_LINES, _INPUT_LINES, _INVERTER_LINES, _NARROW_LINES, _BOX_LINES = 3, 2, 2, 6, 4
"""Lines below a symbol."""

_LINES_A_ROW, _SPANNING_LINES = 4, 6
"""So many more have room beside each further row that a symbol spans; an inverter has no more than so many."""

_BELOW_CONDUCTOR_MM = 46.0
"""Lines that go on below what is said of the conductor beside them may be as wide."""

_LEAST_TRUNK_MM, _TRUNK_MM, _TRUNK_MORE_MM = 30.0, 38.0, 2.0
"""Lines beside a trunk are so much wider than others, within these limits."""

_SUPPLY_MM = 46.0
"""What is said of the supply stands on the other side of the trunk, or below it."""

_FREE_MM = 28.0
"""Lines of what has a row for itself are at least so wide: they widen no lane, and more of them need height."""

_INVERTER_MORE_MM = 8.0
"""Lines of an inverter that spans rows may be so much wider, that they are fewer."""

_FAR_TOO_LONG_FACTOR = 1.2
"""A single word up to this multiple of the width stands on a line of its own, a longer one is torn."""

_WHOLE = (Role.COUNT, Role.DESIGNATION, Role.TYPE, Role.CONDUCTORS)


def lines_wrapped(diagram: Diagram, manner: Manner, *, turned: bool = False) -> Diagram:
    """Return the diagram with the label lines of all cells set in a manner; designations stay whole.

    turned: it will be laid out so: labels of what all rows have in common stand beside it.
    """
    language = diagram.language
    trunk = trunk_of(diagram) if turned else None
    down = trunk.keys if trunk else ()
    trunk_mm = max(_LEAST_TRUNK_MM, min(_TRUNK_MM, manner.width_mm + _TRUNK_MORE_MM))
    free, roomy = {cell.key for cell in diagram.free}, replace(manner, width_mm=max(manner.width_mm, _FREE_MM))

    def set_in_it(cell: Cell, children: tuple[Cell, ...]) -> Cell:
        above = _kept(cell.above, manner)
        if cell.key in down:
            width_mm = _SUPPLY_MM if cell.key == diagram.root.key else trunk_mm
            return _beside_trunk(replace(cell, above=above, children=children), width_mm, language)
        if cell.boxed:
            return _in_box(replace(cell, above=above, children=children), manner, language)
        if manner.low:
            return low(replace(cell, children=children), above, language, partial(_broken, language=language))
        own = roomy if cell.key in free else manner
        width_mm, most_count = _room(cell, own)
        below = _few(_told(cell, children), width_mm, most_count, language)
        if cell.aligned == "inverter" and len(below) > _MOST_LINES and not manner.narrow:
            below = _three_or_more(cell.below, width_mm, most_count, language)
        if is_below_input(cell) and not manner.narrow:
            below = filled(cell.below, width_mm, language, partial(_broken, language=language))
        return _changed(cell, children, broken(above, own.width_mm, language), below, cell.along)

    return replace(
        _with_cells(_terse(diagram) if manner.terse else diagram, set_in_it),
        terse=manner.terse,
        narrow=manner.narrow,
        low=manner.low,
    )


def _three_or_more(
    lines: tuple[Line, ...], width_mm: float, most_count: int, language: Language
) -> tuple[Line, ...]:  # fmt: skip
    """Return the lines of an inverter put together so that there are three of them, more where those were too wide."""
    for count in range(_MOST_LINES, most_count):
        found = _few(lines, width_mm, count, language)
        if max(text_width_mm(language.say(line.said)) for line in found) <= width_mm + _INVERTER_MORE_MM:
            return found
    return _few(lines, width_mm, most_count, language)


def _told(cell: Cell, children: tuple[Cell, ...]) -> tuple[Line, ...]:
    """Return the lines below a cell; of the cable of strings not its status where they say the same."""
    if cell.along is None or not all(each.aligned == "string" and each.status == cell.status for each in children):
        return cell.below
    return tuple([line for line in cell.below if line.role is not Role.STATUS]) if children else cell.below


def _room(cell: Cell, manner: Manner) -> tuple[float, int]:
    """Return the width and the number of the lines below a symbol.

    Those of strings and of an inverter in one row go on below what is said of the conductor beside them.
    """
    spans_count = len(cell.children) if cell.join is Join.SPAN else 1
    if manner.narrow:
        return manner.width_mm, _NARROW_LINES + _LINES_A_ROW * max(spans_count - 1, 0)
    if is_below_input(cell):
        return max(manner.width_mm, _BELOW_CONDUCTOR_MM), _INVERTER_LINES
    width_mm = max(manner.width_mm, _BELOW_CONDUCTOR_MM) if cell.aligned == "string" else manner.width_mm
    most_count = _MOST_LINES + _LINES_A_ROW * max(spans_count - 1, 0)
    return width_mm, min(most_count, _SPANNING_LINES) if cell.aligned == "inverter" else most_count


def is_below_input(cell: Cell) -> bool:
    """Return whether the lines of an inverter stand below those of its only input, which are few enough for it."""
    if cell.aligned != "inverter" or len(cell.children) != 1:
        return False
    (child,) = cell.children
    return child.aligned == "input" and len(child.below) <= _INPUT_LINES and child.earth is None


@lru_cache(maxsize=2048)
def _few(lines: tuple[Line, ...], width_mm: float, most_count: int, language: Language) -> tuple[Line, ...]:
    """Return lines put together as `few` does: in several plans of a diagram most cells have the same."""
    return few(lines, width_mm, most_count, language, partial(_broken, language=language))


def _kept(lines: tuple[Line, ...], manner: Manner) -> tuple[Line, ...]:
    """Return the lines above a symbol without the type of a cable where it is left to its schedule."""
    return lines if manner.typed else tuple([each for each in lines if each.role is not Role.TYPE])


def _beside_trunk(cell: Cell, width_mm: float, language: Language) -> Cell:
    """Return a cell with its label set for the side of a conductor that leads down: its name, then filled lines."""
    first, names = _named(cell.above, width_mm, language)
    if first.role is not Role.DESIGNATION:
        return cell
    along = (replace(cell.along, role=Role.RATED),) if cell.along else ()
    told, part = (*names, *along, *cell.below), partial(_broken, language=language)
    lines = filled(told, width_mm, language, part)
    widest_mm = max((text_width_mm(language.say(line.said)) for line in lines), default=0.0)
    if widest_mm > width_mm:  # a long number that stays whole: then the others may be as long
        lines = filled(told, widest_mm, language, part)
    return replace(cell, above=(first, *lines), along=None, below=())


def _in_box(cell: Cell, manner: Manner, language: Language) -> Cell:
    """Return a cell with its lines set for a box: its name, then one fact a line as far as there are few."""
    width_mm = min(_SUPPLY_MM, max(manner.width_mm, _LEAST_TRUNK_MM))
    first, names = _named(cell.above, width_mm, language)
    above = (first, *broken(names, width_mm, language))
    return replace(cell, above=above, below=_few(cell.below, width_mm, _BOX_LINES, language))


def _named(lines: Sequence[Line], width_mm: float, language: Language) -> tuple[Line, tuple[Line, ...]]:
    """Return the designation with the names behind it where they fit a width, and what of them is left."""
    first, *names = joined(lines)
    name = sequence([first.said, *(line.said for line in names)], " ").said(language)
    if text_width_mm(name.replace(NO_BREAK, " ")) <= width_mm:
        return replace(first, said=verbatim(name)), ()
    return first, tuple(names)


def _broken(line: Line, width_mm: float, language: Language) -> tuple[Line, ...]:
    return broken((line,), width_mm, language)


def _terse(diagram: Diagram) -> Diagram:
    """Return the diagram without what a column of a schedule has, and with short designations."""
    inverters = inverters_of(diagram)

    def changed(cell: Cell, children: tuple[Cell, ...]) -> Cell:
        below = tuple([line for line in cell.below if _stays(line, cell)])
        return _changed(cell, children, relative(cell, inverters), below, cell.along)

    return _with_cells(diagram, changed)


def _stays(line: Line, cell: Cell) -> bool:
    """Return whether a line is not left to a schedule."""
    if line.role is Role.PLACE:
        return cell.aligned == "string"
    return line.role is not Role.COMPUTED or cell.along is None


def worded(diagram: Diagram) -> Diagram:
    """Return the diagram with its lines in words: said once where several widths are to be tried."""

    def said(lines: tuple[Line, ...]) -> tuple[Line, ...]:
        return tuple(
            Line(line.role, verbatim(line.said.said(diagram.language)), line.references_count, line.after)
            for line in lines
        )

    return _with_lines(replace(diagram, earth=_bar_with_lines(diagram.earth, said)), said)


def _bar_with_lines(bar: EarthBar | None, change: Callable[[tuple[Line, ...]], tuple[Line, ...]]) -> EarthBar | None:
    """Return an earth bar with the lines of its terminals changed."""
    return bar and replace(bar, taps=tuple(replace(tap, lines=change(tap.lines)) for tap in bar.taps))


def _with_lines(diagram: Diagram, change: Callable[[tuple[Line, ...]], tuple[Line, ...]]) -> Diagram:
    """Return the diagram with the lines of all cells changed."""

    def changed(cell: Cell, children: tuple[Cell, ...]) -> Cell:
        along = change((cell.along,))[0] if cell.along else None
        return _changed(cell, children, change(cell.above), change(cell.below), along)

    return _with_cells(diagram, changed)


def _changed(
    cell: Cell, children: tuple[Cell, ...], above: tuple[Line, ...], below: tuple[Line, ...], along: Line | None
) -> Cell:
    """Return a cell with other children and lines, itself where none is another."""
    pairs = ((cell.children, children), (cell.above, above), (cell.below, below))
    if along is cell.along and all(len(old) == len(new) and all(map(is_, old, new)) for old, new in pairs):
        return cell
    return replace(cell, above=above, below=below, along=along, children=children)


def _with_cells(diagram: Diagram, change: Callable[[Cell, tuple[Cell, ...]], Cell]) -> Diagram:
    """Return the diagram with each of its cells changed. change: returns a cell with other children, and changed."""

    def changed(top: Cell) -> Cell:
        stack: list[Cell] = []
        for cell in reversed(list(branch(top))):
            children = tuple(stack.pop() for _ in cell.children)
            stack.append(change(cell, children))
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
            continue
        text = line.said.said(language)
        rows = _rows(text, width_mm)
        if rows == (text,) and not line.after and isinstance(line.said, Verbatim):
            found.append(line)
        else:
            found += [Line(line.role, verbatim(row)) for row in rows]
    return tuple(found)


@lru_cache(maxsize=4096)
def _rows(text: str, width_mm: float) -> tuple[str, ...]:
    """Return a text in rows."""
    if "  " not in text and _width_mm(text) <= width_mm:
        return (text.replace(SOFT_HYPHEN, ""),)
    found: list[str] = []
    row = ""
    for word in filter(None, text.split(" ")):
        for part in _torn(word, width_mm):
            longer = f"{row} {part}" if row else part
            if row and _width_mm(longer) > width_mm:
                found.append(row)
                longer = part
            row = longer
    return tuple(each.replace(SOFT_HYPHEN, "") for each in (*found, row))


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
