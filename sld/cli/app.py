"""The commands by name, and the options that all share."""

from __future__ import annotations

import platform
from typing import Annotated

import typer

from sld import __version__
from sld.cli.arguments import Commands
from sld.cli.check import check
from sld.cli.draw import draw
from sld.cli.explain import explain
from sld.cli.keys import keys
from sld.cli.new import new
from sld.cli.pack import pack
from sld.cli.schema import schema
from sld.cli.terminal import line
from sld.cli.types import types
from sld.cli.watch import watch

__all__ = ["app"]

app = typer.Typer(
    name="sld",
    cls=Commands,
    help="Check the text spec of a PV system and draw its single-line diagram.\n\n"
    "Exit codes: 0 nothing to report at or above --fail-on, 1 findings, 2 input that cannot be used, 3 a fault of the "
    "program.",
    no_args_is_help=True,
    pretty_exceptions_enable=False,
    rich_markup_mode=None,
    context_settings={"help_option_names": ["-h", "--help"]},
)


def _version(asked: bool) -> None:
    if asked:
        from sld.tables.table import all_tables  # which no other option needs

        line(f"sld {__version__}")
        line(f"Python {platform.python_version()}")
        for each in all_tables():
            line(f"table {each.name}: {each.front['source']}, edition {each.front['edition']}")
        raise typer.Exit


@app.callback()
def options(
    version: Annotated[
        bool,
        typer.Option(
            "--version",
            callback=_version,
            is_eager=True,
            help="Print the versions of sld, Python and all tables.",
        ),
    ] = False,
    trace: Annotated[bool, typer.Option("--trace", help="Show the traceback of a fault of the program.")] = False,
) -> None:
    """Options that come before the command."""


app.command()(new)
app.command()(draw)
app.command()(pack)
app.command()(check)
app.command(context_settings={"ignore_unknown_options": True})(explain)  # designations begin with a dash
app.command()(watch)
app.command()(keys)
app.command()(schema)
app.add_typer(types, name="types")
