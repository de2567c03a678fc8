"""Data lines: no line crosses another where their order can help it, none leaves its way between neighbours."""

from __future__ import annotations

from pathlib import Path

import pytest
from data_ways import data_lines, direct_mm
from example_specs import SPECS, document

from sld import run
from sld.layout.diagram.diagram import BusChain, BusStep, Cell, Diagram, Join, LineKind, Medium
from sld.layout.diagram.symbol_of import symbol_of
from sld.layout.passes.arrange import arrange
from sld.layout.passes.crossings import crossings_count
from sld.layout.plan import Plan
from sld.symbols import catalogue
from sld.symbols.stroke import Box, Point


def placed(*links: tuple[str, str], free: tuple[str, ...]) -> Plan:
    """Free devices from the top down below one inverter, and the links between them."""
    root = Cell("net", "network", children=(Cell("t1", "inverter_3ph", join=Join.SPAN, aligned="inverter"),))
    cells = tuple(Cell(name, "logger", kind=LineKind.DATA) for name in free)
    chains = tuple(BusChain("-".join(pair), steps=tuple(map(BusStep, pair)), medium=Medium.ETHERNET) for pair in links)
    return arrange(Diagram(root, free=cells, chains=chains), catalogue.family("IEC"))


def between(plan: Plan, name: str) -> list[tuple[float, float]]:
    return [point for wire in plan.wires if wire.net == name for point in wire.points]


@pytest.mark.parametrize(
    "links",
    [
        (("a", "b"), ("a", "c"), ("a", "d")),
        (("d", "a"), ("d", "b"), ("d", "c")),
        (("a", "d"), ("a", "c"), ("a", "b")),
        (("t1", "d"), ("d", "c")),
        (("t1", "a"), ("a", "b"), ("a", "c")),
        (("b", "a"), ("b", "c"), ("b", "d"), ("t1", "b")),
    ],
)
def test_lines_of_one_device_do_not_cross(links: tuple[tuple[str, str], ...]) -> None:
    """Whatever order they are given in: those from one device to others above and below it can all be nested."""
    plan = placed(*links, free=("a", "b", "c", "d"))
    assert crossings_count(wire for wire in plan.wires if wire.kind is LineKind.DATA) == 0


@pytest.mark.parametrize("pair", [("a", "b"), ("b", "a")])
def test_neighbours_are_joined_from_edge_to_edge(pair: tuple[str, str]) -> None:
    """From the lower edge of the one to the upper edge of the next: nothing leads up or further right on the way."""
    plan = placed(pair, free=("a", "b"))
    cells = {cell.key: cell for cell in plan.cells}
    (wire,) = [wire for wire in plan.wires if wire.kind is LineKind.DATA]
    ends = sorted((wire.points[0], wire.points[-1]), key=lambda point: point[1])
    assert ends[0][1] == cells["a"].box.bottom_mm
    assert ends[1][1] == cells["b"].box.top_mm
    assert {x for x, _ in wire.points} <= {ends[0][0], ends[1][0]}


def test_what_is_down_leaves_below_what_is_up_above() -> None:
    plan = placed(("t1", "b"), ("b", "c"), free=("a", "b", "c"))
    box = next(cell for cell in plan.cells if cell.key == "b").box
    assert min(y for _, y in between(plan, "t1-b")) < box.top_mm
    assert min(y for _, y in between(plan, "b-c")) == box.bottom_mm


@pytest.mark.parametrize(
    "path", [path for path in SPECS if path.stem in ("ferry-depot", "valley-school", "winery-estate")]
)
def test_data_lines_of_a_sheet_do_not_cross_each_other(path: Path) -> None:
    """Each crosses at most the output of an inverter that it passes."""
    for standing in document(path, "drawing").diagrams:
        plan = standing.plan
        assert crossings_count(wire for wire in plan.wires if wire.kind is LineKind.DATA) == 0
        inverters = sum(cell.symbol.startswith("inverter") for cell in plan.cells)
        assert plan.crossings_count <= inverters


@pytest.mark.parametrize(
    "direct",
    [
        ((0.0, 0.0), (10.0, 4.0), (), 14.0),
        ((0.0, 0.0), (10.0, 4.0), ((5.0, -2.0, 9.0),), 18.0),  # over it: two up and two down again
        ((0.0, 0.0), (10.0, 4.0), ((5.0, -20.0, 5.0),), 16.0),  # under it
        ((0.0, 0.0), (10.0, 4.0), ((5.0, 2.0, 9.0),), 14.0),  # past its upper end
        ((0.0, 0.0), (10.0, 4.0), ((3.0, -2.0, 90.0), (6.0, -90.0, 8.0)), 26.0),  # over the one, under the other
        ((0.0, 0.0), (10.0, 4.0), ((12.0, -2.0, 9.0),), 14.0),
    ],
)
def test_the_direct_way_goes_round_busbars(
    direct: tuple[Point, Point, tuple[tuple[float, float, float], ...], float],
) -> None:
    """Worked by hand: bars by their x, upper and lower end."""
    one, other, bars, expected = direct
    assert direct_mm(one, other, [Box(x, top, x, bottom) for x, top, bottom in bars]) == expected


CROSSED = {"lower-farm": 1.5}
"""The wireless link to the router passes the second inverter on the inner track."""


@pytest.mark.parametrize("path", SPECS, ids=lambda path: path.stem)
def test_data_lines_take_the_direct_way(path: Path) -> None:
    """At most 1.3 times as long as in straight steps round the busbars; at most one crossing an inverter."""
    for standing in document(path, "drawing").diagrams:
        lines = data_lines(standing.plan)
        assert lines.way <= 1.3
        assert lines.crossings <= CROSSED.get(path.stem, 1.0)


LIMITERS = {
    "lower-farm": {"boards.main.circuit.2", "inverters.inv1", "inverters.inv2"},
    "wattle-court": {"boards.main.circuit.2", "inverters.wall"},
}
"""By spec: the meter that the limiter measures by, and the inverters that it turns down, one of them it."""


@pytest.mark.parametrize("path", [path for path in SPECS if path.stem in LIMITERS])
def test_a_feed_in_limiter_has_sensor_line_and_actors(path: Path) -> None:
    """One data line joins them, the limiter says by its label that it is one, and the schedule what is which."""
    made = document(path, "drawing")
    plan = made.diagrams[0].plan
    lines: dict[str, set[str]] = {}
    for wire in plan.wires:
        if wire.kind is LineKind.DATA:
            lines.setdefault(wire.net, set()).update(key for key, _ in wire.ends)
    assert [net for net, keys in lines.items() if LIMITERS[path.stem] <= keys]
    words = " ".join(label.text for cell in plan.cells if cell.key in LIMITERS[path.stem] for label in cell.labels)
    assert "feed-in ≤" in words.replace("\u00a0", " ")
    (schedule,) = [table for table in made.tables if table.name == "equipment"]
    assert "feed-in limiter: sensor -UC1-PG2, limits -TB1" in " ".join(cell for row in schedule.cells for cell in row)


HOUSE = """project: {title: House}
site: {temperature_min: -10 °C, temperature_max: 35 °C}
supply: {phases: 1, earthing_system: TN-S}
types:
  modules:
    M: {rated_power: 400 W, open_circuit_voltage: 37 V, short_circuit_current: 13 A, mpp_voltage: 31 V,
        mpp_current: 12 A, voltage_coefficient: -0.26 %/K}
  inverters:
    I: {rated_power: 3 kW, phases: 1, dc_voltage_max: 600 V, mpp_voltage_min: 100 V, mpp_voltage_max: 500 V,
        inputs: [{current_max: 15 A, short_circuit_current_max: 20 A}]}
inverters: {roof: {type: I, inputs: [{strings: [{module: M, modules_in_series: 8}]}]}}
"""


@pytest.mark.parametrize(
    ("medium", "drawn"), [("wireless", "wireless"), ("ethernet", "communication_module"), ("", "communication_module")]
)
def test_a_communication_module_is_drawn_as_wireless_where_it_has_such_a_link(medium: str, drawn: str) -> None:
    link = f", links: [{{from: talk, to: net, medium: {medium}}}]" if medium else ""
    system = run.check_text(
        f"{HOUSE}data: {{devices: {{talk: {{kind: module}}, net: {{kind: router}}}}{link}}}\n"
    ).system
    assert symbol_of(system.devices["data.devices.talk"], system) == drawn
    assert symbol_of(system.devices["data.devices.net"], system) == "router"
