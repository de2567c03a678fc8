"""What came of each spec of a run: its state and counts, and what is said of all of them at the end."""

from __future__ import annotations

from collections import Counter
from dataclasses import field
from enum import StrEnum
from pathlib import Path
from typing import Any

from sld.finding import Tally
from sld.frozen import dataclass

__all__ = ["CLEAN", "FINDINGS", "OUR_FAULT", "UNUSABLE", "Outcome", "State", "Totals"]

CLEAN, FINDINGS, UNUSABLE, OUR_FAULT = 0, 1, 2, 3
"""Exit codes, the worst last."""


class State(StrEnum):
    """In which state a run left a spec."""

    CLEAN = "clean"
    FINDINGS = "with findings"
    UNUSABLE = "unusable"
    NOT_WRITTEN = "not written"
    FAILED = "failed"
    STOPPED = "stopped"
    KILLED = "killed"


@dataclass(frozen=True, slots=True)
class Outcome:
    """What came of one spec. code: the exit code that it asks for. failure: why it is not done, on one line.

    counts: of its findings, None where it could not be reviewed. document: what JSON says of it.
    unchanged: it was not drawn again. title: of the project. codes: of open findings, each once. files: drawn.
    """

    path: Path
    state: State
    code: int
    counts: Tally | None = None
    failure: str = ""
    sheets: int = 0
    taken_s: float = 0.0
    document: dict[str, Any] | None = None
    unchanged: bool = False
    title: str = ""
    codes: tuple[str, ...] = ()
    files: tuple[str, ...] = ()


@dataclass(slots=True)
class Totals:
    """What is kept of the outcomes of a run."""

    states: Counter[State] = field(default_factory=Counter)
    failures: list[str] = field(default_factory=list)
    code: int = CLEAN
    unchanged_count: int = 0

    def add(self, outcome: Outcome) -> None:
        """Count one more."""
        self.states[outcome.state] += 1
        self.unchanged_count += outcome.unchanged
        self.code = max(self.code, outcome.code)
        if outcome.failure:
            self.failures.append(outcome.failure)

    def closing(self) -> list[str]:
        """Return the lines that close a run of several specs: each failure with its place, then the counts."""
        if self.states.total() < 2:
            return []
        return [*self.failures, self.counts()]

    def counts(self) -> str:
        """Return how many specs are in which state, on one line."""
        counts = ", ".join(f"{self.states[state]} {state}" for state in State if self.states[state]) or "none"
        unchanged = f"; {self.unchanged_count} unchanged and not drawn again" if self.unchanged_count else ""
        return f"{self.states.total()} checked: {counts}{unchanged}"
