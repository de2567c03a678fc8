"""Neutral too small.

What it checks
    A neutral conductor that is smaller than the line conductors of its cable.

Why
    Single-phase loads and sources load the neutral by a whole line current when those of the other lines are off; the
    devices in the lines do not see that.

How
    SN < SN,min: that of the lines in a single-phase circuit and up to 16 mm² copper or 25 mm² aluminium, these above.
    Danger where IN,max > Iz,N: the single-phase units of the most loaded line run alone.

Remedy
    A neutral as large as the line conductors.

Clause
    IEC 60364-5-52:2009 524.2 (seen in the edition of 2001, 524.2 and 524.3).

Not covered
    Harmonics, of which the third adds up in the neutral; detection of overcurrent in it (IEC 60364-4-43 431.2).
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import above, shortfalls, two, two_sections
from sld.rules.naming import named
from sld.rules.nearest import section_at_least
from sld.rules.ways import ac_cables
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("AC51", "neutral too small", Severity.DANGER, "IEC 60364-5-52:2009 524.2")
def neutral_too_small(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for cable, section, least in shortfalls(ratings, ac_cables(system), Symbol.S_NEUTRAL, Symbol.S_NEUTRAL_MIN):
        has, needs = two_sections(section, least)
        yield Breach(
            phrase("{cable} has a neutral of {has}, below {needs}", cable=named(cable), has=has, needs=needs),
            phrase("use a neutral of {size}", size=section_at_least(least)),
            (*cable.at, "neutral_section"),
            cable.key,
            (),
            (section, least),
            severity=Severity.NON_COMPLIANCE,
        )
    for cable in ac_cables(system):
        flows, carries = ratings.get(cable.key, Symbol.I_NEUTRAL_MAX), ratings.get(cable.key, Symbol.IZ_NEUTRAL)
        if flows is not None and carries is not None and above(flows.value, carries.value):
            current, capacity = two(flows.value, carries.value, "A")
            yield Breach(
                phrase(
                    "the neutral of {cable} carries up to {current} when single-phase units of one line run alone, "
                    "above {capacity}",
                    cable=named(cable),
                    current=current,
                    capacity=capacity,
                ),
                phrase("use a neutral as large as the line conductors"),
                (*cable.at, "neutral_section"),
                cable.key,
                (),
                (flows, carries),
            )
