"""Conductor sizes of North America: the name of a size, its area, and the way back.

A gauge number stands for a diameter: 0000 (4/0) is 0.46 inch, 36 is 0.005 inch, and the 39 steps between are equal
ratios, so d = 0.127 mm · 92^((36 − n)/39). Above 4/0 a size is its area in thousands of circular mils; a circular mil
is the area of a circle of 0.001 inch. Source: ASTM B258 (gauge), ASTM B8 (areas); formulas as in any handbook.
"""

from __future__ import annotations

from math import pi

__all__ = ["KCMIL_MM2", "SIZES", "area_mm2", "name_of", "size_of"]

KCMIL_MM2 = pi / 4 * 25.4**2 / 1000
"""Thousand circular mils: 0.506707 mm². [mm²]"""

SIZES = (
    "14", "12", "10", "8", "6", "4", "3", "2", "1", "1/0", "2/0", "3/0", "4/0", "250", "300", "350", "400", "500",
    "600", "700", "750", "800", "900", "1000",
)  # fmt: skip
"""The sizes for power, rising: gauge numbers up to 4/0, then thousands of circular mils."""

_FIRST_IN_KCMIL = 250
_SAME_SHARE = 0.002
"""Areas that are given with three digits, such as 5.26 mm² for 10 AWG, name the same size."""


def area_mm2(size: str) -> float:
    """Return the area of a size, such as `10`, `2/0` or `250`. Raises ValueError for a text that is no size. [mm²]"""
    if "/" in size:
        zeros, _, rest = size.partition("/")
        if rest != "0" or zeros not in ("1", "2", "3", "4"):
            raise ValueError(f"{size} is no gauge number; there are 1/0 to 4/0")
        number = 1 - int(zeros)
    else:
        number = int(size)
    if number >= _FIRST_IN_KCMIL:
        return number * KCMIL_MM2
    if not -3 <= number <= 40:
        raise ValueError(f"{size} is no gauge number")
    diameter_mm = 0.127 * 92 ** ((36 - number) / 39)
    return float(pi / 4 * diameter_mm**2)


_AREAS_MM2 = {size: area_mm2(size) for size in SIZES}


def size_of(section_mm2: float) -> str:
    """Return the size that has an area, without its unit: `10`; nothing where no size has it."""
    for size, area in _AREAS_MM2.items():
        if abs(section_mm2 - area) <= _SAME_SHARE * area:
            return size
    return ""


def name_of(section_mm2: float) -> str:
    """Return the name of the size that has an area: `10 AWG`, `250 kcmil`; nothing where no size has it."""
    size = size_of(section_mm2)
    if not size:
        return ""
    return f"{size} kcmil" if size.isdigit() and int(size) >= _FIRST_IN_KCMIL else f"{size} AWG"
