"""Protective conductor too small.

What it checks
    The section of the protective conductor that each cable is given against the table.

Why
    A fault current through a conductor that is too thin melts it, and the exposed parts stay live.

How
    SPE < SPE,min: S up to 16 mm², 16 mm² up to 35 mm², half above.

Remedy
    The next standard section, or a calculation by the adiabatic formula; then accept the finding with it.

Clause
    IEC 60364-5-54:2011 Table 54.2; BS 7671:2018 Table 54.7.

Not covered
    The adiabatic formula.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import shortfalls, two_sections
from sld.rules.naming import named
from sld.rules.nearest import section_at_least
from sld.rules.ways import ac_cables
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("AC23", "protective conductor too small", Severity.NON_COMPLIANCE, "IEC 60364-5-54 Table 54.2")
def protective_conductor_too_small(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for cable, section, least in shortfalls(ratings, ac_cables(system), Symbol.SPE, Symbol.SPE_MIN):
        has, needs = two_sections(section, least)
        yield Breach(
            phrase(
                "{cable} has a protective conductor of {has}, below {needs}", cable=named(cable), has=has, needs=needs
            ),
            phrase("use a protective conductor of {size}", size=section_at_least(least)),
            (*cable.at, "protective_section"),
            cable.key,
            (),
            (section, least),
        )
