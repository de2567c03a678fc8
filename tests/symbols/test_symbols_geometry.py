"""What the symbols say to a reader of drawings.

Facts of IEC 60617 (graphical symbols for diagrams), all from memory, unless another source stands beside the check.
Millimetres, y down, power from the left.
"""

from __future__ import annotations

import math
from itertools import pairwise

import pytest

from sld.symbols.catalogue import stretched, symbol
from sld.symbols.stroke import Arc, Circle, Curve, Dash, Fill, Point, Polyline, Text

SWITCHES = ("disconnector", "switch_disconnector", "fuse_switch_disconnector", "circuit_breaker",
            "moulded_case_breaker", "contactor", "rapid_shutdown", "rcd", "rcbo", "interface_protection")  # fmt: skip
FIXED_CONTACT = (2.5, 0.0)
INVERTERS = ("inverter_1ph", "inverter_3ph", "inverter_1ph_isolated", "inverter_3ph_isolated")


def lines(name: str) -> list[Polyline]:
    return [s for s in symbol(name).strokes if isinstance(s, Polyline) and not s.closed]


def polygons(name: str) -> list[Polyline]:
    return [s for s in symbol(name).strokes if isinstance(s, Polyline) and s.closed]


def circles(name: str) -> list[Circle]:
    return [s for s in symbol(name).strokes if isinstance(s, Circle)]


def texts(name: str) -> list[str]:
    return [s.text for s in symbol(name).strokes if isinstance(s, Text)]


def middle(line: Polyline) -> Point:
    (x0, y0), (x1, y1) = line.points[0], line.points[-1]
    return ((x0 + x1) / 2, (y0 + y1) / 2)


def is_upright(line: Polyline) -> bool:
    return len(line.points) == 2 and line.points[0][0] == line.points[1][0]


def centred_bars(name: str) -> list[Polyline]:
    """Upright bars across the axis beside the fixed contact: the disconnector function."""
    return [line for line in lines(name) if is_upright(line) and middle(line)[1] == 0 and middle(line)[0] <= 2.5]


def crosses(name: str) -> list[Polyline]:
    """Oblique lines centred on the fixed contact: two of them are the circuit-breaker function."""
    return [line for line in lines(name) if middle(line) == pytest.approx(FIXED_CONTACT) and not is_upright(line)]


@pytest.mark.parametrize("name", SWITCHES)
def test_contacts_are_open_and_close_upwards(name: str) -> None:
    # Switches are shown in the position of rest (IEC 61082-1); a contact closes to the right or upwards.
    along = [
        p for line in lines(name) for a, b in pairwise(line.points)
        if a[1] == b[1] == 0.0 for p in (a[0], b[0])
    ]  # fmt: skip
    assert not [x for x in along if 2.5 < x < 7.5], "something bridges the gap on the axis"
    tip = [p for line in lines(name) for p in line.points if p == (2.5, 2.5)]
    assert tip, "the blade hangs below the axis under the fixed contact"


@pytest.mark.parametrize(
    ("name", "bars", "contact_circles", "cross_lines", "half_circles"),
    [
        ("disconnector", 1, 0, 0, 0),
        ("switch_disconnector", 1, 1, 0, 0),
        ("fuse_switch_disconnector", 1, 1, 0, 0),
        ("circuit_breaker", 0, 0, 2, 0),
        ("moulded_case_breaker", 0, 0, 2, 0),
        ("rcbo", 0, 0, 2, 0),
        ("rcd", 1, 1, 0, 0),
        ("contactor", 0, 0, 0, 1),
        ("rapid_shutdown", 0, 0, 0, 1),
    ],
)
def test_function_of_a_switch_is_marked_at_its_fixed_contact(
    name: str, bars: int, contact_circles: int, cross_lines: int, half_circles: int
) -> None:
    arcs = [s for s in symbol(name).strokes if isinstance(s, Arc) and s.end_deg - s.start_deg == 180]
    assert len(centred_bars(name)) == bars
    assert len([c for c in circles(name) if c.centre == FIXED_CONTACT]) == contact_circles
    assert len(crosses(name)) == cross_lines
    assert len(arcs) == half_circles


def test_contactor_half_circle_opens_towards_the_blade() -> None:
    (arc,) = [s for s in symbol("contactor").strokes if isinstance(s, Arc)]
    assert arc.centre == FIXED_CONTACT
    assert (arc.start_deg % 360, arc.end_deg % 360) == (90, 270)  # the left half, the blade being to the right


@pytest.mark.parametrize("name", ["rcd", "rcbo"])
def test_residual_current_sensor_encircles_the_wire_and_trips_the_blade(name: str) -> None:
    (ring,) = [s for s in symbol(name).strokes if isinstance(s, Arc)]
    assert ring.centre[1] == 0.0
    assert ring.end_deg - ring.start_deg == 360
    assert ring.radius_y_mm > ring.radius_x_mm
    (link,) = [line for line in lines(name) if line.dash is Dash.DASHED]
    assert link.points[0] == (ring.centre[0], ring.radius_y_mm)


@pytest.mark.parametrize("name", ["rcd", "rcbo", "interface_protection"])
def test_mechanical_links_end_in_a_dash(name: str) -> None:
    # Dashed lines end in dashes: ISO 128-2, from memory. Dash 12 d, gap 3 d (drawing practice as in ISO 128-2).
    (link,) = [line for line in lines(name) if line.dash is Dash.DASHED]
    length = sum(math.dist(a, b) for a, b in pairwise(link.points))
    dash, gap = (part * link.width_mm for part in Dash.DASHED.value)
    assert length % (dash + gap) <= dash + 0.05
    assert length % (dash + gap) >= 0.5


def test_fuse_wire_runs_through_its_rectangle() -> None:
    assert [line.points for line in lines("fuse")] == [((0.0, 0.0), (10.0, 0.0))]
    (body,) = polygons("fuse")
    xs, ys = zip(*body.points, strict=True)
    assert (max(xs) - min(xs)) / (max(ys) - min(ys)) == pytest.approx(3.0)


def test_blocking_diode_lets_current_pass_towards_the_network() -> None:
    (triangle,) = polygons("blocking_diode")
    apex = max(triangle.points)
    assert apex[1] == 0.0
    assert [p[0] for p in triangle.points].count(apex[0]) == 1
    assert any(is_upright(line) and line.points[0][0] == apex[0] for line in lines("blocking_diode"))


@pytest.mark.parametrize(
    ("name", "text"),
    [("surge_protection_1", "T1"), ("surge_protection_2", "T2"), ("surge_protection_1_2", "T1+T2")],
)
def test_surge_protection_shows_its_type_and_ends_in_protective_earth(name: str, text: str) -> None:
    # Types of surge protective devices: IEC 61643-11 (T1, T2 in a box on the device), from memory.
    assert texts(name) == [text]
    dots = [c for c in circles(name) if c.fill is Fill.INK]
    assert [c.centre[1] for c in dots] == [0.0]
    (ring,) = [c for c in circles(name) if c.fill is Fill.NONE]
    assert ring.centre[0] == dots[0].centre[0]
    bars = [line for line in lines(name) if line.points[0][1] == line.points[1][1] > 0]
    assert len(bars) == 3
    assert all(math.dist(p, ring.centre) < ring.radius_mm for bar in bars for p in bar.points)


@pytest.mark.parametrize("name", ["earth", "protective_earth", "functional_earth", "earth_electrode"])
def test_earth_bars_grow_shorter_downwards(name: str) -> None:
    bars = sorted(
        (line.points[0][1], abs(line.points[1][0] - line.points[0][0]))
        for line in lines(name) if line.points[0][1] == line.points[1][1]
    )  # fmt: skip
    lengths = [length for _, length in bars]
    assert len(lengths) == 3
    assert lengths == sorted(lengths, reverse=True)
    assert len(set(lengths)) == 3


@pytest.mark.parametrize("name", INVERTERS)
def test_inverter_has_direct_current_upper_left_and_alternating_lower_right(name: str) -> None:
    (body,) = polygons(name)
    xs, ys = zip(*body.points, strict=True)
    centre = (sum(xs) / 4, sum(ys) / 4)
    sines = [s for s in symbol(name).strokes if isinstance(s, Curve)]
    assert len(sines) == 2
    assert all(x > centre[0] and y > centre[1] for sine in sines for x, y in sine.points)
    level = [
        line for line in lines(name)
        if line.points[0][1] == line.points[1][1] != 0.0
    ]  # fmt: skip
    solid, *dashes = sorted(level, key=lambda line: (line.points[0][1], line.points[0][0]))
    assert len(dashes) == 3
    assert all(p[0] < centre[0] and p[1] < centre[1] for line in level for p in line.points)
    assert (solid.points[0][0], solid.points[1][0]) == (dashes[0].points[0][0], dashes[-1].points[1][0])


@pytest.mark.parametrize(("name", "count"), [(n, 2 if n.endswith("isolated") else 1) for n in INVERTERS])
def test_diagonals_rise_to_the_right_and_two_mean_galvanic_separation(name: str, count: int) -> None:
    rising = [
        line for line in lines(name)
        if line.points[1][0] > line.points[0][0] and line.points[1][1] < line.points[0][1]
    ]  # fmt: skip
    assert len(rising) == count
    slopes = {round((b[1] - a[1]) / (b[0] - a[0]), 3) for a, b in (line.points for line in rising)}
    assert slopes == {-1.0}


@pytest.mark.parametrize(("name", "shown"), [(n, ["3"] if "3ph" in n else []) for n in INVERTERS])
def test_three_phases_are_written_before_the_sine(name: str, shown: list[str]) -> None:
    assert texts(name) == shown


def test_an_inverter_with_several_inputs_is_square_beside_a_strip_of_its_terminals() -> None:
    drawn = stretched("inverter_3ph", (-10.0, 0.0, 15.0))
    strip, body = [s for s in drawn.strokes if isinstance(s, Polyline) and s.closed]
    assert {y for _, y in strip.points} == {-11.25, 16.25}
    assert {x for x, _ in strip.points} == {0.0, 1.0}
    xs, ys = zip(*body.points, strict=True)
    assert (max(xs) - min(xs), max(ys) - min(ys)) == (10.0, 10.0)
    assert any(isinstance(s, Polyline) and s.points == ((min(xs), max(ys)), (max(xs), min(ys))) for s in drawn.strokes)


@pytest.mark.parametrize(
    ("count", "strokes", "figure"), [(1, 1, []), (2, 2, []), (3, 3, []), (4, 1, ["4"]), (5, 1, ["5"])]
)
def test_cable_shows_its_conductors(count: int, strokes: int, figure: list[str]) -> None:
    # Up to three strokes, beyond that one stroke and the figure (IEC 60617 03-01-02 and 03-01-03).
    name = f"cable_{count}"
    wire, *marks = lines(name)
    assert wire.points == ((0.0, 0.0), (5.0, 0.0))
    assert len(marks) == strokes
    assert texts(name) == figure
    for mark in marks:
        (x0, y0), (x1, y1) = mark.points
        assert math.degrees(math.atan2(abs(y1 - y0), abs(x1 - x0))) == pytest.approx(60, abs=0.05)
        assert middle(mark)[1] == pytest.approx(0.0)


def test_transformer_is_two_overlapping_circles() -> None:
    a, b = circles("transformer")
    assert a.radius_mm == b.radius_mm
    assert a.radius_mm < math.dist(a.centre, b.centre) < 2 * a.radius_mm


@pytest.mark.parametrize("name", ["pv_module", "pv_string", "pv_array"])
def test_module_points_towards_the_network(name: str) -> None:
    vees = [line for line in lines(name) if len(line.points) == 3 and line.points[1][1] == 0.0
            and line.points[0][0] == line.points[2][0]]  # fmt: skip
    assert vees
    assert all(vee.points[1][0] > vee.points[0][0] for vee in vees)


@pytest.mark.parametrize("name", ["meter", "meter_bidirectional", "meter_ct"])
def test_energy_meter_has_the_strip_of_integrating_instruments(name: str) -> None:
    (body,) = [p for p in polygons(name) if len(p.points) == 4]
    xs, ys = zip(*body.points, strict=True)
    strips = [line for line in lines(name) if {p[0] for p in line.points} == {min(xs), max(xs)}]
    assert len(strips) == 1
    assert min(ys) < strips[0].points[0][1] < (min(ys) + max(ys)) / 2
    assert texts(name) == ["kWh"]
    assert [dict(symbol(name).pins)[pin][1] for pin in ("data", "data2")] == [max(ys)] * 2


def test_both_directions_are_two_arrow_heads() -> None:
    heads = [p for p in polygons("meter_bidirectional") if p.fill is Fill.INK]
    assert len(heads) == 2
    assert not [p for p in polygons("meter") if p.fill is Fill.INK]


def test_interface_protection_names_voltage_and_frequency_limits() -> None:
    # Under- and overvoltage, under- and overfrequency: protection functions of EN 50549-1, clause 4.9, from memory.
    assert texts("interface_protection") == ["U< U>", "f< f>"]


@pytest.mark.parametrize("name", ["interface_protection", "interface_relay"])
def test_an_interface_relay_stands_beside_the_wire(name: str) -> None:
    """It measures at a dot on the wire, and nothing that the power flows through is in its box."""
    drawn = symbol(name)
    (dot,) = [s for s in drawn.strokes if isinstance(s, Circle) and s.fill is Fill.INK]
    assert dot.centre[1] == 0.0
    (relay,) = [each for each in polygons(name) if each.fill is Fill.NONE]
    assert min(y for _, y in relay.points) > dot.radius_mm
    assert drawn.hangs


def test_the_trip_line_leads_from_the_relay_to_the_blade() -> None:
    """With an arrow at the blade of the switch, which is on the side of the installation: the right is the network."""
    (link,) = [line for line in lines("interface_protection") if line.dash is Dash.DASHED]
    (relay,) = [each for each in polygons("interface_protection") if each.fill is Fill.NONE]
    (head,) = [each for each in polygons("interface_protection") if each.fill is Fill.INK]
    (dot,) = [s for s in symbol("interface_protection").strokes if isinstance(s, Circle)]
    assert link.points[0][0] == min(x for x, _ in relay.points)
    assert head.points[0] == link.points[-1]
    assert link.points[-1][0] < dot.centre[0]


def test_warning_sign_is_an_upright_triangle_round_a_flash() -> None:
    # Upright equilateral triangle round a flash that points down: ISO 7010 W012, from memory.
    (triangle,) = [each for each in polygons("warning_triangle") if each.fill is Fill.NONE]
    a, b, c = triangle.points
    for side in (math.dist(a, b), math.dist(b, c), math.dist(c, a)):
        assert side == pytest.approx(8.0, abs=0.001)
    assert a[1] == b[1] > c[1]
    (head,) = [each for each in polygons("warning_triangle") if each.fill is Fill.INK]
    tip = max(head.points, key=lambda point: point[1])
    assert c[1] < tip[1] < a[1]
    assert symbol("warning_triangle").pins == ()


@pytest.mark.parametrize(
    "name", [*INVERTERS, "battery", "battery_converter", "charge_converter", "charge_point", "pv_string", "pv_array",
             "microinverter", "optimiser", "generator"],
)  # fmt: skip
def test_earth_terminal_is_on_the_lower_edge(name: str) -> None:
    drawn = symbol(name)
    assert dict(drawn.pins)["earth"][1] == pytest.approx(drawn.box.bottom_mm)


@pytest.mark.parametrize("name", ["logger", "energy_manager", "router", "wireless", "communication_module"])
def test_data_terminals_of_data_devices_are_on_the_upper_edge(name: str) -> None:
    drawn = symbol(name)
    pins = dict(drawn.pins)
    assert abs(pins["data2"][0] - pins["data"][0]) == 2.5
    assert pins["data"][1] == pins["data2"][1] == pytest.approx(drawn.box.top_mm)


@pytest.mark.parametrize("name", [*INVERTERS, "battery_converter", "charge_converter"])
def test_data_terminals_of_converters_are_on_the_lower_edge_beside_earth(name: str) -> None:
    drawn = symbol(name)
    pins = dict(drawn.pins)
    assert [abs(pins[each][0] - pins["earth"][0]) for each in ("data", "data2")] == [2.5, 2.5]
    assert pins["data"][1] == pins["data2"][1] == pytest.approx(drawn.box.bottom_mm)


def test_termination_of_a_data_bus() -> None:
    # 120 ohms at each end: TIA-485-A, from memory.
    assert "120 Ω" in str(symbol("termination_resistor").title)
    assert symbol("termination_resistor").pins == (("feed", (0.0, 0.0)),)
