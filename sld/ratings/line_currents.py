"""Currents of the three line conductors where some units work between two lines: phasors, not plain sums."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from itertools import combinations
from math import sqrt

from sld.citation import cited
from sld.quantity import Given, Rating
from sld.ratings.symbol import Symbol
from sld.words import phrase

__all__ = ["between_lines", "phasors"]

_VOLTAGES = {"L1": 1 + 0j, "L2": complex(-0.5, -sqrt(3) / 2), "L3": complex(-0.5, sqrt(3) / 2)}
"""Line-to-neutral voltages as unit phasors, L1 at 0°."""

_CLAUSE = cited(phrase("phasor sum of currents in phase with their voltages"), remark=phrase("own derivation"))


def phasors(units: Iterable[tuple[tuple[str, ...], float]]) -> dict[str, complex]:
    """Return the sum of the currents of each line conductor as a phasor in A.

    units: the lines of each unit and its current in A: one line or three (each in phase with its own voltage), or two,
    between which its current flows in phase with the voltage between them. Source: circuit theory.
    """
    found: dict[str, complex] = dict.fromkeys(_VOLTAGES, 0j)
    for lines, current_a in units:
        if len(lines) == 2:
            first, second = lines
            across = _VOLTAGES[first] - _VOLTAGES[second]
            found[first] += current_a * across / abs(across)
            found[second] -= current_a * across / abs(across)
        else:
            for line in lines:
                found[line] += current_a * _VOLTAGES[line]
    return found


def between_lines(currents: Mapping[str, complex]) -> tuple[Rating, ...]:
    """Return the neutral current, and the three-phase current whose rise equals the greatest rise between two lines.

    The rise between lines i and j is R · L · |Ii − Ij|, that of a balanced three-phase current √3 · R · L · I.
    """
    given = tuple(Given(f"I{line}", abs(current), "A") for line, current in currents.items())
    neutral_a = abs(sum(currents.values()))
    greatest_a = max(abs(one - other) for one, other in combinations(currents.values(), 2))
    return (
        Rating(Symbol.I_NEUTRAL, neutral_a, "A", "|Σ I|", given, _CLAUSE),
        Rating(Symbol.IRISE_LINES, greatest_a / sqrt(3), "A", "max |Ii − Ij| / √3", given, _CLAUSE),
    )
