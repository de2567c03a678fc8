"""The rules: one file a rule, in a folder a family. A rule compares ratings and given values, it never computes.

Importing this package imports every rule file, which registers the rule in `sld.finding.RULES`.
"""

from __future__ import annotations

import pkgutil
from dataclasses import replace
from importlib import import_module

from sld.finding import RULES, Finding, Severity, SpecPath
from sld.model.system import System
from sld.rules.acceptance import applied
from sld.rules.profile_applies import applies
from sld.rules.spec.acc01_acceptance_matches_nothing import unmatched
from sld.steps.ledger import Ratings
from sld.words import phrase

__all__ = ["review"]

for _name in sorted(module.name for module in pkgutil.walk_packages(__path__, f"{__name__}.")):
    import_module(_name)


def review(system: System, ratings: Ratings) -> tuple[Finding, ...]:
    """Return everything there is to tell about a system: the findings of all rules and the assumptions made.

    Deviations that the spec accepts are marked as accepted. The worst come first, then by code and place in the spec.
    """
    findings = [each.finding for each in system.assumptions]
    for code in sorted(RULES):
        check = RULES[code].check
        if check is not None and applies(code, system):
            findings += check(system, ratings)
    findings = [_on_assumed(system, finding) for finding in findings]
    findings, idle = applied(system, findings)
    findings += unmatched(system, idle)
    return tuple(sorted(findings, key=_order))


def _on_assumed(system: System, finding: Finding) -> Finding:
    """Point at what the spec can change where a finding is about a device that the spec does not mention."""
    device = system.devices.get(finding.device)
    supply_is_asked = finding.at[:1] == ("supply",)
    if device is None or not device.assumed or finding.severity is Severity.ASSUMPTION or supply_is_asked:
        return finding
    remedy = phrase("give the `circuit` in the spec, the device is assumed; then {remedy}", remedy=finding.remedy)
    return replace(finding, at=device.at, remedy=remedy)


def _order(finding: Finding) -> tuple[int, str, list[tuple[bool, int, str]]]:
    """Sort by severity, code and path; list indices sort as numbers."""
    path: SpecPath = finding.at
    parts = [(True, part, "") if isinstance(part, int) else (False, 0, part) for part in path]
    return -finding.severity, finding.code, parts
