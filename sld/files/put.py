"""Put the files of one drawing into a folder."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from pathlib import Path

from sld.files.marks import sheet_number
from sld.files.record import RECORD_NAME, Drawing, Entry, as_bytes, digest
from sld.files.record import read as read_record
from sld.files.refuse import Identity, Refused, is_of, refusals
from sld.files.switch import finish_earlier, locked, switch

__all__ = ["put"]

_OF_TABLES = "csv"
"""The format of which a drawing has a file for each table."""


def put(
    folder: Path, drawing: Drawing, files: Mapping[str, bytes], read: Collection[Identity], *, overwrite: bool = False
) -> list[str]:
    """Write the files of a drawing, in formats that are each complete; return what there is to tell, a line each.

    Earlier files of the drawing in these formats that it has no more are removed. read: what it was made from.
    overwrite: replace files that are not the drawing's own, but never what was read. Raises Refused, before anything is
    written, and OSError.
    """
    folder.mkdir(parents=True, exist_ok=True)
    with locked(folder):
        told = []
        if finish_earlier(folder):
            told.append(f"{folder}: an earlier run was stopped while it replaced files here; that is now finished")
        record = read_record(folder)
        if record is None:
            told.append(f"{folder / RECORD_NAME}: not understood; files are known by what they say of themselves")
            record = {}
        found = tuple(refusals(folder, drawing, files, read, record))
        if any(each.final or not overwrite for each in found):
            raise Refused(tuple(each for each in found if each.final or not overwrite))
        removed, remarks = _no_more(folder, drawing, files, record)
        kept = {name: entry for name, entry in record.items() if name not in removed and (folder / name).exists()}
        new = {name: Entry(drawing, digest(content)) for name, content in files.items()}
        switch(folder, {**files, RECORD_NAME: as_bytes({**kept, **new})}, removed)
        return told + remarks + _not_drawn_now(folder, drawing, new, kept)


def _not_drawn_now(folder: Path, drawing: Drawing, new: Mapping[str, Entry], record: Mapping[str, Entry]) -> list[str]:
    """Tell of the drawing's files in other formats where those drawn now show that it has changed."""
    changed = any(name in record and record[name] != entry for name, entry in new.items())
    formats = {name.rpartition(".")[2] for name in new}
    own = {name.rpartition(".")[2] for name, entry in record.items() if entry.drawing == drawing}
    if not changed or own <= formats:
        return []
    return [f"{folder / drawing.name}: its files in {', '.join(sorted(own - formats))} are of an earlier drawing"]


def _no_more(
    folder: Path, drawing: Drawing, files: Mapping[str, bytes], record: Mapping[str, Entry]
) -> tuple[list[str], list[str]]:
    """Return the names of what an earlier, longer drawing left, to be removed, and what to tell. Raises OSError.

    Its sheets and tables would pass for those of the new one; which tables are its own, only the record knows. What is
    of another drawing, or does not say what it is, is left.
    """
    removed, told = [], []
    formats = {name.rpartition(".")[2] for name in files}
    for path in sorted(folder.iterdir()):
        name, format = path.name, path.suffix[1:]
        entry = record.get(name)
        if name in files or format not in formats or not path.is_file():
            continue
        is_sheet = (sheet_number(name, drawing.name) or 0) >= 2
        is_table = format == _OF_TABLES and entry is not None
        if not (is_sheet or is_table) or (entry is not None and entry.drawing != drawing):
            continue
        if is_of(path, drawing, entry):
            removed.append(name)
            told.append(f"{path}: removed, a {'sheet' if is_sheet else 'table'} of the earlier drawing")
        elif entry is not None or format == "png":  # in earlier versions a PNG did not say what it is
            told.append(f"{path}: not part of this drawing; left as it is")
    return removed, told
