"""The drawing of one spec: its documents made, put into their folder, and told of."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from pathlib import Path
from typing import TYPE_CHECKING

from sld import files, run
from sld.cli.again import Wanted, made_of, unchanged
from sld.cli.asked import Asked
from sld.cli.given import Given
from sld.cli.outcome import UNUSABLE, Outcome, State
from sld.cli.specs import checked, outcome_of, tell
from sld.cli.terminal import line, say
from sld.frozen import replace

if TYPE_CHECKING:
    from sld.sheet.compose import Composition
    from sld.sheet.sheet import Sheet
    from sld.spec.source import Source

__all__ = ["drawn", "put_told", "readable"]

_MOST_TOLD = 5
"""Files that are not replaced are named up to so many; the rest is counted."""


def drawn(given: Given, asked: Asked) -> Outcome:
    """Draw one spec, as far as it can be used; return what came of it."""
    path = given.path
    if not asked.overwrite:
        own = tuple(run.name_of(path, asked.reader, document) for document in asked.documents)
        wanted = Wanted(asked.out / given.below, own, asked.formats, asked.how)
        if before := unchanged(given, wanted, asked.fail_on):
            return before
    result = checked(path, asked.allow_outside)
    outcome = outcome_of(path, result, asked.fail_on)
    tell(result.source, result.findings, chatter=True, assumptions=False)
    if not isinstance(result, run.Checked):
        say(f"{path}: not drawn, the input cannot be used; earlier files are left as they were")
        return outcome
    found = _documents(result, path, asked)
    put: dict[str, list[str]] = {}
    for document, made in found.items():
        if names := _written(made, document, given, asked, result, outcome):
            put[document] = names
    sheets_count = sum(len(found[document].sheets) for document in put)
    outcome = replace(outcome, sheets=sheets_count, files=tuple(name for names in put.values() for name in names))
    if lacking := [document for document in asked.documents if document not in put]:
        failure = f"{path}: not written: {', '.join(lacking)}"
        outcome = replace(outcome, state=State.NOT_WRITTEN, code=max(outcome.code, UNUSABLE), failure=failure)
    return outcome


def _documents(result: run.Checked, path: Path, asked: Asked) -> dict[str, Composition]:
    """Return the documents that were asked for, by name; those that are not made for the reader are told of."""
    reader = asked.reader or result.drawing.reader
    made_for = run.made_for(reader)
    for name in asked.documents:
        if name not in made_for:
            say(f"{path}: no {name} is made for the reader {reader}; --reader full has it")
    names = [name for name in asked.documents if name in made_for]
    if asked.for_print:
        result = run.for_print(result, asked.for_print)
    return run.documents(result, names, paper=asked.paper, reader=asked.reader)


def _written(
    drawing: Composition, document: str, given: Given, asked: Asked, result: run.Checked, outcome: Outcome
) -> list[str]:
    """Write the files of one document, all or none; return the files, none where they are not written."""
    name = run.name_of(given.path, asked.reader, document)
    folder, shown = asked.out / given.below, str(given.below / name)
    say(f"{shown}: {drawing.note}")
    if asked.for_print:
        say(f"{shown}: {_printed(drawing, asked.for_print)}")
    made = _made(drawing, name, asked, result) if readable(shown, result.source, drawing.sheets) else None
    if made is None:
        return []
    made_from = made_of(result.source, folder, asked.how, outcome, len(drawing.sheets))
    own = replace(files.drawing_of(given.path, name, folder), made=made_from)
    read = files.identities((*asked.specs, *result.source.files()))
    written = put_told(folder, own, made, read, asked.overwrite, shown)
    return [str(folder / file) for file in made] if written else []


def _printed(drawing: Composition, paper: str) -> str:
    """Return what was done so that the sheets can be read when they are printed on a paper."""
    from sld.sheet.paper import PAPERS

    size = PAPERS[paper]
    sides = sorted((size.width_mm, size.height_mm))
    larger = [each.number for each in drawing.sheets if sorted((each.width_mm, each.height_mm)) > sides]
    done = f"laid out for {paper}, to be printed without reduction: text is 2.5 mm high, captions and signs 1.8 mm"
    if not larger:
        return done
    sheets = f"sheet{'s' if len(larger) > 1 else ''} {', '.join(map(str, larger))}"
    return f"{done}; but {sheets}: what cannot be divided needs a larger paper, print it on that"


def put_told(
    folder: Path, own: files.Drawing, made: Mapping[str, bytes], read: Collection[files.Identity], overwrite: bool,
    shown: str = "",
) -> bool:  # fmt: skip
    """Put files into a folder, all or none, and tell of each, or why not; return whether they are written.

    shown: what they are called when they are not written, else as `own` is.
    """
    try:
        told = files.put(folder, own, made, read, overwrite=overwrite)
    except files.Refused as refused:
        for each in refused.refusals[:_MOST_TOLD]:
            way = "" if each.final else ", or replace it with --overwrite"
            say(f"{each.path}: {each.reason}; choose another folder with -o{way}")
        more = len(refused.refusals) - _MOST_TOLD
        rest = f", and {more} more files are not replaced" if more > 0 else ""
        say(f"{shown or own.name}: nothing was written{rest}")
        return False
    except OSError as problem:
        say(f"{folder}: cannot write: {problem.strerror or problem}")
        return False
    for text in told:
        say(text)
    for file in made:
        line(str(folder / file))
    return True


def _made(drawing: Composition, name: str, asked: Asked, result: run.Checked) -> dict[str, bytes] | None:
    """Return the files of a drawing by name; None, with what to do said, where one of the formats cannot be made."""
    from sld.render import MissingLibrary

    made: dict[str, bytes] = {}
    missing: dict[str, str] = {}
    for each in asked.formats:
        if each == "html":
            made[f"{name}.html"] = run.webpage(result, drawing.sheets)
            continue
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


def readable(name: str, source: Source, sheets: tuple[Sheet, ...]) -> bool:
    """Return whether the text of all sheets can be drawn; say what cannot, where it stands, and what to do."""
    from sld import render

    try:
        render.readable(sheets)
    except render.UnknownLetters as unknown:
        say(f"{_first(source, unknown.letters)}{unknown}")
    except render.MissingLibrary as library:
        say(str(library))
    else:
        return True
    say(f"{name}: nothing was written, as some text cannot be drawn")
    return False


def _first(source: Source, letters: str) -> str:
    """Return where the first of some letters stands in what was read, "house.yaml:3:10: "; empty where none does."""
    for file in source.texts:
        for number, text in enumerate(source.lines(file), 1):
            if column := next((n for n, letter in enumerate(text, 1) if letter in letters), 0):
                return f"{file}:{number}:{column}: "
    return ""
