"""The frequency of the public networks of a country, where there is but one."""

from __future__ import annotations

__all__ = ["usual_frequency_hz"]

_EUROPE = "AT BE BG CH CY CZ DE DK EE ES FI FR GB GR HR HU IE IS IT LT LU LV MK MT NL NO PL PT RO RS SE SI SK TR"
"""The members of CENELEC, whose networks have 50 Hz (EN 50160, clause and list of members from memory)."""

_ELSEWHERE = "AU NZ ZA"
"""Further countries of 50 Hz (from memory)."""

_NORTH_AMERICA = "CA MX US"
"""Countries of 60 Hz (IEC 60038:2009 Table 1, from memory)."""

_FREQUENCIES_HZ = {
    **dict.fromkeys((*_EUROPE.split(), *_ELSEWHERE.split()), 50.0),
    **dict.fromkeys(_NORTH_AMERICA.split(), 60.0),
}


def usual_frequency_hz(country: str | None) -> float | None:
    """Return the frequency of a country, None where it is not known or the country has both, as Japan. [Hz]"""
    return _FREQUENCIES_HZ.get(country or "")
