"""What the symbols of the ANSI family say to a reader of drawings.

Facts of IEEE 315-1975 (graphic symbols for electrical and electronics diagrams) and IEEE C37.2 (device function
numbers), all from memory, unless another source stands beside the check. Millimetres, y down, power from the left.
"""

from __future__ import annotations

import math
from itertools import pairwise

import pytest

from sld.symbols.catalogue import names, symbol
from sld.symbols.stroke import Arc, Circle, Curve, Dash, Fill, Polyline, Stroke, Text

BREAKERS = ("circuit_breaker", "moulded_case_breaker", "rcbo")
BLADES = ("disconnector", "switch_disconnector", "fuse_switch_disconnector", "rcd", "interface_protection")


def strokes(name: str, kind: type[Stroke]) -> list:
    return [each for each in symbol(name, "ANSI").strokes if isinstance(each, kind)]


def texts(name: str) -> list[str]:
    return [each.text for each in strokes(name, Text)]


def on_axis(name: str) -> list[tuple[float, float]]:
    """The stretches of the wire axis that are drawn, from left to right."""
    return sorted(
        (a[0], b[0]) if a[0] < b[0] else (b[0], a[0])
        for line in strokes(name, Polyline) for a, b in pairwise(line.points)
        if a[1] == b[1] == 0.0
    )  # fmt: skip


@pytest.mark.parametrize("name", BREAKERS)
def test_a_breaker_is_an_arc_over_a_gap(name: str) -> None:
    arcs = [arc for arc in strokes(name, Arc) if arc.end_deg - arc.start_deg == 180]
    (arc,) = arcs
    left, right = arc.centre[0] - arc.radius_x_mm, arc.centre[0] + arc.radius_x_mm
    assert not [run for run in on_axis(name) if run[0] < right and run[1] > left]
    assert arc.centre[1] < 0, "clear of the ends of the wire"
    assert arc.start_deg % 360 == 180, "the upper half"


@pytest.mark.parametrize("name", BLADES)
def test_a_switch_is_a_bare_blade_that_hangs_open_above_the_axis(name: str) -> None:
    oblique = [
        (a, b) for line in strokes(name, Polyline) if not line.closed and line.dash is Dash.CONTINUOUS
        for a, b in pairwise(line.points) if a[0] != b[0] and a[1] != b[1]
    ]  # fmt: skip
    ((hinge, tip),) = oblique
    assert hinge[1] == 0.0
    assert tip[0] < hinge[0]
    assert tip[1] < 0.0
    assert not [run for run in on_axis(name) if run[0] < hinge[0] - 0.01 and run[1] > tip[0]]


def test_only_the_load_break_switch_shows_the_path_of_its_blade() -> None:
    assert strokes("disconnector", Arc) == []
    (path,) = strokes("switch_disconnector", Arc)
    assert path.radius_x_mm == path.radius_y_mm


def test_a_fuse_is_a_wave_in_the_wire() -> None:
    up, down = strokes("fuse", Curve)
    assert all(y <= 0 for _, y in up.points)
    assert all(y >= 0 for _, y in down.points)
    assert up.points[-1] == down.points[0]


@pytest.mark.parametrize("name", ["contactor", "rapid_shutdown"])
def test_a_contact_is_two_bars_across_a_gap(name: str) -> None:
    bars = [line for line in strokes(name, Polyline) if line.points[0][0] == line.points[1][0]]
    one, other = sorted(bar.points[0][0] for bar in bars)
    assert not [run for run in on_axis(name) if run[0] < other and run[1] > one]


@pytest.mark.parametrize(("name", "shown"), [("meter", "WH"), ("meter_bidirectional", "WH"), ("meter_ct", "WH")])
def test_a_watthour_meter_is_a_circle_with_its_letters(name: str, shown: str) -> None:
    (circle,) = strokes(name, Circle)
    (letters,) = strokes(name, Text)
    assert letters.text == shown
    assert abs(letters.at[1] - circle.centre[1]) < circle.radius_mm


def test_a_current_transformer_is_a_winding_beside_the_wire() -> None:
    assert on_axis("meter_ct") == [(0.0, 10.0)]
    loops = strokes("meter_ct", Arc)
    assert len(loops) == 2
    assert all(loop.end_deg - loop.start_deg == 180 for loop in loops)


def test_a_transformer_is_two_windings_that_face_each_other() -> None:
    loops = strokes("transformer", Arc)
    left = [loop for loop in loops if loop.centre[0] < 8.75]
    right = [loop for loop in loops if loop.centre[0] > 8.75]
    assert len(left) == len(right) == 4
    assert {loop.start_deg % 360 for loop in left} == {270.0}
    assert {loop.start_deg % 360 for loop in right} == {90.0}


@pytest.mark.parametrize(
    ("name", "numbers"),
    [("interface_protection", ["27/59", "81"]), ("insulation_monitor", ["64"]), ("interface_relay", ["27/59", "81"])],
)
def test_a_relay_is_a_circle_with_its_function_numbers(name: str, numbers: list[str]) -> None:
    # 27 undervoltage, 59 overvoltage, 81 frequency, 64 ground fault detection
    assert texts(name) == numbers
    assert [each for each in strokes(name, Circle) if each.fill is Fill.NONE]


@pytest.mark.parametrize("name", ["surge_protection_1", "surge_protection_2", "surge_protection_1_2"])
def test_an_arrester_is_two_arrow_heads_over_ground(name: str) -> None:
    upper, lower = sorted(
        (each for each in strokes(name, Polyline) if each.closed and each.fill is Fill.INK),
        key=lambda each: each.points[0][1],
    )
    assert upper.points[0][1] < lower.points[0][1], "the tips face each other and do not touch"
    assert all(y <= upper.points[0][1] for _, y in upper.points)
    assert all(y >= lower.points[0][1] for _, y in lower.points)


@pytest.mark.parametrize(("name", "letters"), [("protective_earth", "EGC"), ("functional_earth", "FG")])
def test_ground_is_three_bars_with_letters_and_no_circle(name: str, letters: str) -> None:
    bars = [line for line in strokes(name, Polyline) if line.points[0][1] == line.points[1][1]]
    lengths = [abs(bar.points[1][0] - bar.points[0][0]) for bar in sorted(bars, key=lambda bar: bar.points[0][1])]
    assert lengths == sorted(lengths, reverse=True)
    assert len(set(lengths)) == 3
    assert strokes(name, Circle) == strokes(name, Arc) == []
    assert texts(name) == [letters]


def test_a_resistor_is_a_zigzag() -> None:
    (line,) = strokes("termination_resistor", Polyline)
    sides = [math.copysign(1, y) for _, y in line.points[1:-1]]
    assert len(sides) == 6
    assert all(a == -b for a, b in pairwise(sides))


@pytest.mark.parametrize("name", ["rcd", "rcbo", "interface_protection"])
def test_mechanical_links_end_in_a_dash(name: str) -> None:
    # Dashed lines end in dashes: ISO 128-2, from memory.
    (link,) = [line for line in strokes(name, Polyline) if line.dash is Dash.DASHED]
    length = sum(math.dist(a, b) for a, b in pairwise(link.points))
    dash, gap = (part * link.width_mm for part in Dash.DASHED.value)
    assert length % (dash + gap) <= dash + 0.05
    assert length % (dash + gap) >= 0.5


def test_what_the_families_do_not_share() -> None:
    # Compared sign by sign from memory: these are drawn otherwise in North America.
    assert {name for name in names() if not symbol(name).shared} == {
        "circuit_breaker", "contactor", "disconnector", "functional_earth", "fuse", "fuse_switch_disconnector",
        "insulation_monitor", "interface_protection", "interface_relay", "meter", "meter_bidirectional", "meter_ct",
        "moulded_case_breaker", "network", "plug_connector", "protective_earth", "rapid_shutdown", "rcbo", "rcd",
        "surge_protection_1", "surge_protection_1_2", "surge_protection_2", "switch_disconnector",
        "termination_resistor", "transformer",
    }  # fmt: skip
