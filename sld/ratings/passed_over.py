"""The standard values next to a chosen one that do not do, each with why."""

from __future__ import annotations

from collections.abc import Sequence

from sld.quantity import Rating
from sld.words import Sayable, amount, phrase

__all__ = ["SHOWN_COUNT", "below", "nearest", "outgrown", "too_small"]

SHOWN_COUNT = 2
"""How many are told: the nearest ones."""


def below(values: Sequence[float], least: float, unit: str) -> tuple[Sayable, ...]:
    """Return the largest of some standard values that are below a demand, largest first, with the demand."""
    smaller = sorted((each for each in values if each < least), reverse=True)
    return tuple(
        phrase("{value}: below {least}", value=amount(each, unit), least=amount(least, unit))
        for each in smaller[:SHOWN_COUNT]
    )


def too_small(section_mm2: float, has: Rating, limit: str) -> Sayable:
    """Return why a section in mm² is not enough. has: its capacity or its change of voltage; limit: its symbol."""
    section = amount(section_mm2, "mm²")
    if has.unit == "%":
        return phrase(
            "{section}: {symbol} = {value}, above {limit}", section=section, symbol=has.symbol, value=has, limit=limit
        )
    return phrase(
        "{section}: {symbol} = {value}, below {limit}", section=section, symbol=has.symbol, value=has, limit=limit
    )


def nearest(passed_over: Sequence[Sayable]) -> tuple[Sayable, ...]:
    """Return the nearest of what was passed over from the smallest up, the nearest first."""
    return tuple(reversed(passed_over[-SHOWN_COUNT:]))


def outgrown(section_mm2: float, demand: Sayable) -> Sayable:
    """Return that a section in mm² carries the current and another demand asks for more."""
    return phrase("{section}: {demand} asks for more", section=amount(section_mm2, "mm²"), demand=demand)
