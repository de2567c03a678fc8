"""Gauge numbers as a spec writes them: `10 AWG`, `1/0 AWG`. No unit: the number counts down as wires grow."""

from __future__ import annotations

import re

from pydantic_core import PydanticCustomError

from sld.wire_size import SIZES, area_mm2

__all__ = ["GAUGE_PATTERN", "gauge_mm2"]

_GAUGE = re.compile(r"#?(?P<size>[0-9]+(?:/0)?) *AWG|(?:AWG|#) *(?P<after>[0-9]+(?:/0)?)(?: *AWG)?", re.IGNORECASE)
GAUGE_PATTERN = "#?[0-9]+(/0)? *[aA][wW][gG]|([aA][wW][gG]|#) *[0-9]+(/0)?( *[aA][wW][gG])?"
"""The same for a JSON Schema, whose regular expressions have no names and no flags."""
_NAMED = re.compile(r"awg|^#", re.IGNORECASE)
_GAUGES = tuple(size for size in SIZES if "/" in size or int(size) <= int(SIZES[0]))
_ZEROS = {"0": "1/0", "00": "2/0", "000": "3/0", "0000": "4/0"}


def gauge_mm2(given: object) -> float | None:
    """Return the area of a gauge number, None for what is not written as one. Raises PydanticCustomError.

    Refused: what names a gauge that is not made for power, and what cannot be read. [mm²]
    """
    if not isinstance(given, str) or not _NAMED.search(given.strip()):
        return None
    found = _GAUGE.fullmatch(given.strip())
    size = (found["size"] or found["after"]) if found else ""
    size = _ZEROS.get(size, size)
    if size in _GAUGES:
        return area_mm2(size)
    raise _refused(given, size)


def _refused(given: str, size: str) -> PydanticCustomError:
    expected = "a conductor size"
    if size in SIZES:
        reason, remedy = "is no gauge number", "write the unit as kcmil"
    elif size:
        reason, expected = "is no gauge of a power conductor", f"{', '.join(_GAUGES)} AWG, or an area in kcmil"
        remedy = "write the size of the conductor that is to be laid"
    else:
        reason, remedy = "cannot be read as a gauge", "write the number of the gauge, then AWG"
    context = {"given": f"`{given}`", "reason": reason, "expected": expected, "remedy": remedy}
    return PydanticCustomError("quantity_unit", "{given} {reason}, expected {expected}", context)
