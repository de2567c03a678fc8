"""The earth bar at the foot.

Before: the diagram above it is complete. After: the bar is one horizontal conductor, its name on its left, a tap for
each terminal going down to its electrode symbol or end, label lines below; each tap has a lane as wide as its labels.
A bar wider than the diagram goes on in further rows, joined at the left.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from sld.layout.diagram.diagram import EarthBar, EarthTap, LineKind
from sld.layout.passes.grid import CLEARANCE_MM, GAP_MM, Catalogue, pin_of, up_to_grid_mm
from sld.layout.passes.lettering import lettered, tap_letters
from sld.layout.passes.stack import FLAG_MM, line_pitch_mm
from sld.layout.plan import PlacedCell, PlacedFlag, Wire
from sld.symbols.stroke import MODULE_MM, Box, Point, Text
from sld.symbols.typeface import SLACK_MM, ascent_mm, text_width_mm
from sld.words import Language

__all__ = ["PlacedEarthBar", "placed_earth_bar_of"]

_LEAST_WIDTH_MM = 120.0
_FLAG_PITCH_MM = FLAG_MM + 0.75


@dataclass(frozen=True, slots=True)
class PlacedEarthBar:
    """The bar as part of a Plan. width_mm, height_mm: how far it reaches."""

    cells: tuple[PlacedCell, ...]
    wires: tuple[Wire, ...]
    dots: tuple[Point, ...]
    flags: tuple[PlacedFlag, ...]
    texts: tuple[Text, ...]
    width_mm: float
    height_mm: float


@dataclass(frozen=True, slots=True)
class _Tap:
    """A tap measured about its joint with the bar.

    half_mm: how far it reaches to either side. length_mm: of its conductor. box: of its symbol. below_mm: how far all
    of it reaches below the bar.
    """

    key: str
    tap: EarthTap
    half_mm: float
    length_mm: float
    box: Box
    at: Point
    labels: tuple[Text, ...]
    flags: tuple[tuple[int, Box], ...]
    below_mm: float


def placed_earth_bar_of(
    bar: EarthBar, language: Language, top_mm: float, width_mm: float, catalogue: Catalogue
) -> PlacedEarthBar:
    """Return the bar with its upper edge at `top_mm`, broken into rows where it is wider than `width_mm`."""
    taps = _taps(bar, language, catalogue)
    names, name_flags, left, y, height = _name(bar, language, top_mm)
    rows = _rows(taps, max(width_mm, _LEAST_WIDTH_MM) - left)
    cells: list[PlacedCell] = []
    wires: list[Wire] = []
    dots: list[Point] = []
    flags = [PlacedFlag(number, bar.key, box) for number, box in name_flags]
    ends: list[tuple[Point, Point]] = []
    for number, row in enumerate(rows):
        if number:
            y = up_to_grid_mm(height + CLEARANCE_MM)
        x = left + MODULE_MM
        for tap in row:
            joint = (x + tap.half_mm, y)
            cells.append(_placed(tap, joint))
            wires.append(_conductor(bar, tap, joint))
            dots.append(joint)
            flags.extend(PlacedFlag(n, tap.key, box.moved(*joint)) for n, box in tap.flags)
            height = max(height, y + tap.below_mm)
            x += 2 * tap.half_mm
        ends.append(((left, y), (x, y)))
    wires.extend(_bar(bar, ends))
    dots.extend(start for start, _ in ends[1:-1])
    pins = (("left", ends[0][0]), *((f"right{n}" if n > 1 else "right", end) for n, (_, end) in enumerate(ends, 1)))
    right = max(end[0] for _, end in ends)
    box = Box(left, ends[0][0][1], right, ends[-1][0][1])
    cells.insert(0, PlacedCell(bar.key, "", "new", ends[0][0], (0.0, 0.0), box, pins, ()))
    return PlacedEarthBar(tuple(cells), tuple(wires), tuple(dots), tuple(flags), names, right, height)


def _name(
    bar: EarthBar, language: Language, top_mm: float
) -> tuple[tuple[Text, ...], list[tuple[int, Box]], float, float, float]:  # fmt: skip
    """Return the bar's name and flags, and where the bar begins, its y, and the lower edge of the name."""
    lines = lettered(bar.lines, language)
    text_mm = line_pitch_mm() * len(lines)
    width = max((text_width_mm(line.text) + SLACK_MM for line in lines), default=0.0)
    texts = tuple(
        line.moved(0.0, top_mm + line_pitch_mm() * number + ascent_mm(2.5)) for number, line in enumerate(lines)
    )
    top = top_mm + text_mm + (GAP_MM if lines and bar.flags else 0.0)
    flags = [
        (number, Box(_FLAG_PITCH_MM * i, top, _FLAG_PITCH_MM * i + FLAG_MM, top + FLAG_MM))
        for i, number in enumerate(bar.flags)
    ]
    bottom = top + (FLAG_MM if flags else 0.0)
    left = up_to_grid_mm(max(width, _FLAG_PITCH_MM * len(flags)) + CLEARANCE_MM)
    return texts, flags, left, up_to_grid_mm(top_mm + text_mm / 2), bottom


def _taps(bar: EarthBar, language: Language, catalogue: Catalogue) -> list[_Tap]:
    """Measure every tap."""
    length = MODULE_MM * (3 if any(tap.flags for tap in bar.taps) else 2)
    measured = []
    seen: set[str] = set()
    for number, tap in enumerate(bar.taps, start=1):
        name = tap.designation if tap.designation and tap.designation not in seen else f"{tap.designation}({number})"
        seen.add(name)
        measured.append(_tap(f"{bar.key}/{name}", tap, tap_letters(tap, language), length, catalogue))
    return measured


def _tap(key: str, tap: EarthTap, lines: Sequence[Text], length_mm: float, catalogue: Catalogue) -> _Tap:
    """Measure one tap: conductor with flags beside it, symbol, label lines."""
    flags = []
    right = 1.0
    for number in tap.flags:
        flags.append((number, Box(right, 1.0, right + FLAG_MM, 1.0 + FLAG_MM)))
        right += _FLAG_PITCH_MM
    at, box = (0.0, length_mm), Box(0.0, length_mm, 0.0, length_mm)
    if tap.symbol:
        shape = catalogue.symbol(tap.symbol)
        hook = pin_of(shape, "earth", "feed") or (0.0, 0.0)
        at = (-hook[0], length_mm - hook[1])
        box = shape.box.moved(*at)
    half, edge = max(right, -box.left_mm, box.right_mm), max(box.bottom_mm, length_mm) + GAP_MM
    labels = []
    for line in lines:
        width = text_width_mm(line.text) + SLACK_MM
        labels.append(line.moved(-width / 2, edge + ascent_mm(2.5)))
        half = max(half, width / 2)
        edge += line_pitch_mm()
    half = up_to_grid_mm(half + CLEARANCE_MM / 4)
    return _Tap(key, tap, half, length_mm, box, at, tuple(labels), tuple(flags), edge)


def _rows(taps: Sequence[_Tap], room_mm: float) -> list[list[_Tap]]:
    """Return the taps row by row, no row wider than the room unless one tap is."""
    rows: list[list[_Tap]] = [[]]
    used = MODULE_MM
    for tap in taps:
        if rows[-1] and used + 2 * tap.half_mm > room_mm:
            rows.append([])
            used = MODULE_MM
        rows[-1].append(tap)
        used += 2 * tap.half_mm
    return rows


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
