"""Protection far from the battery.

What it checks
    The length of cable between a battery and its first overcurrent protective device.

Why
    A short circuit in this cable is not switched off by anything.

How
    Lup > 3 m, summed over the cables ahead of the first fuse or circuit-breaker.

Remedy
    The fuse nearer to the battery, or a battery with protection of its own.

Clause
    IEC 60364-4-43:2008 434.2.1; BS 7671:2018 434.2.1 (from memory).

Not covered
    How the cable is laid: apart, mechanically protected and away from what burns, which holds for any length.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import above, two
from sld.rules.naming import named
from sld.steps.batteries import overcurrent_protection, stores
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("BA03", "protection far from the battery", Severity.NON_COMPLIANCE, "IEC 60364-4-43 434.2.1")
def protection_far_from_battery(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for store in stores(system):
        length, most = ratings.get(store.key, Symbol.L_UNPROTECTED), ratings.get(store.key, Symbol.L_UNPROTECTED_MAX)
        device = overcurrent_protection(system, store)
        if device is None or length is None or most is None or not above(length.value, most.value):
            continue
        has, allowed = two(length.value, most.value, "m")
        yield Breach(
            phrase(
                "{device} is {has} of cable away from {battery}, more than {allowed}",
                device=named(device),
                has=has,
                battery=named(store),
                allowed=allowed,
            ),
            phrase("put the protective device ahead of the cable, at most {allowed} from the battery", allowed=allowed),
            device.at,
            device.key,
            (),
            (length, most),
            on_key=True,
        )
