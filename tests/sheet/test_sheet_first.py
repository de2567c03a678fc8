"""What belongs on sheet 1: the diagram, cautions, every danger and non-compliance, accepted deviations, the summary.

The rule is our own: who reads one sheet alone is to see what is dangerous.
"""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import pytest
from example_specs import SPECS, case, checked, document

from sld import run
from sld.sheet.compose import Composition
from sld.sheet.lint import lint
from sld.symbols.stroke import Text
from sld.words.phrase import NO_BREAK

PATHS = {path.stem: path for path in SPECS}
BELONG = ("cautions", "findings", "accepted", "summary", "summary-2", "review", "review-2")

# the paper of sheet 1 and what stands there of what belongs there: for all readers, then for the network operator
QUIET, OPERATOR = "cautions summary", "cautions review"
FIRST = {
    "cedar-house": ("A3", QUIET, "A3", OPERATOR),
    "ferry-depot": ("A2", f"findings {QUIET}", "A2", f"findings {OPERATOR}"),
    "ford-barn": ("A2", QUIET, "A2", OPERATOR),
    "haus-ahorn": ("A3", QUIET, "A3", OPERATOR),
    "hill-farm": ("A2", f"{QUIET} summary-2", "A2", f"{OPERATOR} review-2"),  # two supply points
    "lower-farm": ("A3", QUIET, "A3", OPERATOR),
    "mill-house": ("A3", QUIET, "A3", OPERATOR),
    "orchard-lodge": ("A3", QUIET, "A3", OPERATOR),
    "quay-cottage": ("A3", QUIET, "A3", OPERATOR),
    "saltmarsh-field": ("A2", f"findings {QUIET}", "A2", f"findings {OPERATOR}"),
    "smithy": ("A2", QUIET, "A2", OPERATOR),
    "upper-farm-faulty": ("A2", f"accepted findings {QUIET}", "A2", f"accepted findings {OPERATOR}"),
    "valley-school": ("A3", f"accepted findings {QUIET}", "A2", f"accepted findings {OPERATOR}"),
    "village-hall": ("A3", QUIET, "A3", OPERATOR),
    "wattle-court": ("A3", QUIET, "A2", OPERATOR),
    "weir-house": ("A3", QUIET, "A2", OPERATOR),
    "winery-estate": ("A3", f"findings {QUIET}", "A3", f"findings {OPERATOR}"),
}
FEW = ("upper-farm-faulty", "wattle-court")


def on_first(made: Composition) -> set[str]:
    return {group.section for group in made.sheets[0].groups} & set(BELONG)


def said(made: Composition, number: int, section: str) -> str:
    groups = (group for group in made.sheets[number - 1].groups if section in (group.section, group.key))
    return " ".join(stroke.text for group in groups for stroke in group.strokes if isinstance(stroke, Text))


def test_every_spec_is_in_the_table() -> None:
    assert set(FIRST) == set(PATHS)


@pytest.mark.parametrize("name", FIRST)
def test_what_stands_on_the_first_sheet(name: str) -> None:
    made = document(PATHS[name], "drawing", "full")
    assert (made.paper, on_first(made)) == (FIRST[name][0], set(FIRST[name][1].split()))


@pytest.mark.parametrize("name", [case(name, sampled=name in FEW) for name in FIRST])
def test_what_the_operator_sees_on_the_first_sheet(name: str) -> None:
    made = document(PATHS[name], "drawing", "operator")
    assert (made.paper, on_first(made)) == (FIRST[name][2], set(FIRST[name][3].split()))


@pytest.mark.parametrize("name", FIRST)
def test_no_danger_and_no_non_compliance_is_told_on_a_later_sheet_alone(name: str) -> None:
    made = document(PATHS[name], "drawing", "full")
    later = " ".join(said(made, sheet.number, "findings") for sheet in made.sheets[1:])
    assert " danger: " not in later
    assert " non-compliance: " not in later


def test_the_note_says_why_a_larger_paper_was_taken() -> None:
    note = str(document(PATHS["upper-farm-faulty"], "drawing", "full").note)
    assert note.startswith("A2 instead of A3: ")
    assert "cautions" in note


def test_the_note_says_both_why_there_are_parts_and_why_sheet_1_is_larger() -> None:
    """The overview would fit A4 as asked; the parts and what belongs beside the overview take A3, the largest size."""
    found = checked(PATHS["ferry-depot"])
    drawing = found.parts[0].system.drawing.model_copy(update={"paper": "A4", "largest_paper": "A3"})
    parts = tuple(part._replace(system=replace(part.system, drawing=drawing)) for part in found.parts)
    made = run.draw(replace(found, parts=parts))
    assert [each.sheet_number for each in made.diagrams] == [2, 3]
    why_parts, where, why_larger = str(made.note).split("; ")
    assert why_parts.endswith("does not fit A3, so it is drawn on sheets 2 to 3")
    assert where.endswith("/3.B4 is sheet 3, zone B4")
    assert why_larger.startswith("A3 instead of A4: beside the diagram, what belongs on sheet 1 (cautions, findings")


def test_a_paper_that_is_asked_for_stays_where_the_diagram_fits() -> None:
    assert run.draw(checked(PATHS["wattle-court"]), paper="A3").paper == "A3"


def unfolded(name: str) -> Composition:
    """Return the drawing of a spec that asks for every branch."""
    found = checked(PATHS[name])
    drawing = found.parts[0].system.drawing.model_copy(update={"unfold": True})
    parts = tuple(part._replace(system=replace(part.system, drawing=drawing)) for part in found.parts)
    return run.draw(replace(found, parts=parts))


def labels(made: Composition) -> set[str]:
    return {stroke.text for each in made.sheets[0].groups for stroke in each.strokes if isinstance(stroke, Text)}


def test_a_larger_paper_has_room_for_whole_designations() -> None:
    made = unfolded("valley-school")
    assert made.paper == "A2"
    assert "-TB5-QB1" in labels(made)
    assert "-QB1" not in labels(made)


def test_branches_equal_but_for_lengths_are_drawn_once_where_the_asked_paper_suffices_so() -> None:
    """Five inverters with cables of 6 m to 10 m: one row and the table of the lengths, on A3 as asked."""
    made = document(PATHS["valley-school"], "drawing", "full")
    assert {"-TB1…5", "5 × -FC1", "2 × 25 mm² 6…10 m"} <= {each.replace(NO_BREAK, " ") for each in labels(made)}
    told = said(made, 1, "differences")
    assert all(f"-TB{n}-WD2" in told for n in range(1, 6))


@pytest.mark.parametrize(
    ("name", "diagram"),
    [
        pytest.param("mill-house", [1], id="a house whole on sheet 1"),
        pytest.param(
            "ford-barn", [2, 3, 4, 5, 6], id="in parts, with an overview that leads its way to the supply down"
        ),
    ],
)
def test_what_is_laid_out_for_a4_has_lying_sheets_of_that_size_alone(name: str, diagram: list[int]) -> None:
    made = run.draw(run.for_print(checked(PATHS[name]), "A4"))
    assert {(sheet.width_mm, sheet.height_mm) for sheet in made.sheets} == {(297.0, 210.0)}
    assert [each.sheet_number for each in made.diagrams] == diagram
    assert "cautions" in on_first(made)  # of the house amid the diagram, where else they have no room
    assert [defect for sheet in made.sheets for defect in lint(sheet)] == []


@cache
def on_a3(name: str, language: str) -> Composition:
    """Return the drawing of a spec that may take no larger sheet."""
    found = checked(PATHS[name])
    project = found.project.model_copy(update={"language": language})
    parts = tuple(part._replace(system=replace(part.system, project=project)) for part in found.parts)
    return run.draw(run.for_print(replace(found, parts=parts), "A3"))


def test_cautions_come_before_the_summary_where_one_fits() -> None:
    made = on_a3("valley-school", "en")
    assert made.paper == "A3"
    assert on_first(made) == {"cautions", "findings", "accepted"}  # but not all of the summary


# 34 dangers and non-compliances; in German the field takes more lines
@pytest.mark.parametrize("language", ["en", "de"])
def test_findings_that_fit_no_sheet_begin_on_the_first_and_the_title_block_says_where(language: str) -> None:
    made = on_a3("upper-farm-faulty", language)
    assert made.paper.startswith("A3")
    assert {"cautions", "findings"} <= on_first(made)
    last = max(sheet.number for sheet in made.sheets if said(made, sheet.number, "findings"))
    told = said(made, 1, "title-block")
    assert f"see sheets 1 to {last}" in told or (language == "de" and f" 1 bis {last}" in told)
    assert "…" not in told
    assert [finding for sheet in made.sheets for finding in lint(sheet)] == []
