"""The summary of a run: a file with one JSON object a line, one a spec, in the order of the specs."""

from __future__ import annotations

import json
from dataclasses import asdict, dataclass, field
from pathlib import Path

from sld import files
from sld.cli.outcome import Outcome
from sld.finding import Tally

__all__ = ["HELP", "Summary", "not_replaceable"]

HELP = "File for a summary: a line of JSON a spec."
_FIRST_KEYS = ("spec", "state")


@dataclass(slots=True)
class Summary:
    """The lines of a summary."""

    lines: list[str] = field(default_factory=list)

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
        self.lines.append(json.dumps(line))

    def written(self, path: Path) -> str:
        """Write the file, whole or not at all; return what is to be told where it cannot be written, else nothing."""
        try:
            files.write_whole(path, "".join(f"{line}\n" for line in self.lines).encode())
        except OSError as problem:
            return f"{path}: cannot write the summary: {problem.strerror or problem}"
        return ""


def not_replaceable(path: Path) -> str:
    """Return why a file is not replaced by a summary; nothing where none is there, or an earlier one."""
    try:
        with path.open("rb") as stream:
            first = stream.readline(100_000)
    except FileNotFoundError:
        return ""
    except OSError as problem:
        return problem.strerror or str(problem)
    try:
        earlier = not first or tuple(json.loads(first))[:2] == _FIRST_KEYS
    except (ValueError, TypeError, RecursionError):
        earlier = False
    return "" if earlier else "is there and not a summary"
