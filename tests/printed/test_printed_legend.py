"""The legend has a sample of each line and symbol that is drawn and of nothing else, and lines look as it says."""

from __future__ import annotations

from pathlib import Path

import pytest
from printed_sheet import Drawing, drawing

from sld import run
from sld.symbols.stroke import Circle, Dash, Polyline

ROOT = Path(__file__).parents[2]
SPECS = ("workshop", "cottage", "ranch", "yard")

LINES = {"AC power": "ac", "DC power": "dc", "Earthing and bonding": "earth", "Enclosure": "enclosure"}
"""Each line by its meaning: the layer of its group."""


def lines_of(sheet: Drawing, layer: str) -> set[tuple[float, Dash]]:
    """Width and pattern of the lines of new devices in a layer, without bars."""
    groups = [group for each in sheet.sheets for group in each.groups if group.layer == layer and group.status == "new"]
    strokes = [stroke for group in groups for stroke in group.strokes if isinstance(stroke, Polyline)]
    return {(stroke.width_mm, stroke.dash) for stroke in strokes if stroke.width_mm < 0.7}


@pytest.mark.parametrize("spec", SPECS)
def test_lines_look_as_the_legend_says(spec: str) -> None:
    legend = drawing(spec).legend()
    for meaning, layer in LINES.items():
        drawn = lines_of(drawing(spec), layer)
        assert (meaning in legend) == bool(drawn), meaning
        if drawn:
            (sample,) = legend[meaning]
            assert isinstance(sample, Polyline)
            assert drawn == {(sample.width_mm, sample.dash)}, meaning


def test_lines_can_be_told_apart() -> None:
    """In black by width and pattern alone: AC the widest, patterns for earth, data and enclosures (ISO 128-2)."""
    found = {meaning: lines_of(drawing("workshop"), layer) for meaning, layer in LINES.items()}
    assert found == {
        "AC power": {(0.5, Dash.CONTINUOUS)},
        "DC power": {(0.35, Dash.CONTINUOUS)},
        "Earthing and bonding": {(0.35, Dash.DOTTED)},
        "Enclosure": {(0.25, Dash.BOUNDARY)},
    }


DATA = {
    "Data: RS-485": Dash.LONG_SHORT,
    "Data: Ethernet": Dash.DOUBLE_DASH,
    "Data: wireless": Dash.SPACED,
    "Data: pulse output": Dash.DOUBLE_DOT,
    "Data: trip line": Dash.DOT,
}
"""What carries data, by its line of ISO 128-2 (from memory): 10, 11, 03, 12, 08; none is 02, as what is planned is."""


def data_lines(sheet: Drawing) -> set[Dash]:
    return {dash for _, dash in lines_of(sheet, "data")}


def test_what_carries_data_is_told_apart() -> None:
    """Workshop: a chain on RS-485, links by Ethernet and without wires, all of them in the legend and no other."""
    legend = drawing("workshop").legend()
    told = {meaning: legend[meaning][0] for meaning in DATA if meaning in legend}
    assert list(told) == ["Data: RS-485", "Data: Ethernet", "Data: wireless"]
    for meaning, sample in told.items():
        assert isinstance(sample, Polyline)
        assert (sample.width_mm, sample.dash) == (0.25, DATA[meaning])
    assert data_lines(drawing("workshop")) == {DATA[meaning] for meaning in told}


@pytest.mark.parametrize("spec", SPECS)
def test_legend_has_the_data_lines_that_are_drawn(spec: str) -> None:
    legend = drawing(spec).legend()
    assert {DATA[meaning] for meaning in DATA if meaning in legend} == data_lines(drawing(spec))


@pytest.mark.parametrize("spec", SPECS)
def test_symbols_of_the_legend_are_those_that_are_drawn(spec: str) -> None:
    sheet = drawing(spec)
    told = set(sheet.legend())
    kinds = {name: sheet.device(name) for name in sheet.designations()}
    drawn = {
        sheet.meaning(name) for name, group in kinds.items() if group.status != "future" and group.kind != "busbar"
    }
    assert drawn - told == set()
    strange = {"Energy meter with current transformers", "Generator", "Battery", "Fuse", "Micro-inverter, three-phase",
               "Transformer, two windings", "Contactor", "Blocking diode", "Data logger", "Busbar"}  # fmt: skip
    assert {meaning for meaning in strange & told if meaning != "Busbar"} <= drawn
    assert "Busbar" in told


MARKS = [
    ("workshop", "Connected", True),
    ("workshop", "Crossing, not connected", False),
    ("workshop", "New device", True),
    ("workshop", "Existing device or conductor (thinner line)", True),
    ("workshop", "Future device or conductor (dashed)", False),
    ("cottage", "Future device or conductor (dashed)", True),
    ("workshop", "Danger, see the findings", True),
    ("workshop", "Advice, see the findings", True),
    ("workshop", "Accepted deviation", False),
    ("cottage", "Accepted deviation", True),
    ("workshop", "Boundary of ownership", True),
    ("workshop", "Termination resistor, 120 Ω", True),
    ("cottage", "Termination resistor, 120 Ω", False),
    ("cottage", "Functional earth", True),
    ("workshop", "Functional earth", False),
    ("yard", "n equal branches drawn once; -TB1…9-FC1 is -TB1-FC1 to -TB9-FC1", True),
    ("workshop", "n equal branches drawn once; -TB1…9-FC1 is -TB1-FC1 to -TB9-FC1", False),
]


@pytest.mark.parametrize(("spec", "meaning", "there"), MARKS)
def test_mark(spec: str, meaning: str, there: bool) -> None:
    assert (meaning in drawing(spec).legend()) == there


def test_samples_of_marks() -> None:
    """A dot where lines are connected and none where they cross; existing thinner, planned dashed."""
    workshop, cottage = drawing("workshop").legend(), drawing("cottage").legend()
    (dot,) = [stroke for stroke in workshop["Connected"] if isinstance(stroke, Circle)]
    level, stem = [stroke.points for stroke in workshop["Connected"] if isinstance(stroke, Polyline)]
    assert dot.centre == stem[0]  # in the middle of the one line, where the other begins
    assert dot.centre == ((level[0][0] + level[1][0]) / 2, level[0][1])
    assert stem[1][0] == stem[0][0]
    hall = run.draw(run.check(ROOT / "specs" / "village-hall.yaml"))  # a bus crosses the output of its inverter
    crossing = Drawing(hall.sheets, hall.about).legend()["Crossing, not connected"]
    assert crossing
    assert not [stroke for stroke in crossing if isinstance(stroke, Circle)]
    level, upright = [stroke.points for stroke in crossing if isinstance(stroke, Polyline)]
    assert level[0][0] < upright[0][0] == upright[1][0] < level[1][0]
    assert upright[0][1] < level[0][1] < upright[1][1]
    (new,) = workshop["New device"]
    (existing,) = workshop["Existing device or conductor (thinner line)"]
    (future,) = cottage["Future device or conductor (dashed)"]
    assert new.width_mm - existing.width_mm > 0.07 + 1e-6
    assert isinstance(future, Polyline)
    assert isinstance(existing, Polyline)
    assert (existing.dash, future.dash) == (Dash.CONTINUOUS, Dash.DASHED)
    assert isinstance(new, Polyline)
    assert all(outline.closed for outline in (new, existing, future))


@pytest.mark.parametrize(
    ("spec", "standard"),
    [("workshop", "IEC 60617"), ("cottage", "IEC 60617"), ("ranch", "IEEE 315-1975 (ANSI Y32.2)")],
)
def test_the_standard_of_the_symbols_is_told(spec: str, standard: str) -> None:
    assert f"Legend; symbols after {standard}" in drawing(spec).titles()


def test_a_wire_is_as_thin_as_the_devices_that_it_joins() -> None:
    """Between existing devices a conductor is half as wide, to a planned one it is dashed."""
    wires = [group for each in drawing("cottage").sheets for group in each.groups if group.layer == "ac"]
    by_status = {status: {(s.width_mm, s.dash) for group in wires if group.status == status for s in group.strokes
                          if isinstance(s, Polyline)} for status in ("new", "existing", "future")}  # fmt: skip
    assert by_status["new"] == {(0.5, Dash.CONTINUOUS)}
    assert by_status["existing"] == {(0.25, Dash.CONTINUOUS)}
    assert by_status["future"] == {(0.5, Dash.DASHED)}
    named = {group.title: group.status for group in wires}
    assert named["-TB1 – -TB1-QB1"] == "existing"
    assert named["-TB4-WD1 – -TB4-FC1"] == "future"
    assert named["-TB1-PG1 – -TB1-FC1"] == "new"


@pytest.mark.parametrize(("spec", "colour"), [("yard", "restrained"), ("workshop", "monochrome")])
def test_colour_of_the_sheets_is_as_asked(spec: str, colour: str) -> None:
    assert {sheet.colour for sheet in drawing(spec).sheets} == {colour}
    roles = {stroke.role for sheet in drawing(spec).sheets for group in sheet.groups
             for stroke in group.strokes if isinstance(stroke, Polyline)}  # fmt: skip
    assert {"ac", "dc", "earth"} <= roles


def test_where_a_conductor_ends_its_colour_goes_on() -> None:
    """No black stretch between a coloured conductor and what it leads to: leads, terminals and bars have its role."""
    for sheet in drawing("workshop").sheets:
        power = [group for group in sheet.groups if group.layer in ("ac", "dc") and group.key.startswith("wire")]
        ends = {
            tuple(round(value, 2) for value in stroke.points[place]): stroke.role
            for group in power for stroke in group.strokes if isinstance(stroke, Polyline) for place in (0, -1)
        }  # fmt: skip
        leads = [
            (stroke.role, ends[at])
            for group in sheet.groups if group.layer == "symbol" for stroke in group.strokes
            if isinstance(stroke, Polyline) and not stroke.closed for point in (stroke.points[0], stroke.points[-1])
            if (at := tuple(round(value, 2) for value in point)) in ends and _leaves_along(stroke, point)
        ]  # fmt: skip
        assert all(role == conductor for role, conductor in leads)


def _leaves_along(stroke: Polyline, point: tuple[float, float]) -> bool:
    """Whether a stroke leaves its end upright or level, as a lead does, and not as a blade."""
    (x1, y1), (x2, y2) = stroke.points[:2] if stroke.points[0] == point else stroke.points[:-3:-1]
    return min(abs(x1 - x2), abs(y1 - y2)) < 0.01
