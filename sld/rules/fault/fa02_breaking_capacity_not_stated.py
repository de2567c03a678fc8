"""Breaking capacity not stated.

What it checks
    Breakers and RCBOs whose rated breaking capacity the spec does not state.

Why
    Whether they can break the fault current is not checked without it.

How
    No breaking_capacity on a breaker or RCBO; the greatest fault current there is told.

Remedy
    The breaking capacity from the device's marking.

Clause
    IEC 60364-4-43:2008 434.5.1.

Not covered
    Fuses, which break more than any low-voltage network gives in most cases.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.role import TRIPPING
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.naming import named
from sld.rules.nearest import size_at_least
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("FA02", "breaking capacity not stated", Severity.ADVICE, "IEC 60364-4-43 434.5.1")
def breaking_capacity_not_stated(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for device in system.apparatus(TRIPPING):
        current = ratings.get(device.key, Symbol.IK_MAX)
        if current is None or ratings.get(device.key, Symbol.ICN) is not None:
            continue
        enough = size_at_least("mcb_icn_ka", current.value, "kA", nec=system.follows_nec)
        yield Breach(
            phrase(
                "{device} states no breaking capacity, and up to {current} can flow",
                device=named(device),
                current=current,
            ),
            phrase("give `breaking_capacity`; {enough} is enough", enough=enough),
            (*device.at, "breaking_capacity"),
            device.key,
            (),
            (current,),
        )
