"""Cable larger than its terminals.

What it checks
    The section of each cable against the largest that the terminals at its ends take.

Why
    Strands are cut off to make a conductor fit; the joint heats and burns.

How
    S > the least `terminal_section_max` of the devices at both ends, of the inverter or its type, and of the cable
    itself, where one is given.

Remedy
    A smaller section where current and voltage allow one, cables in parallel, or terminal blocks in between.

Clause
    IEC 60364-5-52:2009 526.1 and 526.2 (from memory); data of the makers.

Not covered
    Sections smaller than the least that a terminal holds. Terminals of boards. Protective conductors.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import Cable
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import above, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.steps.voltage_budget import terminal_limit_mm2
from sld.words import phrase


@rule("AC45", "cable larger than its terminals", Severity.NON_COMPLIANCE, "IEC 60364-5-52 526")
def cable_larger_than_its_terminals(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for cable in system.of(Cable):
        section, most_mm2 = ratings.get(cable.key, Symbol.S), terminal_limit_mm2(system, cable)
        if section is None or most_mm2 is None or not above(section.value, most_mm2):
            continue
        has, most = two(section.value, most_mm2, "mm²")
        yield Breach(
            phrase("{cable} of {has} goes to terminals for at most {most}", cable=named(cable), has=has, most=most),
            phrase("use a smaller `section`, cables in `parallel`, or terminal blocks in between"),
            (*cable.at, "section"),
            cable.key,
            (),
            (section,),
        )
