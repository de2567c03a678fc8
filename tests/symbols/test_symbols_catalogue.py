"""What holds for every symbol of the catalogue: names, terminals, extents, room around texts."""

from __future__ import annotations

import math
import subprocess
import sys
from collections.abc import Callable, Iterator
from functools import cache
from itertools import combinations, pairwise

import cairocffi
import pytest

from sld.symbols.catalogue import Symbol, names, stretched, symbol
from sld.symbols.stroke import MODULE_MM, Arc, Box, Circle, Curve, Dash, Point, Polyline, Stroke, Text
from sld.symbols.typeface import missing, text_box

# What the drawing asks for, by name (list agreed with the layout, no outside source).
ASKED = (
    "network",
    "transformer",
    "generator",
    "fuse",
    "fuse_switch_disconnector",
    "circuit_breaker",
    "moulded_case_breaker",
    "switch_disconnector",
    "changeover",
    "disconnector",
    "rcd",
    "rcbo",
    "contactor",
    "surge_protection_1",
    "surge_protection_2",
    "surge_protection_1_2",
    "busbar",
    "meter",
    "meter_bidirectional",
    "meter_ct",
    "inverter_1ph",
    "inverter_3ph",
    "inverter_1ph_isolated",
    "inverter_3ph_isolated",
    "microinverter",
    "microinverter_3ph",
    "optimiser",
    "battery",
    "battery_converter",
    "charge_converter",
    "reversible_converter_1ph",
    "reversible_converter_3ph",
    "pv_module",
    "pv_string",
    "pv_array",
    "blocking_diode",
    "cable_1",
    "cable_2",
    "cable_3",
    "cable_4",
    "cable_5",
    "terminal",
    "load",
    "charge_point",
    "interface_protection",
    "logger",
    "energy_manager",
    "router",
    "wireless",
    "communication_module",
    "termination_resistor",
    "insulation_monitor",
    "interface_relay",
    "rapid_shutdown",
    "branch_connector",
    "plug_connector",
    "protective_earth",
    "functional_earth",
    "earth",
    "earth_electrode",
    "equipotential_bonding",
    "lightning_protection",
    "warning_triangle",
    "continued_left",
    "continued_right",
    "continued_data",
    "ownership_boundary",
)

HANGING = {
    "earth", "earth_electrode", "equipotential_bonding", "functional_earth", "insulation_monitor",
    "interface_protection", "interface_relay", "lightning_protection", "meter_ct", "protective_earth",
    "surge_protection_1",
    "surge_protection_1_2", "surge_protection_2",
}  # fmt: skip
EARTHING = {"earth", "earth_electrode", "equipotential_bonding", "functional_earth", "lightning_protection",
            "protective_earth"}  # fmt: skip
ONE_TERMINAL = EARTHING | {"termination_resistor"}
SPANNING = ("inverter_1ph", "inverter_3ph", "inverter_1ph_isolated", "inverter_3ph_isolated", "charge_converter",
            "busbar", "microinverter", "microinverter_3ph", "optimiser")  # fmt: skip
SPANS = ((0.0,), (-2.5, 0.0), (-2.5, 2.5), (-10.0, 0.0, 15.0), (5.0, 10.0), tuple(17.5 * k for k in range(-3, 9)))

FAMILIES = ("IEC", "ANSI")
FAMILY = pytest.mark.parametrize("family", FAMILIES)
ALL = [
    drawn
    for family in FAMILIES
    for drawn in (
        *(symbol(name, family) for name in names()),
        *(stretched(name, span, family) for name in SPANNING for span in SPANS),
    )
]


def breaking(holds: Callable[[Symbol], bool]) -> list[str]:
    """Return the symbols for which something does not hold."""
    return [f"{drawn.name}, {drawn.title}, {drawn.box.height_mm:.0f} mm" for drawn in ALL if not holds(drawn)]


@cache
def samples(stroke: Stroke) -> tuple[Point, ...]:
    """Return points of a stroke's centre line, at most 0.05 mm apart; none for a text."""
    return tuple(_samples(stroke))


def _samples(stroke: Stroke) -> Iterator[Point]:
    if isinstance(stroke, Polyline):
        points = (*stroke.points, stroke.points[0]) if stroke.closed else stroke.points
        for (x0, y0), (x1, y1) in pairwise(points):
            count = math.ceil(math.hypot(x1 - x0, y1 - y0) / 0.05) or 1
            yield from ((x0 + (x1 - x0) * i / count, y0 + (y1 - y0) * i / count) for i in range(count + 1))
    elif isinstance(stroke, Circle):
        (x, y), r = stroke.centre, stroke.radius_mm
        yield from ((x + r * math.cos(i / 100), y + r * math.sin(i / 100)) for i in range(629))
    elif isinstance(stroke, Arc):
        (x, y), sweep = stroke.centre, stroke.end_deg - stroke.start_deg
        for i in range(601):
            angle = math.radians(stroke.start_deg + sweep * i / 600)
            yield (x + stroke.radius_x_mm * math.cos(angle), y + stroke.radius_y_mm * math.sin(angle))
    elif isinstance(stroke, Curve):
        for k in range(0, len(stroke.points) - 1, 3):
            p = stroke.points[k : k + 4]
            for i in range(201):
                t, u = i / 200, 1 - i / 200
                weights = (u**3, 3 * u * u * t, 3 * u * t * t, t**3)
                yield (sum(w * q[0] for w, q in zip(weights, p, strict=True)),
                       sum(w * q[1] for w, q in zip(weights, p, strict=True)))  # fmt: skip


def cairo_box(strokes: tuple[Stroke, ...]) -> Box:
    """Return the extents of the paths that the cairo graphics library finds, joined with the boxes of texts."""
    context = cairocffi.Context(cairocffi.RecordingSurface(cairocffi.CONTENT_COLOR_ALPHA, None))
    context.set_tolerance(0.0005)
    boxes = []
    for stroke in strokes:
        context.new_path()
        if isinstance(stroke, Text):
            boxes.append(text_box(stroke))
            continue
        if isinstance(stroke, Polyline):
            for point in stroke.points:
                context.line_to(*point)
            if stroke.closed:
                context.close_path()
        elif isinstance(stroke, Circle):
            context.arc(*stroke.centre, stroke.radius_mm, 0.0, 2 * math.pi)
            context.close_path()
        elif isinstance(stroke, Arc):
            with context:
                context.translate(*stroke.centre)
                context.scale(stroke.radius_x_mm, stroke.radius_y_mm)
                context.arc(0.0, 0.0, 1.0, math.radians(stroke.start_deg), math.radians(stroke.end_deg))
        else:
            context.move_to(*stroke.points[0])
            for k in range(1, len(stroke.points), 3):
                context.curve_to(*(value for point in stroke.points[k : k + 3] for value in point))
        boxes.append(Box(*context.path_extents()))
    box = boxes[0]
    for other in boxes[1:]:
        box = box.joined(other)
    return box


def test_every_asked_symbol_is_there_and_no_other() -> None:
    assert names() == tuple(sorted(ASKED))


def test_has_title_and_source() -> None:
    assert breaking(lambda drawn: str(drawn.title)[0].isupper() and not str(drawn.title).endswith(".")) == []
    assert breaking(lambda drawn: bool(drawn.source)) == []


def test_numbers_of_the_standard_are_marked_as_remembered() -> None:
    # No copy of IEC 60617 or IEEE 315 was read: whoever quotes one of their numbers says so.
    def says_so(drawn: Symbol) -> bool:
        quotes = "IEC 60617" in drawn.source or "IEEE 315 item" in drawn.source
        return not quotes or "from memory" in drawn.source or "no number asserted" in drawn.source

    assert breaking(says_so) == []


@FAMILY
def test_titles_tell_symbols_apart(family: str) -> None:
    titles = [symbol(name, family).title for name in names()]
    assert len(set(titles)) == len(titles)


@FAMILY
def test_no_two_symbols_look_alike(family: str) -> None:
    looks = {symbol(name, family).strokes: name for name in names()}
    assert len(looks) == len(names())


def test_families_agree_in_all_that_the_layout_asks() -> None:
    pairs = [(symbol(name), symbol(name, "ANSI")) for name in ASKED]
    assert [iec.name for iec, ansi in pairs if (iec.pins, iec.hangs) != (ansi.pins, ansi.hangs)] == []
    assert [iec.name for iec, ansi in pairs if not iec.shared == ansi.shared == (iec.strokes == ansi.strokes)] == []


def test_families_agree_in_stretched_terminals() -> None:
    assert [
        (name, span)
        for name in SPANNING
        for span in SPANS
        if stretched(name, span).pins != stretched(name, span, "ANSI").pins
    ] == []


def test_terminals_lie_on_the_grid() -> None:
    # Grid of 2.5 mm for the terminals of symbols: IEC 61082-1, from memory.
    def on_grid(drawn: Symbol) -> bool:
        return all((x % MODULE_MM, y % MODULE_MM) == (0.0, 0.0) for _, (x, y) in drawn.pins)

    assert breaking(on_grid) == []


def test_feed_is_the_origin_and_supply_right_of_it_on_the_axis() -> None:
    pins = {name: dict(symbol(name).pins) for name in set(ASKED) - ONE_TERMINAL - {"warning_triangle"}}
    assert {name for name, each in pins.items() if each["feed"] != (0.0, 0.0) or each["supply"][1] != 0.0} == set()
    assert {name for name, each in pins.items() if each["supply"][0] <= 0.0} <= {"busbar"}


def test_symbols_of_one_terminal() -> None:
    pins = {name: dict(symbol(name).pins) for name in ONE_TERMINAL}
    assert {name for name, each in pins.items() if each["feed"] != (0.0, 0.0) or "supply" in each} == set()


def test_which_bodies_hang() -> None:
    assert {name for name in names() if symbol(name).hangs} == HANGING


@FAMILY
def test_a_hanging_body_is_below_the_wire(family: str) -> None:
    boxes = {name: symbol(name, family).box for name in HANGING}
    assert {name for name, box in boxes.items() if box.bottom_mm <= 4.0 or box.top_mm <= -2.5} == set()


def test_strokes_are_within_the_box() -> None:
    def within(drawn: Symbol) -> bool:
        room = drawn.box.grown(0.001)
        return all(
            room.left_mm <= x <= room.right_mm and room.top_mm <= y <= room.bottom_mm
            for stroke in drawn.strokes
            for x, y in samples(stroke)
        )

    assert breaking(within) == []


def test_every_terminal_touches_ink() -> None:
    def touch(drawn: Symbol) -> bool:
        ink = [point for stroke in drawn.strokes for point in samples(stroke)]
        return all(any(math.hypot(x - px, y - py) < 0.03 for x, y in ink) for _, (px, py) in drawn.pins)

    assert breaking(touch) == []


def test_box_is_what_cairo_measures() -> None:
    def agrees(drawn: Symbol) -> bool:
        expected = cairo_box(drawn.strokes)
        sides = ("left_mm", "top_mm", "right_mm", "bottom_mm")
        return all(abs(getattr(drawn.box, side) - getattr(expected, side)) <= 0.005 for side in sides)

    assert breaking(agrees) == []


def test_no_text_touches_a_stroke() -> None:
    def apart(drawn: Symbol) -> bool:
        boxes = [(stroke, text_box(stroke)) for stroke in drawn.strokes if isinstance(stroke, Text)]
        others = [stroke for stroke in drawn.strokes if not isinstance(stroke, Text)]
        crossed = any(
            room.left_mm < x < room.right_mm and room.top_mm < y < room.bottom_mm
            for _, box in boxes
            for stroke in others
            for room in [box.grown(stroke.width_mm / 2)]
            for x, y in samples(stroke)
        )
        return not crossed and not any(a.meets(b) for (_, a), (_, b) in combinations(boxes, 2))

    assert breaking(apart) == []


def test_texts_can_be_read() -> None:
    # Least height 1.8 mm, nominal heights 1.8 and 2.5 mm: ISO 3098-1, from memory.
    def readable(drawn: Symbol) -> bool:
        texts = [stroke for stroke in drawn.strokes if isinstance(stroke, Text)]
        return all(text.height_mm in (1.8, 2.5) and missing(text.text) == "" for text in texts)

    assert breaking(readable) == []


def test_line_width_and_pattern() -> None:
    # One width for symbols and connections, wider only for emphasis: IEC 61082-1, from memory. Widths: ISO 128-2.
    wide = {"busbar": 0.7, "earth_electrode": 0.5}
    dashed = ("rcd", "rcbo", "interface_protection", "ownership_boundary")

    def as_laid_down(drawn: Symbol) -> bool:
        lines = [stroke for stroke in drawn.strokes if not isinstance(stroke, Text)]
        broken = any(isinstance(line, Polyline) and line.dash is not Dash.CONTINUOUS for line in lines)
        widths = (0.25, wide.get(drawn.name, 0.25))
        return all(line.width_mm in widths for line in lines) and (not broken or drawn.name in dashed)

    assert breaking(as_laid_down) == []


@pytest.mark.parametrize("name", SPANNING)
@pytest.mark.parametrize("span", SPANS)
def test_stretched_has_its_feeds_where_asked(name: str, span: tuple[float, ...]) -> None:
    drawn = stretched(name, span)
    pins = dict(drawn.pins)
    assert [pins[f"feed{i}"] for i in range(1, len(span) + 1)] == [(0.0, y) for y in span]
    assert sum(pin.startswith("feed") for pin in pins) == len(span)
    assert pins["supply"] == dict(symbol(name).pins)["supply"]
    for y in (*span, 0.0):
        assert drawn.box.top_mm <= y - 1.25
        assert drawn.box.bottom_mm >= y + 1.25
    assert drawn.box.top_mm >= min(0.0, *span) - 5.0
    assert drawn.box.bottom_mm <= max(0.0, *span) + 5.0


@pytest.mark.parametrize("name", SPANNING)
def test_one_feed_on_the_axis_looks_unstretched(name: str) -> None:
    assert stretched(name, (0.0,)).strokes == symbol(name).strokes


@pytest.mark.parametrize(
    ("name", "span", "words"),
    [
        ("fuse", (0.0,), "one row only"),
        ("busbar", (), "ascending"),
        ("busbar", (5.0, 0.0), "ascending"),
        ("busbar", (0.0, 0.0), "ascending"),
        ("busbar", (0.0, 3.0), "whole multiples"),
    ],
)
def test_what_cannot_be_stretched(name: str, span: tuple[float, ...], words: str) -> None:
    with pytest.raises(ValueError, match=words):
        stretched(name, span)


@pytest.mark.parametrize(
    ("name", "family", "words"),
    [
        ("fuze", "IEC", "nearest: fuse"),
        ("switch_disconector", "IEC", "nearest: switch_disconnector"),
        ("earht", "ANSI", "nearest: earth"),
        ("fuse", "Klingon", "there are IEC, ANSI"),
    ],
)
def test_unknown_names_are_explained(name: str, family: str, words: str) -> None:
    with pytest.raises(KeyError, match=words):
        symbol(name, family)


def test_symbols_are_made_once() -> None:
    assert symbol("fuse") is symbol("fuse")


def test_importing_the_package_does_not_load_schemdraw() -> None:
    code = "import sys, sld, sld.symbols.catalogue; sys.exit('schemdraw' in sys.modules)"
    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0
