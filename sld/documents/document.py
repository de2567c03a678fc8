"""A document: what its title block says, and its sections in the order they are read."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from enum import Enum

from sld.documents.drawing.measures import Measured
from sld.documents.drawing.sheet_index import Indexed
from sld.documents.section import Section
from sld.documents.title import Metadata, TitleBlock
from sld.frozen import dataclass
from sld.words import Language, Sayable

__all__ = ["Document", "OfTheDiagram"]


class OfTheDiagram(Enum):
    """Sections that are made where the diagram is laid out, because they tell of it."""

    SHEET_INDEX = "sheet_index"
    DIFFERENCES = "differences"
    LEGEND = "legend"


@dataclass(frozen=True, slots=True)
class Document:
    """What there is to tell, for one reader, in one language; how it is laid out is not known yet.

    name: of its kind, as the registry has it. hover: what a pointer resting on a device or flag says, by its key.
    indexed: what the index of sheets tells of each inverter. measured: what may differ between devices that are drawn
    once. paper: the size asked for.
    """

    name: str
    title: TitleBlock
    sections: tuple[Section | OfTheDiagram, ...]
    language: Language
    metadata: Metadata
    description: Sayable
    paper: str
    largest_paper: str | None = None
    colour: str = "monochrome"
    hover: Mapping[str, Sayable] = field(default_factory=dict)
    indexed: Mapping[str, Indexed] = field(default_factory=dict)
    measured: Mapping[str, Measured] = field(default_factory=dict)
    designations: Mapping[str, str] = field(default_factory=dict)
