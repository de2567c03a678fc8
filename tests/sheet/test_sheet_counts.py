"""How many sheets a drawing takes: a house two, for the operator as many at most, a plant no more than it has boards.

The targets are our own, found by setting such drawings by hand; they hold for the specs of `specs/`.
"""

from __future__ import annotations

import pytest
from example_specs import SPECS, case, document

# all readers, then the network operator: at most so many sheets, and what the full set says of a diagram in parts
SHEETS = {
    "cedar-house": (2, 2),
    "ferry-depot": (2, 1),
    "ford-barn": (2, 1),
    "haus-ahorn": (2, 2),
    "hill-farm": (3, 2),  # two supply points
    "lower-farm": (2, 2),  # two inverters and a data bus on A3
    "mill-house": (2, 2),
    "orchard-lodge": (2, 2),
    "quay-cottage": (2, 2),
    "saltmarsh-field": (2, 1),
    "smithy": (2, 1),
    "upper-farm-faulty": (2, 2),  # on A2, with its findings on sheet 1
    "valley-school": (3, 1),  # equal inverters drawn once, on A3; for the operator each in a row, on A2
    "village-hall": (2, 2),
    "wattle-court": (3, 1),  # a battery and a board that is backed up
    "weir-house": (2, 1),  # a battery and a board that is backed up; for the operator on A2
    "winery-estate": (6, 5),  # four boards, on A3 as asked
}

FEW = ("haus-ahorn", "valley-school", "winery-estate")
PATHS = {path.stem: path for path in SPECS}


def test_every_spec_is_counted() -> None:
    assert set(SHEETS) == set(PATHS)


@pytest.mark.parametrize("name", SHEETS)
def test_a_full_set_takes_at_most_so_many_sheets(name: str) -> None:
    assert len(document(PATHS[name], "drawing", "full").sheets) <= SHEETS[name][0]


@pytest.mark.parametrize("name", [case(name, sampled=name in FEW) for name in SHEETS])
def test_the_operator_gets_at_most_so_many_sheets(name: str) -> None:
    assert len(document(PATHS[name], "drawing", "operator").sheets) <= SHEETS[name][1]


def test_the_operator_has_one_table_to_review() -> None:
    (section,) = {group.section for sheet in document(PATHS["haus-ahorn"], "drawing", "operator").sheets
                  for group in sheet.groups} & {"review", "summary"}  # fmt: skip
    assert section == "review"
