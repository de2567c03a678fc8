"""A set of files put in the place of another: written beside it first, then switched as a whole.

A run may be killed at any point. Until all new files are written, and the list of what is to be done with them, nothing
in the folder has changed, and the next run throws them away. From then on the next run does what is left of the list.
Runs into one folder wait for each other.
"""

from __future__ import annotations

import json
import os
import shutil
from collections.abc import Iterable, Iterator, Mapping
from contextlib import contextmanager, suppress
from pathlib import Path

from sld.files.record import RECORD_NAME

try:
    import fcntl
except ImportError:  # a system without: runs into one folder at once are the user's to avoid there
    fcntl = None  # type: ignore[assignment]

__all__ = ["STAGE_NAME", "finish_earlier", "locked", "switch"]

STAGE_NAME = ".sld-new"
_OF_RECORDS = f"{RECORD_NAME}/"
_LIST, _UNFINISHED_LIST = "list.json", "list.tmp"


@contextmanager
def locked(folder: Path) -> Iterator[None]:
    """Keep other runs out of a folder; the system lets go when this process ends, however it does. Raises OSError."""
    if fcntl is None:
        yield
        return
    handle = os.open(folder, os.O_RDONLY)
    try:
        with suppress(OSError):  # a file system without locks
            fcntl.flock(handle, fcntl.LOCK_EX)
        yield
    finally:
        os.close(handle)


def switch(
    folder: Path, files: Mapping[str, bytes], removed: Iterable[str], records: Mapping[str, bytes] | None = None
) -> None:
    """Write files into a folder, and remove others; all of it or, on an error in writing, nothing.

    records: written last, into the folder of records. To be called within `locked`, after `finish_earlier`.
    Raises OSError.
    """
    stage = folder / STAGE_NAME
    stage.mkdir()
    try:
        (folder / RECORD_NAME).mkdir(exist_ok=True)
        everything = {**files, **(records or {})}
        for number, content in enumerate(everything.values()):
            (stage / str(number)).write_bytes(content)
        moves = [[str(number), name] for number, name in enumerate(everything)]
        (stage / _UNFINISHED_LIST).write_text(json.dumps({"moves": moves, "removed": list(removed)}), encoding="ascii")
        os.replace(stage / _UNFINISHED_LIST, stage / _LIST)
    except BaseException:
        shutil.rmtree(stage, ignore_errors=True)
        raise
    try:
        _carry_out(folder)
    except BaseException as stopped:
        if not isinstance(stopped, Exception):  # an interrupt: a set half switched is no state to leave a folder in
            _carry_out(folder)
        raise


def finish_earlier(folder: Path) -> bool:
    """Clear away what a killed run left, and do what it had listed; return whether there was a list. Raises OSError."""
    stage = folder / STAGE_NAME
    if not os.path.lexists(stage):
        return False
    listed = (stage / _LIST).is_file()
    _carry_out(folder)
    return listed


def _carry_out(folder: Path) -> None:
    """Do what is on the list and not yet done, then remove the list with its folder."""
    stage = folder / STAGE_NAME
    moves, removed = _listed(stage / _LIST)
    for number, name in moves:
        _move(stage / number, folder / name)
    for name in removed:
        (folder / name).unlink(missing_ok=True)
    with suppress(FileNotFoundError):
        shutil.rmtree(stage)


def _move(staged: Path, place: Path) -> None:
    """Put a file in its place; one that is not there was moved before the run was killed."""
    with suppress(FileNotFoundError):
        os.replace(staged, place)


def _listed(path: Path) -> tuple[list[tuple[str, str]], list[str]]:
    """Return the moves and removals of a list; none where there is no list or a name is not one of its folder."""
    try:
        document = json.loads(path.read_bytes())
        moves = [(str(number), str(name)) for number, name in document["moves"]]
        removed = [str(name) for name in document["removed"]]
    except (FileNotFoundError, ValueError, KeyError, TypeError):
        return [], []
    names = [*(number for number, _ in moves), *(name.removeprefix(_OF_RECORDS) for _, name in moves), *removed]
    return (moves, removed) if all(name == os.path.basename(name) for name in names) else ([], [])
