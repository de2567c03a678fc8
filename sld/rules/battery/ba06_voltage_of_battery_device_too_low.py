"""Rated voltage of a device at a battery too low.

What it checks
    The rated DC voltage of fuses, circuit-breakers and isolators at a battery, where it is given.

Why
    A contact or fuse made for a lower direct voltage does not put out the arc.

How
    rated_voltage < Un,min, the highest voltage of the battery.

Remedy
    A device for that direct voltage; its rating for alternating voltage does not count.

Clause
    IEC 62485-2:2010 5; IEC 60364-5-53:2019 536 (from memory).
    NEC 2023 706.31(C), as
    https://ecmweb.com/maintenance-repair-operations/article/21137091/nec-requirements-for-energy-storage-systems tells.

Not covered
    How poles are wired in series to reach the voltage.
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


@rule("BA06", "rated voltage of a device at a battery too low", Severity.DANGER, "IEC 60364-5-53; IEC 62485-2")
def voltage_of_battery_device_too_low(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for device, rated, least in shortfalls(ratings, system.apparatus(AT_BATTERY), Symbol.UN, Symbol.UN_MIN):
        has, needs = two(rated.value, least.value, "V")
        yield Breach(
            phrase(
                "{device} is rated for {has} DC, below the {needs} of the charged battery",
                device=named(device),
                has=has,
                needs=needs,
            ),
            phrase("use one rated for at least {needs} DC", needs=needs),
            (*device.at, "rated_voltage"),
            device.key,
            (),
            (rated, least),
        )
