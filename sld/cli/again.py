"""A spec that was drawn or packed before is not done again where nothing has changed that decides on its files."""

from __future__ import annotations

import hashlib
import json
import os
import sys
from collections.abc import Iterable, Sequence
from dataclasses import asdict
from pathlib import Path

import sld
from sld import files
from sld.cli.given import Given
from sld.cli.outcome import Outcome
from sld.cli.specs import FailOn, reviewed
from sld.cli.terminal import line, say
from sld.finding import Tally
from sld.frozen import dataclass, replace
from sld.spec.source import Source

__all__ = ["Wanted", "made_of", "program", "unchanged"]

_LIBRARIES = (
    "arabic-reshaper", "babel", "cairocffi", "CairoSVG", "ezdxf", "openpyxl", "pillow", "pydantic", "python-bidi",
    "PyYAML", "schemdraw",
)  # fmt: skip
_SHEETS = "sheets"


def program() -> str:
    """Return the digest of all that draws: the files of this package, its tables too, and the versions of libraries."""
    from importlib.metadata import PackageNotFoundError, version  # no check needs it

    found = hashlib.sha256(sys.version.encode())
    for name in _LIBRARIES:
        try:
            found.update(f"{name} {version(name)}\n".encode())
        except PackageNotFoundError:
            found.update(f"{name} none\n".encode())
    home = os.path.dirname(sld.__file__)
    paths = [os.path.join(folder, name) for folder, _, names in os.walk(home) for name in names]
    for path in sorted(each for each in paths if not each.endswith(".pyc")):
        # of a thousand files a `Path` and a buffer for each would take half the time
        with open(path, "rb", buffering=0) as file:
            content = file.read()
        found.update(f"{path[len(home) :]} {len(content)}\n".encode() + content)
    return found.hexdigest()


def _digest(how: Sequence[object], contents: Iterable[bytes]) -> str:
    """Return the digest of what decides on the files of a spec. how: the program and what is asked for of it."""
    found = hashlib.sha256(json.dumps(how).encode())
    for content in contents:
        found.update(f"\n{len(content)}\n".encode() + content)
    return found.hexdigest()


def made_of(
    source: Source, folder: Path, how: Sequence[object], outcome: Outcome, sheets: int
) -> files.Made | None:  # fmt: skip
    """Return of what files are made, for the record; None where one of those read was changed since.

    how: what decides on them beside what is read, as plain data: the program and what is asked for of it.
    """
    paths = source.files()
    try:
        contents = [path.read_bytes() for path in paths]
        if any(Path(name).read_bytes().decode("utf-8-sig") != text for name, text in source.texts.items()):
            return None
        inputs = tuple(files.seen_from(folder, path) for path in paths)
    except (OSError, ValueError):
        return None
    told = {**asdict(outcome.counts or Tally()), _SHEETS: sheets}
    return files.Made(_digest(how, contents), inputs, told, outcome.title, outcome.codes)


@dataclass(frozen=True, slots=True)
class Wanted:
    """The files that a run is to leave of a spec. names: theirs begin so. how: as of `made_of`."""

    folder: Path
    names: tuple[str, ...]
    formats: tuple[str, ...]
    how: Sequence[object]


def unchanged(given: Given, wanted: Wanted, fail_on: FailOn) -> Outcome | None:
    """Return what came of a spec when its files were made, and tell them; None where they are to be made (again)."""
    folder = wanted.folder
    names: list[str] = []
    told: dict[str, int] = {}
    try:
        for name in wanted.names:
            before = files.drawn_before(folder, files.drawing_of(given.path, name, folder), wanted.formats)
            if before is None:
                return None
            made, own = before
            home = os.path.realpath(folder)
            inputs = [Path(os.path.normpath(os.path.join(home, each))) for each in made.inputs]
            if made.digest != _digest(wanted.how, (each.read_bytes() for each in inputs)):
                return None
            names += own
            told = {**made.told, _SHEETS: told.get(_SHEETS, 0) + made.told[_SHEETS]}
        counts = Tally(**{name: told[name] for name in asdict(Tally())})
    except (OSError, LookupError):  # what is no more there, or a record of another version
        return None
    found = f"; found then: {counts} (sld check tells them)" if counts != Tally() else ""
    say(f"{given.path}: unchanged, its files are those of an earlier run{found}")
    own_files = tuple(str(folder / name) for name in names)
    for name in own_files:
        line(name)
    outcome = replace(reviewed(given.path, counts, fail_on), sheets=told[_SHEETS], unchanged=True)
    return replace(outcome, files=own_files, title=made.title, codes=made.codes)
