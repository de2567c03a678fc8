"""What a network operator is told of a system: current and power of its most loaded line, the power that it feeds in.

All at the nominal voltage and unity power factor, every unit at its highest at once.
"""

from __future__ import annotations

from sld.citation import cited
from sld.quantity import Given, Rating
from sld.ratings.symbol import Symbol
from sld.words import phrase

__all__ = [
    "fed_in",
    "fed_into_a_line",
    "largest_single_phase",
    "limit_current",
    "line_current",
    "line_current_between",
    "line_power",
    "rated_power",
    "single_phase_sum",
]

_CURRENT = cited(phrase("definition"), remark=phrase("AC rating over U0, no diversity"))
"""As an operator computes it:
https://www.westernpower.co.uk/connections-landing/g98-connection-procedures: 9,000 / (230 x 3) = 13.04 A a phase."""

_DEFINITION = cited(phrase("definition"))
_LIMIT = cited(phrase("common practice: the limit holds for all lines alike"))


def line_current(three_phase_va: float, one_line_va: float, to_neutral_v: float) -> Rating:
    """Return the current of a line at the nominal voltage: a third of the three-phase units, and what is on it alone.

    three_phase_va: of all three-phase units. one_line_va: of the single-phase units on the most loaded line. [A]
    """
    voltage = Given("U0", to_neutral_v, "V")
    three, one = Given("S3", three_phase_va, "VA"), Given("S1", one_line_va, "VA")
    value = three_phase_va / (3 * to_neutral_v) + one_line_va / to_neutral_v
    if not one_line_va:
        return Rating(Symbol.ILINE, value, "A", "S3 / (3 · U0)", (three, voltage), _CURRENT)
    if not three_phase_va:
        return Rating(Symbol.ILINE, value, "A", "S1 / U0", (one, voltage), _CURRENT)
    return Rating(Symbol.ILINE, value, "A", "S3 / (3 · U0) + S1 / U0", (three, one, voltage), _CURRENT)


def line_current_between(lines_a: dict[str, float]) -> Rating:
    """Return the current of the most loaded line where units work between two lines. lines_a: of each line, summed."""
    given = tuple(Given(f"I{line}", current_a, "A") for line, current_a in lines_a.items())
    return Rating(Symbol.ILINE, max(lines_a.values()), "A", "max I", given, _CURRENT)


def line_power(current: Rating, to_neutral_v: float) -> Rating:
    """Return the apparent power of the most loaded line. [VA]"""
    given = (current.as_input(), Given("U0", to_neutral_v, "V"))
    return Rating(Symbol.SLINE, current.value * to_neutral_v, "VA", "Iline · U0", given, _DEFINITION)


def rated_power(sources_w: tuple[Given, ...]) -> Rating:
    """Return the rated power of all that feeds the AC side; of a battery converter its apparent power. [W]"""
    return Rating(Symbol.PSOURCES, sum(each.number for each in sources_w), "W", "Σ P", sources_w, _DEFINITION)


def fed_in(rated_w: float, limit_w: float | None) -> Rating:
    """Return the highest power fed in: the rated power, at most the feed-in limit. [W]"""
    if limit_w is None:
        return Rating(Symbol.PFEED, rated_w, "W", "Psources", (Given("Psources", rated_w, "W"),), _DEFINITION)
    given = (Given("Psources", rated_w, "W"), Given("PAV,E", limit_w, "W"))
    return Rating(Symbol.PFEED, min(rated_w, limit_w), "W", "min(Psources, PAV,E)", given, _DEFINITION)


def limit_current(limit_w: float, lines_count: int, to_neutral_v: float) -> Rating:
    """Return the feed-in limit as a current of each line, at unity power factor. lines_count: fed into. [A]"""
    given = (Given("PAV,E", limit_w, "W"), Given("n", lines_count), Given("U0", to_neutral_v, "V"))
    value = limit_w / (lines_count * to_neutral_v)
    return Rating(Symbol.IFEED_LIMIT, value, "A", "PAV,E / (n · U0)", given, _DEFINITION)


def fed_into_a_line(line_w: float, limit_w: float | None, shared: int) -> Rating:
    """Return the highest power fed into one line. shared: of how many lines the limit holds together, all alike. [W]"""
    line = Given("PL", line_w, "W")
    if limit_w is None:
        return Rating(Symbol.PFEED_LINE, line_w, "W", "PL", (line,), _DEFINITION)
    given = (line, Given("PAV,E", limit_w, "W"), Given("n", shared))
    return Rating(Symbol.PFEED_LINE, min(line_w, limit_w / shared), "W", "min(PL, PAV,E / n)", given, _LIMIT)


def largest_single_phase(units_va: tuple[Given, ...]) -> Rating:
    """Return the apparent power of the largest single-phase unit. [VA]"""
    return Rating(Symbol.S1_MAX, max(each.number for each in units_va), "VA", "max S", units_va, _DEFINITION)


def single_phase_sum(units_va: tuple[Given, ...]) -> Rating:
    """Return the apparent power of all single-phase units. [VA]"""
    return Rating(Symbol.S1_SUM, sum(each.number for each in units_va), "VA", "Σ S", units_va, _DEFINITION)
