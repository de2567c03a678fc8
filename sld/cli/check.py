"""`sld check`: read, rate and review specs; write nothing."""

from __future__ import annotations

from dataclasses import asdict
from enum import StrEnum
from pathlib import Path
from typing import Annotated, Any

import typer

from sld import run
from sld.cli.faults import Faults
from sld.cli.specs import FailOn, checked, exit_code, tell
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
    spec: Annotated[list[Path], typer.Argument(help="Spec files (YAML or JSON).", show_default=False)],
    format: Annotated[Format, typer.Option("--format", help="How findings are written.")] = Format.TEXT,
    fail_on: Annotated[FailOn, typer.Option(help="Least severity for exit code 1.")] = FailOn.NON_COMPLIANCE,
    allow_outside: Annotated[bool, typer.Option(help="Allow types files outside the spec's folder.")] = False,
) -> None:
    """Check specs and print what is found; no file is written.

    Example: sld check specs/village-hall.yaml
    """
    results: list[run.Checked | Unusable] = []
    documents: list[dict[str, Any]] = []
    faults = Faults()
    for path in spec:
        with faults.at(path):
            result = checked(path, allow_outside)
            results.append(result)
            if format is Format.JSON:
                document = _document(path, result)
                as_json_text(document)  # what JSON cannot say is a fault at this spec alone
                documents.append(document)
            else:
                tell(result.source, result.findings, system=getattr(result, "system", None))
                line(f"{path}: {counted(result.findings)}")
        if path in faults.specs and format is Format.JSON:
            documents.append({"spec": str(path), "usable": False, "findings": [], "fault": faults.specs[path]})
    if format is Format.JSON:
        show_json({"schema": 1, "specs": documents})
    raise typer.Exit(exit_code(results, fail_on, faults))


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
    devices = result.system.devices
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
        for key, rating in result.ratings
    ]
