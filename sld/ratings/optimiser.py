"""Strings with power optimisers: their voltage and current are those of the converters, not of the modules.

Source: IEC 62548-1:2023, DC conditioning units, and NEC 2023 690.7(B), 690.8(A)(1) (all from memory): maker's values.
"""

from __future__ import annotations

from math import ceil

from sld.citation import clause_from_memory
from sld.quantity import Given, Rating
from sld.ratings.specified import specified
from sld.ratings.symbol import Symbol

__all__ = ["operating_current", "string_voltage_max", "units_count"]

_CLAUSE = clause_from_memory("IEC 62548-1:2023", "NEC 2023 690.7(B)")


def units_count(modules_count: int, modules_per_unit: int) -> Rating:
    """Return how many units a string has: one for each few modules, the last perhaps with fewer."""
    given = (Given("N", modules_count), Given("m", modules_per_unit))
    return Rating(Symbol.NUNITS, ceil(modules_count / modules_per_unit), "", "N/m", given, _CLAUSE)


def string_voltage_max(units: Rating, output_voltage_max_v: float, declared_v: float | None) -> Rating:
    """Return the highest voltage of a string in V: as its maker declares it, else n · Uout,max of the units."""
    if declared_v is not None:
        return specified(Symbol.UOC_MAX, declared_v, "V")
    given = (Given("n", units.value), Given("Uout,max", output_voltage_max_v, "V"))
    return Rating(Symbol.UOC_MAX, units.value * output_voltage_max_v, "V", "n·Uout,max", given, _CLAUSE)


def operating_current(power_w: float, string_voltage_v: float, output_current_max_a: float) -> float:
    """Return the current of a string at STC in A: its power at the fixed voltage, at most what a unit gives."""
    return min(power_w / string_voltage_v, output_current_max_a)
