"""The sections that documents are made of. None knows how wide a sheet is or what language is spoken on it."""

from __future__ import annotations

from enum import Enum

from sld.documents.cell import Cell
from sld.frozen import dataclass
from sld.words import Sayable, phrase

__all__ = [
    "Column",
    "FlagForm",
    "FlaggedList",
    "FlaggedRow",
    "Form",
    "Paragraphs",
    "Section",
    "Table",
    "is_empty",
]


@dataclass(frozen=True, slots=True)
class Column:
    """A column of a table.

    share_factor: its share of the width that is left, None where it is as wide as its content. right: numbers, aligned
    right. below, behind: on paper it stands below the column before it, or behind that on the same line where it says
    something; in rows it is a column like the others. usual: what a cell behind another need not say on paper, because
    its heading there, on_paper, tells it. short: its heading on paper where all its
    designations have a short form, which then stands there.
    """

    heading: Sayable
    share_factor: float | None = None
    right: bool = False
    below: bool = False
    behind: bool = False
    usual: Cell | None = None
    on_paper: Sayable | None = None
    short: Sayable | None = None


@dataclass(frozen=True, slots=True)
class Table:
    """A titled table; each row has one cell for each column. name: by which readers and files tell it from others.

    abreast: its rows are short; where there is the width, two of them stand side by side. placards: on paper each row
    is a label at print size, of four texts: what it says, its data, where, its clause. sparse: columns in which no row
    says anything are left out on paper.
    """

    name: str
    title: Sayable
    columns: tuple[Column, ...]
    rows: tuple[tuple[Cell, ...], ...]
    abreast: bool = False
    placards: bool = False
    sparse: bool = False


@dataclass(frozen=True, slots=True)
class Form:
    """Captions with values, to be read or filled in."""

    name: str
    title: Sayable
    fields: tuple[tuple[Sayable, Cell], ...]


@dataclass(frozen=True, slots=True)
class Paragraphs:
    """Titled paragraphs.

    sign: the name of a graphical symbol that stands before the first one, or empty. dense: on paper nothing is between
    them, and dots stand before those without numbers.
    """

    name: str
    title: Sayable
    paragraphs: tuple[Sayable, ...]
    numbered: bool = False
    sign: str = ""
    dense: bool = False


class FlagForm(Enum):
    """What a flag looks like, so that one sees how bad it is before one reads. The value: what the legend says."""

    DANGER = phrase("Danger, see the findings")
    NON_COMPLIANCE = phrase("Non-compliance, see the findings")
    ADVICE = phrase("Advice, see the findings")
    ACCEPTED = phrase("Accepted deviation")
    REVISED = phrase("Changed by the newest revision")


@dataclass(frozen=True, slots=True)
class FlaggedRow:
    """What one flag on the diagram means. number: 0 for none. paragraphs: the finding first, then the remedy."""

    number: int
    paragraphs: tuple[Sayable, ...]
    form: FlagForm = FlagForm.ADVICE


@dataclass(frozen=True, slots=True)
class FlaggedList:
    """The list of findings, each behind its flag."""

    name: str
    title: Sayable
    rows: tuple[FlaggedRow, ...]


Section = Table | Form | Paragraphs | FlaggedList


def is_empty(section: Section) -> bool:
    """Return whether a section has nothing to say."""
    match section:
        case Table() | FlaggedList():
            return not section.rows
        case Paragraphs():
            return not section.paragraphs
        case Form():
            return not section.fields
