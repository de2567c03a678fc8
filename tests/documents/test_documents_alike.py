"""Equal schedule rows made one. Own rows; what may be put together is a rule of the project, no outside source."""

from __future__ import annotations

import pytest

from sld.documents.alike import alike_as_one
from sld.documents.cell import designated, given
from sld.words import ENGLISH

CABLE = "4 mm²"


@pytest.mark.parametrize(
    ("rows", "expected"),
    [
        ([("-TB1-WD1", CABLE), ("-TB2-WD1", CABLE)], [("-TB1-WD1, -TB2-WD1", CABLE)]),
        ([(f"-TB{n}-WD1", CABLE) for n in range(1, 61)], [("-TB1…60-WD1", CABLE)]),
        # another value stays by itself, in its place
        (
            [("-TB1-WD1", CABLE), ("-TB2-WD1", "6 mm²"), ("-TB3-WD1", CABLE), ("-TB4-WD1", CABLE)],
            [("-TB1-WD1, -TB3-WD1, -TB4-WD1", CABLE), ("-TB2-WD1", "6 mm²")],
        ),
        # another class of device is another row
        ([("-TB1-FC1", CABLE), ("-TB1-FA1", CABLE), ("-TB1-QB1", CABLE)],
         [("-TB1-FC1", CABLE), ("-TB1-FA1", CABLE), ("-TB1-QB1", CABLE)]),
    ],
)  # fmt: skip
def test_rows(rows: list[tuple[str, str]], expected: list[tuple[str, str]]) -> None:
    made = alike_as_one((designated(name), given(cable)) for name, cable in rows)
    assert [tuple(map(ENGLISH.say, row)) for row in made] == expected


def test_both_ends_of_a_cable_are_joined_for_themselves() -> None:
    (row,) = alike_as_one((designated(f"-TB{n}-FC1", f"-TB{n}-QB1"), given(CABLE)) for n in (1, 2, 3))
    assert tuple(map(ENGLISH.say, row)) == ("-TB1…3-FC1 – -TB1…3-QB1", CABLE)


def test_another_place_is_another_row() -> None:
    """What stands behind a designation is compared as it is: room 1 is not room 2."""
    made = alike_as_one((designated(f"-TB{n}"), given(f"room {n}")) for n in (1, 2, 3))
    assert len(made) == 3
