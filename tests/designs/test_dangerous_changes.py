"""One value or one device of a spec changed so that it is dangerous or breaks a clause: it is told, at its line.

`dangerous.csv`: the spec of `specs/` or of `ordinary/` here, the place in it, what is put there (`-` takes it out),
the code that tells it, how bad it is at least, where it is told (empty: at the place that was changed), and the clause.
The change is made in the text, as a hand makes it, so that what is compared is the line a designer is sent to.

Changes of one spec that do not touch each other, and that different codes tell, are made together. One that hides in
such company is made by itself. `pytest -m whole` makes each by itself, and sees that its company does not tell it.
"""

from __future__ import annotations

import csv
from collections.abc import Callable, Sequence
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


TOLD_BY_OTHERS = {
    "saltmarsh-field types.cables.H1Z2Z2-K.insulation PVC",
    "saltmarsh-field inverters.field.inputs[0].strings[0].cable.section 1.5 mm2",
    "gb-flats-landlord-pme loads.lift.circuit[0].rated_current 100 A",
}
"""Changes whose code another change calls forth at the same line: they are made alone."""


def block(place: str) -> list[str]:
    """Return the way to the block that a place is in."""
    return place.replace("[", ".[").split(".")[:-1]


def inside(one: str, other: str) -> bool:
    """Tell whether the block of one place is that of another, or holds it, or is held by it."""
    pairs = list(zip(block(one), block(other), strict=False))
    return all(mine == its for mine, its in pairs)


def apart(one: Row, other: Row) -> bool:
    """Tell whether two changes of a spec can be made together: different codes, and no block in common."""
    if one.code == other.code or TOLD_BY_OTHERS & {one.name, other.name}:
        return False
    return not any(inside(mine, its) for mine in (one.place, taken_out(one)) for its in (other.place, taken_out(other)))


@cache
def companies() -> dict[Row, list[Row]]:
    """Return for each change those that are made together with it, itself among them, in the order of the table."""
    found: list[list[Row]] = []
    for row in ROWS:
        fits = (each for each in found if each[0].spec == row.spec and all(apart(row, other) for other in each))
        company = next(fits, None)
        if company is None or row.name in SILENT:
            found.append([row])
        else:
            company.append(row)
    return {row: company for company in found for row in company}


class Told(NamedTuple):
    """What is new and bad in a changed spec: code, severity and line of each, and the spec."""

    findings: list[tuple[str, Severity, int]]
    result: Checked

    def tells(self, row: Row) -> bool:
        line = self.line(row)
        return any(
            code == row.code and severity >= SEVERITIES[row.severity] and at == line
            for code, severity, at in self.findings
        )

    def line(self, row: Row) -> int:
        """Return the line at which a change is to be told."""
        return self.result.source.locate(way(self.result.source.data, taken_out(row))).line


def told_of(rows: Sequence[Row], folder: Path) -> Told:
    """Make changes of one spec and return what is told."""
    spec, name = rows[0].spec, f"{rows[0].spec}.yaml"
    texts = dict(read(spec))
    for row in rows:
        of_type = (each for each, text in texts.items() if row.place.startswith("types.") and defines(text, row.place))
        at = next(of_type, name)
        texts[at] = changed(texts[at], row.place, row.value)
    result = checked(folder, texts, name)
    new = [each for each in result.findings if what(each) not in known(spec) and each.device]
    bad = [each for each in new if each.severity >= Severity.NON_COMPLIANCE and each.accepted is None]
    found = [(each.code, each.severity, result.source.locate(each.at, each.on_key).line) for each in bad]
    return Told(found, result)


@pytest.fixture(scope="module")
def told_together(tmp_path_factory: pytest.TempPathFactory) -> Callable[[Row], Told]:
    @cache
    def of(company: tuple[Row, ...]) -> Told:
        return told_of(company, tmp_path_factory.mktemp("changed"))

    return lambda row: of(tuple(companies()[row]))


@pytest.mark.parametrize("row", CASES)
def test_a_dangerous_change_is_told_at_its_line(row: Row, told_together: Callable[[Row], Told], tmp_path: Path) -> None:
    if not told_together(row).tells(row):
        alone = told_of([row], tmp_path)
        assert alone.tells(row), f"{row.code} at line {alone.line(row)} expected, told were {alone.findings}"


@pytest.mark.whole
@pytest.mark.parametrize("row", CASES)
def test_a_dangerous_change_alone_is_told_and_its_company_does_not_tell_it(row: Row, tmp_path: Path) -> None:
    alone, others = told_of([row], tmp_path), [each for each in companies()[row] if each != row]
    assert alone.tells(row), f"{row.code} at line {alone.line(row)} expected, told were {alone.findings}"
    assert not others or not told_of(others, tmp_path).tells(row)
