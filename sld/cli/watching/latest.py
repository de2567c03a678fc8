"""The page as it is now: of the last spec that could be used, with the errors of the one that cannot."""

from __future__ import annotations

import threading
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

from sld import run
from sld.frozen import dataclass
from sld.spec import Unusable
from sld.spec.quote import counted, quote
from sld.webpage.page import Live, without_sheets

if TYPE_CHECKING:
    from sld.sheet.sheet import Sheet

__all__ = ["Latest", "Options"]

FEED = "changes"
"""Where the page asks for changes: an address beside its own."""


@dataclass(frozen=True, slots=True)
class Options:
    """How the spec is drawn; paper and reader are None where the spec says them. for_print: the paper of the print."""

    paper: str | None = None
    reader: str | None = None
    allow_outside: bool = False
    for_print: str | None = None


class Latest:
    """The page of one spec. `version` counts its changes; who waits for one is woken."""

    def __init__(self, spec: Path, options: Options, tell: Callable[[str], None]) -> None:
        self.spec, self.options, self._tell = spec, options, tell
        self.version = 0
        self.page = b""
        self._changed = threading.Condition()
        self._good: tuple[run.Checked, tuple[Sheet, ...]] | None = None
        self._files: tuple[Path, ...] = (spec,)
        self._seen: tuple[object, ...] = ()

    def look(self) -> bool:
        """Draw again where a file of the spec is another than before; return whether it was."""
        seen = tuple(_state(each) for each in self._files)
        if seen == self._seen:
            return False
        self._draw()
        self._seen = tuple(_state(each) for each in self._files)
        return True

    def wait(self, version: int, seconds: float) -> int:
        """Return the version after waiting up to some seconds for another than one."""
        with self._changed:
            self._changed.wait_for(lambda: self.version != version, seconds)
            return self.version

    def _draw(self) -> None:
        errors: tuple[str, ...] = ()
        try:
            checked = run.check(self.spec, allow_outside=self.options.allow_outside)
            self._files = checked.source.files()
            if self.options.for_print:
                checked = run.for_print(checked, self.options.for_print)
            drawn = run.draw(checked, paper=self.options.paper, reader=self.options.reader)
            self._good = checked, drawn.sheets
            self._tell(f"{self.spec}: {counted(checked.findings)}")
        except Unusable as unusable:
            errors = tuple(quote(unusable.source, each) for each in unusable.findings)
            self._files = tuple(dict.fromkeys((*self._files, *unusable.source.files())))
            self._tell(errors[0])
        except Exception as fault:  # whoever writes a spec goes on, whatever this program does wrong
            errors = (f"a fault of the program, not of the spec: {type(fault).__name__}: {fault}",)
            self._tell(f"{self.spec}: {errors[0]}")
        live = Live(FEED, errors)
        made = run.webpage(*self._good, live=live) if self._good else without_sheets(str(self.spec), live)
        with self._changed:
            self.page = made
            self.version += 1
            self._changed.notify_all()


def _state(path: Path) -> object:
    """Return what changes when a file is saved, None for a file that is not there."""
    try:
        told = path.stat()
    except OSError:
        return None
    return told.st_mtime_ns, told.st_size, told.st_ino
