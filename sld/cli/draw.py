"""`sld draw`: check specs and write their sheets."""

from __future__ import annotations

import os
import re
import tempfile
from dataclasses import dataclass
from enum import StrEnum
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from sld import run
from sld.cli import leftover
from sld.cli.faults import Faults
from sld.cli.specs import UNUSABLE, FailOn, checked, exit_code, tell
from sld.cli.terminal import line, say
from sld.spec import Unusable

if TYPE_CHECKING:
    from sld.sheet.sheet import Sheet

__all__ = ["draw"]


class Paper(StrEnum):
    """Sheet sizes."""

    A4 = "A4"
    A3 = "A3"
    A2 = "A2"
    A1 = "A1"
    A0 = "A0"


class Reading(StrEnum):
    """For whom a drawing is made."""

    FULL = "full"
    OPERATOR = "operator"
    CREW = "crew"


def draw(
    spec: Annotated[list[Path], typer.Argument(help="Spec files (YAML or JSON).", show_default=False)],
    out: Annotated[Path, typer.Option("-o", "--out", help="Folder for the files; made if not there.")] = Path("."),
    to: Annotated[str, typer.Option(help=f"Formats, separated by commas: {', '.join(run.FORMATS)}.")] = "svg,pdf",
    paper: Annotated[Paper | None, typer.Option(help="Sheet size, instead of the spec's.")] = None,
    reading: Annotated[Reading | None, typer.Option(help="For whom it is drawn, instead of the spec's.")] = None,
    dpi: Annotated[int, typer.Option(min=36, max=300, help="Dots per inch of a PNG.")] = 110,
    fail_on: Annotated[FailOn, typer.Option(help="Least severity for exit code 1.")] = FailOn.NON_COMPLIANCE,
    allow_outside: Annotated[bool, typer.Option(help="Allow types files outside the spec's folder.")] = False,
) -> None:
    """Draw the single-line diagram of each spec, flagged with what was found.

    Example: sld draw specs/village-hall.yaml -o out
    """
    formats = tuple(dict.fromkeys(word.strip().lower() for word in to.split(",") if word.strip()))
    unknown = [word for word in formats if word not in run.FORMATS]
    if unknown or not formats:
        say(f"unknown format {', '.join(unknown) or 'nothing'}: --to takes {', '.join(run.FORMATS)}")
        raise typer.Exit(UNUSABLE)
    _distinct(spec)
    asked = _Asked(out, formats, paper.value if paper else None, reading.value if reading else None, dpi)
    results: list[run.Checked | Unusable] = []
    faults = Faults()
    lacking = False
    for path in spec:
        with faults.at(path):
            result = checked(path, allow_outside)
            results.append(result)
            tell(result.source, result.findings, chatter=True, assumptions=False)
            if isinstance(result, run.Checked):
                lacking |= not _written(result, asked.name(path), asked)
            else:
                say(f"{path}: not drawn, the input cannot be used; earlier files are left as they were")
    code = exit_code(results, fail_on, faults)
    raise typer.Exit(max(code, UNUSABLE) if lacking else code)


@dataclass(frozen=True, slots=True)
class _Asked:
    """What was asked for on the command line; paper and reading are None where the spec says them."""

    out: Path
    formats: tuple[str, ...]
    paper: str | None
    reading: str | None
    dpi: int

    def name(self, spec: Path) -> str:
        """Return the name of a spec's files: two readings of one spec have different ones."""
        return f"{spec.stem}-{self.reading}" if self.reading in ("operator", "crew") else spec.stem


def _distinct(paths: list[Path]) -> None:
    """Refuse specs whose drawings would have a file name in common. Raises Exit."""
    seen: dict[str, Path] = {}
    for path in paths:
        if path.stem in seen and seen[path.stem] != path:
            say(f"{seen[path.stem]} and {path} would both be drawn to {path.stem}.*: draw them into different folders")
            raise typer.Exit(UNUSABLE)
        seen[path.stem] = path
    for stem, path in seen.items():
        whole = seen.get(re.sub(r"-[1-9][0-9]*$", "", stem), path)
        if whole != path:
            say(f"{path} and sheets of {whole} would both be drawn to {stem}.*: draw them into different folders")
            raise typer.Exit(UNUSABLE)


def _written(result: run.Checked, name: str, asked: _Asked) -> bool:
    """Write the files of one drawing; each appears whole or not at all. Return whether all could be made."""
    from sld.render import MissingLibrary

    out = asked.out
    drawing = run.draw(result, paper=asked.paper, reading=asked.reading)
    say(f"{name}: {drawing.note}")
    _say_what_does_not_print(name, drawing.sheets)
    whole = True
    for each in asked.formats:
        try:
            made = run.files(drawing.sheets, name, (each,), png_dpi=asked.dpi, about=drawing.about)
        except MissingLibrary as missing:
            say(str(missing))
            whole = False
            continue
        try:
            out.mkdir(parents=True, exist_ok=True)
            for file, content in made.items():
                _replace(out / file, content)
                line(str(out / file))
            for told in leftover.clear(out, name, each, len(drawing.sheets)):
                say(told)
        except BrokenPipeError:
            raise
        except OSError as problem:
            say(f"{out}: cannot write: {problem.strerror or problem}")
            return False
    return whole


def _say_what_does_not_print(name: str, sheets: tuple[Sheet, ...]) -> None:
    """Say which characters of the spec the font of the sheets has no sign for."""
    from sld.symbols.stroke import Text
    from sld.symbols.typeface import missing

    groups = (group for sheet in sheets for group in sheet.groups)
    lacking = missing("".join(each.text for group in groups for each in group.strokes if isinstance(each, Text)))
    if lacking:
        say(f"{name}: the font of the sheets lacks {' '.join(lacking)}: an empty box is drawn for each")


def _replace(path: Path, content: bytes) -> None:
    """Write a file under another name and move it into place, so that a reader never sees half of it."""
    handle, name = tempfile.mkstemp(prefix=f".{path.name}.", dir=path.parent)
    try:
        with os.fdopen(handle, "wb") as stream:
            stream.write(content)
        os.chmod(name, 0o644)
        os.replace(name, path)
    except BaseException:
        Path(name).unlink(missing_ok=True)
        raise
