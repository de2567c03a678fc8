"""Parts that differ in numbers alone are laid out once, and come out as if each had been laid out for itself."""

from __future__ import annotations

from dataclasses import replace

import pytest
from diagrams import systems
from hypothesis import given
from some_examples import examples
from worked_diagrams import inverters_on_one_bus, one_inverter

from sld import layout
from sld.documents.title import TitleBlock
from sld.layout.diagram.branch import branch, rebuilt
from sld.layout.diagram.diagram import Cell, Diagram, Join
from sld.layout.diagram.line import Line, Role, designation
from sld.layout.diagram.wrapping import worded
from sld.layout.parts.alike import Forms
from sld.layout.parts.cut_places import Room
from sld.layout.parts.laid import Layer
from sld.layout.parts.part_diagram import part_diagrams_of
from sld.layout.parts.parts import Parts, parts_of
from sld.layout.plan import Plan
from sld.sheet.placement import fits, room_mm
from sld.symbols.typeface import text_width_mm
from sld.words import ENGLISH, verbatim

BLOCK = TitleBlock("Owner", "Title", "EFS-0001", "2026-01-31", "Maker")


def in_parts(diagram: Diagram, paper: str) -> Parts:
    return parts_of(worded(diagram), layout.arrange, lambda plan: fits(plan, BLOCK, paper), Room(*room_mm(paper)))


def test_all_digits_are_equally_wide() -> None:
    assert len({text_width_mm(digit) for digit in "0123456789"}) == 1


def said(text: str) -> Diagram:
    """An inverter with a text below one of its strings."""
    whole = one_inverter()
    last = list(branch(whole.root))[-1].key

    def changed(cell: Cell) -> Cell:
        return replace(cell, below=(Line(Role.RATED, verbatim(text)),)) if cell.key == last else cell

    return replace(whole, root=rebuilt([changed(cell) for cell in branch(whole.root)]), earth=None)


def earthed(*names: str) -> Diagram:
    """An inverter whose last cells have conductors to earth of these designations."""
    whole = one_inverter()
    cells = list(branch(whole.root))
    for place, name in enumerate(names, len(cells) - len(names)):
        cells[place] = replace(cells[place], earth=designation(name))
    return replace(whole, root=rebuilt(cells), earth=None)


FORMS = [
    ("other digits", said("11 m"), said("27 m"), True),
    ("a digit more", said("11 m"), said("127 m"), False),
    ("another letter", said("11 m"), said("11 V"), False),
    ("broken elsewhere", said("11 22"), said("1 122"), False),
    ("two conductors to earth instead of one twice", earthed("-WE1", "-WE1"), earthed("-WE1", "-WE2"), False),
    ("another conductor to earth", earthed("-WE1", "-WE1"), earthed("-WE2", "-WE2"), True),
]


@pytest.mark.parametrize(("one", "other", "same"), [row[1:] for row in FORMS], ids=[row[0] for row in FORMS])
def test_the_form_tells_what_makes_a_plan_larger(one: Diagram, other: Diagram, same: bool) -> None:
    forms = Forms(ENGLISH)
    assert forms.of(worded(one)) is not None
    assert (forms.of(worded(one)) == forms.of(worded(other))) is same


def check_as_if_each_alone(diagram: Diagram, paper: str) -> None:
    with pytest.MonkeyPatch.context() as patch:
        made = in_parts(diagram, paper)
        patch.setattr(Forms, "of", lambda *_: None)
        assert made == in_parts(diagram, paper)


@examples(6)
@given(diagram=systems())
def test_parts_are_as_if_each_were_laid_out_for_itself(diagram: Diagram) -> None:
    check_as_if_each_alone(diagram, "A4")


def test_inverters_in_parts_are_as_if_each_were_laid_out_for_itself() -> None:
    check_as_if_each_alone(inverters_on_one_bus(30), "A3")


def test_of_sheets_of_one_form_one_is_laid_out() -> None:
    whole = part_diagrams_of(worded(inverters_on_one_bus(9)))
    branches = next(cell.children for cell in branch(whole.whole.root) if cell.join is Join.SPAN)
    laid: list[Diagram] = []

    def kept(diagram: Diagram, *, turned: bool = False) -> Plan:
        laid.append(diagram)
        return layout.arrange(diagram, turned=turned)

    layer = Layer(whole, kept, lambda plan: fits(plan, BLOCK, "A3"), Room(*room_mm("A3")), Forms(ENGLISH), {})
    parts = [layer.part((each,), False) for each in branches]
    assert len(parts) == 9
    assert len(laid) == 3  # the first on the data cable, those between, the last
    assert {(part.plan.width_mm, part.plan.height_mm) for part in parts} == {
        (plan.width_mm, plan.height_mm) for _, plan in map(layer.finished, parts)
    }
