"""The summary of a run: a file with one JSON object a line, one a spec, in the order of the specs."""

from __future__ import annotations

import json
from dataclasses import asdict
from pathlib import Path

from sld import files
from sld.cli.outcome import Outcome
from sld.finding import Tally

__all__ = ["Summary"]

_FIRST_KEYS = ("spec", "state")


class Summary:
    """The lines of a summary."""

    name = "summary"

    def __init__(self, path: Path) -> None:
        """Begin the file. Raises OSError."""
        self._file = files.Growing(path)

    @staticmethod
    def is_earlier(head: bytes) -> bool:
        """Return whether a file that begins so is a summary."""
        try:
            return not head or tuple(json.loads(head.splitlines()[0]))[:2] == _FIRST_KEYS
        except (ValueError, TypeError, RecursionError):
            return False

    def add(self, outcome: Outcome) -> None:
        """Add the line of a spec. Findings are counted by severity, null where the spec could not be reviewed."""
        counts = asdict(outcome.counts) if outcome.counts else dict.fromkeys(asdict(Tally()))
        line = {
            "spec": str(outcome.path),
            "state": outcome.state.value,
            **counts,
            "sheets": outcome.sheets,
            "seconds": round(outcome.taken_s, 3),
            "failure": outcome.failure or None,
        }
        self._file.add(f"{json.dumps(line)}\n".encode())

    def finish(self, closing: str) -> None:
        """Put the file into its place. Raises OSError."""
        self._file.finish()

    def drop(self) -> None:
        """Leave its place as it was."""
        self._file.drop()
