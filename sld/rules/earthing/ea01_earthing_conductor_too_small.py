"""Earthing conductor too small.

What it checks
    The section of the conductor between main earthing terminal and electrode, or to the earthing point of a TN supply
    where no electrode is given, against the least section.

Why
    It carries fault and lightning currents and corrodes in the ground.

How
    S < S,min: as the largest protective conductor that is needed, at least 6 mm², more where it is buried without
    protection; to the electrode of a TN system as main bonding; with BS 7671 on a combined neutral at least as main
    bonding by its section; with AS/NZS 5033 at least 4 mm².

Remedy
    The next standard section.

Clause
    IEC 60364-5-54:2011 542.3 and Table 54.1 (partly from memory); BS 7671:2018 542.3.1.

Not covered
    Conductors of other metals than copper.
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


@rule("EA01", "earthing conductor too small", Severity.NON_COMPLIANCE, "IEC 60364-5-54 542.3")
def earthing_conductor_too_small(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    conductors = (each for each in system.earth_conductors if each.purpose == "earthing")
    for conductor, section, least in shortfalls(ratings, conductors, Symbol.S, Symbol.S_MIN):
        has, needs = two_sections(section, least)
        yield Breach(
            phrase(
                "earthing conductor {conductor} has {has}, below {needs}",
                conductor=conductor.designation,
                has=has,
                needs=needs,
            ),
            phrase("use {size}", size=section_at_least(least)),
            (*conductor.at, "section"),
            conductor.key,
            (),
            (section, least),
        )
