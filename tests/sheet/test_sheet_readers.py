"""Drawings of one spec for each reader: what each shows, what it leaves out, and what none may leave out.

What an operator asks for: supply point, meters, feed-in limit, protection settings, place of isolation (checklists of
network operators). What a crew asks for beyond: terminals, routes, torques, stripping lengths (common practice, no
source).
"""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from sld import run
from sld.layout.diagram.line import Line, Role
from sld.layout.diagram.reader import read_by
from sld.model.device import Apparatus
from sld.model.kinds.ac import ISOLATOR
from sld.sheet.compose import Composition
from sld.sheet.lint import lint
from sld.symbols.stroke import Text
from sld.words import verbatim

ROOT = Path(__file__).parents[2]
HALL = ROOT / "specs" / "village-hall.yaml"
CHANGES = {
    "{kind: cable, type: NYM-J, length: 14 m, method: C}": "{kind: cable, type: NYM-J, length: 14 m, method: C, "
    'route: "tray 4", terminals: "WD1 to QB1 1,3,5,7", strip_length: 12 mm}',
    "{kind: breaker, breaking_capacity: 6 kA}": "{kind: breaker, breaking_capacity: 6 kA, torque: 2.5 Nm, "
    'strip_length: 14 mm, terminals: "L1 1, L2 3, L3 5, N 7"}',
}
READERS = ["full", "operator", "crew"]


@pytest.fixture(scope="module")
def drawings(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Composition]:
    folder = tmp_path_factory.mktemp("readers")
    (folder / "types").symlink_to(ROOT / "specs" / "types")
    text = HALL.read_text(encoding="utf-8")
    for old, new in CHANGES.items():
        assert old in text
        text = text.replace(old, new)
    path = folder / "hall.yaml"
    path.write_text(text, encoding="utf-8")
    checked = run.check(path, allow_outside=True)
    return {reader: run.draw(checked, reader=reader) for reader in READERS}


def words(drawing: Composition) -> str:
    groups = (group for sheet in drawing.sheets for group in sheet.groups)
    return " ".join(stroke.text for group in groups for stroke in group.strokes if isinstance(stroke, Text))


def diagram(drawing: Composition) -> list[str]:
    groups = (group for group in drawing.sheets[0].groups if group.layer == "symbol")
    return [stroke.text for group in groups for stroke in group.strokes if isinstance(stroke, Text)]


def captions(drawing: Composition) -> list[str]:
    groups = (group for group in drawing.sheets[0].groups if group.layer in ("enclosure", "label"))
    return [stroke.text for group in groups for stroke in group.strokes if isinstance(stroke, Text)]


IN_EACH = ["WARNING: two sources of supply", "Legend", "MV 0042 7731", "Assumptions", "Highest Uoc at"]  # fmt: skip


@pytest.mark.parametrize("reader", READERS)
@pytest.mark.parametrize("text", IN_EACH)
def test_every_reader_has(drawings: dict[str, Composition], reader: str, text: str) -> None:
    assert text in words(drawings[reader])


@pytest.mark.parametrize(
    ("text", "readers"),
    [
        ("For review", ["operator"]),
        ("network setting Merren LV 2024", ["operator"]),
        ("Terminals and routes", ["full", "crew"]),
        ("Equipment schedule", ["full", "crew"]),
        ("Cable schedule", ["full", "crew"]),
        ("Earthing conductors", ["full", "crew"]),
        ("Summary", ["full", "crew"]),
        ("L1 1, L2 3, L3 5, N 7", ["full", "crew"]),
        ("2.5 Nm", ["full", "crew"]),
        ("14 mm", ["full", "crew"]),
        ("Data bus", ["full", "crew"]),
        ("Single-line diagram for review", ["operator"]),
        ("Single-line diagram for wiring", ["crew"]),
        ("are left out", ["operator", "crew"]),
    ],
)
def test_only_these_readers_have(drawings: dict[str, Composition], text: str, readers: list[str]) -> None:
    assert [reader for reader in READERS if text in words(drawings[reader])] == readers


@pytest.mark.parametrize(
    ("line", "readers"),
    [
        ("Uoc 741", READERS),  # it can kill: nobody may miss it
        ("63 A 4P", READERS),
        ("14 m", READERS),
        ("Ib 19.2 A", ["full", "operator"]),
        ("Ik 5.5 kA", ["full", "operator"]),
        ("≤ 1000 V", ["full", "operator"]),
        ("addr. 1", ["full", "crew"]),
        ("tray 4", ["crew"]),
    ],
)
def test_lines_at_the_symbols(drawings: dict[str, Composition], line: str, readers: list[str]) -> None:
    said = {reader: " / ".join([*diagram(drawings[reader]), *captions(drawings[reader])]) for reader in READERS}
    assert [reader for reader in READERS if line in said[reader]] == readers


@pytest.mark.parametrize("reader", READERS)
def test_no_text_touches_another(drawings: dict[str, Composition], reader: str) -> None:
    assert [trouble for sheet in drawings[reader].sheets for trouble in lint(sheet)] == []


@pytest.mark.parametrize("reader", READERS)
def test_what_is_dangerous_is_there_for_every_reader(reader: str) -> None:
    """Findings and their flags do not depend on who reads the sheet."""
    drawing = faulty()[reader]
    full = faulty()["full"]
    assert flags(drawing) == flags(full) != []
    for paragraph in ("danger", "Findings"):
        assert paragraph in words(drawing)


@cache
def faulty() -> dict[str, Composition]:
    checked = run.check(ROOT / "specs" / "upper-farm-faulty.yaml")
    return {reader: run.draw(checked, reader=reader) for reader in READERS}


def flags(drawing: Composition) -> list[str]:
    return sorted(group.key for sheet in drawing.sheets for group in sheet.groups if group.layer == "flag")


def test_the_spec_itself_can_say_the_reader(tmp_path: Path) -> None:
    (tmp_path / "types").symlink_to(ROOT / "specs" / "types")
    path = tmp_path / "hall.yaml"
    path.write_text("drawing: {reader: crew}\n" + HALL.read_text(encoding="utf-8"), encoding="utf-8")
    drawing = run.draw(run.check(path, allow_outside=True))
    assert "Single-line diagram for wiring" in words(drawing)


@pytest.mark.parametrize(
    ("role", "kept"),
    [(Role.DANGER, True), (Role.RATED, True), (Role.STRESS, True), (Role.SETTING, True), (Role.PLACE, True),
     (Role.COMPUTED, False), (Role.LIMIT, False)],
)  # fmt: skip
def test_lines_for_a_crew(role: Role, kept: bool) -> None:
    """What a line is for decides, not how it reads."""
    device = Apparatus(key="a", designation="-QB1", kind=ISOLATOR, at=(), given=None)  # type: ignore[arg-type]
    line = Line(role, verbatim("> 1000 V"))
    assert read_by("crew", (line,), device) == ((line,) if kept else ())
    assert read_by("full", (line,), device) == read_by("operator", (line,), device) == (line,)


@pytest.mark.parametrize("reader", READERS)
def test_no_reader_misses_a_limit_that_is_exceeded(reader: str) -> None:
    """1130 V at an input for 1100 V can kill and destroy: `>` stays beside it where `≤` is left out."""
    assert "Uoc 1133 > 1100 V" in diagram(faulty()[reader])
