"""Capacity of a DC cable too low.

What it checks
    The current-carrying capacity Iz of each DC cable as it is laid against the current that it must carry.

Why
    The array's current is not switched off by a fuse; a cable that is too thin overheats and burns.

How
    Iz < Iz,min. Iz holds material, insulation, temperature, grouping and ground; it is 0 where the surroundings are as
    hot as the conductor may be, as 70 °C behind modules are for PVC. Iz,min is a multiple of Isc, or the fuse
    downstream and the other strings.

Remedy
    A larger section, or fewer circuits laid together; an insulation for hotter conductors where Iz is 0.

Clause
    IEC 62548:2016, table of circuit currents (from memory); EN 50618:2014 Tables A.3 and A.4 (from memory);
    IEC 60364-5-52:2009 523 and Annex B for other cables, and for those in conduit, duct and ground.

Not covered
    The hours that a solar cable spends above 90 °C: see `temperature_rating` of its type.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import Cable
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import shortfalls, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("DC22", "capacity of a DC cable too low", Severity.DANGER, "IEC 62548-1; EN 50618")
def cable_capacity_too_low(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    cables = (cable for cable in system.of(Cable) if cable.in_array)
    for cable, capacity, least in shortfalls(ratings, cables, Symbol.IZ, Symbol.IZ_MIN):
        has, needs = two(capacity.value, least.value, "A")
        yield Breach(
            phrase(
                "{cable} carries {has} as laid, below the {needs} that it must carry",
                cable=named(cable),
                has=has,
                needs=needs,
            ),
            phrase("leave `section` out, and the smallest that fits is chosen; or lay fewer circuits together")
            if capacity.value
            else phrase("use a cable whose insulation stands hotter conductors, or lay it where it is cooler"),
            (*cable.at, "section"),
            cable.key,
            (),
            (capacity, least),
        )
