"""A hair beyond each limit of a rule, exactly at it, and each reason not to tell; the cases are in `rule_limits.py`."""

from __future__ import annotations

import pytest
from rule_limits import SILENT, TOLD, Told
from systems import BASE, findings_of, neighboured, rated

from sld.rules import review


@pytest.mark.parametrize("case", TOLD, ids=[f"{case.code}-{place}" for place, case in enumerate(TOLD)])
def test_told(case: Told) -> None:
    found = [
        finding
        for finding in review(*rated(case.changes, neighboured() if case.among_others else BASE))
        if finding.code == case.code
    ]
    assert found, "the rule is silent"
    if case.count is not None:
        assert len(found) == case.count, [finding.message for finding in found]
    told = [
        finding
        for finding in found
        if all(part in finding.message for part in case.message) and case.device in (None, finding.device)
    ]
    assert told, [(finding.device, finding.message) for finding in found]
    finding, start = told[0], 0
    for part in case.message:
        start = finding.message.index(part, start)
    assert case.remedy in finding.remedy
    assert case.severity in (None, finding.severity)
    assert case.also in (None, len(finding.also)), finding.also
    if case.at is not None:
        assert ".".join(map(str, finding.at)) == case.at


@pytest.mark.parametrize(("code", "changes"), SILENT, ids=[f"{code}-{place}" for place, (code, _) in enumerate(SILENT)])
def test_silent(code, changes) -> None:
    assert [finding.message for finding in findings_of(changes) if finding.code == code] == []
