"""A fault of the program: what happened and where, in a form fit to be sent to us."""

from __future__ import annotations

import sys
import traceback
from pathlib import Path

from sld import __version__
from sld.cli.terminal import say, trace

__all__ = ["describe", "report"]

_LONGEST_TEXT = 200


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
