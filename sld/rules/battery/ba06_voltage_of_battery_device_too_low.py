"""Rated voltage of a device at a battery too low.

What it checks
    The rated DC voltage of fuses, circuit-breakers and isolators at a battery, and that of the type of its cable, where
    it is given.

Why
    A contact or fuse made for a lower direct voltage does not put out the arc.

How
    rated_voltage < Un,min, the highest voltage of the battery; of a cable < that voltage.

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
from sld.model.device import Cable, Device
from sld.model.kinds.role import AT_BATTERY
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import below, shortfalls, two
from sld.rules.naming import named
from sld.steps.batteries import stores, way_from
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
    for store in stores(system):
        highest_v = store.given.voltage_max_v or store.given.rated_voltage_v
        for cable in way_from(system, store):
            rated_v = cable.type.rated_voltage_v if isinstance(cable, Cable) else None
            if rated_v is not None and highest_v is not None and below(rated_v, highest_v):
                yield _cable(cable, rated_v, highest_v)


def _cable(cable: Device, rated_v: float, highest_v: float) -> Breach:
    has, needs = two(rated_v, highest_v, "V")
    return Breach(
        phrase(
            "{cable} is rated {has}, below the {needs} of the charged battery", cable=named(cable), has=has, needs=needs
        ),
        phrase("use one rated for at least {needs} DC", needs=needs),
        (*cable.at, "type"),
        cable.key,
    )
