"""Put the files of one drawing into a folder."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping
from itertools import count
from pathlib import Path

from sld.files.marks import sheet_number
from sld.files.record import Drawing, Entry, Record, as_bytes, digest, owner, record_name
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
        record = read_record(folder, drawing.name)
        if record is None:
            told.append(
                f"{folder / record_name(drawing.name)}: not understood; files are known by what they say of themselves"
            )
            record = {}
        found = tuple(refusals(folder, drawing, files, read, record))
        if any(each.final or not overwrite for each in found):
            raise Refused(tuple(each for each in found if each.final or not overwrite))
        removed, remarks = _no_more(folder, drawing, files, record)
        kept = {name: entry for name, entry in record.items() if name not in removed and (folder / name).exists()}
        new = {name: Entry(drawing, digest(content)) for name, content in files.items()}
        records = {drawing.name: {**kept, **new}, **_without(folder, drawing, files, record)}
        switch(folder, files, removed, {record_name(name): as_bytes(each) for name, each in records.items()})
        return told + remarks + _not_drawn_now(folder, drawing, new, kept)


def _without(folder: Path, drawing: Drawing, files: Iterable[str], record: Record) -> dict[str, Record]:
    """Return the records of other drawings without the files that are now this one's, by drawing. Raises OSError."""
    others: dict[str, Record] = {}
    for name in files:
        if name not in record and (entry := owner(folder, name, record)):
            other = others.setdefault(entry.drawing.name, read_record(folder, entry.drawing.name) or {})
            other.pop(name, None)
    return others


def _not_drawn_now(folder: Path, drawing: Drawing, new: Record, record: Record) -> list[str]:
    """Tell of the drawing's files in other formats where those drawn now show that it has changed."""
    changed = any(name in record and record[name] != entry for name, entry in new.items())
    formats = {name.rpartition(".")[2] for name in new}
    own = {name.rpartition(".")[2] for name, entry in record.items() if entry.drawing == drawing}
    if not changed or own <= formats:
        return []
    return [f"{folder / drawing.name}: its files in {', '.join(sorted(own - formats))} are of an earlier drawing"]


def _no_more(folder: Path, drawing: Drawing, files: Mapping[str, bytes], record: Record) -> tuple[list[str], list[str]]:
    """Return the names of what an earlier, longer drawing left, to be removed, and what to tell. Raises OSError.

    Its sheets and tables would pass for those of the new one; which tables are its own, only the record knows. What is
    of another drawing, or does not say what it is, is left.
    """
    removed, told = [], []
    formats = {name.rpartition(".")[2] for name in files}
    for name in sorted({*record, *_sheets_there(folder, drawing.name, files)}):
        path, format = folder / name, name.rpartition(".")[2]
        if name in files or format not in formats or not path.is_file():
            continue
        entry = owner(folder, name, record)
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


def _sheets_there(folder: Path, name: str, files: Collection[str]) -> Iterator[str]:
    """Yield the names of the further sheets of a drawing, the new ones and those there, up to the first of neither."""
    for format in {file.rpartition(".")[2] for file in files}:
        for number in count(2):
            sheet = f"{name}-{number}.{format}"
            if sheet not in files and not (folder / sheet).exists():
                break
            yield sheet
