"""What the designer wrote is on the sheets, and nothing of the program's own words is."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
import yaml

from sld import run
from sld.model import build
from sld.rate import rate
from sld.sheet.content.equipment import equipment
from sld.sheet.content.findings import on_paper
from sld.sheet.content.notes import basis
from sld.sheet.content.schedules import schedules
from sld.spec.complain import validate
from sld.spec.document import Spec
from sld.spec.source import read_text
from sld.symbols.stroke import Text

SPECS = Path(__file__).parents[2] / "specs"
DATA: dict[str, Any] = yaml.safe_load((SPECS / "village-hall.yaml").read_text(encoding="utf-8"))


def system_of(data: dict[str, Any]):
    spec, mistakes = validate(Spec, read_text(yaml.safe_dump(data, allow_unicode=True), folder=SPECS))
    assert spec is not None, mistakes
    return build(spec)


HALL = system_of(DATA)
RATINGS = rate(HALL)


def rows(title: str) -> list[tuple[str, ...]]:
    return [row for table in schedules(HALL, RATINGS) if table.title == title for row in table.rows]


@pytest.mark.parametrize(
    ("designation", "words"),
    [
        ("36 ×", ("PV module", "Brightfell BF-410", "410 Wp")),
        ("-UC1-FA1", ("surge protective device", "type 2 (T2)", "Uc 275 V", "-UC1, meter room")),
        ("-TB1-FA1", ("DC surge protective device", "In 15 kA", "Up 3.5 kV")),
        # 50 A gG stands 350 A for 0.1 s (IEC 60269-1 Table 3); 2/3 · 230 V / 250 A (IEC 60364-6)
        ("-TB1-FC1", ("circuit-breaker", "C 25 A", "selective up to 350 A", "read Zs ≤ 0.613 Ω")),
        ("-TB1", ("inverter", "meter room", "DC ≤ ")),
        ("-EZ1", ("load", "lighting and kitchen", "existing")),
    ],
)
def test_equipment_schedule_has(designation: str, words: tuple[str, ...]) -> None:
    (row,) = [row for row in equipment(HALL, RATINGS).rows if row[0] == designation]
    assert not [word for word in words if word not in " | ".join(row)]


@pytest.mark.parametrize(
    ("title", "words"),
    [
        ("String schedule", ("18 × Brightfell BF-410", "7.38 kWp", "south-east, 30°")),
        ("Cable schedule", ("NYM-J 5 × 4 mm²", "1.5 kV DC", "38 m")),
        ("Data links", ("Ethernet", "9 m")),
    ],
)
def test_schedule_has(title: str, words: tuple[str, ...]) -> None:
    text = " | ".join(cell for row in rows(title) for cell in row)
    assert not [word for word in words if word not in text]


@pytest.mark.parametrize(
    ("path", "value", "text"),
    [
        ("supply.operator", "Upper valley network", "Network operator: Upper valley network."),
        ("project.reference", "VH/14", "Project reference: VH/14."),
        ("earthing.note", "terminal behind the boiler", "Earthing: terminal behind the boiler."),
    ],
)
def test_notes_have(path: str, value: str, text: str) -> None:
    block, key = path.split(".")
    assert text in basis(system_of({**DATA, block: {**DATA[block], key: value}})).paragraphs


def test_notes_say_which_paper_was_taken() -> None:
    assert "Paper: A2 instead of A3." in basis(HALL, "A2 instead of A3").paragraphs


@pytest.mark.parametrize(
    ("text", "printed"),
    [
        ("give `lightning_density` under `site`", "give lightning density under site"),
        ("at least 10 mm²", "at least 10 mm²"),
    ],
)
def test_words_of_the_spec_are_plain_on_paper(text: str, printed: str) -> None:
    assert on_paper(text) == printed


@pytest.mark.parametrize("name", ["village-hall", "upper-farm-faulty"])
def test_no_mark_and_no_underscore_is_printed(name: str) -> None:
    sheets = run.draw(run.check(SPECS / f"{name}.yaml")).sheets
    texts = [s.text for sheet in sheets for group in sheet.groups for s in group.strokes if isinstance(s, Text)]
    assert not [text for text in texts if "`" in text or "_" in text]
