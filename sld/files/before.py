"""What an earlier run drew: whether its files are still there as it wrote them, and of what they were made."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

from sld.files.marks import sheet_number
from sld.files.record import Drawing, Made, digest, read

__all__ = ["drawn_before"]


def drawn_before(folder: Path, drawing: Drawing, formats: Iterable[str]) -> tuple[Made, list[str]] | None:
    """Return of what the files of a drawing were made, and their names by format and sheet.

    None where in one of the formats there are none, where one was changed, or where they were made of different things.
    Raises OSError.
    """
    record = {name: each for name, each in (read(folder, drawing.name) or {}).items() if each.drawing == drawing}
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
