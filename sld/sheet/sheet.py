"""The flat sheet: strokes in page millimetres, each with its group. Renderers and the lint read nothing else."""

from __future__ import annotations

from sld.frozen import dataclass
from sld.picture.lettering import Letters
from sld.picture.picture import Picture
from sld.symbols.stroke import Box, Point, Stroke

__all__ = ["LAYERS", "NOTHING_TOLD", "About", "Chapter", "Group", "PlacedPicture", "Sheet"]

LAYERS = ("frame", "enclosure", "ac", "dc", "earth", "data", "symbol", "label", "flag", "table")
"""What a group of strokes is, in drawing order; also its CSS class in the SVG."""


@dataclass(frozen=True, slots=True)
class Group:
    """Strokes that belong together: a device's symbol and labels, a wire, a table.

    key: unique on the sheet, fit for an XML id. layer: one of LAYERS. title: what a pointer resting on it or a screen
    reader says, e.g. the trace of the device's ratings; may have several lines. status: new, existing or future.
    kind: the name of the symbol, for a device. at: where the symbol's origin stands, for a device with a symbol.
    section: the name of the section of the document that a table belongs to. stands_for: keys of the devices that the
    symbol stands for besides its own.
    """

    key: str
    layer: str
    strokes: tuple[Stroke, ...]
    title: str = ""
    status: str = "new"
    kind: str = ""
    at: Point | None = None
    section: str = ""
    stands_for: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class PlacedPicture:
    """A user's picture and the box that it fills. title: what a screen reader says."""

    box: Box
    picture: Picture
    title: str


@dataclass(frozen=True, slots=True)
class Sheet:
    """One page. number counts from 1. title and description are for the file's metadata and for screen readers.

    colour: monochrome, or restrained: conductors in a colour by their role. pictures: such as the logo.
    font: the user's, for letters that the font of the sheets lacks.
    """

    width_mm: float
    height_mm: float
    number: int
    title: str
    description: str
    language: str
    groups: tuple[Group, ...]
    colour: str = "monochrome"
    pictures: tuple[PlacedPicture, ...] = ()
    font: Letters | None = None


@dataclass(frozen=True, slots=True)
class About:
    """What the files of a drawing say about it besides title and description. date: YYYY-MM-DD, empty where unknown.

    title: another one than that of the first sheet, empty where it is that.
    """

    author: str = ""
    keywords: tuple[str, ...] = ()
    date: str = ""
    title: str = ""


NOTHING_TOLD = About()


@dataclass(frozen=True, slots=True)
class Chapter:
    """A document among the pages of several. first_page: from 1, counted through all."""

    title: str
    first_page: int
    pages_count: int
