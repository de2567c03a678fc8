"""What the limits of a country are about: the quantities of a system that decide what is asked of it."""

from __future__ import annotations

from enum import Enum
from operator import ge, gt, le, lt

from sld.words import Phrase, phrase

__all__ = ["UNITS", "WORDS", "Quantity", "Sign", "holds"]


class Quantity(Enum):
    """A quantity of the whole system, existing and new, without what is only planned."""

    LINE_CURRENT = "line_current"
    """AC current of the most loaded line at the nominal voltage, no diversity."""
    LINE_POWER = "line_power"
    """Apparent power of the most loaded line."""
    APPARENT_POWER = "apparent_power"
    """Highest apparent power of inverters and battery converters."""
    ACTIVE_POWER = "active_power"
    """Rated AC power of inverters and battery converters."""
    ARRAY_POWER = "array_power"
    """Power of the modules at standard test conditions."""
    EXPORT_POWER = "export_power"
    """Highest power fed in: the feed-in limit, else the rated AC power."""
    LINE_EXPORT = "line_export"
    """The same for one line."""
    SINGLE_PHASE_POWER = "single_phase_power"
    """Apparent power of the largest single-phase unit."""
    SINGLE_PHASE_SUM = "single_phase_sum"
    """Apparent power of all single-phase units together."""
    LINE_DIFFERENCE = "line_difference"
    """Apparent power of the most loaded line above that of the least loaded, of single-phase units."""


UNITS: dict[Quantity, tuple[str, float]] = {
    Quantity.LINE_CURRENT: ("A", 1.0),
    Quantity.LINE_POWER: ("kVA", 1000.0),
    Quantity.APPARENT_POWER: ("kVA", 1000.0),
    Quantity.ACTIVE_POWER: ("kW", 1000.0),
    Quantity.ARRAY_POWER: ("kWp", 1000.0),
    Quantity.EXPORT_POWER: ("kW", 1000.0),
    Quantity.LINE_EXPORT: ("kW", 1000.0),
    Quantity.SINGLE_PHASE_POWER: ("kVA", 1000.0),
    Quantity.SINGLE_PHASE_SUM: ("kVA", 1000.0),
    Quantity.LINE_DIFFERENCE: ("kVA", 1000.0),
}
"""The unit that limits are written in, and how many of the base unit (A, W, VA) it is."""

WORDS: dict[Quantity, Phrase] = {
    Quantity.LINE_CURRENT: phrase("current of the most loaded line"),
    Quantity.LINE_POWER: phrase("apparent power of the most loaded line"),
    Quantity.APPARENT_POWER: phrase("highest apparent power of inverters and battery converters"),
    Quantity.ACTIVE_POWER: phrase("rated AC power of inverters and battery converters"),
    Quantity.ARRAY_POWER: phrase("power of the modules"),
    Quantity.EXPORT_POWER: phrase("highest power fed in"),
    Quantity.LINE_EXPORT: phrase("highest power fed into one line"),
    Quantity.SINGLE_PHASE_POWER: phrase("largest single-phase unit"),
    Quantity.SINGLE_PHASE_SUM: phrase("single-phase units together"),
    Quantity.LINE_DIFFERENCE: phrase("difference between the lines"),
}


class Sign(Enum):
    """How a quantity is compared with its limit. The same number is `up to` in one country and `from` in the next."""

    UP_TO = "<="
    BELOW = "<"
    ABOVE = ">"
    FROM = ">="

    @property
    def opposite(self) -> Sign:
        """Return the sign that holds where this one does not."""
        return {Sign.UP_TO: Sign.ABOVE, Sign.ABOVE: Sign.UP_TO, Sign.BELOW: Sign.FROM, Sign.FROM: Sign.BELOW}[self]

    @property
    def printed(self) -> str:
        """Return the sign as it is printed."""
        return {"<=": "≤", ">=": "≥"}.get(self.value, self.value)


_COMPARE = {Sign.UP_TO: le, Sign.BELOW: lt, Sign.ABOVE: gt, Sign.FROM: ge}
_NOISE = 1e-9
"""Of the arithmetic, as a share of the limit: 3 · 10 kVA is 30 kVA."""


def holds(value: float, sign: Sign, limit: float) -> bool:
    """Return whether a value stands to a limit as the sign says; both in the same unit."""
    if abs(value - limit) <= _NOISE * abs(limit):
        value = limit
    return bool(_COMPARE[sign](value, limit))
