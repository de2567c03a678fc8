"""Equal schedule rows made one. Own rows; what may be put together is a rule of the project, no outside source."""

from __future__ import annotations

import pytest

from sld.documents.alike import Repeated, alike_as_one
from sld.documents.cell import Cell, Designations, State, designated, given
from sld.model.copies import Copy
from sld.words import ENGLISH, verbatim

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


def test_what_is_told_apart_stands_behind_the_names_it_is_of() -> None:
    """The place of each in one row; a box that begins with the owner of its device is named once."""
    rows = [("-TB1", "roof"), ("-TB2", "barn"), ("-TB3", "roof"), ("-TB4", "roof"), ("-TB5", "roof")]
    (row,) = alike_as_one(((designated(name), given(where)) for name, where in rows), lambda _: 1)
    assert tuple(map(ENGLISH.say, row)) == ("-TB1…5", "-TB1, -TB3…5: roof; -TB2: barn")
    boxes = (("-UC2", "hall"), ("-UC3", "cellar"))
    (row,) = alike_as_one(
        ((designated(f"{box}-QB1"), designated(box, rest=verbatim(room))) for box, room in boxes), lambda _: 1
    )
    assert tuple(map(ENGLISH.say, row)) == ("-UC2-QB1, -UC3-QB1", "-UC2, hall; -UC3, cellar")


def test_what_may_not_be_told_apart_stays_a_row_of_its_own() -> None:
    made = alike_as_one(((designated(f"-TB{n}"), given(f"room {n}")) for n in (1, 2)), lambda _: None)
    assert len(made) == 2


def test_ends_are_short_together_only_where_they_are_the_same_in_each_circuit() -> None:
    def between(owner: str, *names: str) -> Cell:
        groups = tuple((f"{owner}{name}",) for name in names)
        return Cell(Designations(groups, short=tuple((name,) for name in names)), State.GIVEN)

    (same,) = alike_as_one([(between("-TB1", "-FC1", "-QB1"),), (between("-TB2", "-FC1", "-QB1"),)])
    assert isinstance(same[0].text, Designations)
    assert ENGLISH.say(same[0]) == "-TB1-FC1, -TB2-FC1 – -TB1-QB1, -TB2-QB1"
    assert same[0].text.short == (("-FC1",), ("-QB1",))
    (other,) = alike_as_one([(between("-TB1", "-FC1", "-QB1"),), (between("-TB2", "-FC2", "-QB1"),)])
    assert isinstance(other[0].text, Designations)
    assert not other[0].text.short


def copies_of(*names: dict[str, str]) -> tuple[Copy, ...]:
    """Return copies of an inverter -TB1, one for each mapping of its names."""
    return tuple(Copy.of("inverters.a-1", f"inverters.a-{n}", n, each, {}) for n, each in enumerate(names, start=2))


@pytest.mark.parametrize(
    ("copies", "others", "expected"),
    [
        (copies_of(*({"-TB1": f"-TB{n}"} for n in (2, 3, 4))), (), {"-TB1…4"}),
        (copies_of({"-TB1": "-TB2"}), (), {"-TB1", "-TB2"}),
        # a number that is taken by another device
        (copies_of(*({"-TB1": f"-TB{n}"} for n in (2, 4, 5))), (), {"-TB1", "-TB2", "-TB4", "-TB5"}),
        # another inverter goes on where the copies end
        (copies_of({"-TB1": "-TB2"}, {"-TB1": "-TB3"}), ("-TB4-FC1", "-TB4-FC2"), {"-TB1…4"}),
    ],
)
def test_copies_come_to_what_all_rows_come_to(
    copies: tuple[Copy, ...], others: tuple[str, ...], expected: set[str]
) -> None:
    rows = [(designated(f"-TB1-FC{n}", "-UC1"), given(CABLE)) for n in (1, 2)]
    repeated = [Repeated(row, copies, (0,)) for row in rows]
    more = [(designated(name, "-UC1"), given(CABLE)) for name in others]
    all_rows = [row for each in zip(*(each.rows for each in repeated), strict=True) for row in each]
    (made,) = alike_as_one([*repeated, *more])
    assert (made,) == alike_as_one([*all_rows, *more])
    near, far = ENGLISH.say(made[0]).split(" – ")
    assert set(near.split(", ")) == {f"{inverter}-FC{n}" for inverter in expected for n in (1, 2)}
    assert far == "-UC1"
