"""What `check` and `draw` share: finding and reading each spec, telling what is wrong with it."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from enum import StrEnum
from pathlib import Path
from types import MappingProxyType
from typing import TYPE_CHECKING

from sld import run
from sld.cli.given import Given, Search
from sld.cli.outcome import CLEAN, FINDINGS, UNUSABLE, Outcome, State, Totals
from sld.cli.terminal import line, say, show_finding
from sld.finding import Finding, Severity, SpecPath, Tally, tally
from sld.frozen import replace
from sld.spec import Source, Unusable

if TYPE_CHECKING:
    from sld.model.device import Device

__all__ = ["FailOn", "checked", "found", "outcome_of", "reviewed", "tell"]

NO_DEVICES: Mapping[str, Device] = MappingProxyType({})


class FailOn(StrEnum):
    """The least severity that makes the exit code 1."""

    DANGER = "danger"
    NON_COMPLIANCE = "non-compliance"
    ADVICE = "advice"
    NEVER = "never"

    def includes(self, severity: str) -> bool:
        """Return whether a severity, by its word, is at or above this one; of an assumption none is."""
        words = [each.value for each in FailOn]
        return severity in words[: words.index(self.value) + 1] and self is not FailOn.NEVER

    def reached(self, counts: Tally) -> bool:
        """Return whether an open finding is at or above this severity."""
        at = (counts.danger, counts.non_compliance, counts.advice)
        return self is not FailOn.NEVER and any(at[: list(FailOn).index(self) + 1])


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
    devices: Mapping[str, Device] = NO_DEVICES,
) -> None:
    """Write findings, one block each; accepted ones are told in one line. chatter: on standard error.

    assumptions: those too. devices: by key, to name the one that an assumption is about.

    Equal inverters of one block of the spec give the same finding each; it is told once, with how often it holds.
    """
    counts = Counter((each.code, each.at, str(each.remedy)) for each in findings)
    seen: set[tuple[str, SpecPath, str]] = set()
    for each in findings:
        same = (each.code, each.at, str(each.remedy))
        if same in seen or (each.severity is Severity.ASSUMPTION and not assumptions):
            continue
        seen.add(same)
        each = _named(each, devices)
        if counts[same] > 1:
            each = replace(each, message=f"{each.message}; and {counts[same] - 1} more like it")
        if each.accepted is not None:
            told = f"accepted by {each.accepted.role} on {each.accepted.date}: {each.accepted.reason}"
            line(f"{source.locate(each.at)}: {each.code} {each.message} ({told})", chatter)
        else:
            show_finding(source, each, chatter)
        line(chatter=chatter)


def _named(finding: Finding, devices: Mapping[str, Device]) -> Finding:
    """Return an assumption with the designation of its device; on the sheets equal ones are one, with a list."""
    device = devices.get(finding.device)
    if device is None or finding.severity is not Severity.ASSUMPTION:
        return finding
    return replace(finding, message=f"{finding.message} for {device.designation}")


def outcome_of(path: Path, result: run.Checked | Unusable, fail_on: FailOn) -> Outcome:
    """Return what came of a spec that was read."""
    if isinstance(result, run.Checked):
        told = sorted({each.code for each in result.findings if _is_open(each)})
        outcome = reviewed(path, tally(result.findings), fail_on)
        return replace(outcome, title=str(result.project.title), codes=tuple(told))
    first, *others = result.findings
    more = f"; and {len(others)} more" if others else ""
    failure = f"{result.place(first)}: {first.code} {first.message}{more}"
    return Outcome(path, State.UNUSABLE, UNUSABLE, failure=failure)


def _is_open(finding: Finding) -> bool:
    return finding.accepted is None and finding.severity is not Severity.ASSUMPTION


def reviewed(path: Path, counts: Tally, fail_on: FailOn) -> Outcome:
    """Return what came of a spec with so many findings.

    It has findings from the severity on that makes the exit code 1; where none does, from non-compliance on.
    """
    least = FailOn.NON_COMPLIANCE if fail_on is FailOn.NEVER else fail_on
    state = State.FINDINGS if least.reached(counts) else State.CLEAN
    return Outcome(path, state, FINDINGS if fail_on.reached(counts) else CLEAN, counts)


def found(words: list[Path], totals: Totals, out: Path | None = None) -> list[Given]:
    """Return the specs that were given, and tell what was not found. out: the folder that is written to."""
    search = Search(out)
    specs = search.of(words)
    for text in (*search.left_out, *search.problems):
        say(text)
    if search.problems:
        totals.code = UNUSABLE
    return specs
