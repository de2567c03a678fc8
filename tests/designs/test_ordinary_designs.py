"""Designs as books and offices draw them come out without danger and without non-compliance.

`ordinary/NAME.yaml`: a whole design; its head says where the numbers are from. `variations.csv`: another design,
made of one of these by a few changes of its text.
"""

from __future__ import annotations

import csv
from collections import Counter
from functools import cache
from pathlib import Path
from typing import NamedTuple

import pytest
from changed_text import changed

from sld.finding import Severity
from sld.run import reviewed
from sld.spec import load
from sld.spec.quote import quote

HERE = Path(__file__).parent
FOLDER = HERE / "ordinary"


class Design(NamedTuple):
    """A design: the file, the changes made of it (place and value in turn), and what kind of source they have."""

    name: str
    file: str
    source: str
    changes: tuple[str, ...] = ()


WRITTEN = [Design(each.stem, each.name, "") for each in sorted(FOLDER.glob("*.yaml"))]
VARIED = [
    Design(name, f"{base}.yaml", source, tuple(cell for cell in cells if cell))
    for name, base, source, *cells in list(
        csv.reader((HERE / "variations.csv").read_text(encoding="utf-8").splitlines())
    )[1:]
]


ALARMED: dict[str, str] = {}
"""Designs at which a rule is wrong: name -> which, and by which clause."""

CASES = [
    pytest.param(
        each,
        id=each.name,
        marks=[pytest.mark.xfail(strict=True, reason=ALARMED[each.name])] if each.name in ALARMED else [],
    )
    for each in (*WRITTEN, *VARIED)
]


@cache
def read(name: str) -> str:
    return (FOLDER / name).read_text(encoding="utf-8")


@pytest.mark.parametrize("design", CASES)
def test_an_ordinary_design_is_in_order(design: Design, tmp_path: Path) -> None:
    text = read(design.file)
    for place, value in zip(design.changes[::2], design.changes[1::2], strict=True):
        text = changed(text, place, value)
    (tmp_path / "types").mkdir()
    for types in ("types/modules.yaml", "types/storage.yaml", "types/makes.yaml"):
        (tmp_path / types).write_text(read(types), encoding="utf-8")
    (tmp_path / design.file).write_text(text, encoding="utf-8")
    source, spec = load(tmp_path / design.file)
    bad = [each for each in reviewed(source, spec).findings if each.severity >= Severity.NON_COMPLIANCE]
    assert not bad, "\n".join(quote(source, each) for each in bad)


def test_sixty_designs_are_of_five_countries_and_half_of_them_written_whole() -> None:
    countries = Counter(each.name[:2] for each in (*WRITTEN, *VARIED))
    assert len(WRITTEN) >= 30, len(WRITTEN)
    assert sum(countries.values()) >= 60, countries
    assert len([country for country, count in countries.items() if count >= 4]) >= 5, countries


@pytest.mark.parametrize("design", WRITTEN, ids=lambda each: each.name)
def test_a_design_says_where_its_numbers_are_from(design: Design) -> None:
    head = [line for line in read(design.file).splitlines() if line.startswith("#")]
    assert head, design.name
    assert "Numbers:" in " ".join(head) or "no source" in " ".join(head), head
