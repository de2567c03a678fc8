"""Limits of the grid rules as a rule compares them: the value in VA, the sign, and the clause in words."""

from __future__ import annotations

from collections.abc import Iterator

from sld.frozen import dataclass
from sld.grid.entry import Entry
from sld.grid.evidence import Standing
from sld.grid.quantity import Quantity, Sign
from sld.model.system import System
from sld.words import Sayable, sequence

__all__ = ["GridLimit", "imbalance", "rule_words"]


@dataclass(frozen=True, slots=True)
class GridLimit:
    """A limit of one quantity. value: in A, W or VA. rule: its clause, and that it is to be confirmed where it is."""

    value: float
    sign: Sign
    rule: Sayable


def imbalance(system: System, quantity: Quantity) -> Iterator[GridLimit]:
    """Yield the limits of imbalance that the grid rules have for a quantity."""
    for entry in system.grid_rules.imbalance:
        for each in entry.when:
            if each.quantity is quantity and entry.phases in (None, system.supply.phases):
                yield GridLimit(each.base_limit, each.sign, rule_words(entry))


def rule_words(entry: Entry) -> Sayable:
    """Return the clause of an entry, and what it is worth where it is not confirmed."""
    if entry.standing is Standing.CONFIRMED:
        return entry.cited
    return sequence([entry.cited, entry.standing.phrase], "; ")
