"""Short labels: a designation in the row of an inverter begins behind it, and schedules have what is left out."""

from __future__ import annotations

from dataclasses import replace

import pytest
from lettering import below, drawn, texts

from sld.layout.diagram.diagram import Cell, Diagram, Join
from sld.layout.diagram.line import Line, Role
from sld.layout.diagram.relative import inverters_of, relative
from sld.layout.diagram.wrapping import Manner, lines_wrapped
from sld.words import verbatim

INVERTER = drawn("t", "inverter_3ph", ("-TB1",), ("25 kW",), aligned="inverter", join=Join.SPAN)


@pytest.mark.parametrize(
    ("name", "inverter", "expected"),
    [
        ("-TB1-QB1", "-TB1", "-QB1"),
        ("-TB1-GC1…3", "-TB1", "-GC1…3"),
        ("-TB1…60-FC1", "-TB1…60", "-FC1"),
        ("-TB1-UC1-FC1", "-TB1", "-UC1-FC1"),
        ("-TB10-QB1", "-TB1", "-TB10-QB1"),
        ("-TB2-QB1", "-TB1", "-TB2-QB1"),
        ("-UC2-QB1", "-TB1", "-UC2-QB1"),
        ("-TB1", "-TB1", "-TB1"),
        ("-KF1", "-TB1", "-KF1"),
    ],
)
def test_a_designation_begins_behind_the_inverter_of_its_row(name: str, inverter: str, expected: str) -> None:
    """IEC 81346-1 (from memory): a designation may begin at an object that the place makes clear."""
    assert texts(relative(drawn("q", "fuse", (name,)), {inverter})) == (expected,)


def test_it_stays_whole_where_the_inverter_is_on_another_sheet() -> None:
    switch = drawn("q", "fuse", ("-TB1-QB1",))
    assert inverters_of(Diagram(replace(switch, children=(INVERTER,)))) == {"-TB1"}
    assert inverters_of(Diagram(switch)) == frozenset()
    assert texts(lines_wrapped(Diagram(switch), Manner(28.0, terse=True)).root.above) == ("-TB1-QB1",)


def place(text: str) -> tuple[Line, ...]:
    return (Line(Role.PLACE, verbatim(text)),)


def cable() -> Cell:
    return replace(
        drawn("w", "cable", ("-TB1-WD1",)),
        below=(Line(Role.COMPUTED, verbatim("Iz 96 A")),),
        along=Line(Role.CONDUCTORS, verbatim("5 × 16 mm² 8 m")),
    )


@pytest.mark.parametrize(
    ("cell", "left"),
    [
        (replace(INVERTER, below=(*below("25 kW"), *place("plant room"))), ("25 kW",)),
        (cable(), ()),
        (replace(drawn("g", "pv_string", ("-TB1-GC1",), aligned="string"), below=place("south, 15°")), ("south, 15°",)),
    ],
    ids=["the place of a device", "what a cable carries", "where strings face stays"],
)
def test_what_a_schedule_has_is_left_to_it(cell: Cell, left: tuple[str, ...]) -> None:
    diagram = Diagram(drawn("n", "network", ("-GA1",), children=(cell,)))
    short, long = (lines_wrapped(diagram, Manner(28.0, terse=terse)) for terse in (True, False))
    assert texts(short.root.children[0].below) == left
    assert len(long.root.children[0].below) == len(cell.below)
    assert (short.terse, long.terse) == (True, False)
