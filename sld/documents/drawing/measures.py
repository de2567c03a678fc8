"""What may differ between devices that are drawn once: the lengths of cables, and what follows from them."""

from __future__ import annotations

from collections.abc import Mapping

from sld.citation import with_mark
from sld.documents.cell import Cell, by_ratings, given
from sld.frozen import dataclass
from sld.model.device import Busbar, Cable
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.steps import Ratings
from sld.words import amount, sequence, unbroken

__all__ = ["Measured", "measures"]


@dataclass(frozen=True, slots=True)
class Measured:
    """A device and what may differ of it."""

    designation: str
    value: Cell


def measures(system: System, ratings: Ratings) -> Mapping[str, Measured]:
    """Return by their keys the lengths of cables and the fault currents of boards."""
    found = {each.key: Measured(each.designation, given(amount(each.given.length_m, "m"))) for each in system.of(Cable)}
    for board in system.of(Busbar):
        symbols = ((Symbol.IK_MAX, "Ik"), (Symbol.IP, "ip"))
        told = [(name, rating) for symbol, name in symbols if (rating := ratings.get(board.key, symbol))]
        said = sequence([unbroken(name, with_mark(amount(rating.value, rating.unit), rating)) for name, rating in told])
        if told:
            found[board.key] = Measured(board.designation, by_ratings(said, *(rating for _, rating in told)))
    return found
