"""`sld check`: read, rate and review specs; write nothing."""

from __future__ import annotations

from dataclasses import asdict, replace
from enum import StrEnum
from functools import partial
from pathlib import Path
from typing import Annotated, Any

import typer

from sld import run
from sld.cli.batch import deal
from sld.cli.bounds import Bounds
from sld.cli.given import Given
from sld.cli.options import MEGABYTES, SECONDS, AllowOutside, Cluster, Jobs, Megabytes, Run, Seconds, Specs, Summary
from sld.cli.outcome import Outcome, Totals
from sld.cli.specs import FailOn, checked, found, outcome_of, tell
from sld.cli.terminal import line, show_json
from sld.finding import tally
from sld.spec import Source, Unusable
from sld.spec.quote import as_json, counted, json_number
from sld.spec.visible import as_json_text

__all__ = ["check"]


class Format(StrEnum):
    """How findings are written."""

    TEXT = "text"
    JSON = "json"


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
        if format is Format.JSON:
            documents.append(outcome.document or _of_fault(outcome))

    work = partial(_check, format=format, fail_on=fail_on, allow_outside=allow_outside)
    how = Run(jobs, Bounds(seconds, megabytes), summary, cluster)
    code = deal(work, found(spec, totals), totals, how, keep)
    if format is Format.JSON:
        show_json({"schema": 1, "specs": documents})
    raise typer.Exit(code)


def _check(given: Given, *, format: Format, fail_on: FailOn, allow_outside: bool) -> Outcome:
    """Check one spec."""
    result = checked(given.path, allow_outside)
    outcome = outcome_of(given.path, result, fail_on)
    if format is Format.JSON:
        document = _document(given.path, result)
        as_json_text(document)  # what JSON cannot say is a fault at this spec alone
        return replace(outcome, document=document)
    tell(result.source, result.findings, devices=getattr(result, "devices", {}))
    line(f"{given.path}: {counted(result.findings)}")
    return outcome


def _of_fault(outcome: Outcome) -> dict[str, Any]:
    fault = outcome.failure.removeprefix(f"{outcome.path}: ")
    return {"spec": str(outcome.path), "usable": False, "findings": [], "fault": fault}


def _document(path: Path, result: run.Checked | Unusable) -> dict[str, Any]:
    source: Source = result.source
    document: dict[str, Any] = {
        "spec": str(path),
        "usable": isinstance(result, run.Checked),
        "findings": [as_json(source, each) for each in result.findings],
    }
    if isinstance(result, run.Checked):
        document["counts"] = asdict(tally(result.findings))
        document["ratings"] = _ratings(result)
    return document


def _ratings(result: run.Checked) -> list[dict[str, Any]]:
    """Return every rating with its reason, one after the other."""
    devices = result.devices
    return [
        {
            "device": devices[key].designation if key in devices else key,
            "key": key,
            "symbol": str(rating.symbol),
            "value": json_number(rating.value),
            "unit": rating.unit,
            "formula": str(rating.formula),
            "inputs": [str(given) for given in rating.given],
            "clause": str(rating.clause),
            "table_row": str(rating.table_row),
            "assumptions": [str(text) for text in rating.assumptions],
        }
        for part in result.parts
        for key, rating in ((key or result.whole(part), rating) for key, rating in part.ratings)
    ]
