"""The committed list of mutants that may survive, each with its reason, and how a run compares with it."""

from __future__ import annotations

import csv
from collections.abc import Iterable
from pathlib import Path

__all__ = ["LIST", "compared", "read_list"]

LIST = Path(__file__).with_name("survivors.csv")

Key = tuple[str, str, str]
"""File, function and change; no line, so that the list outlives an edit elsewhere in the file."""


def read_list(path: Path = LIST) -> dict[Key, str]:
    """Return the reason of each mutant that may survive. Raises ValueError for one without reason or listed twice."""
    reasons: dict[Key, str] = {}
    with path.open(encoding="utf-8", newline="") as file:
        for row in csv.DictReader(file):
            key = row["file"], row["function"], row["change"]
            if not row["reason"].strip() or key in reasons:
                raise ValueError(f"{path.name}: {key} has no reason or is listed twice")
            reasons[key] = row["reason"]
    return reasons


def compared(reasons: dict[Key, str], survived: Iterable[Key], tried: Iterable[str]) -> tuple[list[Key], list[Key]]:
    """Return the survivors that are not listed, and the listed ones of the files tried that do not survive."""
    found = list(survived)
    files = set(tried)
    idle = [key for key in reasons if key[0] in files and key not in set(found)]
    return [key for key in found if key not in reasons], idle
