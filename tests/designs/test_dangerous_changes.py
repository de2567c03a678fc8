"""One value or one device of a spec changed so that it is dangerous or breaks a clause: it is told, at its line.

`dangerous.csv`: the spec of `specs/` or of `ordinary/` here, the place in it, what is put there (`-` takes it out),
the code that tells it, how bad it is at least, where it is told (empty: at the place that was changed), and the clause.
The change is made in the text, as a hand makes it, so that what is compared is the line a designer is sent to.
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


def _marks(row: Row) -> list[pytest.MarkDecorator]:
    return [pytest.mark.xfail(strict=True, reason=SILENT[row.name])] if row.name in SILENT else []


CASES = [pytest.param(row, id=row.name, marks=_marks(row)) for row in ROWS]


def checked(folder: Path, texts: dict[str, str], name: str) -> Checked:
    """Check a spec with its types files."""
    (folder / "types").mkdir(exist_ok=True)
    for each, text in texts.items():
        (folder / each).write_text(text, encoding="utf-8")
    return reviewed(*load(folder / name))


def home(spec: str) -> Path:
    """Return the folder that a spec and its types stand in."""
    return SPECS if (SPECS / f"{spec}.yaml").exists() else HERE / "ordinary"


@cache
def read(spec: str) -> dict[str, str]:
    """Return the texts of a spec and of all types files beside it."""
    found = [f"{spec}.yaml", *(f"types/{each.name}" for each in sorted((home(spec) / "types").glob("*.yaml")))]
    return {each: (home(spec) / each).read_text(encoding="utf-8") for each in found}


@cache
def known(spec: str) -> frozenset[tuple[object, ...]]:
    """Return what is told of a spec as it stands."""
    return frozenset(what(each) for each in reviewed(*load(home(spec) / f"{spec}.yaml")).findings)


def what(finding: Finding) -> tuple[object, ...]:
    return finding.code, finding.device, finding.at


def taken_out(row: Row) -> str:
    """Return where it is told: of an entry that was taken out, the list that it stood in."""
    if row.told or row.value != REMOVED:
        return row.told or row.place
    return row.place[: row.place.rindex("[")] if row.place.endswith("]") else row.place


def defines(text: str, place: str) -> bool:
    """Tell whether a type stands in a file."""
    own = yaml.load(text, Loader=yaml.CSafeLoader).get("types", {})
    return any(place.startswith(f"types.{group}.{name}.") for group, names in own.items() for name in names)


@pytest.mark.parametrize("row", CASES)
def test_a_dangerous_change_is_told_at_its_line(row: Row, tmp_path: Path) -> None:
    texts, name = dict(read(row.spec)), f"{row.spec}.yaml"
    of_type = (each for each, text in texts.items() if row.place.startswith("types.") and defines(text, row.place))
    at = next(of_type, name)
    texts[at] = changed(texts[at], row.place, row.value)
    result = checked(tmp_path, texts, name)
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
