"""What rules say is made of phrases: said in a language that marks its texts, no plain English is left in it."""

from __future__ import annotations

import re

import pytest
from spoken import MARKED, english, names_of, names_of_grid
from systems import changed, findings_of, reviewed_parts
from test_rules import FAILING, Case


@pytest.mark.parametrize("case", FAILING, ids=[f"{case.code}-{place}" for place, case in enumerate(FAILING)])
def test_findings_are_made_of_phrases(case: Case) -> None:
    system, _ = reviewed_parts(case.changes)[0]
    found = [each for each in findings_of(case.changes) if each.code == case.code]
    said = [each for one in found for each in (one.message, one.remedy, *(word for _, word in one.also))]
    texts = [re.sub("`[^`]*`", "", MARKED.say(each)) for each in said]
    assert english(texts, [*names_of(changed(case.changes)), *names_of_grid(system)]) == {}
