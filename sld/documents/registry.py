"""Every document there is: its name, what it is called, its sections, and how it is made."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from sld.documents.calculation.document import calculation
from sld.documents.document import Document
from sld.documents.drawing.document import drawing
from sld.finding import Finding
from sld.layout.diagram.flags import Flag
from sld.model.system import System
from sld.readers import READERS
from sld.steps import Ratings
from sld.words import Phrase, phrase

__all__ = ["KINDS", "DocumentKind"]

Make = Callable[[System, Ratings, Sequence[Finding], Sequence[Flag]], Document]


@dataclass(frozen=True, slots=True)
class DocumentKind:
    """A kind of document. sections: names of all that it may have, in their order. diagram: whether it has one."""

    name: str
    title: Phrase
    sections: tuple[str, ...]
    make: Make
    diagram: bool = False

    @property
    def readers(self) -> tuple[str, ...]:
        """Return for whom it is made."""
        return tuple(name for name, reader in READERS.items() if self.name in reader.documents)


_EVERY = (
    DocumentKind(
        "drawing",
        phrase("Single-line diagram"),
        (
            "cautions", "findings", "sheet_index", "review", "summary", "legend", "notes", "from_memory",
            "insulation_test", "accepted", "assumptions", "strings", "cables", "equipment", "terminals", "earthing",
            "data_chains", "data_bus", "data_links",
        ),
        drawing,
        diagram=True,
    ),
    DocumentKind(
        "calculation",
        phrase("Calculation"),
        (
            "notes", "inverters", "batteries", "generators", "loads", "boards", "main_board", "supply", "earthing",
            "data_bus", "system",
        ),
        calculation,
    ),
)  # fmt: skip

KINDS: dict[str, DocumentKind] = {each.name: each for each in _EVERY}
"""By name, the word of the command line."""
