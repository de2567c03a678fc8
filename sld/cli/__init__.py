"""The command line: `sld draw`, `sld check`, `sld explain`. Colour, chatter and exit codes live only here."""

from __future__ import annotations

import gc
import io
import os
import sys

__all__ = ["COLLECT_FROM_COUNT", "main"]

COLLECT_FROM_COUNT = 50_000
"""New objects before the interpreter looks for unused ones. A run makes millions that it keeps to its end, so that
looking as often as usual costs a quarter of the time and finds nothing."""

OUR_FAULT, INTERRUPTED, READER_GONE = 3, 130, 141
"""The last two as a shell reports a process that ended by the signals SIGINT and SIGPIPE (128 and its number)."""


def main() -> None:
    """Run the command line; a fault of ours ends with exit code 3 and a way to report it, never a bare traceback."""
    gc.set_threshold(COLLECT_FROM_COUNT)
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="backslashreplace")  # a name that the terminal cannot show is no reason to fail
    try:
        from sld.cli.app import app

        try:
            app()
        finally:
            sys.stdout.flush()
    except KeyboardInterrupt:
        sys.exit(INTERRUPTED)
    except BrokenPipeError:  # `sld check ... | head`
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        sys.exit(READER_GONE)
    except Exception as fault:  # the last resort of the program
        _report(fault)
        sys.exit(OUR_FAULT)


def _report(fault: Exception) -> None:
    """Say what happened and where, in a form fit to be sent to us; the whole traceback only when asked for."""
    import traceback

    from sld import __version__

    if "--trace" in sys.argv:
        traceback.print_exception(fault)
    where = traceback.extract_tb(fault.__traceback__)[-1]
    print(
        f"sld {__version__} failed: {type(fault).__name__}: {fault} ({where.filename}:{where.lineno}).\n"
        "This is a fault of the program, not of the spec. Please report it with the spec; --trace shows more.",
        file=sys.stderr,
    )
