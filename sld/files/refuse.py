"""Which files may not be replaced: what was read, what is of another drawing, and what nobody knows."""

from __future__ import annotations

import os
import stat
from collections.abc import Collection, Iterable, Iterator
from pathlib import Path

from sld.files.marks import is_marked, sheet_number
from sld.files.record import Drawing, Entry, Record, all_of, digest, owner
from sld.frozen import dataclass

__all__ = ["Identity", "Refusal", "Refused", "identities", "is_of", "refusals"]

Identity = tuple[int, int]
"""What a file is, whatever names and links lead to it."""


@dataclass(frozen=True, slots=True)
class Refusal:
    """A file that is not replaced, and why. final: also when told to overwrite."""

    path: Path
    reason: str
    final: bool = False


class Refused(Exception):  # noqa: N818 - nothing went wrong
    """Files of a drawing would replace what is not its own (`refusals`); nothing was written."""

    def __init__(self, refusals: tuple[Refusal, ...]) -> None:
        self.refusals = refusals
        super().__init__("; ".join(f"{each.path}: {each.reason}" for each in refusals))

    def __reduce__(self) -> tuple[type[Refused], tuple[tuple[Refusal, ...]]]:
        """Say how to make it again in another process, where exceptions arrive as bytes."""
        return type(self), (self.refusals,)


def refusals(
    folder: Path, drawing: Drawing, names: Iterable[str], read: Collection[Identity], record: Record
) -> Iterator[Refusal]:
    """Yield the files of these names that are not the drawing's own.

    read: the identities of files that were read. record: that of the drawing. Raises OSError, also for a name too long.
    """
    for name in names:
        path = folder / name
        try:
            mode = path.lstat().st_mode
        except FileNotFoundError:
            continue
        entry = owner(folder, name, record)
        if stat.S_ISDIR(mode):
            yield Refusal(path, "is a folder", final=True)
        elif _identity(path) in read:
            yield Refusal(path, "is a file that the drawing is made from", final=True)
        elif not (own := is_of(path, drawing, entry)) and _is_input(path, folder):
            yield Refusal(path, "is a file that another drawing here is made from", final=True)
        elif entry is not None and entry.drawing != drawing:
            spec = Path(os.path.normpath(folder / entry.drawing.spec))
            yield Refusal(path, f"is of the drawing {entry.drawing.name} of {spec}")
        elif not own:
            changed = "was changed since it was drawn" if entry else "is not known as a file of this drawing"
            yield Refusal(path, changed)


def is_of(path: Path, drawing: Drawing, entry: Entry | None) -> bool:
    """Return whether a file is of a drawing, by its entry in the record or by its own mark. Raises OSError."""
    if not path.is_file():
        return False
    content = path.read_bytes()
    if entry is not None and entry.drawing == drawing and entry.digest == digest(content):
        return True
    number = sheet_number(path.name, drawing.name)
    return number is not None and is_marked(content, path.suffix[1:], number)


def _is_input(path: Path, folder: Path) -> bool:
    """Return whether a drawing of the folder was made from a file."""
    inputs = {name for _, each in all_of(folder) if each.drawing.made for name in each.drawing.made.inputs}
    return any(os.path.basename(name) == path.name and _identity(folder / name) == _identity(path) for name in inputs)


def identities(paths: Iterable[Path]) -> frozenset[Identity]:
    """Return what files are; those that are not there are left out."""
    return frozenset(found for path in paths if (found := _identity(path)) is not None)


def _identity(path: Path) -> Identity | None:
    """Return what a file is, whatever names and links lead to it; None where there is none."""
    try:
        found = os.stat(path)
    except (OSError, ValueError):
        return None
    return found.st_dev, found.st_ino
