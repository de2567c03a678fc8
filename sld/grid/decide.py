"""Which entries of a country hold for a system: pure comparisons of its quantities with the limits."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from sld.frozen import dataclass
from sld.grid.entry import AskedPaper, Condition, Limit
from sld.grid.notices import AskedNotice
from sld.grid.quantity import Quantity, holds
from sld.grid.settings import SettingsSet

__all__ = ["Facts", "deciding", "is_met", "met"]


@dataclass(frozen=True, slots=True)
class Facts:
    """What is known of a system: the phases of its supply, and its quantities in A, W or VA as far as they exist."""

    phases: int
    values: Mapping[Quantity, float]


def is_met(condition: Condition, facts: Facts) -> bool:
    """Return whether a condition holds. A quantity that a system does not have meets none but an upper limit.

    A system without single-phase inverters is below every limit for these.
    """
    return holds(facts.values.get(condition.quantity, 0.0), condition.sign, condition.base_limit)


def met(entry: Limit | AskedPaper | SettingsSet | AskedNotice, facts: Facts) -> bool:
    """Return whether an entry holds: the phases are those it is for, and all of its conditions hold."""
    phases = entry.phases if isinstance(entry, Limit) else None
    return phases in (None, facts.phases) and all(is_met(each, facts) for each in entry.when)


def deciding(limits: Iterable[Limit], facts: Facts) -> Limit | None:
    """Return the first entry that holds, None where none does."""
    return next((limit for limit in limits if met(limit, facts)), None)
