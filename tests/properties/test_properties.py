"""What holds for every spec that the reader takes, whatever is in it."""

from __future__ import annotations

import copy
import json
import re
import xml.etree.ElementTree as ElementTree
from collections import Counter
from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from sheet_reader import Page, check_earth_references, on_data, read_sheets
from some_examples import examples

from sld import run
from sld.layout.plan import PlacedCell
from sld.model.device import Busbar, InverterUnit
from sld.model.kinds.ac import CHANGEOVER
from sld.model.system import System
from sld.sheet.compose import Composition, Standing
from sld.sheet.lint import lint
from sld.sheet.sheet import Sheet
from sld.symbols.stroke import Circle, Point, Polyline, Text
from specs import specs


def checked(data: dict[str, Any], folder: Path) -> run.Checked:
    """JSON is YAML, so the reader is asked as for any spec. Raises Unusable."""
    path = folder / "spec.yaml"
    path.write_text(json.dumps(data), encoding="utf-8")
    return run.check(path)


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("specs")


@examples(5)
@given(specs())
def test_every_spec_is_checked_and_drawn(folder: Path, data: dict[str, Any]) -> None:
    found = checked(data, folder)
    drawing = run.draw(found)
    for sheet in drawing.sheets:
        assert [defect.message for defect in lint(sheet)] == []
    assert_each_device_is_drawn_once(drawing, found.system)
    assert_designations_are_unique(found.system)
    assert_the_sheets_read_back(drawing, found.system)
    for content in run.files(drawing.sheets, "x", ("svg",)).values():
        texts = [each.text for each in ElementTree.fromstring(content).iter("{http://www.w3.org/2000/svg}text")]
        assert all(texts)


@examples(3)
@given(specs())
def test_every_spec_has_its_calculation(folder: Path, data: dict[str, Any]) -> None:
    """No text touches another, and each rating that the steps made stands there by its symbol."""
    found = checked(data, folder)
    made = run.documents(found, ("calculation",))["calculation"]
    for sheet in made.sheets:
        assert [defect.message for defect in lint(sheet)] == []
    symbols = {row[2] for table in made.tables for row in table.cells}
    assert {rating.symbol.printed for _, rating in found.ratings} <= symbols


@examples(3)
@given(specs(), st.sampled_from(["A4", "A3"]))
def test_every_spec_is_drawn_on_small_sheets(folder: Path, data: dict[str, Any], paper: str) -> None:
    """A diagram that does not fit is drawn in parts, and the sheets together still say what the system is."""
    data["drawing"] |= {"paper": paper, "largest_paper": paper}
    found = checked(data, folder)
    drawing = run.draw(found)
    for sheet in drawing.sheets:
        assert [defect.message for defect in lint(sheet)] == []
    assert_each_device_is_drawn_once(drawing, found.system)
    assert_the_sheets_read_back(drawing, found.system)


@examples(1)
@given(specs())
def test_a_drawing_made_twice_is_the_same(folder: Path, data: dict[str, Any]) -> None:
    one, two = (run.files(run.draw(checked(data, folder)).sheets, "x", ("svg", "strokes")) for _ in range(2))
    assert one == two


def assert_each_device_is_drawn_once(drawing: Composition, system: System) -> None:
    """By itself, or as one of several alike; no symbol is of nothing. The overview is left out: it shows some again."""
    drawn = {standing.sheet_number for standing in drawing.diagrams}
    groups = [
        group for sheet in drawing.sheets if sheet.number in drawn for group in sheet.groups if group.layer == "symbol"
    ]
    inked = Counter(group.key for group in groups if any(not isinstance(s, Text) for s in group.strokes))
    alike = Counter(key for standing in drawing.diagrams for cell in standing.plan.cells for key in cell.alike)
    if system.drawing.unfold:
        assert not alike
    assert {key: inked[key] + alike[key] for key in system.devices} == dict.fromkeys(system.devices, 1)
    marks = {group.key for group in groups if group.kind.startswith("continued_")}
    assert {key for key in inked if key.split("/")[0] not in {*system.devices, "earthing"}} <= marks
    assert set(system.devices) <= set(drawing.zones)
    assert {device.enclosure for device in system.devices.values()} - {""} == set(system.enclosures)
    printed = {s.text.split(" ")[0] for group in groups for s in group.strokes if isinstance(s, Text)}  # type behind
    terse = any(standing.plan.terse for standing in drawing.diagrams)  # begins behind the inverter of its row then
    framed = set(system.enclosures)  # a board is named by the caption of its frame
    names = [device.designation for key, device in system.devices.items() if key not in framed]
    missing = [name for name in names if not {name, name[name.find("-", 1) :] if terse else name} & printed]
    assert alike or missing == []


def each_of(designation: str) -> list[str]:
    """-TB1-GC1…3 stands for three."""
    match = re.fullmatch(r"(.*\D)(\d+)…(\d+)", designation)
    if not match:
        return [designation]
    return [f"{match[1]}{number}" for number in range(int(match[2]), int(match[3]) + 1)]


def assert_designations_are_unique(system: System) -> None:
    printed = [device.designation for device in system.devices.values()]
    printed += [conductor.designation for conductor in system.earth_conductors]
    printed += [chain.designation for chain in system.chains]
    boards = set(system.devices)  # a board's caption repeats the designation of its busbar
    printed += [str(caption).split()[0] for key, caption in system.enclosures.items() if key not in boards]
    count = Counter(one for designation in [*printed, system.earthing_designation] for one in each_of(designation))
    assert {one: n for one, n in count.items() if n > 1} == {}


def rounded(point: Point, dx_mm: float = 0.0, dy_mm: float = 0.0) -> Point:
    return (round(point[0] + dx_mm, 2), round(point[1] + dy_mm, 2))


def _pins(cell: PlacedCell) -> list[tuple[str, Point]]:
    """A busbar without ways has its `feed` in the point of its `supply`: one piece of metal, read as the latter."""
    supply = dict(cell.pins).get("supply")
    return [(name, at) for name, at in cell.pins if name != "feed" or at != supply]


def page(sheet: Sheet, standing: Standing) -> Page:
    """The plan with all its conductors, dots and labels taken from the strokes of the sheet.

    What conductors belong to is forgotten. Only where the terminals are, which leave no ink of their own, is still the
    plan's word.
    """
    plan, dx, dy = standing.plan, standing.x_mm, standing.y_mm
    inked: dict[str, Any] = {group.key: group.strokes for group in sheet.groups}
    wires = []
    for number, wire in enumerate(plan.wires, 1):
        (line,) = inked[f"wire-{number}"]
        assert isinstance(line, Polyline)
        wires.append(replace(wire, points=tuple(map(rounded, line.points)), ends=(("", ""), ("", "")), net=""))
    assert f"wire-{len(wires) + 1}" not in inked
    dots = tuple(
        rounded(dot.centre)
        for group in sheet.groups
        if group.key.startswith("junctions-")
        for dot in group.strokes
        if isinstance(dot, Circle)
    )
    cells = tuple(
        replace(
            cell,
            at=(cell.at[0] + dx, cell.at[1] + dy),
            box=cell.box.moved(dx, dy),
            pins=tuple((name, rounded(at, dx, dy)) for name, at in _pins(cell)),
            labels=tuple(each for each in inked[cell.key][-len(cell.labels) :] if isinstance(each, Text)),
        )
        for cell in plan.cells
    )
    whole = replace(plan, wires=tuple(wires), dots=dots, cells=cells)
    return Page(sheet.number, sheet.width_mm, sheet.height_mm, whole)


def power_tree(system: System, stands_for: Mapping[str, str]) -> set[frozenset[tuple[str, str]]]:
    """What is connected, as the System says it: each way of a busbar or inverter by itself, else all in one point.

    stands_for: the device that is drawn for each one; the ways are told apart only where every one is drawn.
    """
    nets = set()
    for parent, children in system.children.items():
        drawn = [(stands_for.get(child, child), "supply") for child in children]
        here = system.devices[parent]
        if isinstance(here, InverterUnit | Busbar) or here.kind is CHANGEOVER:
            ways = ["feed" if stands_for else f"feed{number}" for number in range(1, len(drawn) + 1)]
            nets |= {
                frozenset({(stands_for.get(parent, parent), way), child})
                for way, child in zip(ways, drawn, strict=True)
            }
        elif children:
            nets.add(frozenset({(stands_for.get(parent, parent), "feed"), *drawn}))
    return nets


def on_one_line(system: System) -> list[frozenset[str]]:
    """The devices on one data line: those of each chain, and the two of each link."""
    found = [frozenset(node.device for node in chain.nodes) for chain in system.chains]
    ends = [(link.from_device, link.to_device) for link in system.links]
    found += [frozenset(system.names[each][0] for each in pair) for pair in ends]
    return sorted((keys for keys in found if len(keys) > 1), key=sorted)


def assert_the_sheets_read_back(drawing: Composition, system: System) -> None:
    pages = [page(drawing.sheets[each.sheet_number - 1], each) for each in drawing.diagrams]
    nets = read_sheets(pages)
    data = {net for net in nets if any(name.startswith("data") for _, name in net)}
    earth = {net for net in nets if any(name == "earth" or key == "earthing" for key, name in net)}
    stands_for = {key: cell.key for each in pages for cell in each.plan.cells for key in cell.alike}
    power = nets - data - earth
    if stands_for:
        power = {frozenset((key, name.rstrip("0123456789")) for key, name in net) for net in power}
    assert power == power_tree(system, stands_for)
    cells = [cell for each in pages for cell in each.plan.cells]
    resistors = {cell.key for cell in cells if cell.symbol == "termination_resistor"}
    assert {key for net in data for key, name in net if name == "feed"} == resistors
    if not stands_for:
        assert on_data(data) == on_one_line(system)
    (bar,) = [net for net in earth if any(key == "earthing" for key, _ in net)]
    taps = {key.removeprefix("earthing/") for key, _ in bar if key.startswith("earthing/")}
    assert taps - {"PE"} == {conductor.designation for conductor in system.earth_conductors}
    check_earth_references(pages, "earthing")


def renamed(data: dict[str, Any], name: str, new: str) -> dict[str, Any]:
    """The spec with one inverter under another name, in the same place; every reference follows."""
    found = copy.deepcopy(data)
    found["inverters"] = {new if key == name else key: block for key, block in found["inverters"].items()}
    for battery in found["batteries"].values():
        if battery.get("inverter") in (name, f"{name}-2"):
            battery["inverter"] = battery["inverter"].replace(name, new)
    for board in found["boards"].values():
        for block, key in ((board, "fed_from_backup"), *((each, "second_source") for each in board.get("circuit", []))):
            if block.get(key) == name:
                block[key] = new
    bus = found.get("data", {})
    for chain in bus.get("chains", {}).values():
        for step in chain["devices"]:
            step["device"] = new if step["device"] == name else step["device"]
        if chain.get("master") == name:
            chain["master"] = new
        if name in chain.get("shield_earthed_at", []):
            chain["shield_earthed_at"] = [new if each == name else each for each in chain["shield_earthed_at"]]
    for link in bus.get("links", []):
        link.update({end: new for end in ("from", "to") if link[end] == name})
    for each in found.get("accept", []):
        each["at"] = f"inverters.{new}" if each["at"] == f"inverters.{name}" else each["at"]
    return found


def values(found: run.Checked) -> dict[tuple[str, str], tuple[Any, ...]]:
    """All ratings without the words that name devices; of a sum made in another order the last digit may differ."""
    return {
        (key, rating.symbol): (pytest.approx(rating.value, rel=1e-9, abs=1e-12), rating.unit, rating.clause)
        for key, rating in found.ratings
    }


def plain_values(found: run.Checked) -> dict[tuple[str, str], tuple[Any, ...]]:
    return {(key, rating.symbol): (rating.value, rating.unit, rating.clause) for key, rating in found.ratings}


@examples(6)
@given(specs(), st.randoms(use_true_random=False))
def test_names_and_order_change_no_rating(folder: Path, data: dict[str, Any], random: Any) -> None:
    before = checked(data, folder)
    shuffled = copy.deepcopy(data)
    for group in ("inverters", "batteries", "loads", "junction_boxes", "boards"):
        order = list(shuffled[group])
        random.shuffle(order)
        shuffled[group] = {name: shuffled[group][name] for name in order}
    assert plain_values(checked(shuffled, folder)) == values(before)

    name = random.choice(sorted(data["inverters"]))
    after = checked(renamed(data, name, "völlig anders"), folder)
    key = re.compile(rf"^inverters\.{re.escape(name)}(?=-\d+(\.|$)|\.|$)")
    expected = {(key.sub("inverters.völlig anders", owner), symbol): v for (owner, symbol), v in values(before).items()}
    assert plain_values(after) == expected
