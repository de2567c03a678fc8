"""Citations: how they are said, and that a mark is never lost. No source: our own form."""

from __future__ import annotations

import pytest

from sld.citation import (
    Citation,
    Citations,
    Mark,
    citations,
    cited,
    clause_from_memory,
    clauses_from_memory,
    from_memory,
    in_annex,
    in_table,
    in_tables,
)
from sld.words import phrase

SAID = [
    (cited("IEC 60364-4-43:2008 433.1"), "IEC 60364-4-43:2008 433.1"),
    (from_memory("IEC 60364-5-53:2019 536"), "IEC 60364-5-53:2019 536 (from memory)"),
    (clause_from_memory("IEC 62548:2016 6.4"), "IEC 62548:2016 6.4 (clause from memory)"),
    (clauses_from_memory("A 1", "B 2"), "A 1; B 2 (clauses from memory)"),
    (cited("A 1", mark=Mark.FORMULA_FROM_MEMORY), "A 1 (formula from memory)"),
    (cited("IEC 60076-1", remark=phrase("definition")), "IEC 60076-1 (definition)"),
    (from_memory("IEC 60947-2", remark=phrase("tolerance 20 %")), "IEC 60947-2 (tolerance 20 %, from memory)"),
    (cited(in_table("IEC 60898-1:2015", "7")), "IEC 60898-1:2015 Table 7"),
    (cited(in_tables("EN 50618:2014", "A.3, A.4")), "EN 50618:2014 Tables A.3, A.4"),
    (from_memory(in_annex("EN 60898-1", "ZA")), "EN 60898-1 Annex ZA (from memory)"),
    (citations(cited("A 1"), from_memory("B 2")), "A 1; B 2 (from memory)"),
]


@pytest.mark.parametrize(("citation", "text"), SAID, ids=[text for _, text in SAID])
def test_how_a_citation_is_said(citation: Citation | Citations, text: str) -> None:
    assert str(citation) == text


def test_joined_citations_are_equal_however_they_were_joined() -> None:
    one, two, three = cited("A 1"), from_memory("B 2"), clause_from_memory("C 3")
    assert citations(citations(one, two), three) == citations(one, citations(two, three))
    assert [getattr(part, "mark", None) for part in citations(citations(one, two), three).parts] == [
        None, Mark.FROM_MEMORY, Mark.CLAUSE_FROM_MEMORY
    ]  # fmt: skip
