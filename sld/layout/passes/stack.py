"""The contents of each cell, measured: symbol, label lines, flags, data strips, conductor to earth.

Before: tree, rows, forms and cabling. After: each cell has a place, relative to its symbol's origin, for everything
that belongs to it but its wires to other cells; nothing of one cell lies on anything else of it. Labels hang on the
row of the axis; those of a bar above its first row and below its last one.

Text has levels that are common to a row: the designation, what stands along a conductor, the ratings. A taller symbol
moves its own further out. From the body upwards: data strips, label lines, flags beside the designation. Downwards:
data strips, the symbol for earth with the designation of its conductor, label lines.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import field

from sld.frozen import dataclass
from sld.layout.diagram.diagram import Cell
from sld.layout.diagram.symbol_of import OWNERSHIP_BOUNDARY
from sld.layout.passes.grid import GAP_MM, Catalogue, Shape, down_to_grid_mm, earth_pin_of, pin_of, up_to_grid_mm
from sld.layout.passes.lettering import Letters
from sld.layout.passes.ports import Port
from sld.layout.passes.shapes import Form
from sld.symbols.stroke import MODULE_MM, Box, Point, Text
from sld.symbols.typeface import PITCH, SLACK_MM, ascent_mm, descent_mm, text_box, text_width_mm

__all__ = ["FLAG_MM", "PADDING_MM", "EarthDrop", "Stack", "line_pitch_mm", "stack_of"]

FLAG_MM = 5.0
"""Width and height of a flag: two digits stand in it with their full line height clear of its sides."""
_HEIGHT_MM = 2.5
_FLAG_GAP_MM = 0.75
_FLAG_FOOT_MM = 0.25
"""So much of the gap is below a flag: half its line, and the accents of the line of text that it stands on."""
_FLAGS_ABREAST = 2
_STRIP_ROOM_MM = 0.5
PADDING_MM = 0.8
"""Distance of lines from the box that they stand in."""
_EARTH_LEAD_MM = 1.5
"""Least length of the conductor between what is above it and the symbol for earth."""

_ALONG_BASELINE_MM = -1.3
"""Of what stands along a conductor: its descenders are clear of the wire."""
_UPPER_LEVEL_MM = 4.5
"""Designations stand no lower than what stands along a conductor beside them."""
_SECOND_LEVEL_MM = 9.05
"""Lines on top of a first one stand no lower: they share no step of height with the designations beside it."""
_LOWER_LEVEL_MM = 1.85
"""Ratings begin no higher than below the contacts of a switch beside them."""
_BELOW_MM = 0.2
"""Distance of ratings from the symbol above them, besides the room that they have for accents."""
_STEP_MM = 1.5
"""What begins a line lower is so far below the line beside it."""
_UNDER_INPUT_MM = 0.8
"""Lines of an inverter are so far below those of its input that they are below those of a switch beside it too."""
_BESIDE_MM = 0.3
"""Distance of what stands along a conductor from its strokes, and of labels from a terminal strip."""


@dataclass(frozen=True, slots=True)
class EarthDrop:
    """The symbol for earth below a cell. at: its origin. label: the designation of the conductor that leads to it."""

    at: Point
    label: Text


@dataclass(slots=True)
class Stack:
    """Places relative to the origin's x and to the row above which (upper) or below which (lower) they stand.

    above_mm, below_mm: how far everything reaches beyond those rows; left_mm, right_mm: beyond the origin.
    strip_top_mm, strip_bottom_mm: the edge that the data strips are counted from. boxes: of all that belongs to it,
    those of the upper and those of the lower row. names: of data chains, which are no labels of the cell. boxed: the
    box around the lower lines, where they stand in one. is_high: nothing of its row stands above or below it, because
    it will be as high as the diagram.
    """

    form: Form
    upper_row: int
    lower_row: int
    left_mm: float
    right_mm: float
    above_mm: float
    below_mm: float
    strip_top_mm: float
    strip_bottom_mm: float
    upper: list[Text] = field(default_factory=list)
    lower: list[Text] = field(default_factory=list)
    names: list[Text] = field(default_factory=list)
    boxed: Box | None = None
    flags: list[tuple[int, Box]] = field(default_factory=list)
    earth: EarthDrop | None = None
    boxes: tuple[list[Box], list[Box]] = field(default_factory=lambda: ([], []))
    is_high: bool = False

    def reach(self, left_mm: float, right_mm: float) -> None:
        """Widen the extents so that they hold what lies from `left_mm` to `right_mm`, measured from the origin."""
        self.left_mm = max(self.left_mm, -left_mm)
        self.right_mm = max(self.right_mm, right_mm)


def line_pitch_mm() -> float:
    """Return the distance of the baselines of label lines."""
    return PITCH * _HEIGHT_MM


@dataclass(frozen=True, slots=True)
class _Column:
    """Where label lines stand: centred, but not left of an edge, or from an edge on, or up to one."""

    centre_mm: float
    left_mm: float | None = None
    right_mm: float | None = None
    least_mm: float | None = None

    def left_of(self, width_mm: float) -> float:
        if self.left_mm is not None:
            return self.left_mm
        if self.right_mm is not None:
            return self.right_mm - width_mm
        left = self.centre_mm - width_mm / 2
        return left if self.least_mm is None else max(left, self.least_mm)


def stack_of(
    cell: Cell, letters: Letters, form: Form, ports: Sequence[Port], ends: tuple[int, int], catalogue: Catalogue
) -> Stack:
    """Return the measured contents of a cell. letters: its label lines. ends: the rows that its labels hang on."""
    box = form.box
    stack = Stack(
        form, *ends, -box.left_mm, box.right_mm, -box.top_mm, box.bottom_mm,
        down_to_grid_mm(box.top_mm), up_to_grid_mm(box.bottom_mm),
    )  # fmt: skip
    stack.is_high = cell.symbol == OWNERSHIP_BOUNDARY
    for port in ports:
        stack.reach(port.x_mm, port.right_mm)
    if form.strip is not None:
        stack.reach(form.strip.left_mm, form.strip.right_mm)
    least = form.strip.right_mm + 3 * _BESIDE_MM if form.strip is not None and form.has_core else None
    column = _column_of(stack, letters, least)
    if letters.along is not None:
        _along(stack, letters.along, box.right_mm + _BESIDE_MM)
    above, lines = () if letters.to_left else letters.upper, list(letters.lower)
    if letters.low and form.hangs and letters.beside:
        above, lines = (), [*above, *lines]
    if letters.after:
        _after(stack, letters)
        above, lines = (), []
    flags = () if letters.to_left or letters.boxed else cell.flags
    _upper(stack, above, flags, column, [port for port in ports if port.top], 0.0 if letters.low else _UPPER_LEVEL_MM)
    under = [port for port in ports if not port.top]
    earthed = letters.earth is not None and not (form.hangs and pin_of(form, "earth") is None)
    if letters.earth and not earthed:
        lines.append(letters.earth)  # a hanging body without that terminal ends in a symbol for earth of its own
    if form.hangs and letters.beside:
        _beside(stack, lines)
        lines = []
    if under:
        _strips_below(stack, under)
    if letters.earth and earthed:
        _earth(stack, letters.earth, catalogue.symbol(cell.earth_symbol), earth_pin_of(form), stack.below_mm)
    if letters.to_left:
        _to_left(stack, letters.upper, lines, cell.flags)
        _names(stack, letters.names, ports)
    elif letters.boxed:
        _boxed(stack, lines, cell.flags)
    elif lines:
        _lower(stack, letters, lines, column if least is None else _Column(0.0, left_mm=least))
    _put_boxes(stack)
    return stack


def _strips_below(stack: Stack, ports: Sequence[Port]) -> None:
    """Leave room below the body for the data strips of these ports."""
    first = stack.strip_bottom_mm = up_to_grid_mm(stack.below_mm)
    stack.below_mm = first + MODULE_MM * max(port.strip for port in ports) + _STRIP_ROOM_MM
    left = min(port.x_mm for port in ports)
    stack.boxes[1].append(Box(left, first, max(stack.right_mm, left), stack.below_mm))


def _put_boxes(stack: Stack) -> None:
    """Put the body, the label lines and the flags to the boxes of their rows."""
    box = stack.form.box
    if stack.form.has_core:
        stack.boxes[0].append(box)
    else:
        stack.boxes[0].append(Box(box.left_mm, box.top_mm, box.right_mm, 0.0))
        stack.boxes[1].append(Box(box.left_mm, 0.0, box.right_mm, box.bottom_mm))
    stack.boxes[0].extend(text_box(text) for text in (*stack.upper, *stack.names))
    stack.boxes[0].extend(flag for _, flag in stack.flags)
    stack.boxes[1].extend(text_box(text) for text in stack.lower)


def _column_of(stack: Stack, letters: Letters, least_mm: float | None) -> _Column:
    """Return where the lines of a cell stand. least_mm: not left of it."""
    box = stack.form.box
    if letters.along is not None:
        return _Column(0.0, left_mm=box.left_mm + 2 * _BESIDE_MM)
    if letters.from_left:
        return _Column(0.0, left_mm=box.left_mm)
    if letters.to_right:
        return _Column(0.0, right_mm=box.right_mm)
    centre_mm = (box.left_mm + box.right_mm) / 2
    return _Column(0.0, left_mm=centre_mm + 2 * GAP_MM) if stack.is_high else _Column(centre_mm, least_mm=least_mm)


def _lower(stack: Stack, letters: Letters, lines: Sequence[Text], column: _Column) -> None:
    """Put the lines below the body on their level."""
    level = _LOWER_LEVEL_MM + (line_pitch_mm() + _STEP_MM if letters.deep else 0.0)
    if letters.below_input:
        level += _UNDER_INPUT_MM + 2 * line_pitch_mm()
        column = _Column(0.0, right_mm=stack.form.box.right_mm - MODULE_MM)
    edge = max(stack.below_mm, level) + _BELOW_MM
    for text in lines:
        edge = _line(stack, stack.lower, text, column, edge)
    stack.below_mm = edge


def _after(stack: Stack, letters: Letters) -> None:
    """Put lines on the right of the body, the upper ones above and the lower ones below the conductor there."""
    left = stack.form.box.right_mm + 2 * _BESIDE_MM
    for number, text in enumerate(reversed(letters.upper)):
        placed = text.moved(left, _ALONG_BASELINE_MM - line_pitch_mm() * number)
        stack.upper.append(placed)
        stack.reach(left, left + _width_mm(text))
        stack.above_mm = max(stack.above_mm, -text_box(placed).top_mm)
    edge = GAP_MM
    for text in letters.lower:
        edge = _line(stack, stack.lower, text, _Column(0.0, left_mm=left), edge)
    stack.below_mm = max(stack.below_mm, edge)


def _boxed(stack: Stack, lines: Sequence[Text], flags: Sequence[int]) -> None:
    """Put lines in a box below the body that ends at its right edge, flags behind the first one."""
    right, top = stack.form.box.right_mm, stack.below_mm + GAP_MM
    flagged_mm = (FLAG_MM + _FLAG_GAP_MM) * len(flags) + (_width_mm(lines[0]) if lines else 0.0)
    left = right - PADDING_MM - max(flagged_mm, *map(_width_mm, lines), 0.0)
    edge = top + PADDING_MM + (FLAG_MM + 2 * _FLAG_FOOT_MM - line_pitch_mm() if flags else 0.0)
    _flags(stack, flags, left + flagged_mm - (FLAG_MM + _FLAG_GAP_MM) * len(flags) + _FLAG_GAP_MM,
           edge + line_pitch_mm())  # fmt: skip
    for text in lines:
        edge = _line(stack, stack.lower, text, _Column(0.0, left_mm=left), edge)
    stack.boxed = Box(left - PADDING_MM, top, right, edge + PADDING_MM)
    stack.boxes[1].append(stack.boxed)
    stack.reach(stack.boxed.left_mm, stack.boxed.right_mm)
    stack.below_mm = stack.boxed.bottom_mm


def _beside(stack: Stack, lines: Sequence[Text]) -> None:
    """Put the lines of what hangs from the wire on its right, clear of the wire."""
    column = _Column(0.0, left_mm=stack.form.box.right_mm + GAP_MM)
    edge = _LOWER_LEVEL_MM - _BELOW_MM
    for text in lines:
        edge = _line(stack, stack.lower, text, column, edge)
    stack.below_mm = max(stack.below_mm, edge)


def _along(stack: Stack, text: Text, left_mm: float) -> None:
    """Put a line along the conductor, clear of it, behind its strokes."""
    placed = text.moved(left_mm, _ALONG_BASELINE_MM)
    stack.upper.append(placed)
    stack.reach(left_mm, left_mm + _width_mm(text))
    stack.above_mm = max(stack.above_mm, ascent_mm(_HEIGHT_MM) - _ALONG_BASELINE_MM)
    assert descent_mm(_HEIGHT_MM) < -_ALONG_BASELINE_MM, "else its descenders touch the wire"


def _to_left(stack: Stack, first: Sequence[Text], lines: Sequence[Text], flags: Sequence[int]) -> None:
    """Put lines on the left of the body, from its upper edge down: some as the first one, flags behind it."""
    right = stack.form.box.left_mm - 2 * GAP_MM
    foot = stack.form.box.top_mm + (FLAG_MM + 2 * _FLAG_FOOT_MM if flags else line_pitch_mm())
    edge, left = foot - line_pitch_mm(), right - len(flags) * (FLAG_MM + _FLAG_GAP_MM)
    _flags(stack, flags, left + _FLAG_GAP_MM, foot)
    for text in reversed(first):
        _line(stack, stack.upper, text, _Column(0.0, right_mm=left), edge)
        left -= _width_mm(text) + GAP_MM
    stack.upper.reverse()
    edge = foot if first or flags else edge
    for text in lines:
        edge = _line(stack, stack.lower, text, _Column(0.0, right_mm=right), edge)
    stack.below_mm = max(stack.below_mm, edge)


def _names(stack: Stack, names: Mapping[int, Text], ports: Sequence[Port]) -> None:
    """Put the names of data chains on the left of all that rises from the body, at the height of their branches."""
    right = min((port.x_mm for port in ports), default=0.0) - 2 * GAP_MM
    for number, text in names.items():
        level = stack.strip_top_mm - MODULE_MM * ports[number].strip
        left = right - _width_mm(text)
        stack.names.append(text.moved(left, level + _HEIGHT_MM / 2))
        stack.reach(left, right)
        stack.above_mm = max(stack.above_mm, -text_box(stack.names[-1]).top_mm)


def _line(stack: Stack, lines: list[Text], text: Text, column: _Column, top_mm: float) -> float:
    """Put one line with its upper edge at `top_mm`. Return its lower edge, i.e. the next one's upper edge."""
    width = _width_mm(text)
    left = column.left_of(width)
    lines.append(text.moved(left, top_mm + ascent_mm(_HEIGHT_MM)))
    stack.reach(left, left + width)
    return top_mm + line_pitch_mm()


def _width_mm(text: Text) -> float:
    return text_width_mm(text.text, _HEIGHT_MM) + SLACK_MM


def _upper(
    stack: Stack, lines: Sequence[Text], flags: Sequence[int], column: _Column, ports: Sequence[Port], level_mm: float
) -> None:
    """Stack strips, label lines and flags upwards from the body. level_mm: lines stand no lower."""
    if ports:
        first = -stack.strip_top_mm
        stack.above_mm = first + MODULE_MM * max(port.strip for port in ports) + _STRIP_ROOM_MM
        left = min(port.x_mm for port in ports)
        stack.boxes[0].append(Box(left, -stack.above_mm, max(stack.right_mm, left), -first))
    if not lines and not flags:
        return
    edge = -max(stack.above_mm + (0.0 if stack.upper else GAP_MM / 2), level_mm)  # none above what stands along
    placed: list[Text] = []
    for text in reversed(lines[1:]):
        edge -= line_pitch_mm()
        _line(stack, placed, text, column, edge)
        edge = min(edge, -_SECOND_LEVEL_MM) if level_mm else edge
    abreast = [flags[i : i + _FLAGS_ABREAST] for i in range(0, len(flags), _FLAGS_ABREAST)]
    first_line = lines[0] if lines else None
    beside = abreast.pop(0) if abreast else ()
    width = _width_mm(first_line) if first_line else 0.0
    left = column.left_of(width + len(beside) * (FLAG_MM + _FLAG_GAP_MM))
    stack.reach(left, left + width)
    if first_line:
        placed.append(first_line.moved(left, edge - line_pitch_mm() + ascent_mm(_HEIGHT_MM)))
    _flags(stack, beside, left + width + (_FLAG_GAP_MM if first_line else 0.0), edge)
    edge -= max(line_pitch_mm() if first_line else 0.0, FLAG_MM + _FLAG_GAP_MM if beside else 0.0)
    for row in abreast:
        _flags(stack, row, column.left_of(len(row) * (FLAG_MM + _FLAG_GAP_MM)), edge)
        edge -= FLAG_MM + _FLAG_GAP_MM
    stack.above_mm = -edge
    stack.upper[:0] = reversed(placed)


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
    right = left + _width_mm(label)
    stack.reach(ink.left_mm, max(ink.right_mm, right))
    stack.below_mm = max(stack.below_mm, ink.bottom_mm, top + line_pitch_mm())
    stack.boxes[1].append(Box(min(ink.left_mm, pin[0]), pin[1], max(ink.right_mm, right), stack.below_mm))
