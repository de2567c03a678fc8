"""Rows need little height: labels stand beside what hangs from the wire, and what is too tall is set narrower."""

from __future__ import annotations

from itertools import pairwise

import pytest
from plan_check import defects
from test_layout_fold_lengths import HEAD, TYPES

from sld import layout, run
from sld.layout.diagram.wrapping import LOW, LOWEST, MANNERS, Manner, lines_wrapped, worded
from sld.layout.plan import Plan

INPUT = (
    "{strings: [{module: M, modules_in_series: 12, count: 2, orientation: 'south, 15°', cable: {length: 20 m}}],"
    " circuit: [{kind: surge_protection, protection_level: 4 kV}, {kind: isolator, rated_voltage: 1200 V}]}"
)
SPEC = f"""{HEAD}inverters:
  hall: {{type: I, connected_to: main, circuit: [{{kind: breaker, breaking_capacity: 25 kA}},
    {{kind: cable, length: 9 m}}], inputs: [{", ".join([INPUT] * 9)}]}}
{TYPES.replace("count: 1,", "count: 9,").replace("24 A", "40 A, strings_max: 2").replace("5 kW", "80 kW")}"""


@pytest.fixture(scope="module")
def checked() -> run.Checked:
    return run.check_text(SPEC.replace("drawing: {", "drawing: {unfold: true, "))


def plan(found: run.Checked, manner: Manner) -> tuple[Plan, list[str]]:
    diagram = lines_wrapped(worded(layout.diagram_of(found.system, found.ratings, {})), manner)
    made = layout.arrange(diagram)
    return made, [each for each in defects(made, diagram) if "'-WE3'" not in each]  # said once, at their spine


def pitch_mm(made: Plan) -> float:
    """The least distance of the axes of strings."""
    axes = sorted({cell.at[1] for cell in made.cells if cell.symbol.startswith("pv_")})
    return min(below - above for above, below in pairwise(axes))


@pytest.mark.parametrize("manner", [*MANNERS, LOW, LOWEST], ids=str)
def test_nothing_lies_on_anything_in_any_manner(checked: run.Checked, manner: Manner) -> None:
    assert plan(checked, manner)[1] == []


@pytest.mark.parametrize("manner", [each for each in (*MANNERS, LOW) if not each.narrow], ids=str)
def test_rows_need_at_most_22_5_mm(checked: run.Checked, manner: Manner) -> None:
    """Above the wire 8.75 mm for designation and cable, below it 12.5 mm for what hangs from it, 1.2 mm apart."""
    assert pitch_mm(plan(checked, manner)[0]) <= 22.5


def test_the_lowest_rows_need_15_mm(checked: run.Checked) -> None:
    """Below the wire 11.6 mm for surge protection with its sign for earth, above it one line elsewhere."""
    made, found = plan(checked, LOWEST)
    assert (pitch_mm(made), found) == (15.0, [])


def test_the_lowest_rows_say_what_others_say(checked: run.Checked) -> None:
    """Word by word, in whatever lines."""

    def words(manner: Manner) -> set[tuple[str, str]]:
        cells = plan(checked, manner)[0].cells
        return {(cell.key, word.strip(",")) for cell in cells for text in cell.labels for word in text.text.split()}

    assert words(LOWEST) == words(LOW)
