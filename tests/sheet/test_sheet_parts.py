"""A drawing on several sheets: when it is made, its overview, its index, and what each sheet says of the others."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from sld import run
from sld.layout.parts.overview import OVERVIEW
from sld.sheet.compose import Composition
from sld.sheet.lint import lint
from sld.sheet.placement import largest_of
from sld.sheet.sheet import Sheet
from sld.symbols.stroke import Text

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


def test_the_overview_names_the_place_of_all_that_it_shows(drawing: Composition) -> None:
    shown = 0
    for group in drawing.sheets[0].groups:
        if group.key.startswith(OVERVIEW):
            told = [text for text in words(drawing.sheets[0], group.key) if re.match(r"/\d", text)]
            assert told == ["/" + drawing.zones[group.key.removeprefix(OVERVIEW)].replace("/", ".")]
            shown += 1
    assert shown >= 1 + 4 + 4  # the network, four boards, the inverters of each


def test_overview_and_index_have_the_totals_of_the_spec(drawing: Composition) -> None:
    """By hand: 2 × 25 + 6 × 18 + 6 × 8 = 206 kVA; press house 3 + 2 + 2 + 1, cellar 2 + 2 + 1 + 1, barn 2 + 3 + 2 + 1,
    stable 1 + 1 strings: 24."""
    texts = words(drawing.sheets[0])
    assert "206 kVA, 24 strings" in texts
    every = [text for sheet in drawing.sheets for text in words(sheet)]
    place = every.index("total")
    assert every[place : place + 4] == ["total", "14", "206 kVA", "24"]


def test_each_sheet_of_the_diagram_says_what_it_shows(drawing: Composition) -> None:
    numbers = [standing.sheet_number for standing in drawing.diagrams]
    headings = [words(drawing.sheets[n - 1], f"heading-{n}") for n in numbers]
    assert all(len(each) == 1 for each in headings)
    assert headings[0] == ["supply, -UC1 estate main board"]
    assert [drawing.sheets[n - 1].description for n in numbers] == [each[0] for each in headings]


def test_tables_go_on_after_the_diagram(drawing: Composition) -> None:
    told = [text for sheet in drawing.sheets for text in words(sheet) if text.startswith("continued on sheet")]
    numbers = [int(text.rpartition(" ")[2]) for text in told]
    assert numbers
    assert min(numbers) >= len(drawing.diagrams) + 2
    for number in numbers:
        assert any(text.endswith("(continued)") for text in words(drawing.sheets[number - 1])), number


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
    drawn = run.draw(run.check(tmp_path / "x.yaml", allow_outside=True))
    first = next(sheet.number for sheet in drawn.sheets if any(group.title == "Findings" for group in sheet.groups))
    told = " ".join(words(drawn.sheets[0], "title-block"))
    assert ("listed on sheet" in told) == (first > 1)
