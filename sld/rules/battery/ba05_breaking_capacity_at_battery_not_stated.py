"""Breaking capacity at a battery not stated.

What it checks
    Fuses and circuit-breakers at a battery that state no DC breaking capacity.

Why
    The capacity for alternating current says nothing of direct current, and a battery feeds thousands of amperes.

How
    No breaking_capacity, and the short-circuit current of the battery is given.

Remedy
    The breaking capacity at direct voltage from the data sheet of the device.

Clause
    IEC 60364-4-43:2008 434.5.1 (from memory).
    NEC 2023 706.31(C), as
    https://ecmweb.com/maintenance-repair-operations/article/21137091/nec-requirements-for-energy-storage-systems tells.

Not covered
    Devices built into a battery: their maker answers for them.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.role import AT_BATTERY
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("BA05", "breaking capacity at a battery not stated", Severity.NON_COMPLIANCE, "IEC 60364-4-43 434.5.1")
def breaking_capacity_at_battery_not_stated(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for device in system.apparatus(AT_BATTERY):
        current = ratings.get(device.key, Symbol.IK_DC)
        if current is None or ratings.get(device.key, Symbol.ICN) is not None:
            continue
        yield Breach(
            phrase(
                "{device} states no DC breaking capacity, and the battery feeds {current}",
                device=named(device),
                current=current,
            ),
            phrase("give `breaking_capacity` at direct voltage, by the data sheet"),
            (*device.at, "breaking_capacity"),
            device.key,
            (),
            (current,),
        )
