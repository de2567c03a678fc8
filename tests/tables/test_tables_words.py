"""What is printed of a table is in the list of texts to translate, and what is from memory says so."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pytest

import sld.tables
from sld.citation import Citation, Mark
from sld.tables.profiles import PROFILE_NAMES, profile
from sld.tables.table import Table, table
from sld.words import Phrase, Sayable, Sequence
from sld.words.extraction import PRINTED_COLUMNS, template

TABLES = [table(path.stem) for path in sorted(Path(sld.tables.__path__[0]).glob("*.csv"))]
NEVER_CITED = {"country_note", "profile_scope"}
"""Tables of sentences: their rows are printed, never cited by their keys."""


@cache
def known() -> set[str]:
    """Return the texts that are to be translated."""
    ids = (message.id for message in template() if message.id)
    return {text for each in ids for text in (each if isinstance(each, tuple) else (each,))}


def phrases(said: Sayable | str) -> Iterator[Phrase]:
    """Yield every phrase that something is made of."""
    if isinstance(said, Phrase):
        yield said
        for _, value in said.values:
            if not isinstance(value, int):
                yield from phrases(value)
    elif isinstance(said, Sequence | Citation):
        for part in said.parts if isinstance(said, Sequence) else said.sources:
            if not isinstance(part, int):
                yield from phrases(part)


@pytest.mark.parametrize("each", [each for each in TABLES if each.name not in NEVER_CITED], ids=lambda each: each.name)
def test_every_way_to_cite_a_row_can_be_translated(each: Table) -> None:
    assert {phrase.text for row in each for phrase in phrases(row.reference)} <= known()


@pytest.mark.parametrize("name", PRINTED_COLUMNS)
def test_every_printed_column_exists_and_can_be_translated(name: str) -> None:
    rows = table(name).rows
    front = table(name).front
    for column in PRINTED_COLUMNS[name]:
        assert column in rows[0].cells or column in front
        said = [row.said(column) for row in rows if column in row.cells]
        assert {phrase.text for each in said for phrase in phrases(each)} <= known()


@pytest.mark.parametrize("each", TABLES, ids=lambda each: each.name)
def test_a_row_that_is_from_memory_is_never_cited_without_saying_so(each: Table) -> None:
    for row in each:
        assert (row.reference.mark is Mark.FROM_MEMORY) == (row.status == "from memory")


@pytest.mark.parametrize("name", PROFILE_NAMES)
def test_a_clause_of_a_profile_that_is_from_memory_says_so(name: str) -> None:
    rules = profile(name)
    for row in table("profiles").where(profile=name):
        marked = getattr(rules, row["rule"]).cited.mark
        assert (marked is Mark.CLAUSE_FROM_MEMORY) == (row.status == "from memory")
