"""Whose the files of a folder are: a hidden folder in it with a record of each drawing.

A record names, for each file of its drawing, the spec and the content. Each drawing has its own, so that one more costs
the same however many are there.
"""

from __future__ import annotations

import hashlib
import json
import os
from collections.abc import Iterator, Mapping
from contextlib import suppress
from dataclasses import field
from pathlib import Path

from sld.frozen import dataclass

__all__ = [
    "RECORD_NAME", "Drawing", "Entry", "Made", "Record", "all_of", "as_bytes", "digest", "drawing_of", "owner", "read",
    "record_name", "seen_from",
]  # fmt: skip

RECORD_NAME = ".sld-drawings"

_ENDING = ".sld"
_SCHEMA = 3


@dataclass(frozen=True, slots=True)
class Made:
    """Of what files were made. digest: of all that decides on them. told: counts that were told of them.

    inputs: the files that were read, seen from the folder. title: what is drawn. codes: of what was found.
    """

    digest: str
    inputs: tuple[str, ...]
    told: Mapping[str, int]
    title: str = ""
    codes: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Drawing:
    """One drawing of a folder. name: its files begin so. spec: the path of its spec, seen from the folder."""

    name: str
    spec: str
    made: Made | None = field(default=None, compare=False)


@dataclass(frozen=True, slots=True)
class Entry:
    """What the record says of a file: whose it is, and the digest of what was written."""

    drawing: Drawing
    digest: str


def drawing_of(spec: Path, name: str, folder: Path) -> Drawing:
    """Return the drawing of a spec in a folder. A spec that is a link is known by the name of the link."""
    return Drawing(name, seen_from(folder, spec))


def seen_from(folder: Path, path: Path) -> str:
    """Return the path of a file as it is seen from a folder; a link has its own."""
    place = os.path.join(os.path.realpath(path.parent), path.name)
    try:
        seen = os.path.relpath(place, os.path.realpath(folder))
    except ValueError:  # another drive
        seen = place
    return Path(seen).as_posix()


def digest(content: bytes) -> str:
    """Return the digest by which a content is known again."""
    return hashlib.sha256(content).hexdigest()


Record = dict[str, Entry]
"""What is recorded of one drawing, by file name."""


def record_name(name: str) -> str:
    """Return the file of the record of a drawing, seen from its folder."""
    return f"{RECORD_NAME}/{name}{_ENDING}"


def read(folder: Path, name: str) -> Record | None:
    """Return the record of a drawing, empty where there is none; None where it is not understood. Raises OSError."""
    try:
        return _understood((folder / record_name(name)).read_bytes(), name)
    except (FileNotFoundError, NotADirectoryError):
        return {}


def _understood(content: bytes, drawing: str) -> Record | None:
    try:
        document = json.loads(content)
        if document["schema"] != _SCHEMA:
            return None
        made = {
            digest: Made(
                digest, tuple(map(str, each["inputs"])), {**each["told"]}, str(each["title"]), tuple(each["codes"])
            )
            for digest, each in document["made"].items()
        }
        return {
            str(name): Entry(Drawing(drawing, str(each["spec"]), made.get(each.get("made"))), str(each["sha256"]))
            for name, each in document["files"].items()
        }
    except (ValueError, KeyError, TypeError, AttributeError, RecursionError):
        return None


def owner(folder: Path, file: str, own: Record) -> Entry | None:
    """Return the entry of a file, in the record of one drawing or of another one. own: that record. Raises OSError.

    The name of a file is that of its drawing, or begins with it and a hyphen; only where one is there of which no such
    record knows, as the manifest of a pack, all others are read.
    """
    if file in own:
        return own[file]
    stem = file.rpartition(".")[0]
    parts = stem.split("-")
    for count in range(len(parts), 0, -1):
        if entry := (read(folder, "-".join(parts[:count])) or {}).get(file):
            return entry
    return next((entry for name, entry in all_of(folder) if name == file), None) if (folder / file).exists() else None


def all_of(folder: Path) -> Iterator[tuple[str, Entry]]:
    """Yield every file of a folder with its entry, which takes as long as there are drawings in it. Raises OSError."""
    with suppress(FileNotFoundError, NotADirectoryError):
        for path in sorted((folder / RECORD_NAME).iterdir()):
            yield from (read(folder, path.name.removesuffix(_ENDING)) or {}).items()


def as_bytes(record: Mapping[str, Entry]) -> bytes:
    """Return the record of a drawing as it is written; the same record gives the same bytes."""
    files, made = {}, {}
    for name, each in sorted(record.items()):
        files[name] = {"spec": each.drawing.spec, "sha256": each.digest}
        if of := each.drawing.made:
            files[name]["made"] = of.digest
            made[of.digest] = {"inputs": of.inputs, "told": of.told, "title": of.title, "codes": of.codes}
    return json.dumps({"schema": _SCHEMA, "files": files, "made": made}, indent=1).encode() + b"\n"
