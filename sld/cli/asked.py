"""What `sld draw` was asked for."""

from __future__ import annotations

from pathlib import Path

from sld.cli.specs import FailOn
from sld.frozen import dataclass

__all__ = ["Asked"]


@dataclass(frozen=True, slots=True)
class Asked:
    """What was asked for on the command line; paper and reader are None where the spec says them.

    specs: those of the run that end as files of a drawing do, none of which is replaced. program: the digest of all
    that draws. for_print: the paper that the drawing is laid out for, None for that of the spec.
    """

    out: Path
    formats: tuple[str, ...]
    documents: tuple[str, ...]
    paper: str | None
    reader: str | None
    dpi: int
    overwrite: bool
    fail_on: FailOn
    allow_outside: bool
    specs: tuple[Path, ...]
    program: str = ""
    for_print: str | None = None

    @property
    def how(self) -> tuple[object, ...]:
        """Return what decides on the files beside what is read: the program, and the options that change the ink."""
        dpi = self.dpi if "png" in self.formats else None
        return self.program, self.paper, self.for_print, self.reader, dpi, self.allow_outside
