"""The marks at both ends of a cut, which say where a conductor goes on, and what parts are told apart by.

Marks of a pair are named by what was cut: CHILD/to and CHILD/from, or BUSBAR/to-N and BUSBAR/from-N, where N ways are
before the cut; the part of the busbar behind it is BUSBAR/continued-N.
"""

from __future__ import annotations

from sld.layout.diagram.diagram import Cell, Join
from sld.layout.diagram.fold import names_of
from sld.layout.diagram.line import Line, Role
from sld.words import NOTHING, Phrase, Sequence, Verbatim

__all__ = [
    "CONTINUED", "REFERENCE", "designation_of", "goes_on", "is_busbar", "is_mark", "mark_from", "mark_to", "other_end",
]  # fmt: skip

CONTINUED = "/continued-"
REFERENCE = Line(Role.REFERENCE, NOTHING, references_count=1)
"""The line that says where it goes on."""

_MARKS = ("continued_left", "continued_right", "continued_data")


def is_mark(cell: Cell) -> bool:
    """Return whether a cell stands for what is on another sheet."""
    return cell.symbol in _MARKS


def is_busbar(cell: Cell) -> bool:
    """Return whether a cell is a conductor with ways, not a device with terminals."""
    return cell.join is Join.SPAN and cell.symbol == "busbar"


def designation_of(cell: Cell) -> str:
    """Return the designation of a cell, its key where it has none."""
    names = names_of(cell)[0]
    line = names[-1].said if names else None
    said = line.parts[-1] if isinstance(line, Sequence) else line  # in the overview behind the number of branches
    return said.text if isinstance(said, Verbatim) else cell.key


def goes_on(cell: Cell) -> bool:
    """Return whether a cell is the mark behind the last way of a busbar that goes on on another sheet."""
    return is_mark(cell) and "/to-" in cell.key


def other_end(key: str) -> str:
    """Return the key of the mark that a mark of this key refers to."""
    owner, _, end = key.rpartition("/")
    word, dash, number = end.partition("-")
    return f"{owner}/{'from' if word == 'to' else 'to'}{dash}{number}"


def mark_to(key: str, child: Cell, said: Phrase) -> Cell:
    """Return the mark that stands in the place of a child."""
    return Cell(key, "continued_left", (REFERENCE,), (Line(Role.LINK, said),), kind=child.kind, status=child.status)


def mark_from(key: str, child: Cell, said: Phrase) -> Cell:
    """Return the mark that stands in the place of the parent of a child."""
    return Cell(
        key, "continued_right", (REFERENCE,), (Line(Role.LINK, said),), status=child.status, children=(child,)
    )  # fmt: skip
