"""The files about all specs of a run: begun before the first, added to after each, put into their place at the end.

So nothing of a spec is kept, and a place that cannot be written is told before hours of work.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Protocol

import typer

from sld.cli.options import Run
from sld.cli.outcome import UNUSABLE, Outcome
from sld.cli.terminal import say

__all__ = ["Reports"]

_HEAD_BYTES = 10_000


class _Report(Protocol):
    """A file about all specs of a run. name: what it is."""

    name: str

    def __init__(self, path: Path) -> None:
        """Begin the file. Raises OSError."""

    @staticmethod
    def is_earlier(head: bytes) -> bool:
        """Return whether a file that begins so is one of an earlier run, which is replaced."""

    def add(self, outcome: Outcome) -> None:
        """Add what came of a spec. Raises OSError."""

    def finish(self, closing: str) -> None:
        """Put the file into its place. closing: the line that closes the run. Raises OSError."""

    def drop(self) -> None:
        """Leave its place as it was."""


class Reports:
    """Those that were asked for. failed: one of them could not be written."""

    def __init__(self, run: Run) -> None:
        """Begin them. Raises Exit where a place is another's, or cannot be written."""
        self._open: dict[Path, _Report] = {}
        self.failed = False
        for path, kind in _asked_for(run):
            why = _not_replaceable(path, kind)
            if why or path in self._open:
                self.drop()
                say(f"{path}: {why or 'is asked for twice'}; give another file to --{kind.name}")
                raise typer.Exit(UNUSABLE)
            try:
                self._open[path] = kind(path)
            except OSError as problem:
                self.drop()
                say(_cannot(path, kind.name, problem))
                raise typer.Exit(UNUSABLE) from None

    def add(self, outcome: Outcome) -> None:
        """Add what came of a spec; a file that takes no more is given up and told, and the run goes on."""
        for path, report in list(self._open.items()):
            try:
                report.add(outcome)
            except OSError as problem:
                self._give_up(path, problem)

    def finish(self, closing: str) -> None:
        """Put them into their places, and tell what cannot be written."""
        for path, report in list(self._open.items()):
            try:
                if why := _not_replaceable(path, type(report)):  # the run itself may have drawn a file there
                    raise OSError(why)
                report.finish(closing)
            except OSError as problem:
                self._give_up(path, problem)

    def drop(self) -> None:
        """Leave their places as they were."""
        for report in self._open.values():
            report.drop()

    def _give_up(self, path: Path, problem: OSError) -> None:
        report = self._open.pop(path)
        report.drop()
        say(_cannot(path, report.name, problem))
        self.failed = True


def _asked_for(run: Run) -> Iterator[tuple[Path, type[_Report]]]:
    """Yield each place with what is to be written there, loaded where it is asked for."""
    if run.summary:
        from sld.cli.summary import Summary

        yield run.summary, Summary
    if run.index:
        from sld.cli.index import Index

        yield run.index, Index


def _cannot(path: Path, name: str, problem: OSError) -> str:
    return f"{path}: cannot write the {name}: {problem.strerror or problem}"


def _not_replaceable(path: Path, kind: type[_Report]) -> str:
    """Return why a file is not replaced; nothing where none is there, or an earlier one of the same kind."""
    try:
        with path.open("rb") as stream:
            head = stream.read(_HEAD_BYTES)
    except FileNotFoundError:
        return ""
    except OSError as problem:
        return problem.strerror or str(problem)
    return "" if kind.is_earlier(head) else f"is there and not a{'n' * (kind.name == 'index')} {kind.name}"
