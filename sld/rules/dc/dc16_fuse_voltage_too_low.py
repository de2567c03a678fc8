"""DC fuse voltage too low.

What it checks
    The rated DC voltage of each fuse against the highest array voltage.

Why
    A fuse opened above its rated voltage does not put out the arc; the holder burns.

How
    Un < Un,min, which is Uoc,max of the strings when cold.

Remedy
    Fuse and holder for a higher DC voltage.

Clause
    IEC 60269-6; IEC 62548:2016 6.5 (from memory).

Not covered
    The breaking capacity.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.dc import DC_FUSE
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import shortfalls, two
from sld.rules.naming import named
from sld.rules.nearest import size_at_least
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("DC16", "DC fuse voltage too low", Severity.DANGER, "IEC 60269-6")
def fuse_voltage_too_low(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for fuse, rated, least in shortfalls(ratings, system.apparatus(DC_FUSE), Symbol.UN, Symbol.UN_MIN):
        has, needs = two(rated.value, least.value, "V")
        yield Breach(
            phrase(
                "{fuse} is rated {has}, below the {needs} that the strings reach",
                fuse=named(fuse),
                has=has,
                needs=needs,
            ),
            phrase("use fuse and holder for {size} DC", size=size_at_least("gpv_fuse_v", least.value, "V")),
            (*fuse.at, "rated_voltage"),
            fuse.key,
            (),
            (rated, least),
        )
