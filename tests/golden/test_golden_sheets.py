"""A few small drawings, stroke by stroke, as they were when somebody last looked at them.

They judge nothing: the other tests say what is right. They show what a change does to the ink, and that the rest stayed
as it was. After looking at the drawing: `pytest tests/golden --accept NAME`.
"""

from __future__ import annotations

import difflib
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from sld import run
from sld.documents.title import Revision, TitleBlock
from sld.render import text
from sld.sheet.ink import moved
from sld.sheet.listings import FlagList, FlagRow
from sld.sheet.paper import PAPERS, frame_box
from sld.sheet.sheet import Group, Sheet
from sld.sheet.title_block import title_block_strokes

HERE = Path(__file__).parent
A4 = PAPERS["A4"]


def _sheet(group: Group) -> Sheet:
    return Sheet(A4.width_mm, A4.height_mm, 1, group.title, "", "en", (group,))


def garage_diagram() -> Sheet:
    """The diagram of the smallest system with a conductor of every kind, without frame and tables."""
    drawn = run.draw(run.check(HERE / "garage.yaml")).sheets[0]
    ink = [group for group in drawn.groups if group.layer not in ("frame", "table")]
    groups = tuple(replace(group, title="") for group in ink)  # the traces of the ratings are no ink
    return Sheet(drawn.width_mm, drawn.height_mm, 1, "Garage, diagram", "", "en", groups)


def title_block() -> Sheet:
    """A title block with a title of two lines, and two revisions."""
    block = TitleBlock(
        "Merren valley works office", "Photovoltaic system on the roof of the long barn at the lower ford, west side",
        "MV-BARN-02", "2026-04-14", "DO", document_type="Single-line diagram",
        site="3 Ford Lane, Merren", customer="Merren valley community",
        findings="1 danger, 2 advice", rule_profile="cautious", revision_index="B",
        revisions=(Revision("A", "First issue", "2026-03-02", "DO"),
                   Revision("B", "Feed-in limit added", "2026-04-14", "DO", "SE")),
    )  # fmt: skip
    return _sheet(Group("title-block", "table", title_block_strokes(block, frame_box(A4), 1, 2, "A4"), "Title block"))


def findings() -> Sheet:
    """A list of two findings behind their triangles, one number of two digits."""
    rows = (FlagRow(1, ("DC01 danger: the string reaches 1 012 V", "take one module less")),
            FlagRow(12, ("AC11 advice: no isolator", "add one")))  # fmt: skip
    laid = FlagList("listing", "Findings", rows).laid(120.0)
    strokes, y = [], 0.0
    for row in laid.rows:
        for piece in row:
            strokes += [moved(stroke, 20.0, 20.0 + y) for stroke in piece.strokes]
            y += piece.height_mm
    return _sheet(Group("findings", "table", tuple(strokes), "Findings"))


GOLDEN: dict[str, Callable[[], Sheet]] = {
    "garage-diagram": garage_diagram,
    "title-block": title_block,
    "findings": findings,
}


def difference(name: str, golden: str, drawn: str) -> str:
    """Return the lines that differ, each below the group it is in."""
    lines = difflib.unified_diff(golden.splitlines(), drawn.splitlines(), f"{name}.txt", "as drawn", lineterm="", n=1)
    return "\n".join(lines)


@pytest.fixture
def accepted(request: pytest.FixtureRequest) -> list[str]:
    """The names that are to be accepted."""
    names: list[str] = request.config.getoption("--accept", default=[])
    unknown = sorted(set(names) - set(GOLDEN))
    if unknown:
        pytest.fail(f"--accept {', '.join(unknown)}: there is only {', '.join(GOLDEN)}", pytrace=False)
    return names


@pytest.mark.parametrize("name", GOLDEN)
def test_drawn_as_accepted(name: str, accepted: list[str]) -> None:
    path, drawn = HERE / f"{name}.txt", text(GOLDEN[name]())
    if name in accepted:
        path.write_text(drawn, encoding="utf-8")
    golden = path.read_text(encoding="utf-8") if path.exists() else ""
    if drawn.encode() != golden.encode():
        how = f"look at the drawing, then accept it by its name: pytest tests/golden --accept {name}"
        pytest.fail(f"{difference(name, golden, drawn)}\n{how}", pytrace=False)


def test_every_golden_file_is_of_a_drawing() -> None:
    assert {path.stem for path in HERE.glob("*.txt")} == set(GOLDEN)


def test_a_text_that_moved_is_shown_as_it_was_and_is() -> None:
    drawn = text(title_block())
    (line,) = [each for each in drawn.splitlines() if "'MV-BARN-02'" in each]
    shifted = drawn.replace(line, line.replace("text ", "text 9", 1))
    shown = difference("title-block", drawn, shifted).splitlines()
    assert [each for each in shown if each[0] in "+-"][2:] == [f"-{line}", f"+{line.replace('text ', 'text 9', 1)}"]


@pytest.mark.parametrize("name", GOLDEN)
def test_goldens_are_small(name: str) -> None:
    """A diff of more than a few hundred lines is accepted unread."""
    assert len((HERE / f"{name}.txt").read_text(encoding="utf-8").splitlines()) <= 300
