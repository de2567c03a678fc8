"""References to other sheets: room is kept for them, they are written last, and no name is ever taken for one."""

from __future__ import annotations

import pytest
from lettering import drawn

from sld.layout.diagram.diagram import Cell, Diagram
from sld.layout.diagram.line import Line, Role
from sld.layout.parts.reference import filled, written
from sld.layout.passes.arrange import arrange
from sld.layout.plan import Plan
from sld.symbols import catalogue
from sld.symbols.stroke import Text
from sld.symbols.typeface import text_width_mm
from sld.words import NOTHING, Sayable, verbatim

LIKE_ONE = "/000.AA00"


def plan_of(*lines: Line) -> Plan:
    return arrange(Diagram(Cell("n", "network", children=(Cell("k", "fuse", lines),))), catalogue)


def labels(plan: Plan, key: str = "k") -> tuple[Text, ...]:
    return next(cell.labels for cell in plan.cells if cell.key == key)


@pytest.mark.parametrize("name", [LIKE_ONE, f"pump {LIKE_ONE}", "… /3.B4"])
def test_a_name_that_looks_like_a_reference_stays_a_name(name: str) -> None:
    diagram = Diagram(drawn("n", "network", [name], [name]))
    plan = arrange(diagram, catalogue)
    assert [label.text for label in labels(filled(plan, {"n": ["/3.B4"]}), "n")] == [name, name]


@pytest.mark.parametrize(
    ("own", "count", "references", "text"),
    [
        ("", 1, ["/3.B4"], "/3.B4"),
        ("-WE4", 1, ["/12.C10"], "-WE4 /12.C10"),
        ("-WE4", 1, [""], "-WE4"),
        ("-WE4", 1, [], "-WE4"),
        (LIKE_ONE, 1, ["/3.B4"], f"{LIKE_ONE} /3.B4"),
        ("", 2, ["/3.B4", "/9.A1"], "/3.B4 … /9.A1"),
        ("", 2, ["/3.B4", ""], "/3.B4"),
    ],
)
def test_references_are_written_at_the_end_of_their_line(
    own: str, count: int, references: list[str], text: str
) -> None:
    said: Sayable = verbatim(own) if own else NOTHING
    plan = plan_of(Line(Role.REFERENCE, said, references_count=count))
    (open_,), (done,) = labels(plan), labels(filled(plan, {"k": references}))
    assert done.text == text
    assert text_width_mm(text) <= text_width_mm(open_.text)
    assert done.at == open_.at  # at a mark of a cut, in the middle of its room


def test_what_is_on_the_same_sheet_leaves_no_line() -> None:
    plan = plan_of(Line(Role.REFERENCE, NOTHING, references_count=2))
    assert labels(filled(plan, {"k": ["", ""]})) == labels(filled(plan, {})) == ()


def test_a_reference_as_it_is_printed() -> None:
    assert written(3, "B4") == "/3.B4"
