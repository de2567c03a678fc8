"""Combined neutral and protective conductor too small.

What it checks
    The section of a cable from the network whose neutral is protective conductor too (PEN).

Why
    If a thin PEN breaks, every housing behind it stands at the voltage of the line, and no device trips.

How
    TN-C-S, the cores of the cable of the main board leave none for a protective conductor, and SN < SPEN,min: 10 mm²
    copper or 16 mm² aluminium.

Remedy
    The least section, or a protective conductor of its own.

Clause
    IEC 60364-5-54:2011 543.4.1 (clause from memory).

Not covered
    Installations to BS 7671, where neutral and protective conductor part at the cut-out of the distributor. The cable
    of the distributor, where the spec does not hold it.
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


@rule(
    "EA12",
    "combined neutral and protective conductor too small",
    Severity.NON_COMPLIANCE,
    "IEC 60364-5-54:2011 543.4.1 (clause from memory)",
)
def combined_conductor_too_small(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    if system.profile == "BS 7671":
        return
    for cable, section, least in shortfalls(ratings, ac_cables(system), Symbol.SPE, Symbol.SPEN_MIN):
        has, needs = two_sections(section, least)
        yield Breach(
            phrase(
                "{cable} has a combined neutral and protective conductor (PEN) of {has}, below {needs}",
                cable=named(cable),
                has=has,
                needs=needs,
            ),
            phrase(
                "use {size}, or a cable with a protective conductor of its own",
                size=section_at_least(least),
            ),
            (*cable.at, "section" if ratings.get(cable.key, Symbol.S_NEUTRAL) is None else "neutral_section"),
            cable.key,
            ((("supply", "earthing_system"), phrase("earthing system")),),
            (section, least),
        )
