"""`sld pack`: check specs and write all their papers for a purpose into a folder each."""

from __future__ import annotations

from enum import StrEnum
from functools import partial
from importlib.util import find_spec
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from sld import files, run
from sld.cli.again import Wanted, made_of, program, unchanged
from sld.cli.batch import deal
from sld.cli.bounds import Bounds
from sld.cli.drawing import put_told, readable
from sld.cli.given import Given
from sld.cli.options import MEGABYTES, SECONDS, AllowOutside, Cluster, Jobs, Megabytes, Run, Seconds, Specs, Summary
from sld.cli.outcome import UNUSABLE, Outcome, State, Totals
from sld.cli.specs import FailOn, checked, found, outcome_of, tell
from sld.cli.terminal import say
from sld.frozen import dataclass, replace

if TYPE_CHECKING:
    from sld.pack.pack import Pack

__all__ = ["pack"]

_FORMATS = ("pdf", "csv", "xlsx", "json")
"""How the files of a pack may end."""


class For(StrEnum):
    """What a pack is for."""

    NOTIFY = "notify"
    BUILD = "build"
    TEST = "test"
    HANDOVER = "handover"


@dataclass(frozen=True, slots=True)
class _Asked:
    """What was asked for. each_own: every spec has a folder of its own, by its name. specs, program: as of
    `sld.cli.asked`.
    """

    out: Path
    purpose: str
    xlsx: bool | None
    overwrite: bool
    fail_on: FailOn
    allow_outside: bool
    each_own: bool
    specs: tuple[Path, ...]
    program: str

    @property
    def formats(self) -> tuple[str, ...]:
        """Return how the files end that there are to be."""
        xlsx = find_spec("openpyxl") is not None if self.xlsx is None else self.xlsx
        return _FORMATS if xlsx else tuple(each for each in _FORMATS if each != "xlsx")

    @property
    def how(self) -> tuple[object, ...]:
        """Return what decides on the files beside what is read, as of `sld.cli.asked`."""
        return self.program, self.purpose, self.formats, self.allow_outside


def pack(
    spec: Specs,
    out: Annotated[Path, typer.Option("-o", "--out", help="Folder for the pack; of several specs, one below it each.")],
    purpose: Annotated[For, typer.Option("--for", help="What it is for; chooses the documents.")] = For.HANDOVER,
    xlsx: Annotated[
        bool | None, typer.Option("--xlsx/--no-xlsx", help="With all tables in one XLSX. Left out: where openpyxl is.")
    ] = None,
    fail_on: Annotated[FailOn, typer.Option(help="Least severity for exit code 1.")] = FailOn.NON_COMPLIANCE,
    allow_outside: AllowOutside = False,
    overwrite: Annotated[
        bool,
        typer.Option("--overwrite", help="Pack unchanged specs too, and replace files of others; never what was read."),
    ] = False,
    jobs: Jobs = None,
    cluster: Cluster = None,
    seconds: Seconds = SECONDS,
    megabytes: Megabytes = MEGABYTES,
    summary: Summary = None,
) -> None:
    """Bind all papers of each spec: one PDF, a CSV a table, an XLSX, and a manifest of what they were made of.

    Example: sld pack specs/village-hall.yaml --for notify -o out
    """
    totals = Totals()
    out = out.absolute() if cluster else out  # whose workers have another present folder
    specs = found(spec, totals, out)
    each_own = len(specs) != 1 or specs[0].path != spec[0]
    read = tuple(each.path for each in specs if each.path.suffix[1:].lower() in _FORMATS)
    asked = _Asked(out, purpose.value, xlsx, overwrite, fail_on, allow_outside, each_own, read, program())
    _distinct(specs, asked)
    how = Run(jobs, Bounds(seconds, megabytes), summary, cluster, out)
    raise typer.Exit(deal(partial(_packed, asked=asked), specs, totals, how))


def _folder(given: Given, asked: _Asked) -> Path:
    return asked.out / given.below / given.path.stem if asked.each_own else asked.out


def _distinct(specs: list[Given], asked: _Asked) -> None:
    """Refuse specs whose packs would go into one folder. Raises Exit."""
    seen: dict[Path, Path] = {}
    for each in specs:
        other = seen.setdefault(_folder(each, asked), each.path)
        if other != each.path:
            say(f"{other} and {each.path} would both be packed into {_folder(each, asked)}: pack them one by one")
            raise typer.Exit(UNUSABLE)


def _content(result: run.Checked, made: Pack, name: str, xlsx: bool | None) -> dict[str, bytes]:
    """Return the files of a pack. xlsx: None for one where its library is installed. Raises MissingLibrary, OSError."""
    from sld.render import MissingOpenpyxl

    try:
        return run.pack_files(result, made, name, xlsx=xlsx is not False)
    except MissingOpenpyxl as library:
        if xlsx:
            raise
        say(f"{name}: without an XLSX of its tables. {library}")
        return run.pack_files(result, made, name, xlsx=False)


def _packed(given: Given, asked: _Asked) -> Outcome:
    """Pack one spec, as far as it can be used; return what came of it."""
    from sld.render import MissingLibrary

    path, folder = given.path, _folder(given, asked)
    name = run.name_of(path, None, asked.purpose)
    wanted = Wanted(folder, (name,), asked.formats, asked.how)
    if not asked.overwrite and (before := unchanged(given, wanted, asked.fail_on)):
        return before
    result = checked(path, asked.allow_outside)
    outcome = outcome_of(path, result, asked.fail_on)
    tell(result.source, result.findings, chatter=True, assumptions=False)
    if not isinstance(result, run.Checked):
        say(f"{path}: not packed, the input cannot be used; earlier files are left as they were")
        return outcome
    made = run.pack(result, asked.purpose)
    pages = len(made.bound.sheets)
    say(f"{name}: {len(made.contents.entries)} documents with a cover, {pages} pages")
    try:
        drawable = readable(name, result.source, made.bound.sheets)
        content = _content(result, made, name, asked.xlsx) if drawable else {}
    except MissingLibrary as library:
        say(f"{library}")
        content = {}
    own = replace(files.drawing_of(path, name, folder), made=made_of(result.source, folder, asked.how, outcome, pages))
    read = files.identities((*asked.specs, *result.source.files()))
    if content and put_told(folder, own, content, read, asked.overwrite):
        return replace(outcome, sheets=pages)
    failure = f"{path}: not written: the pack"
    return replace(outcome, state=State.NOT_WRITTEN, code=max(outcome.code, UNUSABLE), failure=failure)
