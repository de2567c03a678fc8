"""The index of a run: a page with a picture, the state and the files of each spec."""

from __future__ import annotations

import os
import tempfile
from collections import Counter
from pathlib import Path
from urllib.parse import quote

from sld import files
from sld.cli.outcome import Outcome, State
from sld.finding import Tally
from sld.index.page import MARK, Entry, item, page

__all__ = ["Index"]


class Index:
    """The page. Its items wait in a file of their own, as what stands before them is known last."""

    name = "index"

    def __init__(self, path: Path) -> None:
        """Begin the file. Raises OSError."""
        self._folder = path.parent
        self._items = tempfile.TemporaryFile("w+", encoding="utf-8")  # noqa: SIM115 - closed by `finish` or `drop`
        self._states: Counter[str] = Counter()
        self._file = files.Growing(path)

    @staticmethod
    def is_earlier(head: bytes) -> bool:
        """Return whether a file that begins so is an index."""
        return not head or head.startswith(MARK.encode())

    def add(self, outcome: Outcome) -> None:
        """Add a spec. Raises OSError."""
        self._states[outcome.state.value] += 1
        counts = outcome.counts or Tally()
        entry = Entry(
            _shown(str(outcome.path)),
            outcome.state.value,
            outcome.title,
            str(counts) if counts != Tally() else "",
            outcome.codes,
            tuple(self._address(each) for each in outcome.files),
            _shown(outcome.failure),
        )
        self._items.write(item(entry))

    def finish(self, closing: str) -> None:
        """Put the page into its place. Raises OSError."""
        self._items.seek(0)
        states = {each.value: self._states[each.value] for each in State if self._states[each.value]}
        for part in page(self._items, states, closing):
            self._file.add(part.encode())
        self._items.close()
        self._file.finish()

    def drop(self) -> None:
        """Leave its place as it was."""
        self._items.close()
        self._file.drop()

    def _address(self, file: str) -> str:
        """Return the relative address of a file, seen from the page; of any bytes that a file name may have."""
        return quote(Path(os.path.relpath(file, self._folder)).as_posix().encode("utf-8", "surrogateescape"))


def _shown(text: str) -> str:
    """Return a text with what no encoding has, a part of a file name in another one, as its numbers."""
    return text.encode("utf-8", "backslashreplace").decode("utf-8")
