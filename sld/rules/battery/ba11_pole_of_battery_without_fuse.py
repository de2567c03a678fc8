"""Pole of a battery without fuse.

What it checks
    Whether the overcurrent device nearest to a battery of which no pole is earthed is in both poles.

Why
    One fault to earth in each pole joins them past the fuse in the other pole, with all that the cells give.

How
    A fuse or circuit-breaker of one pole, no earthed_pole, and nothing built into the battery.

Remedy
    A fuse in each pole, or a circuit-breaker of two.

Clause
    IEC 60364-4-43:2008 431.1.1; IEC 62485-2:2010 5 (from memory).

Not covered
    Batteries with a protection of their own, whose poles are not known.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import Apparatus
from sld.model.kinds.battery import BATTERY_BREAKER, BATTERY_FUSE
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.batteries import overcurrent_protection, stores
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("BA11", "pole of a battery without fuse", Severity.DANGER, "IEC 60364-4-43 431.1; IEC 62485-2")
def pole_of_battery_without_fuse(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for store in stores(system):
        device = overcurrent_protection(system, store)
        if device is None or _poles(device) != 1:
            continue
        if store.given.earthed_pole is None and store.given.protection_rated_current_a is None:
            yield Breach(
                phrase(
                    "{device} is in one pole of {battery}, of which no pole is earthed",
                    device=named(device),
                    battery=named(store),
                ),
                phrase("protect both poles; or give `earthed_pole` where one is connected to earth"),
                (*device.at, "poles"),
                device.key,
            )


def _poles(device: Apparatus) -> int | None:
    given = device.given_as(BATTERY_FUSE) or device.given_as(BATTERY_BREAKER)
    return given.poles if given else None
