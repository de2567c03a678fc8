"""Bonding conductor too small.

What it checks
    The section of each bonding conductor against the least section for its purpose.

Why
    It carries part of fault and lightning currents; a thin one melts or lets a voltage stand between parts.

How
    S < S,min: half the largest protective conductor that is needed from 6 to 25 mm² for main bonding; with BS 7671
    half of the earthing conductor that is required, or with a combined neutral by the section of that neutral; 6 mm²
    for frames, 16 mm² where the separation distance to the lightning protection is not kept; with AS/NZS 5033 4 mm².

Remedy
    The next standard section.

Clause
    IEC 60364-5-54:2011 544.1; BS 7671:2018 544.1.1 and Table 54.8; EN 62305-3 Supplement 5 (partly from memory).

Not covered
    A neutral of the supply that is not known (EA08).
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import shortfalls, two_sections
from sld.rules.nearest import section_at_least
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("EA02", "bonding conductor too small", Severity.NON_COMPLIANCE, "IEC 60364-5-54 544.1; EN 62305-3")
def bonding_conductor_too_small(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    conductors = (each for each in system.earth_conductors if each.purpose != "earthing")
    for conductor, section, least in shortfalls(ratings, conductors, Symbol.S, Symbol.S_MIN):
        has, needs = two_sections(section, least)
        yield Breach(
            phrase(
                "bonding conductor {conductor} to {to} has {has}, below {needs}",
                conductor=conductor.designation,
                to=conductor.to,
                has=has,
                needs=needs,
            ),
            phrase("use {size}", size=section_at_least(least)),
            (*conductor.at, "section"),
            conductor.key,
            (),
            (section, least),
        )
