"""The one place that writes to the terminal: lines, findings and JSON, with what does not print made visible.

Data goes to standard output, chatter to standard error. Standard output that takes no more is `OutputLost`; where
standard error takes no more there is no place to say so.
"""

from __future__ import annotations

import io
import os
import sys
import traceback
from collections.abc import Callable, Iterable, Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from typing import Any, TextIO

import typer

from sld.finding import Finding
from sld.spec import Source
from sld.spec.quote import quote
from sld.spec.visible import as_json_text, visible

__all__ = [
    "OutputLost",
    "Told",
    "can_ask",
    "coloured",
    "finish",
    "give_up",
    "held",
    "line",
    "prepare",
    "progress",
    "say",
    "show",
    "show_finding",
    "show_json",
    "silence",
    "tell_again",
    "trace",
]


class OutputLost(Exception):  # noqa: N818 - nobody's fault but the disk's
    """Standard output cannot be written: the reason."""


Told = tuple[str, bool]
"""A text that was told, and whether it is chatter."""

_held: ContextVar[list[Told] | None] = ContextVar("held", default=None)
"""What is held back in this thread: a worker of a cluster may have several."""

_bar: object | None = None
"""The progress bar that is shown."""

_TO_BEGINNING_AND_CLEARED = "\r\x1b[K"


@contextmanager
def held() -> Iterator[list[Told]]:
    """Hold back what is told in this thread, for another process to tell in its turn."""
    told: list[Told] = []
    before = _held.set(told)
    try:
        yield told
    finally:
        _held.reset(before)


def tell_again(told: Iterable[Told]) -> None:
    """Write what was held back. Raises OutputLost, BrokenPipeError."""
    for text, chatter in told:
        _write(text, chatter)


@contextmanager
def progress(count: int) -> Iterator[Callable[[], None]]:
    """Show how many of so many specs are done, on a terminal only; yield what is to be called after each."""
    global _bar
    stream: TextIO | None = sys.stderr
    if count < 2 or stream is None or not stream.isatty() or os.environ.get("TERM") == "dumb":
        yield lambda: None
        return
    with typer.progressbar(length=count, file=stream, show_pos=True, show_percent=False) as bar:
        _bar = bar
        try:
            yield lambda: bar.update(1)
        finally:
            _make_room()
            _bar = None


def _make_room() -> None:
    """Clear the line of the progress bar, which is drawn again below what is told now."""
    if _bar is not None and sys.stderr is not None:
        sys.stderr.write(_TO_BEGINNING_AND_CLEARED)
        sys.stderr.flush()


def prepare() -> None:
    """Let both streams show a name that they cannot encode by its numbers. Raises OutputLost without an output."""
    if sys.stdout is None:
        raise OutputLost("it is closed")
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="backslashreplace")


def finish() -> None:
    """Write what is still held back. Raises OutputLost, BrokenPipeError."""
    try:
        sys.stdout.flush()
    except BrokenPipeError:
        raise
    except OSError as problem:
        raise OutputLost(problem.strerror or str(problem)) from None


def give_up() -> None:
    """Drop what standard output did not take, so that the interpreter does not try again at its end."""
    if sys.stdout is not None:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())


def can_ask() -> bool:
    """Return whether somebody sits at both ends: questions are read and answered on a terminal."""
    return all(stream is not None and stream.isatty() for stream in (sys.stdin, sys.stdout))


def coloured(stream: TextIO) -> bool:
    """Return whether a stream is a terminal that wants colour (NO_COLOR is honoured)."""
    return stream.isatty() and not os.environ.get("NO_COLOR")


def line(text: str = "", chatter: bool = False) -> None:
    """Write one line. chatter: to standard error. Raises OutputLost, BrokenPipeError."""
    _write(f"{visible(text)}\n", chatter)


def say(text: str) -> None:
    """Write one line of chatter."""
    line(text, chatter=True)


def show_finding(source: Source, finding: Finding, chatter: bool = False) -> None:
    """Write a finding with the line of the spec that it is about, which `quote` made visible piece by piece."""
    stream = sys.stderr if chatter else sys.stdout
    _write(f"{quote(source, finding, colour=stream is not None and coloured(stream))}\n", chatter)


def show_json(data: dict[str, Any]) -> None:
    """Write data as JSON on standard output."""
    _write(f"{as_json_text(data, ascii_only=not sys.stdout.encoding.lower().startswith('utf'))}\n", chatter=False)


def show(text: str) -> None:
    """Write text for machines, which is as it has to be, on standard output."""
    _write(text, chatter=False)


def silence(*libraries: str) -> None:
    """Let libraries that write to the terminal themselves write nothing more."""
    import logging  # which few runs need

    for name in libraries:
        logging.getLogger(name).setLevel(logging.CRITICAL + 1)


def trace(fault: BaseException) -> None:
    """Write the traceback of a fault, for who repairs it."""
    for text in "".join(traceback.format_exception(fault)).splitlines():
        say(text)


def _write(text: str, chatter: bool) -> None:
    if (told := _held.get()) is not None:
        told.append((text, chatter))
        return
    stream: TextIO | None = sys.stderr if chatter else sys.stdout
    if stream is None:  # closed; `print` would take the other one
        return
    _make_room()
    try:
        stream.write(text)
    except BrokenPipeError:
        raise
    except OSError as problem:
        if not chatter:
            raise OutputLost(problem.strerror or str(problem)) from None
