"""`sld draw`: check specs and write their sheets."""

from __future__ import annotations

import re
from dataclasses import dataclass
from enum import StrEnum
from itertools import product
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from sld import files, run
from sld.cli.faults import Faults
from sld.cli.specs import UNUSABLE, FailOn, checked, exit_code, tell
from sld.cli.terminal import line, say
from sld.spec import Unusable

if TYPE_CHECKING:
    from sld.sheet.compose import Composition
    from sld.sheet.sheet import Sheet

__all__ = ["draw"]

_MOST_TOLD = 5
"""Files that are not replaced are named up to so many; the rest is counted."""


class Paper(StrEnum):
    """Sheet sizes."""

    A4 = "A4"
    A3 = "A3"
    A2 = "A2"
    A1 = "A1"
    A0 = "A0"


class Reader(StrEnum):
    """For whom a drawing is made."""

    FULL = "full"
    OPERATOR = "operator"
    CREW = "crew"


def draw(
    spec: Annotated[list[Path], typer.Argument(help="Spec files (YAML or JSON).", show_default=False)],
    out: Annotated[Path, typer.Option("-o", "--out", help="Folder for the files; made if not there.")] = Path("."),
    to: Annotated[str, typer.Option(help=f"Formats, separated by commas: {', '.join(run.FORMATS)}.")] = "svg,pdf",
    documents: Annotated[
        str, typer.Option(help=f"Documents, separated by commas: {', '.join(run.DOCUMENTS)}.")
    ] = "drawing",
    paper: Annotated[Paper | None, typer.Option(help="Sheet size, instead of the spec's.")] = None,
    reader: Annotated[Reader | None, typer.Option(help="For whom it is drawn, instead of the spec's.")] = None,
    dpi: Annotated[int, typer.Option(min=36, max=300, help="Dots per inch of a PNG.")] = 110,
    fail_on: Annotated[FailOn, typer.Option(help="Least severity for exit code 1.")] = FailOn.NON_COMPLIANCE,
    allow_outside: Annotated[bool, typer.Option(help="Allow types files outside the spec's folder.")] = False,
    overwrite: Annotated[
        bool, typer.Option("--overwrite", help="Replace files of other drawings too; never a file that was read.")
    ] = False,
) -> None:
    """Draw the single-line diagram of each spec, flagged with what was found.

    Example: sld draw specs/village-hall.yaml -o out
    """
    asked = _Asked(
        out,
        _words(to, "format", "--to", run.FORMATS),
        _words(documents, "document", "--documents", run.DOCUMENTS),
        paper.value if paper else None,
        reader.value if reader else None,
        dpi,
        overwrite,
    )
    _distinct(spec, asked)
    results: list[run.Checked | Unusable] = []
    faults = Faults()
    read = set(spec)
    lacking = False
    for path in spec:
        with faults.at(path):
            result = checked(path, allow_outside)
            results.append(result)
            tell(result.source, result.findings, chatter=True, assumptions=False)
            if isinstance(result, run.Checked):
                read.update(result.source.files())
                found = _documents(result, path, asked)
                lacking |= len(found) < len(asked.documents)
                for document, made in found.items():
                    lacking |= not _written(made, path, run.name_of(path, asked.reader, document), asked, read)
            else:
                say(f"{path}: not drawn, the input cannot be used; earlier files are left as they were")
    code = exit_code(results, fail_on, faults)
    raise typer.Exit(max(code, UNUSABLE) if lacking else code)


@dataclass(frozen=True, slots=True)
class _Asked:
    """What was asked for on the command line; paper and reader are None where the spec says them."""

    out: Path
    formats: tuple[str, ...]
    documents: tuple[str, ...]
    paper: str | None
    reader: str | None
    dpi: int
    overwrite: bool


def _words(text: str, what: str, option: str, known: tuple[str, ...]) -> tuple[str, ...]:
    """Return the words of an option, each once. Raises Exit where one is not known, or where there is none."""
    words = tuple(dict.fromkeys(word.strip().lower() for word in text.split(",") if word.strip()))
    unknown = [word for word in words if word not in known]
    if unknown or not words:
        say(f"unknown {what} {', '.join(unknown) or 'nothing'}: {option} takes {', '.join(known)}")
        raise typer.Exit(UNUSABLE)
    return words


def _documents(result: run.Checked, path: Path, asked: _Asked) -> dict[str, Composition]:
    """Return the documents that were asked for, by name; those that are not made for the reader are told of."""
    reader = asked.reader or result.system.drawing.reader
    made_for = run.made_for(reader)
    for name in asked.documents:
        if name not in made_for:
            say(f"{path}: no {name} is made for the reader {reader}; --reader full has it")
    names = [name for name in asked.documents if name in made_for]
    return run.documents(result, names, paper=asked.paper, reader=asked.reader)


def _distinct(paths: list[Path], asked: _Asked) -> None:
    """Refuse specs whose documents would have a file name in common. Raises Exit."""
    seen: dict[str, Path] = {}
    for path, document in product(paths, asked.documents):
        name = run.name_of(path, asked.reader, document)
        if seen.setdefault(name, path) != path:
            say(f"{seen[name]} and {path} would both be drawn to {name}.*: draw them into different folders")
            raise typer.Exit(UNUSABLE)
    for name, path in seen.items():
        whole = seen.get(re.sub(r"-[1-9][0-9]*$", "", name), path)
        if whole != path:
            say(f"{path} and sheets of {whole} would both be drawn to {name}.*: draw them into different folders")
            raise typer.Exit(UNUSABLE)


def _written(drawing: Composition, path: Path, name: str, asked: _Asked, read: set[Path]) -> bool:
    """Write the files of one document, all or none; return whether they are written. read: what no file may replace."""
    say(f"{name}: {drawing.note}")
    _say_what_does_not_print(name, drawing.sheets)
    made = _made(drawing, name, asked)
    if made is None:
        return False
    try:
        told = files.put(asked.out, files.drawing_of(path, name, asked.out), made, read, overwrite=asked.overwrite)
    except files.Refused as refused:
        for each in refused.refusals[:_MOST_TOLD]:
            way = "" if each.final else ", or replace it with --overwrite"
            say(f"{each.path}: {each.reason}; choose another folder with -o{way}")
        more = len(refused.refusals) - _MOST_TOLD
        say(f"{name}: nothing was written{f', and {more} more files are not replaced' if more > 0 else ''}")
        return False
    except OSError as problem:
        say(f"{asked.out}: cannot write: {problem.strerror or problem}")
        return False
    for text in told:
        say(text)
    for file in made:
        line(str(asked.out / file))
    return True


def _made(drawing: Composition, name: str, asked: _Asked) -> dict[str, bytes] | None:
    """Return the files of a drawing by name; None, with what to do said, where one of the formats cannot be made."""
    from sld.render import MissingLibrary

    made: dict[str, bytes] = {}
    missing: dict[str, str] = {}
    for each in asked.formats:
        try:
            made |= run.files(
                drawing.sheets, name, (each,), png_dpi=asked.dpi, about=drawing.about, tables=drawing.tables
            )
        except MissingLibrary as library:
            missing[each] = str(library)
    for text in dict.fromkeys(missing.values()):
        say(text)
    if missing:
        rest = ",".join(each for each in asked.formats if each not in missing)
        way = f"; --to {rest} goes without it" if rest else ""
        say(f"{name}: nothing was written, as not every format could be made{way}")
    return None if missing else made


def _say_what_does_not_print(name: str, sheets: tuple[Sheet, ...]) -> None:
    """Say which characters of the spec the font of the sheets has no sign for."""
    from sld.render import lacking

    if signs := lacking(sheets):
        say(f"{name}: the font of the sheets lacks {' '.join(signs)}: an empty box is drawn for each")
