"""The commands by name, and the options that all share."""

from __future__ import annotations

from typing import Annotated

import typer

from sld import __version__
from sld.cli.arguments import Commands
from sld.cli.check import check
from sld.cli.draw import draw
from sld.cli.explain import explain
from sld.cli.pack import pack
from sld.cli.terminal import line

__all__ = ["app"]

app = typer.Typer(
    name="sld",
    cls=Commands,
    help="Check the text spec of a PV system and draw its single-line diagram.\n\n"
    "Exit codes: 0 nothing to report at or above --fail-on, 1 findings, 2 input that cannot be used, 3 a fault of the "
    "program.",
    no_args_is_help=True,
    add_completion=False,
    pretty_exceptions_enable=False,
    rich_markup_mode=None,
    context_settings={"help_option_names": ["-h", "--help"]},
)


def _version(asked: bool) -> None:
    if asked:
        line(f"sld {__version__}")
        raise typer.Exit


@app.callback()
def options(
    version: Annotated[
        bool, typer.Option("--version", callback=_version, is_eager=True, help="Print the version.")
    ] = False,
    trace: Annotated[bool, typer.Option("--trace", help="Show the traceback of a fault of the program.")] = False,
) -> None:
    """Options that come before the command."""


app.command()(draw)
app.command()(pack)
app.command()(check)
app.command()(explain)
