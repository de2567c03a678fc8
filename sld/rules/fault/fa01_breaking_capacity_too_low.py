"""Breaking capacity too low.

What it checks
    The rated breaking capacity of each overcurrent device against the greatest fault current where it stands.

Why
    A device that cannot break the current bursts and feeds an arc.

How
    Icn < Ik,max, unless the device has a conditional current of at least Ik,max together with the device ahead, which
    is not above `backup_fuse_max` where that is given; or the board that it sits in has, and is behind a fuse of at
    most its `backup_fuse_max`, left out 100 A. Danger where the spec states the fault current of the supply or its
    transformer; non-compliance where it had to be assumed.

Remedy
    A device of higher breaking capacity, or the fault current at the supply point as the network operator states
    it.

Clause
    IEC 60364-4-43:2008 434.5.1; IEC 61439-3 (conditional current of consumer units), IEC 61439-1
    3.8.10.4 (of other assemblies: what they withstand themselves; both from memory).

Not covered
    Whether the device ahead is of the make and type that the maker names.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.back_up_protection import is_backed_up
from sld.rules.compare import shortfalls, two
from sld.rules.naming import named
from sld.rules.nearest import size_at_least
from sld.rules.ways import overcurrent_devices
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("FA01", "breaking capacity too low", Severity.DANGER, "IEC 60364-4-43 434.5.1")
def breaking_capacity_too_low(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    known = system.supply.prospective_fault_current_ka is not None or system.supply.transformer is not None
    for device, rated, current in shortfalls(ratings, overcurrent_devices(system), Symbol.ICN, Symbol.IK_MAX):
        if is_backed_up(system, ratings, device, current):
            continue
        has, flows = two(rated.value, current.value, "kA")
        at, compared = (*device.at, "breaking_capacity"), (rated, current)
        larger = phrase(
            "use a breaking capacity of {size}",
            size=size_at_least("mcb_icn_ka", current.value, "kA", nec=system.follows_nec),
        )
        if known:
            yield Breach(
                phrase(
                    "{device} breaks {has}, below the greatest fault current of {flows}",
                    device=named(device),
                    has=has,
                    flows=flows,
                ),
                larger,
                at,
                device.key,
                (),
                compared,
            )
        else:
            also = ((("supply", "prospective_fault_current"), phrase("assumed")),)
            yield Breach(
                phrase(
                    "{device} breaks {has}, below the fault current of {flows} that had to be assumed",
                    device=named(device),
                    has=has,
                    flows=flows,
                ),
                phrase(
                    "give `prospective_fault_current` as the network operator states it, or {larger}", larger=larger
                ),
                at,
                device.key,
                also,
                compared,
                severity=Severity.NON_COMPLIANCE,
            )
