"""The command line: `sld draw`, `sld check`, `sld explain`. Colour, chatter and exit codes live only here."""

from __future__ import annotations

import sys

__all__ = ["main"]

OUR_FAULT = 3


def main() -> None:
    """Run the command line; a fault of ours ends with exit code 3 and a way to report it, never a bare traceback."""
    from sld.cli.app import app

    try:
        app()
    except Exception as fault:  # the last resort of the program
        import traceback

        from sld import __version__

        if "--trace" in sys.argv:
            traceback.print_exc()
        where = traceback.extract_tb(fault.__traceback__)[-1]
        print(
            f"sld {__version__} failed: {type(fault).__name__}: {fault} ({where.filename}:{where.lineno}).\n"
            "This is a fault of the program, not of the spec. Please report it with the spec; --trace shows more.",
            file=sys.stderr,
        )
        sys.exit(OUR_FAULT)
