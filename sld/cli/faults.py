"""A fault of the program: what happened and where, in a form fit to be sent to us."""

from __future__ import annotations

import sys
import traceback
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path

from sld import __version__
from sld.cli.terminal import OutputLost, say, trace

__all__ = ["Faults", "describe", "report"]

_LONGEST_TEXT = 200


@dataclass(slots=True)
class Faults:
    """The specs that the program failed at in this run; what it does for one of them is done under `at`."""

    specs: dict[Path, str] = field(default_factory=dict)

    @contextmanager
    def at(self, spec: Path) -> Iterator[None]:
        """Tell and keep a fault that comes up while a spec is dealt with, so that the next spec has its turn."""
        try:
            yield
        except (BrokenPipeError, OutputLost):
            raise
        except Exception as fault:  # whatever it is, the other specs are dealt with
            self.specs[spec] = describe(fault)
            report(fault, spec)


def describe(fault: Exception) -> str:
    """Return the kind of a fault, its text and the line of the program, on one line."""
    where = traceback.extract_tb(fault.__traceback__)[-1]
    text = str(fault)
    text = text if len(text) <= _LONGEST_TEXT else f"{text[:_LONGEST_TEXT]}…"
    return f"{type(fault).__name__}: {text} ({where.filename}:{where.lineno})"


def report(fault: Exception, spec: Path | None = None) -> None:
    """Say what happened, at which spec; the whole traceback only when asked for."""
    if "--trace" in sys.argv:
        trace(fault)
    say(f"{f'{spec}: ' if spec else ''}sld {__version__} failed: {describe(fault)}.")
    say("This is a fault of the program, not of the spec. Please report it with the spec; sld --trace shows more.")
