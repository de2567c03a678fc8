"""Accepted deviations: which findings an entry under `accept` means."""

from __future__ import annotations

from collections.abc import Sequence

from sld.finding import Acceptance, Finding
from sld.frozen import replace
from sld.model.system import System
from sld.rules.naming import designation_of
from sld.spec.blocks.acceptance import Accept
from sld.spec.unusable_value import dotted

__all__ = ["applied", "matches"]


def matches(system: System, entry: Accept, finding: Finding) -> bool:
    """Return whether an entry means a finding: the same code, and a place that holds it or is its device."""
    if entry.code != finding.code:
        return False
    place = dotted(finding.at)
    within = place == entry.at or place.startswith((f"{entry.at}.", f"{entry.at}["))
    return within or (bool(finding.device) and entry.at in (finding.device, designation_of(system, finding.device)))


def applied(system: System, findings: Sequence[Finding]) -> tuple[list[Finding], list[int]]:
    """Return the findings with their acceptances, and the places under `accept` of the entries that mean none."""
    used: set[int] = set()
    found = []
    for finding in findings:
        meant = [place for place, entry in enumerate(system.accept) if matches(system, entry, finding)]
        used.update(meant)
        if meant:
            entry = system.accept[meant[0]]
            finding = replace(finding, accepted=Acceptance(entry.reason, entry.role, entry.date))
        found.append(finding)
    return found, [place for place in range(len(system.accept)) if place not in used]
