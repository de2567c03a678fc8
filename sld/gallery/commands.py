"""The page of commands: what each says of itself with --help, from the commands themselves."""

from __future__ import annotations

from collections.abc import Iterator

from typer.core import TyperCommand, TyperGroup
from typer.main import get_command
from typer.testing import CliRunner

from sld.cli.app import app
from sld.gallery.markdown import GENERATED, slug

__all__ = ["commands", "commands_page"]

_TERMINAL = {"COLUMNS": "96", "TERMINAL_WIDTH": "96", "NO_COLOR": "1", "TERM": "dumb"}
_TOP = """# Commands

What each command says with `--help`. The example of each can be typed in a clone of the repository.
"""


def commands() -> Iterator[tuple[str, TyperCommand]]:
    """Yield each command with the words it is called by, `sld draw`, in the order of the help."""
    yield from _below("sld", get_command(app))


def _below(name: str, command: object) -> Iterator[tuple[str, TyperCommand]]:
    if isinstance(command, TyperGroup):
        for word, each in command.commands.items():
            yield from _below(f"{name} {word}", each)
    elif isinstance(command, TyperCommand):
        yield name, command


def _help(name: str) -> str:
    """Return what a command prints with --help on a terminal of a fixed width."""
    told = CliRunner().invoke(app, [*name.split()[1:], "--help"], prog_name="sld", env=_TERMINAL)
    return "\n".join(line.rstrip() for line in told.output.strip().splitlines())


def commands_page() -> str:
    """Return the page."""
    found = [name for name, _ in commands()]
    lines = [GENERATED, "", _TOP, *(f"- [{name}](#{slug(name)})" for name in found), ""]
    for name in found:
        lines += [f"## {name}", "", "```", _help(name), "```", ""]
    return "\n".join(lines)
