"""What stands where in a pack of documents: it is known when all others are on their pages."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field

from sld.documents.document import Document
from sld.frozen import dataclass

__all__ = ["Contents", "Entry"]


@dataclass(frozen=True, slots=True)
class Entry:
    """A document with its pages, counted through the pack. sections: the page on which each begins, by its name."""

    document: Document
    first_page: int
    pages_count: int
    sections: Mapping[str, int] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Contents:
    """The documents of a pack in their order, the cover left out."""

    entries: tuple[Entry, ...]
