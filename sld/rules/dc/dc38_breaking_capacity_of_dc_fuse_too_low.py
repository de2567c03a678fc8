"""Breaking capacity of a DC overcurrent device too low.

What it checks
    The rated breaking capacity of each DC fuse and circuit-breaker, where it is given, against the current of all
    sources that can feed it.

Why
    A device that has to break more than it can bursts and burns.

How
    breaking_capacity < Ik,dc, which is KI times Isc of all joined strings and the backfeed of the inverter.

Remedy
    A device with a higher breaking capacity; gPV links have 10 kA and more.

Clause
    IEC 60269-6 for fuses, IEC 60947-2 for circuit-breakers (from memory).

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
from sld.rules.ways import dc_overcurrent_devices
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("DC38", "breaking capacity of a DC overcurrent device too low", Severity.DANGER, "IEC 60269-6")
def breaking_capacity_of_dc_fuse_too_low(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for fuse, rated, least in shortfalls(ratings, dc_overcurrent_devices(system), Symbol.ICN, Symbol.IK_DC):
        has, needs = two(rated.value, least.value, "kA")
        remedy = phrase("use one with a breaking capacity of at least {needs}", needs=needs)
        if fuse.kind is DC_FUSE:
            remedy = phrase("use a gPV fuse with a breaking capacity of at least {needs}; 10 kA is usual", needs=needs)
        yield Breach(
            phrase(
                "{fuse} breaks {has}, below the {needs} that all joined strings can feed",
                fuse=named(fuse),
                has=has,
                needs=needs,
            ),
            remedy,
            (*fuse.at, "breaking_capacity"),
            fuse.key,
            (),
            (rated, least),
        )
