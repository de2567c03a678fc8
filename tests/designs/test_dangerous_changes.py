"""One value or one device of a spec changed so that it is dangerous or breaks a clause: it is told, at its line.

`dangerous.csv`: the spec of `specs/`, the place in it, what is put there (`-` takes it out), the code that tells it,
how bad it is at least, where it is told (empty: at the place that was changed), and the clause. The change is made in
the text, as a hand makes it, so that what is compared is the line a designer is sent to.
"""

from __future__ import annotations

import csv
from functools import cache
from pathlib import Path
from typing import NamedTuple

import pytest
import yaml
from changed_text import REMOVED, changed, way

from sld.finding import Finding, Severity
from sld.run import Checked, reviewed
from sld.spec import load

HERE, SPECS = Path(__file__).parent, Path("specs")
TYPES = "types/merren-types.yaml"
SEVERITIES = {each.word: each for each in Severity}


class Row(NamedTuple):
    """A dangerous change and what is told."""

    spec: str
    place: str
    value: str
    code: str
    severity: str
    told: str
    clause: str

    @property
    def name(self) -> str:
        """Return it in few words."""
        return f"{self.spec} {self.place} {self.value}"


LINES = (HERE / "dangerous.csv").read_text(encoding="utf-8").splitlines()
ROWS = [Row(*cells) for cells in list(csv.reader(LINES))[1:]]

SILENT: dict[str, str] = {}
"""Changes that are not told yet: the name of the row -> why it is not."""

CASES = [
    pytest.param(
        row,
        id=row.name,
        marks=[pytest.mark.xfail(strict=True, reason=SILENT[row.name])] if row.name in SILENT else [],
    )
    for row in ROWS
]


def checked(folder: Path, name: str, text: str, types: str) -> Checked:
    """Check a spec with its types file."""
    (folder / "types").mkdir(exist_ok=True)
    (folder / TYPES).write_text(types, encoding="utf-8")
    (folder / name).write_text(text, encoding="utf-8")
    return reviewed(*load(folder / name))


@cache
def read(name: str) -> str:
    return (SPECS / name).read_text(encoding="utf-8")


@cache
def known(spec: str) -> frozenset[tuple[object, ...]]:
    """Return what is told of a spec as it stands."""
    return frozenset(what(each) for each in reviewed(*load(SPECS / f"{spec}.yaml")).findings)


def what(finding: Finding) -> tuple[object, ...]:
    return finding.code, finding.device, finding.at


def taken_out(row: Row) -> str:
    """Return where it is told: of an entry that was taken out, the list that it stood in."""
    if row.told or row.value != REMOVED:
        return row.told or row.place
    return row.place[: row.place.rindex("[")] if row.place.endswith("]") else row.place


def defines(text: str, place: str) -> bool:
    """Tell whether a type is one of the spec's own, not of its types file."""
    own = yaml.load(text, Loader=yaml.CSafeLoader).get("types", {})
    return any(place.startswith(f"types.{group}.{name}.") for group, names in own.items() for name in names)


@pytest.mark.parametrize("row", CASES)
def test_a_dangerous_change_is_told_at_its_line(row: Row, tmp_path: Path) -> None:
    text, types = read(f"{row.spec}.yaml"), read(TYPES)
    if row.place.startswith("types.") and not defines(text, row.place):
        types = changed(types, row.place, row.value)
    else:
        text = changed(text, row.place, row.value)
    result = checked(tmp_path, f"{row.spec}.yaml", text, types)
    new = [each for each in result.findings if what(each) not in known(row.spec)]
    bad = [each for each in new if each.severity >= Severity.NON_COMPLIANCE and each.accepted is None]
    line = result.source.locate(way(result.source.data, taken_out(row))).line
    told = [
        (each.code, each.severity.word, result.source.locate(each.at, each.on_key).line) for each in bad if each.device
    ]
    assert any(
        code == row.code and SEVERITIES[severity] >= SEVERITIES[row.severity] and at == line
        for code, severity, at in told
    ), f"{row.code} at line {line} expected, told were {told}"
