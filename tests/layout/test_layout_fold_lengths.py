"""Boards and inverters that are equal but for the lengths of their cables are drawn once where that saves sheets.

That equal branches are drawn once, with a table of what differs, is common practice, no source.
"""

from __future__ import annotations

import pytest
from plain_types import TYPES

from sld import layout, run
from sld.layout.plan import Plan
from sld.symbols.stroke import Text

HEAD = """project: {title: Field}
drawing: {paper: A4, largest_paper: A4}
site: {temperature_min: -10 °C, temperature_max: 32 °C, lightning_density: 0.5 /km2/yr}
supply: {phases: 3, voltage: 400 V, earthing_system: TN-S, prospective_fault_current: 20 kA, loop_impedance: 0.05 ohm}
boards:
  main: {name: main board, circuit: [{kind: breaker, rated_current: 250 A, breaking_capacity: 25 kA}]}
"""


def field(boards_m: list[float], ways_m: list[float], modules: int = 12, place: str = "block {}") -> str:
    """A spec of boards at the ends of cables of these lengths, each with inverters at the ends of cables of these."""
    boards = "".join(
        f"  b{n}: {{name: field board {n}, location: {place.format(n)}, fed_from: main,"
        " circuit: [{kind: breaker, breaking_capacity: 25 kA},"
        f" {{kind: cable, section: 25 mm2, length: {length} m}}]}}\n"
        for n, length in enumerate(boards_m, 1)
    )
    inverters = "".join(
        f"  i{n}x{m}: {{type: I, connected_to: b{n}, circuit: [{{kind: breaker, breaking_capacity: 25 kA}},"
        f" {{kind: cable, section: 4 mm2, length: {length} m}}, {{kind: isolator}}],"
        f" inputs: [{{strings: [{{module: M, modules_in_series: {modules if (n, m) == (2, 1) else 12},"
        f" cable: {{length: 20 m}}}}]}}]}}\n"
        for n in range(1, len(boards_m) + 1)
        for m, length in enumerate(ways_m, 1)
    )
    return f"{HEAD}{boards}inverters:\n{inverters}{TYPES}"


def plans(text: str) -> tuple[Plan, Plan | None]:
    """The diagram as it is drawn where there is room, and with lengths folded."""
    found = run.check_text(text)
    flags = layout.by_device(layout.numbered(found.system, found.findings))
    diagram = layout.diagram_of(found.system, found.ratings, flags)
    whole = layout.Drawable(((diagram, found.system),))
    shortened = whole.shortened()
    return next(whole.plans()), next(shortened.plans()) if shortened else None


def inverters(plan: Plan | None) -> list[int]:
    """How many inverters each that is drawn stands for."""
    return [1 + len(c.alike) for c in (plan.cells if plan else ()) if c.symbol.startswith("inverter")]


WAYS = [8.0, 8.0, 9.0, 12.0]
FOLDED = [
    ("lengths", field([40, 50, 60, 70], WAYS), [16]),
    ("equal lengths are folded anyway", field([40, 40, 40, 40], [8, 8, 8, 8]), [16]),
    ("another number of modules", field([40, 50, 60, 70], WAYS, modules=13), [4, 1, 1, 1, 1, 4, 4]),
    ("places that are not numbered", field([40, 50, 60, 70], WAYS, place="{0}a{0}"), [4, 4, 4, 4]),
    ("too few", field([40, 50, 60], [8, 9, 10]), [1] * 9),
]


@pytest.mark.parametrize(("text", "expected"), [row[1:] for row in FOLDED], ids=[row[0] for row in FOLDED])
def test_inverters_that_differ_in_lengths_alone_are_drawn_once(text: str, expected: list[int]) -> None:
    whole, shortened = plans(text)
    assert inverters(shortened or whole) == expected


def test_where_there_is_room_lengths_are_drawn_one_by_one() -> None:
    assert inverters(plans(field([40, 50, 60, 70], WAYS))[0]) == [1] * 16


def test_what_is_found_of_one_that_is_not_drawn_is_flagged_at_the_one_that_is() -> None:
    """The rise is too high at the inverters of the last board alone, which is farthest."""
    whole, shortened = plans(field([40, 50, 60, 100], WAYS))
    assert shortened
    flagged = [{flag.key for flag in plan.flags if "inverters" in flag.key} for plan in (whole, shortened)]
    assert flagged == [{f"inverters.i4x{number}" for number in (1, 2, 3, 4)}, {"inverters.i1x1"}]
    assert {flag.number for flag in whole.flags} == {flag.number for flag in shortened.flags}


def test_unfold_is_kept() -> None:
    text = field([40, 50, 60, 70], WAYS).replace("drawing: {", "drawing: {unfold: true, ")
    assert plans(text)[1] is None


def test_a_length_is_said_with_both_ends_and_listed_with_its_cable() -> None:
    made = run.draw(run.check_text(field([40, 50, 60, 70], WAYS)))
    texts = [label.text for each in made.diagrams for cell in each.plan.cells for label in cell.labels]
    assert any(text.endswith((" 8…12\u00a0m", " 8…12 m")) for text in texts), texts
    (table,) = (each for each in made.tables if each.name == "differences")
    assert [row[:2] for row in table.cells if "WD1" in row[0]] == [
        ("-UC2-WD1", "40 m"), ("-UC3-WD1", "50 m"), ("-UC4-WD1", "60 m"), ("-UC5-WD1", "70 m"),
        ("-TB1-WD1, -TB2-WD1, -TB5-WD1, -TB6-WD1, -TB9-WD1, -TB10-WD1, -TB13-WD1, -TB14-WD1", "8 m"),
        ("-TB3-WD1, -TB7-WD1, -TB11-WD1, -TB15-WD1", "9 m"), ("-TB4-WD1, -TB8-WD1, -TB12-WD1, -TB16-WD1", "12 m"),
    ]  # fmt: skip
    strokes = [s for sheet in made.sheets for g in sheet.groups if g.section == "differences" for s in g.strokes]
    printed = " ".join(stroke.text for stroke in strokes if isinstance(stroke, Text))
    for names in ("-UC2-WD1", "-TB1, 2, 5, 6, 9, 10, 13, 14-WD1", "-TB3, 7, 11, 15-WD1", "-TB4, 8, 12, 16-WD1"):
        assert names in printed
