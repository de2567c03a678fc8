"""The command line: `sld draw`, `sld check`, `sld explain`. Colour, chatter and exit codes live only here."""

from __future__ import annotations

import gc
import os
import sys

__all__ = ["COLLECT_FROM_COUNT", "main"]

COLLECT_FROM_COUNT = 200_000
"""New objects before the interpreter looks for unused ones. A run makes millions that it keeps to its end, so that
looking as often as usual costs a quarter of the time and finds nothing; what is loaded to check one spec is 120,000."""

_PLUGINS = "PYDANTIC_DISABLE_PLUGINS"
"""Else the library of the spec's types asks every package that is installed whether it has a plugin for it."""

NOT_WRITTEN, OUR_FAULT, INTERRUPTED, READER_GONE = 2, 3, 130, 141
"""The last two as a shell reports a process that ended by the signals SIGINT and SIGPIPE (128 and its number)."""


def main() -> None:
    """Run the command line; a fault of ours ends with exit code 3 and a way to report it, never a bare traceback."""
    gc.set_threshold(COLLECT_FROM_COUNT)
    os.environ.setdefault(_PLUGINS, "__all__")
    try:
        _run()
    except KeyboardInterrupt:
        sys.exit(INTERRUPTED)
    finally:
        gc.freeze()  # else the interpreter goes over all of it several times at its end: a fifth of a short command


def _run() -> None:
    from sld.cli import faults, terminal

    try:
        terminal.prepare()
        from sld.cli.app import app

        try:
            app()
        finally:
            terminal.finish()
    except BrokenPipeError:  # `sld check ... | head`
        terminal.give_up()
        sys.exit(READER_GONE)
    except (terminal.OutputLost, OSError) as lost:  # help is written by the library, which raises what the machine says
        terminal.say(f"sld: cannot write to standard output: {lost}; what was to be told there is lost")
        terminal.give_up()
        sys.exit(NOT_WRITTEN)
    except Exception as fault:  # the last resort of the program
        faults.report(fault)
        sys.exit(OUR_FAULT)
