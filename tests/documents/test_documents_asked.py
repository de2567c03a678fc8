"""The list of what is asked for and the cells that answer it name each other: no line without, no answer beside it."""

from __future__ import annotations

import pytest
from test_documents_blank import cells, whole

from sld.documents.completeness.asked import ASKED, ASKERS
from sld.documents.registry import KINDS
from sld.readers import PURPOSES

HEADS = {"installation", "country"}
"""What stands in every title block or rules the procedure, and is no question of its own."""


@pytest.fixture(scope="module")
def answered() -> set[str]:
    """What the cells of the three specs that are ready to be notified answer."""
    specs = map(whole, ("orchard-lodge", "haus-ahorn", "wattle-court"))
    return {cell.answers for data in specs for cell in cells(data).values() if cell.answers}


def test_every_line_is_answered_by_a_cell(answered: set[str]) -> None:
    assert {asked.answers for asked in ASKED if asked.answers} <= answered


def test_every_answer_belongs_to_a_line(answered: set[str]) -> None:
    """An answer like `installer.email` belongs to the line of its head."""
    asked = {each.answers for each in ASKED}
    assert {each for each in answered if not {each, each.split(".")[0]} & (asked | HEADS)} == {"paper.certificate"}


def test_lines_name_documents_sections_and_askers_that_there_are() -> None:
    for asked in ASKED:
        assert asked.by
        assert set(asked.by) <= set(ASKERS)
        assert bool(asked.answers) != bool(asked.document)
        if asked.document:
            assert asked.section in ("", *KINDS[asked.document].sections)
    assert {asker for purpose in PURPOSES.values() for asker in purpose.askers} == set(ASKERS)
