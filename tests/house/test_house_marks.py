"""What is from memory says so wherever it goes: from the row of a table to the rating and on to every sheet."""

from __future__ import annotations

import re
from itertools import chain
from pathlib import Path

import pytest
from example_specs import READ, SPECS, checked, document

from sld.citation import Mark, citations, cited, clause_from_memory, from_memory, marks, rests_on_memory
from sld.symbols.stroke import Text
from sld.tables.table import table
from sld.words import ENGLISH, language, phrase, sequence

ROOT = Path(__file__).parents[2]
TABLES = sorted(path.stem for path in (ROOT / "sld" / "tables").glob("*.csv"))


@pytest.mark.parametrize("name", TABLES)
def test_every_row_of_a_table_carries_its_mark(name: str) -> None:
    for row in table(name):
        assert (Mark.FROM_MEMORY in marks(row.reference)) == (row.status == "from memory"), row.cells
        for code in ("en", "de"):
            mark, said = language(code).say(Mark.FROM_MEMORY), language(code).say(row.reference)
            assert row.status != "from memory" or mark in said, said


@pytest.mark.parametrize("path", SPECS, ids=lambda path: path.stem)
def test_every_rating_says_its_marks(path: Path) -> None:
    """In its trace, which the calculation and the pointer on the drawing print."""
    for _, rating in chain.from_iterable(part.ratings for part in checked(path).parts):
        said, found = ENGLISH.say(rating.trace()), marks(rating.clause, rating.table_row)
        assert all(ENGLISH.say(mark) in said for mark in found), said
        # a mark that were mere text could not be found by what prints the value
        sources = ENGLISH.say(sequence([rating.clause, rating.table_row], " "))
        assert "from memory" not in sources or found, said


@pytest.mark.parametrize(("path", "reader"), READ)
def test_every_drawing_names_the_values_that_rest_on_memory(path: Path, reader: str) -> None:
    found = checked(path)
    symbols = {str(rating.symbol) for part in found.parts for _, rating in part.ratings if rests_on_memory(rating)}
    sheets = document(path, "drawing", reader).sheets
    texts = [s.text for sheet in sheets for group in sheet.groups for s in group.strokes if isinstance(s, Text)]
    printed = " ".join(texts).replace("\u00a0", " ")
    listed = re.findall(r"comparison with its source: (.*?)\. The ", printed)  # of each supply point
    assert {symbol for each in listed for symbol in each.split("; ")} == symbols


def test_marks_are_found_inside() -> None:
    inside = from_memory("a standard")
    assert marks(cited("another")) == frozenset()
    for said in (inside, citations(cited("b"), inside), sequence([inside]), phrase("by {source}", source=inside)):
        assert marks(said) == {Mark.FROM_MEMORY}
    assert marks(cited(phrase("by {source}", source=inside)), clause_from_memory("c")) == {
        Mark.FROM_MEMORY,
        Mark.CLAUSE_FROM_MEMORY,
    }
