"""What marks of a plan are in its legend, each by itself."""

from __future__ import annotations

import pytest

from sld.layout.plan import Frame, Plan
from sld.sheet.legend import legend
from sld.symbols.catalogue import family
from sld.symbols.stroke import Box, Text
from sld.words import ENGLISH

FRAME = Frame("main", Box(0.0, 0.0, 10.0, 10.0), Text((1.0, 3.0), "board"))
NOTHING = Plan(0.0, 0.0, (), (), (), (), (), (), 0)

MARKS = [
    (NOTHING, []),
    (Plan(0.0, 0.0, (), (), ((1.0, 1.0),), (), (), (), 0), ["Connected"]),
    (Plan(0.0, 0.0, (), (), (), (FRAME,), (), (), 0), ["Enclosure"]),
    (Plan(0.0, 0.0, (), (), (), (), (), (), 2), ["Crossing, not connected"]),
]


@pytest.mark.parametrize("others", [0, 1])
@pytest.mark.parametrize(("plan", "meanings"), MARKS)
def test_a_mark_is_told_where_a_plan_has_it(plan: Plan, meanings: list[str], others: int) -> None:
    """Also where only one of several plans has it."""
    told = legend((*[NOTHING] * others, plan), family("IEC"), ENGLISH)
    assert [entry.text for entry in told.entries] == meanings
