"""What an earlier run drew: whether its files are still there as it wrote them, and of what they were made."""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache
from pathlib import Path

from sld.files.marks import sheet_number
from sld.files.record import RECORD_NAME, Drawing, Entry, Made, digest, read

__all__ = ["drawn_before"]


def drawn_before(folder: Path, drawing: Drawing, formats: Iterable[str]) -> tuple[Made, list[str]] | None:
    """Return of what the files of a drawing were made, and their names by format and sheet.

    None where in one of the formats there are none, where one was changed, or where they were made of different things.
    Raises OSError.
    """
    record = _read(folder).get(drawing, {})
    names: list[str] = []
    for format in formats:
        own = [name for name in record if name.endswith(f".{format}")]
        if not own:
            return None
        names += sorted(own, key=lambda name: (sheet_number(name, drawing.name) or 0, name))
    made = {each.digest: each for name in names if (each := record[name].drawing.made)}
    if len(made) != 1 or not all(record[name].drawing.made for name in names):
        return None
    if any(digest((folder / name).read_bytes()) != record[name].digest for name in names):
        return None
    return next(iter(made.values())), names


def _read(folder: Path) -> dict[Drawing, dict[str, Entry]]:
    """Return the record of a folder by drawing; one that was read is not read again while it is the same file."""
    found = (folder / RECORD_NAME).stat()
    return _read_once(folder, (found.st_ino, found.st_mtime_ns, found.st_size))


@lru_cache(maxsize=4)
def _read_once(folder: Path, _file: tuple[int, int, int]) -> dict[Drawing, dict[str, Entry]]:
    by_drawing: dict[Drawing, dict[str, Entry]] = {}
    for name, each in (read(folder) or {}).items():
        by_drawing.setdefault(each.drawing, {})[name] = each
    return by_drawing
