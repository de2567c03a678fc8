"""`sld check`: read, rate and review specs; write nothing."""

from __future__ import annotations

import json
from enum import StrEnum
from functools import partial
from typing import Annotated, Any

import typer

from sld import __version__
from sld.cli.batch import deal
from sld.cli.bounds import Bounds
from sld.cli.document import document_of, document_of_fault
from sld.cli.given import Given
from sld.cli.options import MEGABYTES, SECONDS, AllowOutside, Cluster, Jobs, Megabytes, Run, Seconds, Specs, Summary
from sld.cli.outcome import Outcome, Totals
from sld.cli.specs import FailOn, checked, found, outcome_of, tell
from sld.cli.terminal import line, show, show_json
from sld.frozen import replace
from sld.spec.quote import counted
from sld.spec.visible import as_json_text

__all__ = ["check"]


class Format(StrEnum):
    """How findings are written: for a person; as JSON, whole or a line a spec; for editors; for build servers."""

    TEXT = "text"
    JSON = "json"
    JSONL = "jsonl"
    SARIF = "sarif"
    JUNIT = "junit"


def check(
    spec: Specs,
    format: Annotated[Format, typer.Option("--format", help="How findings are written.")] = Format.TEXT,
    fail_on: Annotated[FailOn, typer.Option(help="Least severity for exit code 1.")] = FailOn.NON_COMPLIANCE,
    allow_outside: AllowOutside = False,
    jobs: Jobs = None,
    cluster: Cluster = None,
    seconds: Seconds = SECONDS,
    megabytes: Megabytes = MEGABYTES,
    summary: Summary = None,
) -> None:
    """Check specs and print what is found; no file is written but a summary.

    Example: sld check specs/village-hall.yaml
    """
    totals = Totals()
    documents: list[dict[str, Any]] = []

    def keep(outcome: Outcome) -> None:
        if format is Format.TEXT:
            return
        document = outcome.document or document_of_fault(outcome)
        if format is Format.JSONL:
            show(f"{json.dumps(document, allow_nan=False)}\n")
        else:
            documents.append(document)

    work = partial(_check, format=format, fail_on=fail_on, allow_outside=allow_outside)
    how = Run(jobs, Bounds(seconds, megabytes), summary, cluster)
    code = deal(work, found(spec, totals), totals, how, keep)
    _show(documents, format, fail_on)
    raise typer.Exit(code)


def _show(documents: list[dict[str, Any]], format: Format, fail_on: FailOn) -> None:
    """Write what came of all specs, in a form that is one whole."""
    if format is Format.JSON:
        from sld.report.schema import VERSION

        show_json({"schema": VERSION, "specs": documents})
    elif format is Format.SARIF:
        from sld.door.codes import registered
        from sld.report.sarif import sarif

        show_json(sarif(documents, {each.code: each for each in registered()}, __version__))
    elif format is Format.JUNIT:
        from sld.report.junit import junit

        show(junit(documents, fail_on.includes))


def _check(given: Given, *, format: Format, fail_on: FailOn, allow_outside: bool) -> Outcome:
    """Check one spec."""
    result = checked(given.path, allow_outside)
    outcome = outcome_of(given.path, result, fail_on)
    if format is not Format.TEXT:
        document = document_of(given.path, result)
        as_json_text(document)  # what JSON cannot say is a fault at this spec alone
        return replace(outcome, document=document)
    tell(result.source, result.findings, devices=getattr(result, "devices", {}))
    line(f"{given.path}: {counted(result.findings)}")
    return outcome
