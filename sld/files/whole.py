"""One file that appears whole or not at all."""

from __future__ import annotations

import os
from contextlib import suppress
from pathlib import Path
from types import TracebackType

__all__ = ["Growing", "write_whole"]


def write_whole(path: Path, content: bytes) -> None:
    """Write a file beside its place and then put it there; on an error what was there stays. Raises OSError."""
    with Growing(path) as file:
        file.add(content)


class Growing:
    """A file that is written piece by piece beside its place, and put there at the end; on an error it never is."""

    def __init__(self, path: Path) -> None:
        """Begin. Raises OSError."""
        path.parent.mkdir(parents=True, exist_ok=True)
        self._path = path
        self._beside = path.with_name(f".{path.name}.{os.getpid()}.new")
        self._stream = self._beside.open("wb")

    def __enter__(self) -> Growing:
        return self

    def __exit__(self, kind: type[BaseException] | None, _: BaseException | None, __: TracebackType | None) -> None:
        if kind:
            self.drop()
        else:
            self.finish()

    def add(self, content: bytes) -> None:
        """Write more. Raises OSError."""
        self._stream.write(content)

    def finish(self) -> None:
        """Put the file into its place. Raises OSError."""
        try:
            self._stream.close()
            os.replace(self._beside, self._path)
        except BaseException:
            self.drop()
            raise

    def drop(self) -> None:
        """Leave the place as it was."""
        with suppress(OSError):  # what it still held could not be written, and is not wanted
            self._stream.close()
        self._beside.unlink(missing_ok=True)
