"""Sheets that an earlier, longer drawing left in the folder: they would pass for sheets of the new one."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

__all__ = ["clear"]

_MARKS = {"svg": 'aria-labelledby="sheet-{}-title"', "txt": "sheet {} ", "dxf": "999\nsld sheet {}\n"}
"""What our own sheet of a number has near its beginning, by format; a PNG has nothing of the kind."""

_HEAD_BYTES = 1000


def clear(folder: Path, name: str, format: str, count: int) -> Iterator[str]:
    """Remove the files NAME-<n>.<format> beyond the count that are sheet n of a drawing of ours; yield what to say.

    What has no such mark is somebody else's, or the first sheet of a spec of that name, and is left. Raises OSError.
    """
    pattern = re.compile(rf"{re.escape(name)}-([1-9][0-9]*)\.{re.escape(format)}")
    for path in sorted(folder.iterdir()):
        match = pattern.fullmatch(path.name)
        if not match or int(match[1]) <= max(count, 1) or not path.is_file():
            continue
        if _is_ours(path, format, match[1]):
            path.unlink()
            yield f"{path}: removed, a sheet of the earlier drawing; this one has {count}"
        elif format not in _MARKS:
            yield f"{path}: not part of this drawing, which has {count} sheets; left as it is"


def _is_ours(path: Path, format: str, number: str) -> bool:
    """Return whether a file says of itself that it is the sheet with this number."""
    if format not in _MARKS:
        return False
    with path.open("rb") as stream:
        head = stream.read(_HEAD_BYTES).decode("utf-8", "replace")
    start = head.partition("<svg ")[2] if format == "svg" else head
    mark = _MARKS[format].format(number)
    return mark in start if format == "svg" else start.startswith(mark)
