"""Whose the files of a folder are: a hidden file in it that names, for each drawn file, its spec and its content."""

from __future__ import annotations

import hashlib
import json
import os
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

__all__ = ["RECORD_NAME", "Drawing", "Entry", "as_bytes", "digest", "drawing_of", "read"]

RECORD_NAME = ".sld-drawings.json"

_SCHEMA = 1


@dataclass(frozen=True, slots=True)
class Drawing:
    """One drawing of a folder. name: its files begin so. spec: the path of its spec, seen from the folder."""

    name: str
    spec: str


@dataclass(frozen=True, slots=True)
class Entry:
    """What the record says of a file: whose it is, and the digest of what was written."""

    drawing: Drawing
    digest: str


def drawing_of(spec: Path, name: str, folder: Path) -> Drawing:
    """Return the drawing of a spec in a folder. A spec that is a link is known by the name of the link."""
    place = spec.parent.resolve() / spec.name
    try:
        seen = os.path.relpath(place, folder.resolve())
    except ValueError:  # another drive
        seen = str(place)
    return Drawing(name, Path(seen).as_posix())


def digest(content: bytes) -> str:
    """Return the digest by which a content is known again."""
    return hashlib.sha256(content).hexdigest()


def read(folder: Path) -> dict[str, Entry] | None:
    """Return the record by file name, empty where there is none; None where it is not understood. Raises OSError."""
    try:
        document = json.loads((folder / RECORD_NAME).read_bytes())
        if document["schema"] != _SCHEMA:
            return None
        return {
            str(name): Entry(Drawing(str(each["drawing"]), str(each["spec"])), str(each["sha256"]))
            for name, each in document["files"].items()
        }
    except FileNotFoundError:
        return {}
    except (ValueError, KeyError, TypeError, AttributeError, RecursionError):
        return None


def as_bytes(record: Mapping[str, Entry]) -> bytes:
    """Return the record as it is written; the same record gives the same bytes."""
    files = {
        name: {"drawing": each.drawing.name, "spec": each.drawing.spec, "sha256": each.digest}
        for name, each in sorted(record.items())
    }
    return json.dumps({"schema": _SCHEMA, "files": files}, indent=1).encode() + b"\n"
