"""Whose the files of a folder are: a hidden file in it that names, for each drawn file, its spec and its content."""

from __future__ import annotations

import hashlib
import json
import os
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path

__all__ = ["RECORD_NAME", "Drawing", "Entry", "Made", "as_bytes", "digest", "drawing_of", "read", "seen_from"]

RECORD_NAME = ".sld-drawings.json"

_SCHEMA = 1


@dataclass(frozen=True, slots=True)
class Made:
    """Of what files were made. digest: of all that decides on them. told: counts that were told of them.

    inputs: the files that were read, seen from the folder.
    """

    digest: str
    inputs: tuple[str, ...]
    told: Mapping[str, int]


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
    place = path.parent.resolve() / path.name
    try:
        seen = os.path.relpath(place, folder.resolve())
    except ValueError:  # another drive
        seen = str(place)
    return Path(seen).as_posix()


def digest(content: bytes) -> str:
    """Return the digest by which a content is known again."""
    return hashlib.sha256(content).hexdigest()


def read(folder: Path) -> dict[str, Entry] | None:
    """Return the record by file name, empty where there is none; None where it is not understood. Raises OSError."""
    try:
        document = json.loads((folder / RECORD_NAME).read_bytes())
        if document["schema"] != _SCHEMA:
            return None
        made = {
            digest: Made(digest, tuple(map(str, each["inputs"])), {**each["told"]})
            for digest, each in document.get("made", {}).items()
        }
        return {
            str(name): Entry(
                Drawing(str(each["drawing"]), str(each["spec"]), made.get(each.get("made"))), str(each["sha256"])
            )
            for name, each in document["files"].items()
        }
    except FileNotFoundError:
        return {}
    except (ValueError, KeyError, TypeError, AttributeError, RecursionError):
        return None


def as_bytes(record: Mapping[str, Entry]) -> bytes:
    """Return the record as it is written; the same record gives the same bytes."""
    files, made = {}, {}
    for name, each in sorted(record.items()):
        files[name] = {"drawing": each.drawing.name, "spec": each.drawing.spec, "sha256": each.digest}
        if of := each.drawing.made:
            files[name]["made"] = of.digest
            made[of.digest] = {"inputs": of.inputs, "told": of.told}
    return json.dumps({"schema": _SCHEMA, "files": files, "made": made}, indent=1).encode() + b"\n"
