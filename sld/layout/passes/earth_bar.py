"""The earth bar at the foot.

Before: the diagram above it is complete. After: the bar is one level conductor, its name above it, a tap for each
terminal going down to its electrode symbol or end, label lines beside it; each tap has a lane as wide as its labels.
The terminal that bonds what is above has no tap of its own: its conductor comes down to the left end of the bar. A bar
wider than the diagram gets narrower lines, or goes on in further rows, joined at the left.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from sld.frozen import dataclass
from sld.layout.diagram.diagram import EarthBar, EarthTap, LineKind
from sld.layout.passes.bonding import SPINE_MM
from sld.layout.passes.grid import CLEARANCE_MM, GAP_MM, Catalogue, pin_of, up_to_grid_mm
from sld.layout.passes.lettering import TAP_LINE_MM, TAP_LINES_MM, lettered, tap_letters
from sld.layout.passes.stack import FLAG_MM, line_pitch_mm
from sld.layout.plan import PlacedCell, PlacedFlag, Wire
from sld.symbols.stroke import MODULE_MM, Box, Point, Text
from sld.symbols.typeface import SLACK_MM, ascent_mm, text_width_mm
from sld.words import Language, Sayable

__all__ = ["LEAST_WIDTH_MM", "PlacedEarthBar", "placed_earth_bar_of"]

LEAST_WIDTH_MM = 120.0
"""The bar is as wide as this where the diagram is narrower."""
_DEEP_MM = 18.0
"""A terminal with more lines than four makes the whole diagram higher: then wider lines are looked for."""

_FLAG_PITCH_MM = FLAG_MM + 0.75
_FLAG_FOOT_MM = 0.25
_CONDUCTOR_MM = MODULE_MM


@dataclass(frozen=True, slots=True)
class PlacedEarthBar:
    """The bar as part of a Plan. y_mm: of its first row. width_mm, height_mm: how far it reaches."""

    cells: tuple[PlacedCell, ...]
    wires: tuple[Wire, ...]
    dots: tuple[Point, ...]
    flags: tuple[PlacedFlag, ...]
    texts: tuple[Text, ...]
    y_mm: float
    width_mm: float
    height_mm: float


@dataclass(frozen=True, slots=True)
class _Tap:
    """A tap measured about its joint with the bar.

    left_mm, right_mm: how far it reaches. length_mm: of its conductor, 0 where it comes from above. box: of its symbol.
    below_mm: how far all of it reaches below the bar.
    """

    key: str
    tap: EarthTap
    left_mm: float
    right_mm: float
    length_mm: float
    box: Box
    at: Point
    labels: tuple[Text, ...]
    flags: tuple[tuple[int, Box], ...]
    below_mm: float


def placed_earth_bar_of(
    bar: EarthBar, language: Language, width_mm: float, bonded: Sayable | None, catalogue: Catalogue, top_mm: float
) -> PlacedEarthBar:
    """Return the bar with its upper edge at `top_mm`, broken into rows where it is wider than `width_mm`.

    bonded: the designation of the terminal whose conductor comes from above.
    """
    room_mm = max(width_mm, LEAST_WIDTH_MM) - SPINE_MM
    rows = _rows(_taps(bar, language, bonded, catalogue, TAP_LINE_MM), room_mm)
    if len(rows) > 1 or any(tap.below_mm > _DEEP_MM for tap in rows[0]):
        row = _one_row([_taps(bar, language, bonded, catalogue, line_mm) for line_mm in TAP_LINES_MM], room_mm)
        rows = [row] if row else rows
    names, name_flags, y = _name(bar, language, top_mm)
    first_y = height = y
    cells: list[PlacedCell] = []
    wires: list[Wire] = []
    dots: list[Point] = []
    flags = [PlacedFlag(number, bar.key, box) for number, box in name_flags]
    ends: list[tuple[Point, Point]] = []
    for number, row in enumerate(rows):
        if number:
            y = up_to_grid_mm(height + CLEARANCE_MM)
        x = SPINE_MM
        for tap in row:
            joint = (up_to_grid_mm(x + tap.left_mm), y)
            if not tap.length_mm:
                joint = (SPINE_MM, y)
            else:
                wires.append(_conductor(bar, tap, joint))
                dots.append(joint)
            cells.append(_placed(tap, joint))
            flags.extend(PlacedFlag(n, tap.key, box.moved(*joint)) for n, box in tap.flags)
            height = max(height, y + tap.below_mm)
            x = joint[0] + tap.right_mm
        ends.append(((SPINE_MM, y), (up_to_grid_mm(max(x, SPINE_MM + MODULE_MM)), y)))
    wires.extend(_bar(bar, ends))
    dots.extend(start for start, _ in ends[1:-1])
    pins = (("left", ends[0][0]), *((f"right{n}" if n > 1 else "right", end) for n, (_, end) in enumerate(ends, 1)))
    right = max([end[0] for _, end in ends] + [text.at[0] + text_width_mm(text.text) + SLACK_MM for text in names])
    box = Box(SPINE_MM, ends[0][0][1], max(end[0] for _, end in ends), ends[-1][0][1])
    cells.insert(0, PlacedCell(bar.key, "", "new", ends[0][0], (0.0, 0.0), box, pins, ()))
    right = max([right, *(flag.box.right_mm for flag in flags)])
    return PlacedEarthBar(tuple(cells), tuple(wires), tuple(dots), tuple(flags), names, first_y, right, height)


def _name(
    bar: EarthBar, language: Language, top_mm: float
) -> tuple[tuple[Text, ...], list[tuple[int, Box]], float]:  # fmt: skip
    """Return the bar's name and flags, above it, and its y."""
    left = SPINE_MM + GAP_MM
    texts = []
    for number, line in enumerate(lettered(bar.lines, language)):
        texts.append(line.moved(left, top_mm + line_pitch_mm() * number + ascent_mm(2.5)))
    right = max((text.at[0] + text_width_mm(text.text) + SLACK_MM for text in texts), default=left)
    flags = [
        (
            number,
            Box(
                right + _FLAG_PITCH_MM * i + 0.75, top_mm, right + _FLAG_PITCH_MM * i + 0.75 + FLAG_MM, top_mm + FLAG_MM
            ),
        )
        for i, number in enumerate(bar.flags)
    ]
    reach = max(line_pitch_mm() * len(texts), FLAG_MM if flags else 0.0)
    return tuple(texts), flags, up_to_grid_mm(top_mm + reach + GAP_MM)


def _taps(
    bar: EarthBar, language: Language, bonded: Sayable | None, catalogue: Catalogue, line_mm: float
) -> list[_Tap]:
    """Measure every tap, its lines broken at a width; the one whose conductor comes from above is the first."""
    measured: list[_Tap] = []
    seen: set[str] = set()
    for number, tap in enumerate(bar.taps, start=1):
        name = tap.designation if tap.designation and tap.designation not in seen else f"{tap.designation}({number})"
        first = not any(each.length_mm == 0 for each in measured)
        from_above = first and bonded is not None and tap.lines[:1] != () and bonded == tap.lines[0].said
        seen.add(name)
        measured.append(_tap(f"{bar.key}/{name}", tap, tap_letters(tap, language, line_mm), from_above, catalogue))
    return sorted(measured, key=lambda tap: tap.length_mm > 0)


def _tap(key: str, tap: EarthTap, lines: Sequence[Text], from_above: bool, catalogue: Catalogue) -> _Tap:
    """Measure one tap: conductor and symbol, label lines beside it, flags behind the first of them."""
    length = 0.0 if from_above else _CONDUCTOR_MM
    at, box = (0.0, length), Box(0.0, length, 0.0, length)
    if tap.symbol and not from_above:
        shape = catalogue.symbol(tap.symbol)
        hook = pin_of(shape, "earth", "feed") or (0.0, 0.0)
        at = (-hook[0], length - hook[1])
        box = shape.box.moved(*at)
    drop = FLAG_MM + _FLAG_FOOT_MM - line_pitch_mm() if tap.flags else 0.0  # flags stand on the foot of the first line
    left, edge = box.right_mm + GAP_MM, 1.0 + drop
    labels = []
    right = left
    for line in lines:
        labels.append(line.moved(left, edge + ascent_mm(2.5)))
        right = max(right, left + text_width_mm(line.text) + SLACK_MM)
        edge += line_pitch_mm()
    beside = left + (text_width_mm(lines[0].text) + SLACK_MM + 0.75 if lines else 0.0)
    flags = []
    for number in tap.flags:
        flags.append((number, Box(beside, 1.0, beside + FLAG_MM, 1.0 + FLAG_MM)))
        beside += _FLAG_PITCH_MM
    below = max(edge, box.bottom_mm, *(flag.bottom_mm for _, flag in flags), length)
    right = max([right, *(flag.right_mm for _, flag in flags), box.right_mm]) + CLEARANCE_MM
    symbol = "" if from_above else tap.symbol
    named = EarthTap(tap.designation, tap.lines, symbol, tap.flags)
    return _Tap(key, named, -box.left_mm + CLEARANCE_MM / 2, right, length, box, at, tuple(labels), tuple(flags), below)


def _rows(taps: Sequence[_Tap], room_mm: float) -> list[list[_Tap]]:
    """Return the taps row by row, no row wider than the room unless one tap is."""
    rows: list[list[_Tap]] = [[]]
    used = 0.0
    for tap in taps:
        wide = _wide_mm(tap)
        if rows[-1] and used + wide > room_mm:
            rows.append([])
            used = 0.0
        rows[-1].append(tap)
        used += wide
    return rows


def _one_row(ways: Sequence[Sequence[_Tap]], room_mm: float) -> list[_Tap]:
    """Return the lowest row of all taps that the room holds, each in one of its ways; empty where there is none."""
    for deep_mm in sorted({tap.below_mm for way in ways for tap in way}):
        low = [[tap for tap in taps if tap.below_mm <= deep_mm] for taps in zip(*ways, strict=True)]
        if all(low) and sum(map(_wide_mm, row := [min(taps, key=_wide_mm) for taps in low])) <= room_mm:
            return row
    return []


def _wide_mm(tap: _Tap) -> float:
    """Return the room a tap takes in its row."""
    return tap.left_mm + tap.right_mm + MODULE_MM


def _placed(tap: _Tap, joint: Point) -> PlacedCell:
    """Return the end of a tap as a cell."""
    x, y = joint
    labels = tuple(text.moved(x, y) for text in tap.labels)
    return PlacedCell(
        tap.key, tap.tap.symbol, "new", (x + tap.at[0], y + tap.at[1]), (0.0, 0.0), tap.box.moved(x, y),
        (("feed", (x, y + tap.length_mm)),), labels,
    )  # fmt: skip


def _conductor(bar: EarthBar, tap: _Tap, joint: Point) -> Wire:
    """Return the conductor from the bar to the end of a tap."""
    end = (joint[0], joint[1] + tap.length_mm)
    return Wire(LineKind.EARTH, (joint, end), (("", ""), (tap.key, "feed")), bar.key)


def _bar(bar: EarthBar, ends: Sequence[tuple[Point, Point]]) -> list[Wire]:
    """Return the bar itself, row by row, its rows joined at the left."""
    wires = []
    for number, (start, end) in enumerate(ends, start=1):
        left = (bar.key, "left") if number == 1 else ("", "")
        right = (bar.key, f"right{number}" if number > 1 else "right")
        wires.append(Wire(LineKind.EARTH, (start, end), (left, right), bar.key))
    for (start, _), (following, _) in pairwise(ends):
        wires.append(Wire(LineKind.EARTH, (start, following), (("", ""), ("", "")), bar.key))
    return wires
