"""A finding as text with the line of the spec it is about, and as plain data for machines.

The text of one finding, here for an unknown key:

    roof.yaml:41:5: error SP30 unknown key `lable` in `loads.main`
       40 |   main:
       41 |     lable: "Main"
          |     ^^^^^
       do: write `label`
       why: sld explain SP30
"""

from __future__ import annotations

import unicodedata
from collections.abc import Iterable
from math import isfinite
from typing import Any

from sld.finding import Finding, Rule, Severity, SpecPath, tally
from sld.spec.source import Source, is_pinned
from sld.spec.span import Span
from sld.spec.visible import visible

__all__ = ["as_json", "counted", "json_number", "quote", "severity_word", "short"]

_WIDEST_LINE = 100
_KEPT_BEFORE = 30
_CUT = "…"
_RESET = "\x1b[0m"
_BOLD = "\x1b[1m"
_FAINT = "\x1b[2m"
_COLOURS = {
    Severity.ASSUMPTION: "\x1b[36m",
    Severity.ADVICE: "\x1b[34m",
    Severity.NON_COMPLIANCE: "\x1b[33m",
    Severity.DANGER: "\x1b[31m",
}


def severity_word(told: Finding | Rule) -> str:
    """Return the word for how bad it is; input that cannot be used is an `error`."""
    return "error" if told.code.startswith("SP") else told.severity.word


def counted(findings: Iterable[Finding]) -> str:
    """Write the count of findings: `1 danger, 2 advice, 3 assumptions`, or of errors; `nothing found` without any."""
    found = tuple(findings)
    errors_count = sum(severity_word(each) == "error" for each in found)
    if errors_count:
        return f"{errors_count} error"
    return str(tally(found)) if found else "nothing found"


def _paint(text: str, style: str, colour: bool) -> str:
    return f"{style}{text}{_RESET}" if colour and text else text


def _blank(text: str) -> str:
    """Return white space as wide as a text on a terminal; tabs stay tabs."""
    blank = ""
    for sign in text:
        wide = unicodedata.east_asian_width(sign) in ("W", "F")
        blank += "\t" if sign == "\t" else "" if unicodedata.combining(sign) else "  " if wide else " "
    return blank


def _cut(line: str, column: int, width: int) -> tuple[str, int, int]:
    """Return a long line cut around a span, with the span's new column (from 0) and width."""
    if len(line) <= _WIDEST_LINE:
        return line, column, width
    start = max(0, min(column - _KEPT_BEFORE, len(line) - _WIDEST_LINE))
    end = start + _WIDEST_LINE
    before, after = _CUT if start else "", _CUT if end < len(line) else ""
    return before + line[start:end] + after, column - start + len(before), min(width, max(1, end - column))


def _shown(line: str, column: int, width: int) -> tuple[str, int, int]:
    """Return a line made visible, with the new column (from 0) and width of a span."""
    before, under = visible(line[:column]), visible(line[column : column + width])
    return before + under + visible(line[column + width :]), len(before), max(len(under), 1)


def _excerpt(source: Source, span: Span, style: str, colour: bool) -> list[str]:
    """Return the line before, the line itself and the carets under the span."""
    lines = source.lines(span.file)
    if not 0 < span.line <= len(lines) or (not lines[span.line - 1].strip() and span.width == 1):
        return []
    margin = max(5, len(str(span.line)) + 1)

    def numbered(number: int | str, text: str) -> str:
        return f"{_paint(f'{number:>{margin}} |', _FAINT, colour)} {text}"

    shown = []
    if span.line > 1 and lines[span.line - 2].strip():
        before = visible(_cut(lines[span.line - 2], 0, 1)[0])
        shown.append(numbered(span.line - 1, before))
    line, column, width = _cut(*_shown(lines[span.line - 1], span.column - 1, span.width))
    under = line[column : column + width] or " "
    carets = _paint("^" * max(1, len(_blank(under).expandtabs(1))), style, colour)
    return [*shown, numbered(span.line, line), numbered("", _blank(line[:column]) + carets)]


def _remark(word: str, text: str, colour: bool) -> list[str]:
    return [f"   {_paint(word + ':', _BOLD, colour)} {visible(text)}"] if text else []


def short(source: Source, finding: Finding) -> str:
    """Return a finding on one line: `path:line:column: severity CODE message`."""
    span = source.locate(finding.at, finding.on_key)
    return visible(f"{span}: {severity_word(finding)} {finding.code} {finding.message}")


def quote(source: Source, finding: Finding, colour: bool = False) -> str:
    """Return the text of a finding, without a line break at its end. colour: with the codes of an ANSI terminal."""
    span = source.locate(finding.at, finding.on_key)
    style = _BOLD + _COLOURS[finding.severity]
    place = _paint(visible(str(span)), _BOLD, colour)
    severity = _paint(f"{severity_word(finding)} {finding.code}", style, colour)
    shown = [f"{place}: {severity} {visible(str(finding.message))}"]
    if finding.at:
        shown += _excerpt(source, span, style, colour)
    for path, word in finding.also:
        shown += _remark("also", f"{source.locate(path)}: {word}", colour)
    shown += _remark("do", str(finding.remedy), colour)
    if finding.accepted:
        reason = finding.accepted
        shown += _remark("accepted", f"{reason.reason} ({reason.role}, {reason.date})", colour)
    shown += _remark("why", f"sld explain {finding.code}", colour)
    return "\n".join(shown)


def _place(source: Source, path: SpecPath, on_key: bool = False) -> dict[str, Any]:
    span = source.locate(path, on_key)
    return {
        "file": span.file,
        "line": span.line,
        "column": span.column,
        "end_column": span.column + span.width,
        "path": [] if is_pinned(path) else list(path),
    }


def json_number(value: float) -> float | None:
    """Return a number as JSON can say it: what has no bound, or is no number, is null."""
    return value if isfinite(value) else None


def as_json(source: Source, finding: Finding) -> dict[str, Any]:
    """Return a finding as plain data. Keys are only ever added; lines and columns count from 1, the end excluded."""
    accepted = finding.accepted
    return {
        "code": finding.code,
        "severity": severity_word(finding),
        "message": str(finding.message),
        "remedy": str(finding.remedy),
        "device": finding.device,
        **_place(source, finding.at, finding.on_key),
        "also": [{**_place(source, path), "word": str(word)} for path, word in finding.also],
        "compared": [
            {"symbol": str(rating.symbol), "value": json_number(rating.value), "unit": rating.unit}
            for rating in finding.compared
        ],
        "accepted": accepted and {"reason": accepted.reason, "role": accepted.role, "date": accepted.date},
    }
