"""What is told of a value and what of a device that is drawn for others: worked by hand."""

from __future__ import annotations

import pytest
from printed_sheet import checked

from sld.documents.derivation import derived, entities
from sld.documents.drawing.measures import measures
from sld.words import ENGLISH

ROWS = [
    ("-TB2-FB1", "Ia", "instantaneous tripping: B"),  # IEC 60898-1 Table 7
    ("-UC2-WD1", "R", "IEC 60228 resistance: section 16 mm²"),
    ("-TB2-FB1", "Zs", None),  # computed from resistances alone
    ("-TB2-FB1", "In", None),  # from the spec
]


@pytest.mark.parametrize(("designation", "symbol", "row"), ROWS)
def test_the_row_of_a_table_is_told_where_a_value_is_from_one(designation: str, symbol: str, row: str | None) -> None:
    seen = checked("workshop")
    (key,) = [key for key, each in entities(seen.system).items() if each.designation == designation]
    (found,) = [each for each in derived(seen.ratings, key) if each.symbol == symbol]
    steps = {ENGLISH.say(head): ENGLISH.say(said) for head, said in found.steps}
    assert steps.get("Row of the table") == row


def test_what_may_differ_of_boards_and_cables_is_told_by_their_designations() -> None:
    """8 kA of the supply at the first board; the peak factor of IEC 61439-1 Table 7 is 1.7 from 5 kA to 10 kA."""
    seen = checked("workshop")
    told = {each.designation: ENGLISH.say(each.value) for each in measures(seen.system, seen.ratings).values()}
    assert told["-UC1"] == "Ik 8 kA, ip 13.6 kA"
    assert {name for name in told if "-W" not in name} == {"-UC1", "-UC2"}
