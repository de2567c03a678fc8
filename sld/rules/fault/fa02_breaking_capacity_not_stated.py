"""Breaking capacity not stated.

What it checks
    Breakers and RCBOs whose rated breaking capacity the spec does not state, board by board.

Why
    Whether they can break the fault current is not checked without it.

How
    No breaking_capacity on a breaker or RCBO; the greatest fault current of those in one board is told.

Remedy
    The breaking capacity from the device's marking.

Clause
    IEC 60364-4-43:2008 434.5.1.

Not covered
    Fuses, which break more than any low-voltage network gives in most cases.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Finding, Severity, rule
from sld.model.device import Apparatus
from sld.model.system import System
from sld.rate.ledger import Ratings
from sld.rules.naming import named
from sld.rules.nearest import size_at_least
from sld.rules.ways import apparatus
from sld.spec.blocks.circuit import Breaker, Rcbo


@rule("FA02", "breaking capacity not stated", Severity.ADVICE, "IEC 60364-4-43 434.5.1")
def breaking_capacity_not_stated(system: System, ratings: Ratings) -> Iterator[Finding]:
    """Yield a finding for each case; see the text at the head of this file."""
    places: dict[str, list[Apparatus]] = {}
    for device in apparatus(system, Breaker, Rcbo):
        if ratings.get(device.key, "Icn") is None and ratings.get(device.key, "Ik,max") is not None:
            places.setdefault(device.enclosure, []).append(device)
    for devices in places.values():
        worst = max(
            devices, key=lambda device: current.value if (current := ratings.get(device.key, "Ik,max")) else 0.0
        )
        current = ratings.get(worst.key, "Ik,max")
        if current is None:
            continue
        enough = size_at_least("mcb_icn_ka", current.value, "kA", nec=system.follows_nec)
        others = f" and {len(devices) - 1} more in its board" if len(devices) > 1 else ""
        state = "states" if len(devices) == 1 else "state"
        yield Finding(
            "FA02",
            Severity.ADVICE,
            f"{named(worst)}{others} {state} no breaking capacity, and up to {current.quantity()} can flow",
            f"give `breaking_capacity`; {enough} is enough",
            (*worst.at, "breaking_capacity"),
            worst.key,
            (),
            (current,),
        )
