"""Breaking capacity of a DC fuse too low.

What it checks
    The rated breaking capacity of each DC fuse, where it is given, against the current of all sources that can feed it.

Why
    A fuse that has to break more than it can bursts and burns.

How
    breaking_capacity < Ik,dc, which is KI times Isc of all joined strings and the backfeed of the inverter.

Remedy
    A fuse with a higher breaking capacity; gPV links have 10 kA and more.

Clause
    IEC 60269-6 (from memory).

Not covered
    The short-circuit current of a battery on the DC side, which is far higher than that of an array.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.dc import DC_FUSE
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import shortfalls, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("DC38", "breaking capacity of a DC fuse too low", Severity.DANGER, "IEC 60269-6")
def breaking_capacity_of_dc_fuse_too_low(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for fuse, rated, least in shortfalls(ratings, system.apparatus(DC_FUSE), Symbol.ICN, Symbol.IK_DC):
        has, needs = two(rated.value, least.value, "kA")
        yield Breach(
            phrase(
                "{fuse} breaks {has}, below the {needs} that all joined strings can feed",
                fuse=named(fuse),
                has=has,
                needs=needs,
            ),
            phrase("use a gPV fuse with a breaking capacity of at least {needs}; 10 kA is usual", needs=needs),
            (*fuse.at, "breaking_capacity"),
            fuse.key,
            (),
            (rated, least),
        )
