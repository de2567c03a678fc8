"""Every rule fires on the case that breaks it and is silent on the complete base.

The data are invented, the limits are those of the clauses that the rules name.
"""

from __future__ import annotations

import pkgutil
import re
from dataclasses import replace
from importlib import import_module

import battery_cases
import grid_cases
import island_cases
import nec_cases
import paperwork_cases
import pytest
import rule_cases
from nec_cases import NEC
from rule_cases import INPUT, SPD, STRING, Case
from systems import findings_of, reviewed_parts

import sld.rules
from sld.finding import RULES, Severity

FAILING = (
    *rule_cases.FAILING,
    *battery_cases.FAILING,
    *island_cases.FAILING,
    *nec_cases.FAILING,
    *paperwork_cases.FAILING,
    *grid_cases.FAILING,
)
AT_THE_LIMIT = (
    *rule_cases.AT_THE_LIMIT,
    *battery_cases.AT_THE_LIMIT,
    *island_cases.AT_THE_LIMIT,
    *nec_cases.AT_THE_LIMIT,
    *paperwork_cases.AT_THE_LIMIT,
    *grid_cases.AT_THE_LIMIT,
)
HEADINGS = ("What it checks", "Why", "How", "Remedy", "Clause", "Not covered")
MODULES = sorted(
    module.name
    for module in pkgutil.walk_packages(sld.rules.__path__, "sld.rules.")
    if re.match(r"[a-z]+\d+_", module.name.rpartition(".")[2])
)
FILE_CODES = {name: re.match(r"[a-z]+\d+", name.rpartition(".")[2]).group().upper() for name in MODULES}


@pytest.mark.parametrize("case", FAILING, ids=[f"{case.code}-{place}" for place, case in enumerate(FAILING)])
def test_rule_tells_what_is_wrong_where_and_what_to_do(case: Case) -> None:
    found = [finding for finding in findings_of(case.changes) if finding.code == case.code]
    assert found, "the rule is silent"
    told = [each for each in found if all(part in str(each.message) for part in case.message)]
    assert told, [str(each.message) for each in found]
    finding = told[0]
    assert case.remedy in str(finding.remedy)
    assert finding.device == case.device
    assert finding.severity is case.severity


@pytest.mark.parametrize("case", FAILING, ids=[f"{case.code}-{place}" for place, case in enumerate(FAILING)])
def test_findings_are_well_formed(case: Case) -> None:
    for system, finding in ((part, each) for part, found in reviewed_parts(case.changes) for each in found):
        assert finding.code in RULES
        assert finding.severity <= RULES[finding.code].severity
        assert str(finding.message)
        assert not str(finding.message).endswith(".")
        assert str(finding.remedy)
        assert not re.search(r"(?<!\w)-[A-Z]{2}\d", str(finding.remedy)), (
            "a remedy names no device, equal devices share it"
        )
        if finding.code[:2] in ("DC", "AC", "FA", "SU", "ME") and finding.device in system.devices:
            assert system.devices[finding.device].designation in str(finding.message)


def test_complete_small_installation_breaks_no_rule() -> None:
    open_ones = [finding for finding in findings_of({}) if finding.severity > Severity.ASSUMPTION]
    assert open_ones == []


def test_the_same_installation_under_the_national_electrical_code_breaks_no_rule() -> None:
    open_ones = [finding for finding in findings_of(NEC) if finding.severity > Severity.ASSUMPTION]
    assert open_ones == []


@pytest.mark.parametrize(("code", "changes"), AT_THE_LIMIT, ids=[code for code, _ in AT_THE_LIMIT])
def test_exactly_at_the_limit_is_allowed(code, changes) -> None:
    assert code not in [finding.code for finding in findings_of(changes)]


def test_surge_protection_is_required_from_the_critical_length_on() -> None:
    """IEC 60364-7-712:2017 712.443.102: required where L >= Lcrit; 115 / 5.75 = 20 m."""
    changes = {SPD: {"kind": "isolator"}, "site.lightning_density": 5.75}
    assert "SU01" in [finding.code for finding in findings_of(changes)]


@pytest.mark.parametrize("built_in", ["2", "1+2"])
def test_surge_protection_built_into_the_inverter_counts(built_in) -> None:
    changes = {f"{INPUT}.circuit.0": {"kind": "isolator"}, "site.lightning_density": 6}
    changes |= {"types.inverters.twelve.dc_surge_protection": built_in}
    assert "SU01" not in [finding.code for finding in findings_of(changes)]


def test_fuses_make_the_need_of_fuses_good() -> None:
    codes = [finding.code for finding in findings_of({f"{STRING}.count": 3, f"{INPUT}.string_fuses": {}})]
    assert "DC12" not in codes
    assert "DC13" not in codes


def test_each_of_equal_inverters_is_flagged_at_one_place_of_the_spec() -> None:
    found = [f for f in findings_of({"inverters.roof.count": 3, f"{STRING}.modules_in_series": 25}) if f.code == "DC01"]
    assert [finding.device for finding in found] == [f"inverters.roof-{n}.inputs.0.strings.0" for n in (1, 2, 3)]
    assert len({(finding.at, str(finding.remedy)) for finding in found}) == 1


@pytest.mark.parametrize(
    "at", ["inverters.roof", "inverters.roof.inputs[0].strings[0].modules_in_series", "-TB1-GC1…2"]
)
def test_acceptance_by_place_or_designation(at) -> None:
    entry = {"code": "DC01", "at": at, "reason": "tested", "role": "designer", "date": "2026-01-05"}
    found = findings_of({f"{STRING}.modules_in_series": 25, "accept": [entry]})
    (finding,) = [each for each in found if each.code == "DC01"]
    assert finding.accepted is not None
    assert finding.accepted.reason == "tested"
    assert "ACC01" not in [each.code for each in found]


@pytest.mark.parametrize("at", ["inverters.roo", "inverters.roof.inputs[0].strings[1]", "-TB1"])
def test_acceptance_elsewhere_accepts_nothing(at) -> None:
    entry = {"code": "DC01", "at": at, "reason": "tested", "role": "designer", "date": "2026-01-05"}
    found = findings_of({f"{STRING}.modules_in_series": 25, "accept": [entry]})
    (finding,) = [each for each in found if each.code == "DC01"]
    assert finding.accepted is None
    assert "ACC01" in [each.code for each in found]


def test_worst_first_then_code_then_place() -> None:
    found = findings_of({f"{STRING}.modules_in_series": 25, f"{STRING}.cable.length": "60 m"})
    assert [f.severity for f in found] == sorted((f.severity for f in found), reverse=True)
    dangers = [f.code for f in found if f.severity is Severity.DANGER]
    assert dangers == sorted(dangers)
    assert found == findings_of({f"{STRING}.modules_in_series": 25, f"{STRING}.cable.length": "60 m"})


@pytest.mark.parametrize("name", MODULES)
def test_rule_file_has_code_explanation_and_failing_case(name) -> None:
    code = FILE_CODES[name]
    rule = RULES[code]
    lines = rule.explanation.splitlines()
    assert [line for line in lines if line in HEADINGS] == list(HEADINGS)
    for heading, following in zip(HEADINGS, (*HEADINGS[1:], ""), strict=True):
        end = lines.index(following) if following else len(lines)
        assert any(line.strip() for line in lines[lines.index(heading) + 1 : end]), f"{heading} says nothing"
    assert rule.clause
    assert import_module(name).__doc__.lower().startswith(rule.title.lower())
    assert code in {case.code for case in FAILING}


@pytest.mark.parametrize(
    ("clause", "is_marked"),
    [("IEC 60364-7-712 712.537.", False), ("IEC 60364-7-712 712.537 (from memory).", True),
     ("IEC 60898-1, scope (numbers from\n    memory).", True)],
)  # fmt: skip
def test_a_clause_from_memory_is_marked_wherever_its_line_ends(clause: str, is_marked: bool) -> None:
    rule = replace(RULES["AC11"], explanation=f"Why\n    Reason.\n\nClause\n    {clause}\n\nNot covered\n    Rest.\n")
    assert rule.rests_on_memory == is_marked


def test_no_code_stands_for_two_files() -> None:
    assert len(set(FILE_CODES.values())) == len(FILE_CODES)
