"""The rules: one file a rule, in a folder a family. A rule compares ratings and given values, it never computes.

Importing this package imports every rule file, which registers the rule in `sld.finding.RULES`.
"""

from __future__ import annotations

import pkgutil
from collections.abc import Iterator, Sequence
from functools import lru_cache
from importlib import import_module

from sld.finding import RULES, Finding, Severity, SpecPath
from sld.frozen import replace
from sld.model.assumed import assumed
from sld.model.system import System
from sld.rules.acceptance import applied
from sld.rules.of_copies import told_of_all
from sld.rules.profile_applies import applies
from sld.rules.spec.acc01_acceptance_matches_nothing import unmatched
from sld.steps.ledger import Ratings
from sld.words import phrase

__all__ = ["in_order", "review", "review_all"]

for _name in sorted(module.name for module in pkgutil.walk_packages(__path__, f"{__name__}.")):
    import_module(_name)


def review(system: System, ratings: Ratings) -> tuple[Finding, ...]:
    """Return everything there is to tell about a system: the findings of all rules and the assumptions made.

    Deviations that the spec accepts are marked as accepted. The worst come first, then by code and place in the spec.
    """
    return review_all(((system, ratings),))[0]


def review_all(parts: Sequence[tuple[System, Ratings]]) -> tuple[tuple[Finding, ...], ...]:
    """Return what there is to tell about the system behind each supply point of a drawing, as `review` does.

    What is told of all of them alike, because it is about what they have in common, is told with the first.
    """
    found: list[list[Finding]] = []
    idle = set(range(len(parts[0][0].accept)))
    known: set[tuple[object, ...]] = set()
    for system, ratings in parts:
        told, unused = applied(system, [_in_place(system, each) for each in _told(system, ratings)])
        idle &= set(unused)
        found.append([each for each in told if not found or _alike(each) not in known])
        if len(parts) > 1:
            known.update(map(_alike, told))
    found[0] += unmatched(parts[0][0], sorted(idle))
    return tuple(tuple(sorted(each, key=in_order)) for each in found)


def _told(system: System, ratings: Ratings) -> Iterator[Finding]:
    """Yield what is told of a system, at places of the spec of its supply point."""
    findings = [*assumed(system.assumptions)]
    walked = system.one_of_each()
    for code in sorted(RULES):
        check = RULES[code].check
        if check is not None and applies(code, system):
            found = list(check(walked, ratings))
            findings += found if RULES[code].once or not system.copies else told_of_all(system, found)
    return (_on_assumed(system, finding) for finding in findings)


def _in_place(system: System, finding: Finding) -> Finding:
    """Return a finding at its place in the whole spec: rules speak of `supply` and `earthing` of their supply point."""
    point = system.point
    if not point.name:
        return finding
    device = system.earthing_key if finding.device == "earthing" else finding.device
    also = tuple((point.place(at), word) for at, word in finding.also)
    return replace(finding, at=point.place(finding.at), device=device, also=also)


def _alike(finding: Finding) -> tuple[object, ...]:
    return finding.code, finding.at, finding.message, finding.remedy


def _on_assumed(system: System, finding: Finding) -> Finding:
    """Point at what the spec can change where a finding is about a device that the spec does not mention."""
    device = system.devices.get(finding.device)
    supply_is_asked = finding.at[:1] == ("supply",)
    if device is None or not device.assumed or finding.severity is Severity.ASSUMPTION or supply_is_asked:
        return finding
    remedy = phrase("give the `circuit` in the spec, the device is assumed; then {remedy}", remedy=finding.remedy)
    return replace(finding, at=device.at, remedy=remedy)


def in_order(finding: Finding) -> tuple[int, str, list[tuple[bool, int, str]]]:
    """Return what findings are sorted by: severity, code and path; list indices sort as numbers."""
    return -finding.severity, finding.code, _path_in_order(finding.at)


@lru_cache(maxsize=1024)  # findings of equal inverters have one place of the spec
def _path_in_order(path: SpecPath) -> list[tuple[bool, int, str]]:
    return [(True, part, "") if isinstance(part, int) else (False, 0, part) for part in path]
