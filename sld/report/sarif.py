"""SARIF 2.1.0 (OASIS, with errata 01), which editors and code hosts show beside the lines of a file.

Severities: an error, a danger and a non-compliance are an `error`, as each makes the exit code other than 0 by default;
advice is a `note`; an assumption is of the kind `informational`. What the spec accepts is suppressed, with its reason.
"""

from __future__ import annotations

import hashlib
import json
from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from pathlib import Path
from typing import Any
from urllib.parse import quote

from sld.finding import Rule

__all__ = ["sarif"]

_SCHEMA = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"
_LEVELS = {"error": "error", "danger": "error", "non-compliance": "error", "advice": "note", "assumption": "none"}

_Data = dict[str, Any]


def sarif(specs: Sequence[Mapping[str, Any]], rules: Mapping[str, Rule], version: str) -> _Data:
    """Return the log of a check. specs: what came of each, in the JSON form. rules: by code, those told of at least."""
    findings = [finding for spec in specs for finding in spec["findings"]]
    codes = sorted({each["code"] for each in findings})
    faults = [spec for spec in specs if "fault" in spec]
    return {
        "$schema": _SCHEMA,
        "version": "2.1.0",
        "runs": [
            {
                "tool": {
                    "driver": {"name": "sld", "version": version, "rules": [_rule(rules[code]) for code in codes]}
                },
                "columnKind": "unicodeCodePoints",
                "artifacts": [{"location": {"uri": _uri(file)}} for file in _files(specs)],
                "invocations": [
                    {
                        "executionSuccessful": not faults,
                        "toolExecutionNotifications": [_notification(each) for each in faults],
                    }
                ],
                "results": _results(findings, codes),
            }
        ],
    }


def _files(specs: Iterable[Mapping[str, Any]]) -> list[str]:
    """Return each file of a run once, in their order."""
    return list(
        dict.fromkeys(file for spec in specs for file in (spec["spec"], *(f["file"] for f in spec["findings"])))
    )


def _rule(rule: Rule) -> _Data:
    title = str(rule.title)
    return {
        "id": rule.code,
        "shortDescription": {"text": title},
        "fullDescription": {"text": title},
        "help": {"text": rule.explanation or title},
    }


def _results(findings: Iterable[Mapping[str, Any]], codes: list[str]) -> list[_Data]:
    alike: Counter[str] = Counter()
    results = []
    for each in findings:
        known = json.dumps([each["code"], each["file"], each["path"], each["device"]])
        alike[known] += 1
        results.append(_result(each, codes.index(each["code"]), f"{known} {alike[known]}"))
    return results


def _result(finding: Mapping[str, Any], rule_index: int, known_by: str) -> _Data:
    """Return a finding. known_by: what stays the same while lines are added above it."""
    level = _LEVELS[finding["severity"]]
    accepted = finding["accepted"]
    result: _Data = {
        "ruleId": finding["code"],
        "ruleIndex": rule_index,
        "kind": "informational" if level == "none" else "fail",
        "level": level,
        "message": {"text": _sentence(finding["message"], finding["remedy"])},
        "locations": [_location(finding, finding["device"])],
        "partialFingerprints": {"codeAndPath/v1": hashlib.sha256(known_by.encode()).hexdigest()[:32]},
        "properties": {"severity": finding["severity"]},
    }
    if finding["also"]:
        result["relatedLocations"] = [
            {**_location(each), "message": {"text": each["word"]}} for each in finding["also"]
        ]
    if accepted:
        reason = f"{accepted['reason']} ({accepted['role']}, {accepted['date']})"
        result["suppressions"] = [{"kind": "inSource", "status": "accepted", "justification": reason}]
    return result


def _sentence(message: str, remedy: str) -> str:
    return f"{message}. What to do: {remedy}" if remedy else message


def _location(place: Mapping[str, Any], device: str = "") -> _Data:
    region = {"startLine": place["line"], "startColumn": place["column"], "endColumn": place["end_column"]}
    location: _Data = {"physicalLocation": {"artifactLocation": {"uri": _uri(place["file"])}, "region": region}}
    if device:
        location["logicalLocations"] = [{"fullyQualifiedName": device}]
    return location


def _notification(spec: Mapping[str, Any]) -> _Data:
    return {
        "level": "error",
        "message": {"text": spec["fault"]},
        "locations": [{"physicalLocation": {"artifactLocation": {"uri": _uri(spec["spec"])}}}],
    }


def _uri(file: str) -> str:
    """Return the reference of a file (RFC 3986): a relative one as it is, an absolute one with its scheme."""
    path = Path(file)
    return path.as_uri() if path.is_absolute() else quote(path.as_posix().encode("utf-8", "surrogateescape"))
