"""`sld draw`: check specs and write their sheets."""

from __future__ import annotations

import re
from enum import StrEnum
from functools import partial
from itertools import product
from pathlib import Path
from typing import Annotated

import typer

from sld import run
from sld.cli.again import program
from sld.cli.asked import Asked
from sld.cli.batch import deal
from sld.cli.bounds import Bounds
from sld.cli.drawing import drawn
from sld.cli.given import Given
from sld.cli.options import (
    MEGABYTES,
    SECONDS,
    AllowOutside,
    Cluster,
    Index,
    Jobs,
    Megabytes,
    Run,
    Seconds,
    Specs,
    Summary,
)
from sld.cli.outcome import UNUSABLE, Totals
from sld.cli.specs import FailOn, found
from sld.cli.terminal import say
from sld.frozen import replace

__all__ = ["draw"]


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
    spec: Specs,
    out: Annotated[Path, typer.Option("-o", "--out", help="Folder for the files; made if not there.")] = Path("."),
    to: Annotated[str, typer.Option(help=f"Formats, separated by commas: {', '.join(run.FORMATS)}.")] = "svg,pdf",
    documents: Annotated[
        str, typer.Option(help=f"Documents, separated by commas: {', '.join(run.DOCUMENTS)}.")
    ] = "drawing",
    paper: Annotated[Paper | None, typer.Option(help="Sheet size, instead of the spec's.")] = None,
    for_print: Annotated[
        Paper | None,
        typer.Option(help="Size it will be printed on: laid out for that, on more sheets; letters stay legible."),
    ] = None,
    reader: Annotated[Reader | None, typer.Option(help="For whom it is drawn, instead of the spec's.")] = None,
    dpi: Annotated[int, typer.Option(min=36, max=300, help="Dots per inch of a PNG.")] = 110,
    fail_on: Annotated[FailOn, typer.Option(help="Least severity for exit code 1.")] = FailOn.NON_COMPLIANCE,
    allow_outside: AllowOutside = False,
    overwrite: Annotated[
        bool,
        typer.Option(
            "--overwrite", help="Draw unchanged specs too, and replace files of other drawings; never what was read."
        ),
    ] = False,
    jobs: Jobs = None,
    cluster: Cluster = None,
    seconds: Seconds = SECONDS,
    megabytes: Megabytes = MEGABYTES,
    summary: Summary = None,
    index: Index = None,
) -> None:
    """Draw the single-line diagram of each spec, flagged with what was found.

    Example: sld draw specs/village-hall.yaml -o out
    """
    if paper and for_print:
        say("--paper and --for-print are two sizes of the same sheets: give one of them")
        raise typer.Exit(UNUSABLE)
    totals = Totals()
    out = out.absolute() if cluster else out  # whose workers have another present folder
    asked = Asked(
        out,
        _words(to, "format", "--to", run.FORMATS),
        _words(documents, "document", "--documents", run.DOCUMENTS),
        paper.value if paper else None,
        reader.value if reader else None,
        dpi,
        overwrite,
        fail_on,
        allow_outside,
        (),
        for_print=for_print.value if for_print else None,
    )
    specs = found(spec, totals, out)
    _distinct(specs, asked)
    asked = replace(
        asked,
        specs=tuple(each.path for each in specs if each.path.suffix[1:].lower() in asked.formats),
        program=program(),
    )
    how = Run(jobs, Bounds(seconds, megabytes), summary, cluster, out, index)
    raise typer.Exit(deal(partial(drawn, asked=asked), specs, totals, how))


_CALLED_NOW = {"txt": "strokes"}
"""Words of options that have another name since, which says what it is."""


def _words(text: str, what: str, option: str, known: tuple[str, ...]) -> tuple[str, ...]:
    """Return the words of an option, each once. Raises Exit where one is not known, or where there is none."""
    words = tuple(dict.fromkeys(word.strip().lower() for word in text.split(",") if word.strip()))
    unknown = [word for word in words if word not in known]
    if unknown or not words:
        now = [f"; {word} is called {_CALLED_NOW[word]} now" for word in unknown if word in _CALLED_NOW]
        say(f"unknown {what} {', '.join(unknown) or 'nothing'}: {option} takes {', '.join(known)}{''.join(now)}")
        raise typer.Exit(UNUSABLE)
    return words


def _distinct(specs: list[Given], asked: Asked) -> None:
    """Refuse specs whose documents would have a file name in common. Raises Exit."""
    seen: dict[Path, Path] = {}
    for each, document in product(specs, asked.documents):
        place = each.below / run.name_of(each.path, asked.reader, document)
        if seen.setdefault(place, each.path) != each.path:
            _refuse(f"{seen[place]} and {each.path}", place)
    for place, path in seen.items():
        whole = seen.get(place.with_name(re.sub(r"-[1-9][0-9]*$", "", place.name) or place.name), path)
        if whole != path:
            _refuse(f"{path} and sheets of {whole}", place)


def _refuse(what: str, place: Path) -> None:
    say(f"{what} would both be drawn to {place}.*: draw them into different folders")
    raise typer.Exit(UNUSABLE)
