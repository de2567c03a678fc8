"""`sld types`: modules and inverters from a table of data sheets, or found in open tables, as a types file."""

from __future__ import annotations

from itertools import islice
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Literal

import typer

from sld.cli.outcome import FINDINGS, UNUSABLE
from sld.cli.terminal import line, say

if TYPE_CHECKING:
    from sld.datasheets.record import Record

__all__ = ["types"]

_MOST = 40
"""Rows that are listed, or written at a time."""

types = typer.Typer(
    help="Write a types file from a table of data sheets, or from open tables.", no_args_is_help=True,
    rich_markup_mode=None,
)  # fmt: skip

_Out = Annotated[
    Path | None,
    typer.Option("--out", "-o", help="The types file to write; never one that is there.", show_default=False),
]


@types.command()
def add(
    table: Annotated[Path, typer.Argument(metavar="FILE.csv", help="Headings with units, `Uoc [V]`; a row is a type.")],
    out: _Out = None,
) -> None:
    """Write a types file from a CSV of data sheet values; rows that cannot be are refused, gaps are named.

    Example: sld types add specs/types/modules.csv -o my-types.yaml
    """
    from sld.datasheets.sheet_csv import UnusableTable, records

    try:
        found = records(table)
    except UnusableTable as why:
        say(str(why))
        raise typer.Exit(UNUSABLE) from None
    except OSError as problem:
        say(f"{table}: {problem.strerror or problem}")
        raise typer.Exit(UNUSABLE) from None
    _write(found, out, f"Types from {table.name}.")


@types.command()
def find(
    words: Annotated[list[str], typer.Argument(help="Words that are all in the name of the type.", show_default=False)],
    kind: Annotated[
        Literal["modules", "inverters"] | None, typer.Option(help="Only these.", show_default=False)
    ] = None,
    out: _Out = None,
) -> None:
    """List the types of open tables by words of their names, or write them to a types file.

    The tables come with the library pvlib (an extra: pip install '.[tables]'); table and line are cited, what they
    have not is named as a gap.

    Example: sld types find 72-300 --kind modules
    """
    from sld.datasheets.open_tables import MissingTables, found

    kinds: list[Literal["modules", "inverters"]] = [kind] if kind else ["modules", "inverters"]
    try:
        records = list(islice(found(words, kinds), _MOST + 1))
    except MissingTables as why:
        say(str(why))
        raise typer.Exit(UNUSABLE) from None
    if not records:
        say(f"no type of the open tables has {' and '.join(words)} in its name")
        raise typer.Exit(FINDINGS)
    if len(records) > _MOST:
        say(f"more than {_MOST} types have {' and '.join(words)} in their name; give more words")
        records = records[:_MOST]
    if out is not None:
        _write(records, out, "Types from open tables.")
        return
    for each in records:
        line(f"{each.kind[:-1]:9} {each.name}  ({each.source})")


def _write(records: list[Record], out: Path | None, remark: str) -> None:
    """Write the records that can be, tell of the others. Raises Exit, with 1 where one was refused."""
    from sld.datasheets.record import faults, gaps, types_file

    kept = []
    for each in records:
        if why := faults(each):
            say(f"{each.source}: {each.name} is left out: {'; '.join(why)}")
            continue
        if missing := gaps(each):
            say(f"{each.source}: {each.name} lacks {', '.join(missing)}: give them from the data sheet")
        kept.append(each)
    if kept:
        _put(types_file(kept, remark), out)
    if len(kept) < len(records):
        raise typer.Exit(FINDINGS if kept else UNUSABLE)


def _put(text: str, out: Path | None) -> None:
    if out is None:
        for each in text.splitlines():
            line(each)
        return
    try:
        with out.open("x", encoding="utf-8") as stream:
            stream.write(text)
    except FileExistsError:
        say(f"{out} is there already and stays as it is: name another file")
        raise typer.Exit(UNUSABLE) from None
    except OSError as problem:
        say(f"cannot write {out}: {problem.strerror or problem}")
        raise typer.Exit(UNUSABLE) from None
    line(f"{out}: written; next: name it under `include` of the spec")
