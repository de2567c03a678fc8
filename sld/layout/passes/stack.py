"""The contents of each cell, measured: symbol, label lines, flags, data strips, conductor to earth.

Before: tree and cabling. After: each cell has a place, relative to its symbol's origin, for everything that belongs
to it but its wires to other cells, and extents around all of it; nothing of one cell lies on anything else of it.
Upper labels hang on the head row, lower ones on the foot row (the same row unless the symbol is stretched).

From the body upwards: data strips, label lines, flags beside the designation. Downwards: data strips, the symbol for
earth with the designation of its conductor, label lines.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from sld.layout.diagram.diagram import Cell
from sld.layout.passes.cabling import Port
from sld.layout.passes.grid import GAP_MM, Catalogue, Shape, down_to_grid_mm, earth_pin_of, pin_of, up_to_grid_mm
from sld.layout.passes.lettering import Letters
from sld.symbols.stroke import MODULE_MM, Box, Point, Text
from sld.symbols.typeface import PITCH, SLACK_MM, ascent_mm, text_width_mm

__all__ = ["FLAG_MM", "EarthDrop", "Stack", "line_pitch_mm", "stack_of"]

FLAG_MM = 6.5
"""Width and height of a flag: two digits stand in it with their full line height clear of its sides."""
_HEIGHT_MM = 2.5
_FLAG_GAP_MM = 0.75
_FLAG_FOOT_MM = 0.25
"""So much of the gap is below a flag: half its line, and the accents of the line of text that it stands on."""
_FLAGS_ABREAST = 2
_WIRE_ROOM_MM = 1.0
"""Least distance of label lines from the axis, where a symbol is no taller than its wire."""
_STRIP_ROOM_MM = 0.5
_EARTH_LEAD_MM = 1.5
"""Least length of the conductor between what is above it and the symbol for earth."""


@dataclass(frozen=True, slots=True)
class EarthDrop:
    """The symbol for earth below a cell. at: its origin. label: the designation of the conductor that leads to it."""

    at: Point
    label: Text


@dataclass(slots=True)
class Stack:
    """Places relative to the origin's x and to the head row (upper) or the foot row (lower).

    above_mm, below_mm: how far everything reaches beyond those rows; left_mm, right_mm: beyond the origin.
    strip_top_mm, strip_bottom_mm: the edge that the data strips are counted from.
    """

    left_mm: float
    right_mm: float
    above_mm: float
    below_mm: float
    strip_top_mm: float
    strip_bottom_mm: float
    upper: list[Text] = field(default_factory=list)
    lower: list[Text] = field(default_factory=list)
    flags: list[tuple[int, Box]] = field(default_factory=list)
    earth: EarthDrop | None = None

    def reach(self, left_mm: float, right_mm: float) -> None:
        """Widen the extents so that they hold what lies from `left_mm` to `right_mm`, measured from the origin."""
        self.left_mm = max(self.left_mm, -left_mm)
        self.right_mm = max(self.right_mm, right_mm)


def line_pitch_mm() -> float:
    """Return the distance of the baselines of label lines."""
    return PITCH * _HEIGHT_MM


def stack_of(cell: Cell, letters: Letters, shape: Shape, ports: Sequence[Port], catalogue: Catalogue) -> Stack:
    """Return the measured contents of a cell. letters: its label lines.

    shape: its symbol as `shapes_of` measures it, upper edge from the head row, lower edge from the foot row.
    """
    box = shape.box
    top, bottom = min(box.top_mm, -_WIRE_ROOM_MM), max(box.bottom_mm, _WIRE_ROOM_MM)
    stack = Stack(
        -box.left_mm, box.right_mm, -top, bottom, down_to_grid_mm(box.top_mm), up_to_grid_mm(box.bottom_mm)
    )  # fmt: skip
    centre = (box.left_mm + box.right_mm) / 2
    _upper(stack, letters.upper, cell.flags, centre, [port for port in ports if port.top])
    under = [port for port in ports if not port.top]
    lines = list(letters.lower)
    earthed = letters.earth is not None and not (shape.hangs and pin_of(shape, "earth") is None)
    if letters.earth and not earthed:
        lines.append(letters.earth)  # a hanging body without that terminal ends in a symbol for earth of its own
    if under:
        stack.strip_bottom_mm = up_to_grid_mm(stack.below_mm)
        stack.below_mm = stack.strip_bottom_mm + MODULE_MM * max(port.strip for port in under) + _STRIP_ROOM_MM
    if letters.earth and earthed:
        _earth(stack, letters.earth, catalogue.symbol(cell.earth_symbol), earth_pin_of(shape), stack.below_mm)
    if lines:
        edge = stack.below_mm + GAP_MM
        for text in lines:
            edge = _line(stack, stack.lower, text, centre, edge)
        stack.below_mm = edge
    return stack


def _line(stack: Stack, lines: list[Text], text: Text, centre_mm: float, top_mm: float) -> float:
    """Put one line, centred, with its upper edge at `top_mm`. Return its lower edge, i.e. the next one's upper edge."""
    width = _width_mm(text)
    left = centre_mm - width / 2
    lines.append(text.moved(left, top_mm + ascent_mm(_HEIGHT_MM)))
    stack.reach(left, left + width)
    return top_mm + line_pitch_mm()


def _width_mm(text: Text) -> float:
    return text_width_mm(text.text, _HEIGHT_MM) + SLACK_MM


def _upper(
    stack: Stack, lines: Sequence[Text], flags: Sequence[int], centre_mm: float, ports: Sequence[Port]
) -> None:  # fmt: skip
    """Stack strips, label lines and flags upwards from the body."""
    if ports:
        stack.above_mm = -stack.strip_top_mm + MODULE_MM * max(port.strip for port in ports) + _STRIP_ROOM_MM
    if not lines and not flags:
        return
    edge = -stack.above_mm - GAP_MM
    for text in reversed(lines[1:]):
        edge -= line_pitch_mm()
        _line(stack, stack.upper, text, centre_mm, edge)
    abreast = [flags[i : i + _FLAGS_ABREAST] for i in range(0, len(flags), _FLAGS_ABREAST)]
    first = lines[0] if lines else None
    beside = abreast.pop(0) if abreast else ()
    width = _width_mm(first) if first else 0.0
    left = centre_mm - (width + len(beside) * (FLAG_MM + _FLAG_GAP_MM)) / 2
    stack.reach(left, left + width)
    if first:
        stack.upper.append(first.moved(left, edge - line_pitch_mm() + ascent_mm(_HEIGHT_MM)))
    _flags(stack, beside, left + width + (_FLAG_GAP_MM if first else 0.0), edge)
    edge -= max(line_pitch_mm() if first else 0.0, FLAG_MM + _FLAG_GAP_MM if beside else 0.0)
    for row in abreast:
        _flags(stack, row, centre_mm - len(row) * (FLAG_MM + _FLAG_GAP_MM) / 2, edge)
        edge -= FLAG_MM + _FLAG_GAP_MM
    stack.above_mm = -edge
    stack.upper.reverse()


def _flags(stack: Stack, numbers: Sequence[int], left_mm: float, bottom_mm: float) -> None:
    """Put flags side by side, standing on `bottom_mm`."""
    foot_mm = bottom_mm - _FLAG_FOOT_MM
    for number in numbers:
        stack.flags.append((number, Box(left_mm, foot_mm - FLAG_MM, left_mm + FLAG_MM, foot_mm)))
        stack.reach(left_mm, left_mm + FLAG_MM)
        left_mm += FLAG_MM + _FLAG_GAP_MM


def _hook(earth: Shape) -> Point:
    """Return the terminal by which the symbol for earth hangs."""
    return pin_of(earth, "earth", "feed") or (0.0, 0.0)


def _earth(stack: Stack, label: Text, earth: Shape, pin: Point, start_mm: float) -> None:
    """Hang the symbol for earth below `start_mm` and write the conductor's designation to the right of it."""
    hook = _hook(earth)
    at = (pin[0] - hook[0], up_to_grid_mm(start_mm + _EARTH_LEAD_MM) - hook[1])
    ink = earth.box.moved(*at)
    left, top = ink.right_mm + GAP_MM, (ink.top_mm + ink.bottom_mm - line_pitch_mm()) / 2
    stack.earth = EarthDrop(at, label.moved(left, top + ascent_mm(_HEIGHT_MM)))
    stack.reach(ink.left_mm, max(ink.right_mm, left + _width_mm(label)))
    stack.below_mm = max(stack.below_mm, ink.bottom_mm, top + line_pitch_mm())
