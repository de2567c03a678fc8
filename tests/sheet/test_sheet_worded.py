"""What becomes of the sections of a document on paper: which columns stand, what stands behind what, in which words."""

from __future__ import annotations

import pytest

from sld.documents.cell import EMPTY, NOT_GIVEN, Cell, given
from sld.documents.section import Column, FlaggedList, FlaggedRow, Form, Paragraphs, Section, Table
from sld.sheet.listings import FlagList, TextList
from sld.sheet.listings import Table as Printed
from sld.sheet.listings.placards import Placards
from sld.sheet.worded import listing
from sld.words import ENGLISH, amount, verbatim

LENGTH = amount(20, "m")
SET = "20\u00a0m"
"""What is one on paper: no line ends between a number and its unit."""

A, B, C = (Column(verbatim(name)) for name in "ABC")
BEHIND = Column(verbatim("B"), behind=True, usual=given(verbatim("new")), on_paper=verbatim("b unless new"))
BELOW = Column(verbatim("B"), below=True)


def cell(text: str) -> Cell:
    return {"": EMPTY, "-": NOT_GIVEN}.get(text) or given(verbatim(text))


ROWS = [
    # sparse, columns, rows, what stands at the head, what in the rows
    (False, (A, B, C), ("a.c", "d-f"), "A B C", ["a||c", "d|–|f"]),
    (True, (A, B, C), ("a.c", "d-f"), "A C", ["a|c", "d|f"]),
    (True, (A, B, C), ("a.c", "def"), "A B C", ["a||c", "d|e|f"]),
    # behind: with a comma, alone where the one before says nothing, not where it is as usual
    (False, (A, BEHIND), ("ab", "-b", "a.", "a-", ".b"), "A;·b·unless·new", ["a, b", "b", "a", "a", "b"]),
    (False, (A, BEHIND), ("an", "-n"), "A;·b·unless·new", ["a", "–"]),
    # what others stand behind stays, though it says nothing itself
    (True, (C, A, BEHIND), ("c.b", "c-b"), "C A;·b·unless·new", ["c|b", "c|b"]),
    (True, (A, C, BEHIND), ("-cb", "-cb"), "C;·b·unless·new", ["c, b", "c, b"]),
    # below: on a line of its own
    (False, (A, BELOW), ("ab", "a.", ".b"), "A·/·B", ["a/b", "a", "b"]),
    (False, (A, BELOW, BEHIND), ("abb", "a.b"), "A·/·B;·b·unless·new", ["a/b, b", "a/b"]),
    (True, (A, BELOW, C), ("-bc", "-bc"), "A·/·B C", ["–/b|c", "–/b|c"]),
]


@pytest.mark.parametrize(("sparse", "columns", "rows", "heads", "told"), ROWS)
def test_table(sparse: bool, columns: tuple[Column, ...], rows: tuple[str, ...], heads: str, told: list[str]) -> None:
    """A letter is a text, `n` the usual one, a dot an empty cell, a dash one that is not given."""
    words = {"n": "new", ".": ""}
    cells = tuple(tuple(cell(words.get(each, each)) for each in row) for row in rows)
    printed = listing(Table("t", verbatim("T"), columns, cells, sparse=sparse), ENGLISH)
    assert isinstance(printed, Printed)
    assert [column.heading.replace(" ", "·") for column in printed.columns] == heads.split()
    assert ["|".join(text.replace("\n", "/") for text in row) for row in printed.rows] == told


SECTIONS = [
    (Table("n", verbatim("T"), (A,), ((given(LENGTH),),)), Printed, [(SET,)]),
    (
        Form("n", verbatim("T"), ((LENGTH, given(verbatim("v"))), (A.heading, given(LENGTH)))),
        Printed,
        [(SET, "v"), ("A", SET)],
    ),
    (Paragraphs("n", verbatim("T"), (LENGTH,)), TextList, SET),
    (FlaggedList("n", verbatim("T"), (FlaggedRow(3, (LENGTH,)),)), FlagList, (3, SET)),
    (Table("n", verbatim("T"), (A,) * 4, ((given(LENGTH),) * 4,), placards=True), Placards, None),
]


@pytest.mark.parametrize(("section", "kind", "told"), SECTIONS)
def test_each_section_keeps_name_title_and_units(section: Section, kind: type, told: object) -> None:
    printed = listing(section, ENGLISH)
    assert type(printed) is kind
    assert (printed.name, printed.title) == ("n", "T")
    if isinstance(printed, Printed):
        assert list(printed.rows) == told
    elif isinstance(printed, TextList):
        assert printed.paragraphs == (told,)
    elif isinstance(printed, FlagList):
        assert [(row.number, *row.paragraphs) for row in printed.rows] == [told]


@pytest.mark.parametrize(("right", "align"), [(True, "right"), (False, "left")])
def test_numbers_stand_on_the_right(right: bool, align: str) -> None:
    column = Column(verbatim("A"), 0.7, right=right)
    columns = column, BEHIND, B
    printed = listing(Table("t", verbatim("T"), columns, (tuple(map(cell, "abc")),), abreast=right), ENGLISH)
    assert isinstance(printed, Printed)
    assert [(each.share_factor, each.align) for each in printed.columns] == [(0.7, align), (None, "left")]
    assert printed.abreast == right


@pytest.mark.parametrize(("numbered", "sign"), [(True, ""), (False, "warning_triangle")])
def test_paragraphs_keep_numbers_and_sign(numbered: bool, sign: str) -> None:
    section = Paragraphs("p", verbatim("P"), (verbatim("a"),), numbered=numbered, sign=sign, dense=not numbered)
    printed = listing(section, ENGLISH)
    assert isinstance(printed, TextList)
    assert (printed.numbered, printed.dense, bool(printed.sign)) == (numbered, not numbered, bool(sign))
