"""A hair beyond each limit of a rule, exactly at it, and each reason not to tell; the cases are in `rule_limits.py`."""

from __future__ import annotations

from dataclasses import replace

import battery_cases
import island_cases
import pytest
from rule_cases import BREAKER, CABLE, ENTRY, STRING, UNIT, Case
from rule_limits import SILENT, TOLD, Told
from systems import BASE, REMOVED, changed, findings_of, neighboured, rated

from sld.finding import Acceptance, Severity
from sld.grid.quantity import Quantity
from sld.rules import review
from sld.rules.grid_limit import imbalance


@pytest.mark.parametrize("case", TOLD, ids=[f"{case.code}-{place}" for place, case in enumerate(TOLD)])
def test_told(case: Told) -> None:
    found = [
        finding
        for finding in review(*rated(case.changes, neighboured() if case.among_others else BASE))
        if finding.code == case.code
    ]
    assert found, "the rule is silent"
    if case.count is not None:
        assert len(found) == case.count, [str(finding.message) for finding in found]
    told = [
        finding
        for finding in found
        if all(part in str(finding.message) for part in case.message) and case.device in (None, finding.device)
    ]
    assert told, [(finding.device, str(finding.message)) for finding in found]
    finding, start = told[0], 0
    for part in case.message:
        start = str(finding.message).index(part, start)
    assert case.remedy in str(finding.remedy)
    assert case.severity in (None, finding.severity)
    also = tuple(".".join(map(str, path)) for path, _ in finding.also)
    assert case.also in (None, len(also), also), also
    assert case.compared in (None, len(finding.compared))
    if case.at is not None:
        assert ".".join(map(str, finding.at)) == case.at


@pytest.mark.parametrize(("code", "changes"), SILENT, ids=[f"{code}-{place}" for place, (code, _) in enumerate(SILENT)])
def test_silent(code, changes) -> None:
    assert [str(finding.message) for finding in findings_of(changes) if finding.code == code] == []


@pytest.mark.parametrize(
    "case",
    [*battery_cases.FAILING, *island_cases.FAILING],
    ids=lambda case: case.code,
)
def test_what_a_block_lacks_is_shown_at_its_key(case: Case) -> None:
    """A block in brackets goes over many lines: its name is what the designer finds. Common practice, no source."""
    data: object = changed(case.changes)
    told = next(each for each in findings_of(case.changes) if each.code == case.code and each.device == case.device)
    for part in told.at:
        data = data.get(part) if isinstance(data, dict) else data[part]  # type: ignore[index]
    assert told.on_key is isinstance(data, dict | list)


def test_an_assumption_keeps_its_own_remedy() -> None:
    assumptions = [each for each in findings_of({f"{UNIT}.circuit": REMOVED}) if each.severity is Severity.ASSUMPTION]
    assert assumptions
    assert not [str(each.remedy) for each in assumptions if "the device is assumed; then" in str(each.remedy)]


def test_an_acceptance_of_a_known_code_says_no_more() -> None:
    (finding,) = [each for each in findings_of({"accept": [ENTRY]}) if each.code == "ACC01"]
    assert str(finding.message).endswith("matches no finding")


def test_an_acceptance_is_kept_as_given() -> None:
    entry = {**ENTRY, "at": STRING.replace("inputs.0.strings.0", "inputs[0].strings[0]")}
    found = findings_of({f"{STRING}.modules_in_series": 25, "accept": [entry]})
    (finding,) = [each for each in found if each.code == "DC01"]
    assert finding.accepted == Acceptance("tested", "designer", "2026-01-05")


@pytest.mark.parametrize(("section", "smaller"), [("1.5 mm2", False), ("2.5 mm2", True)])
def test_smaller_device_is_advised_only_where_it_carries_the_design_current(section, smaller) -> None:
    """IEC 60364-4-43 433.1: Ib <= In <= Iz; 15 A is below the 17.3 A of the inverter, 20 A is not."""
    changes = {f"{CABLE}.section": section, f"{BREAKER}.rated_current": "25 A"}
    (finding,) = [each for each in findings_of(changes) if each.code == "AC02"]
    assert ("or use a protective device of at most 20 A" in str(finding.remedy)) is smaller
    assert ("protective device" in str(finding.remedy)) is smaller


def test_the_limit_of_one_unit_and_that_between_lines_are_told_apart() -> None:
    """An operator may have other limits for the two; DE has 4.6 kVA for both (VDE-AR-N 4105 5.6, from memory)."""
    system, _ = rated({"supply.country": "DE"})
    one, between = system.grid_rules.imbalance
    wider = between.model_copy(update={"when": tuple(each.model_copy(update={"limit": 6}) for each in between.when)})
    own = replace(system, grid_rules=system.grid_rules.model_copy(update={"imbalance": (one, wider)}))
    assert [each.value for each in imbalance(own, Quantity.SINGLE_PHASE_POWER)] == [4600]
    assert [each.value for each in imbalance(own, Quantity.LINE_DIFFERENCE)] == [6000]
