"""What came of a spec as plain data, in the form that `sld.report.schema` describes."""

from __future__ import annotations

from dataclasses import asdict
from pathlib import Path
from typing import Any

from sld import run
from sld.cli.outcome import Outcome
from sld.finding import tally
from sld.spec import Source, Unusable
from sld.spec.quote import as_json, json_number

__all__ = ["document_of", "document_of_fault"]


def document_of(path: Path, result: run.Checked | Unusable) -> dict[str, Any]:
    """Return what came of a spec that was read."""
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


def document_of_fault(outcome: Outcome) -> dict[str, Any]:
    """Return what came of a spec whose check was ended early."""
    fault = outcome.failure.removeprefix(f"{outcome.path}: ")
    return {"spec": str(outcome.path), "usable": False, "findings": [], "fault": fault}


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
