"""What the flags mean, what was accepted, and what was assumed."""

from __future__ import annotations

import re
from collections.abc import Sequence

from sld.finding import Finding, Severity
from sld.layout.diagram.flags import Flag
from sld.layout.diagram.ranges import joined
from sld.model.system import System
from sld.sheet.listings.flag import FINDINGS, FlagList, FlagRow
from sld.sheet.listings.text import TextList
from sld.steps import Ratings

__all__ = ["accepted_block", "assumptions_block", "count_in_words", "findings_block", "on_paper"]

_MARKED = re.compile("`([^`]*)`")


def on_paper(text: str) -> str:
    """Return a text with the words of the spec, which the console sets off by marks, as plain words."""
    return _MARKED.sub(lambda found: found[1].replace("_", " "), text)


def count_in_words(findings: Sequence[Finding]) -> str:
    """Return the count of open findings by severity: `1 danger, 2 advice`; assumptions are not counted."""
    open_ones = [finding for finding in findings if finding.accepted is None]
    parts = []
    for severity in (Severity.DANGER, Severity.NON_COMPLIANCE, Severity.ADVICE):
        count = sum(finding.severity is severity for finding in open_ones)
        if count:
            parts.append(f"{count} {severity.word}")
    accepted = sum(finding.accepted is not None for finding in findings)
    if accepted:
        parts.append(f"{accepted} accepted")
    return ", ".join(parts) or "none"


def findings_block(system: System, flags: Sequence[Flag]) -> FlagList | None:
    """Return the list of open findings behind their numbers, or None where there is none."""
    rows = tuple(_row(system, flag) for flag in flags if flag.findings[0].accepted is None)
    return FlagList(FINDINGS, rows) if rows else None


def accepted_block(system: System, flags: Sequence[Flag]) -> FlagList | None:
    """Return the accepted findings with reason, role and date, or None."""
    rows = []
    for flag in flags:
        accepted = flag.findings[0].accepted
        if accepted is not None:
            row = _row(system, flag)
            told = f"accepted by {accepted.role} on {accepted.date}: {accepted.reason}"
            rows.append(FlagRow(flag.number, (row.paragraphs[0], told)))
    return FlagList("Accepted deviations", tuple(rows)) if rows else None


def _row(system: System, flag: Flag) -> FlagRow:
    first = flag.findings[0]
    message, remedy = on_paper(str(first.message)), on_paper(str(first.remedy))
    others = [system.devices[f.device].designation for f in flag.findings[1:] if f.device in system.devices]
    likewise = f"; likewise {joined(others)}" if others else ""
    return FlagRow(flag.number, (f"{first.code} {first.severity.word}: {message}{likewise}", f"Remedy: {remedy}"))


def assumptions_block(system: System, ratings: Ratings) -> TextList | None:
    """Return everything that was assumed, each once: what the model added and what a rating needed."""
    texts: dict[str, list[str]] = {}
    for finding in system.assumptions:
        devices = texts.setdefault(on_paper(str(finding.message)).removeprefix("assumed: "), [])
        if finding.device in system.devices:
            devices.append(system.devices[finding.device].designation)
    for key, rating in ratings:
        for text in rating.assumptions:
            symbols = texts.setdefault(str(text), [])
            if str(rating.symbol) not in symbols and key not in symbols:
                symbols.append(str(rating.symbol))
    paragraphs = [f"{text} ({joined(symbols)})" if symbols else text for text, symbols in texts.items()]
    return TextList("Assumptions", tuple(paragraphs), numbered=True) if paragraphs else None
