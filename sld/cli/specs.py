"""What `check` and `draw` share: reading each spec, telling what is wrong with it, and the exit code of the lot."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from dataclasses import replace
from enum import StrEnum
from pathlib import Path

from sld import run
from sld.cli.faults import Faults
from sld.cli.terminal import line, show_finding
from sld.finding import Finding, Severity, SpecPath
from sld.model.system import System
from sld.spec import Source, Unusable

__all__ = ["UNUSABLE", "FailOn", "checked", "exit_code", "tell"]

CLEAN, FINDINGS, UNUSABLE, OUR_FAULT = 0, 1, 2, 3


class FailOn(StrEnum):
    """The least severity that makes the exit code 1."""

    DANGER = "danger"
    NON_COMPLIANCE = "non-compliance"
    ADVICE = "advice"
    NEVER = "never"

    def reached(self, findings: tuple[Finding, ...]) -> bool:
        """Return whether an open finding is at or above this severity."""
        if self is FailOn.NEVER:
            return False
        least = next(severity for severity in Severity if severity.word == self.value)
        return any(each.severity >= least for each in findings if each.accepted is None)


def checked(path: Path, allow_outside: bool) -> run.Checked | Unusable:
    """Return what came of a spec, or why it cannot be used."""
    try:
        return run.check(path, allow_outside=allow_outside)
    except Unusable as unusable:
        return unusable


def tell(
    source: Source,
    findings: tuple[Finding, ...],
    chatter: bool = False,
    assumptions: bool = True,
    system: System | None = None,
) -> None:
    """Write findings, one block each; accepted ones are told in one line. chatter: on standard error.

    assumptions: those too. system: to name the device that an assumption is about.

    Equal inverters of one block of the spec give the same finding each; it is told once, with how often it holds.
    """
    counts = Counter((each.code, each.at, str(each.remedy)) for each in findings)
    seen: set[tuple[str, SpecPath, str]] = set()
    for each in findings:
        same = (each.code, each.at, str(each.remedy))
        if same in seen or (each.severity is Severity.ASSUMPTION and not assumptions):
            continue
        seen.add(same)
        each = _named(each, system)
        if counts[same] > 1:
            each = replace(each, message=f"{each.message}; and {counts[same] - 1} more like it")
        if each.accepted is not None:
            told = f"accepted by {each.accepted.role} on {each.accepted.date}: {each.accepted.reason}"
            line(f"{source.locate(each.at)}: {each.code} {each.message} ({told})", chatter)
        else:
            show_finding(source, each, chatter)
        line(chatter=chatter)


def _named(finding: Finding, system: System | None) -> Finding:
    """Return an assumption with the designation of its device; on the sheets equal ones are one, with a list."""
    device = system.devices.get(finding.device) if system else None
    if device is None or finding.severity is not Severity.ASSUMPTION:
        return finding
    return replace(finding, message=f"{finding.message} for {device.designation}")


def exit_code(results: Iterable[run.Checked | Unusable], fail_on: FailOn, faults: Faults) -> int:
    """Return the exit code of several specs: that of the worst."""
    if faults.specs:
        return OUR_FAULT
    known = tuple(results)
    if any(isinstance(result, Unusable) for result in known):
        return UNUSABLE
    found = any(fail_on.reached(result.findings) for result in known if isinstance(result, run.Checked))
    return FINDINGS if found else CLEAN
