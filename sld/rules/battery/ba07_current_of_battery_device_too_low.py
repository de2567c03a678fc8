"""Rated current of a device at a battery too low.

What it checks
    The rated current of fuses, circuit-breakers and isolators at a battery, where it is given.

Why
    The current of a battery is highest when it is nearly empty; a device that is too small trips, or overheats.

How
    rated_current < In,min: the highest current of the battery, or the power of the converter at the lowest voltage.

Remedy
    A larger device, and a cable to match.

Clause
    IEC 60364-4-43:2008 433.1.

Not covered
    Heat in the enclosure of the device.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.role import AT_BATTERY
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import shortfalls, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("BA07", "rated current of a device at a battery too low", Severity.NON_COMPLIANCE, "IEC 60364-4-43 433.1")
def current_of_battery_device_too_low(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for device, rated, least in shortfalls(ratings, system.apparatus(AT_BATTERY), Symbol.IN, Symbol.IN_MIN):
        has, needs = two(rated.value, least.value, "A")
        yield Breach(
            phrase(
                "{device} is rated for {has}, below the {needs} between battery and converter",
                device=named(device),
                has=has,
                needs=needs,
            ),
            phrase("use one rated for at least {needs}", needs=needs),
            (*device.at, "rated_current"),
            device.key,
            (),
            (rated, least),
        )
