"""Battery isolator missing.

What it checks
    Whether a battery whose circuit is given can be cut off from its converter by hand, under load.

Why
    A battery cannot be switched off itself: whoever works at the converter needs it cut off in both poles.

How
    No device in dc_circuit that isolates and switches under load, and no isolator_built_in. DC-20B does not
    switch, and a fuse-switch-disconnector of one pole leaves the other.

Remedy
    A switch-disconnector, a fuse-switch-disconnector, or a circuit-breaker that is suitable for isolation.

Clause
    IEC 62485-2:2010 5; IEC 60364-5-53:2019 536 (from memory).
    NEC 2023 706.15(A), as
    https://ecmweb.com/maintenance-repair-operations/article/21137091/nec-requirements-for-energy-storage-systems tells.

Not covered
    Whether it can be locked; plug connectors of batteries that are not to be parted under load.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import Device
from sld.model.kinds.battery import BATTERY_FUSE, BATTERY_ISOLATOR
from sld.model.kinds.role import ISOLATION, SWITCHING
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.batteries import stores, way_from
from sld.steps.ledger import Ratings
from sld.words import phrase

_NOT_UNDER_LOAD = "DC-20B"


@rule("BA09", "battery isolator missing", Severity.NON_COMPLIANCE, "IEC 62485-2; IEC 60364-5-53 536")
def battery_isolator_missing(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for store in stores(system):
        if store.given.isolator_built_in or any(_cuts_off(device) for device in way_from(system, store)):
            continue
        yield Breach(
            phrase("{battery} cannot be cut off from its converter under load", battery=named(store)),
            phrase(
                "add an `isolator` to `dc_circuit`, say `isolating: true` of a breaker that is, or give "
                "`isolator_built_in` if the battery has one"
            ),
            (*store.at, "dc_circuit"),
            store.key,
            on_key=True,
        )


def _cuts_off(device: Device) -> bool:
    isolator = device.given_as(BATTERY_ISOLATOR)
    if isolator is not None and isolator.utilization_category == _NOT_UNDER_LOAD:
        return False
    fuse = device.given_as(BATTERY_FUSE)
    return device.has(ISOLATION) and device.has(SWITCHING) and (fuse is None or fuse.poles > 1)
