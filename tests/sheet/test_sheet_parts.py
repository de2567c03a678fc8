"""A drawing on several sheets: when it is made, its overview, its index, and what each sheet says of the others."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path

import pytest
from plain_types import TYPES

from sld import run
from sld.layout.parts.overview import OVERVIEW
from sld.sheet.compose import Composition
from sld.sheet.lint import lint
from sld.sheet.placement import largest_of
from sld.sheet.sheet import Group, Sheet
from sld.symbols.stroke import Box, Text
from sld.symbols.typeface import text_box

SPECS = Path(__file__).parents[2] / "specs"


@pytest.fixture(scope="module")
def checked() -> run.Checked:
    return run.check(SPECS / "winery-estate.yaml")


@pytest.fixture(scope="module")
def drawing(checked: run.Checked) -> Composition:
    return run.draw(checked)


def words(sheet: Sheet, *keys: str) -> list[str]:
    groups = [group for group in sheet.groups if not keys or group.key in keys]
    return [stroke.text for group in groups for stroke in group.strokes if isinstance(stroke, Text)]


def test_the_estate_is_drawn_on_an_overview_and_some_sheets(drawing: Composition) -> None:
    count = len(drawing.diagrams)
    assert 3 <= count <= 7
    assert [standing.sheet_number for standing in drawing.diagrams] == list(range(2, count + 2))
    assert {standing.paper.name for standing in drawing.diagrams} == {"A3"}
    assert f"sheets 2 to {count + 1}" in str(drawing.note)
    assert [sheet.number for sheet in drawing.sheets] == list(range(1, len(drawing.sheets) + 1))
    for sheet in drawing.sheets:
        assert lint(sheet) == []


def test_the_overview_names_the_place_of_boards_inverters_and_network(drawing: Composition) -> None:
    shown = 0
    for group in drawing.sheets[0].groups:
        if group.key.startswith(OVERVIEW):
            told = [
                found[1] for text in words(drawing.sheets[0], group.key) if (found := re.search(r"(/\d\S+)$", text))
            ]
            if told:
                assert told == ["/" + drawing.zones[group.key.removeprefix(OVERVIEW)].replace("/", ".")]
                shown += 1
    assert shown == 1 + 4 + 4  # the network, four boards, the inverters of each


def test_the_overview_shows_what_the_supply_goes_through(drawing: Composition) -> None:
    """The trade looks for incomer, meter, interface protection and main switches first: common practice, no source."""
    texts = words(drawing.sheets[0])
    supply = ["-UC1-FC1", "-UC1-PG1", "-UC1-BU1", "-TA1"]
    feeders = [f"-UC{number}-{device}" for number in (2, 3, 4) for device in ("FC1", "QB1")]
    assert [name for name in (*supply, *feeders) if name not in texts] == []
    assert {"← customer", "network →"} <= set(texts)


def test_overview_and_index_have_the_totals_of_the_spec(drawing: Composition) -> None:
    """By hand: 2 × 25 + 6 × 18 + 6 × 8 = 206 kVA; press house 3 + 2 + 2 + 1, cellar 2 + 2 + 1 + 1, barn 2 + 3 + 2 + 1,
    stable 1 + 1 strings: 24."""
    texts = words(drawing.sheets[0])
    assert any(text.startswith("206 kVA, 24 strings /2.") for text in texts)
    every = [text for sheet in drawing.sheets for text in words(sheet)]
    place = every.index("total")
    assert every[place : place + 4] == ["total", "14", "206 kVA", "24"]


@pytest.mark.parametrize("boards", [2, 7, 14])
def test_there_is_an_overview_however_many_boards(boards: int) -> None:
    board = (
        "  b{n}: {{fed_from: main, name: board {n}x{n}, circuit: [{{kind: breaker}}, {{kind: cable, length: 30 m}}]}}"
    )
    inverter = (
        "  i{n}: {{type: I, connected_to: b{n}, circuit: [{{kind: breaker}}, {{kind: cable, length: 5 m}}],"
        " inputs: [{{strings: [{{module: M, modules_in_series: 12, cable: {{length: 20 m}}}}]}}]}}"
    )
    numbers = range(1, boards + 1)
    text = "\n".join(
        ["project: {title: Field}", "drawing: {paper: A4, largest_paper: A4}",
         "site: {temperature_min: -10 °C, temperature_max: 32 °C, lightning_density: 0.5 /km2/yr}",
         "supply: {phases: 3, voltage: 400 V, earthing_system: TN-S, prospective_fault_current: 20 kA,"
         " loop_impedance: 0.05 ohm}", "boards:", "  main: {name: main board}",
         *(board.format(n=n) for n in numbers), "inverters:", *(inverter.format(n=n) for n in numbers), TYPES]
    )  # fmt: skip
    made = run.draw(run.check_text(text))
    texts = words(made.sheets[0])
    assert len(made.diagrams) > 1
    assert [n for n in numbers if not any(text.startswith(f"-UC{n + 1} board {n}x{n}") for text in texts)] == []


def test_each_sheet_of_the_diagram_says_what_it_shows(drawing: Composition) -> None:
    numbers = [standing.sheet_number for standing in drawing.diagrams]
    headings = [words(drawing.sheets[n - 1], f"heading-{n}") for n in numbers]
    assert all(len(each) == 1 for each in headings)
    assert headings[0] == ["supply, -UC1 estate main board: -TB13, -TB14"]
    assert [drawing.sheets[n - 1].description.split("; ")[0] for n in numbers] == [each[0] for each in headings]


def test_tables_stand_beside_the_parts_and_go_on_on_later_sheets(drawing: Composition) -> None:
    beside = [sheet for sheet in drawing.sheets if any(g.key.startswith("heading") for g in sheet.groups)]
    assert sum(any(group.section for group in sheet.groups) for sheet in beside) >= len(beside) / 2
    told = [(sheet.number, text) for sheet in drawing.sheets for text in words(sheet)
            if text.startswith("continued on sheet")]  # fmt: skip
    assert told
    for number, text in told:
        there = int(text.rpartition(" ")[2])
        assert there > number
        assert any(text.endswith("(continued)") for text in words(drawing.sheets[there - 1])), there


def test_tables_are_as_far_below_what_a_part_says_it_shows_as_below_each_other(drawing: Composition) -> None:
    def boxes(sheet: Sheet, wanted: Callable[[Group], bool]) -> list[Box]:
        return [text_box(s) for g in sheet.groups if wanted(g) for s in g.strokes if isinstance(s, Text)]

    below_mm = []
    for standing in drawing.diagrams:
        sheet = drawing.sheets[standing.sheet_number - 1]
        (heading,) = boxes(sheet, lambda group: group.key.startswith("heading"))
        below_mm += [box.top_mm - heading.bottom_mm for box in boxes(sheet, lambda group: group.section != "")]
    assert 3.0 <= min(below_mm) < 5.0  # own convention: between the rows of one table and the title of the next 3 mm


def test_what_is_read_first_is_on_the_first_sheet(drawing: Composition) -> None:
    first = {group.section for group in drawing.sheets[0].groups}
    assert {"summary", "cautions", "findings", "sheet_index", "notes"} <= first


@pytest.mark.parametrize(("paper", "count"), [("A2", 4), ("A1", 2), ("A0", 1)])
def test_a_larger_sheet_asked_for_needs_fewer_parts(checked: run.Checked, paper: str, count: int) -> None:
    made = run.draw(checked, paper=paper)
    assert len(made.diagrams) <= count
    assert all(standing.paper.name.startswith(paper) for standing in made.diagrams)


@pytest.mark.parametrize(
    ("largest", "paper", "expected"),
    [(None, "A3", "A2"), (None, "A4", "A2"), (None, "A1", "A1"), ("A3", "A3", "A3"), ("A4", "A3", "A3"),
     ("A0", "A3", "A0")],
)  # fmt: skip
def test_the_largest_sheet_is_never_smaller_than_the_one_asked_for(
    largest: str | None, paper: str, expected: str
) -> None:
    assert largest_of(largest, paper).name == expected


def test_the_title_block_says_where_the_findings_are_listed(tmp_path: Path) -> None:
    path = tmp_path / "types"
    path.symlink_to(SPECS / "types")
    spec = (SPECS / "upper-farm-faulty.yaml").read_text(encoding="utf-8")
    (tmp_path / "x.yaml").write_text(spec, encoding="utf-8")
    drawn = run.draw(run.check(tmp_path / "x.yaml", allow_outside=True), paper="A2")
    last = max(sheet.number for sheet in drawn.sheets if any(group.title == "Findings" for group in sheet.groups))
    told = " ".join(words(drawn.sheets[0], "title-block"))
    assert ("see sheet" in told) == (last > 1)
