"""Feed-through current of an inverter exceeded.

What it checks
    The device that protects the circuit of an inverter with a backup output against what the inverter feeds through.

Why
    While the network is there, the loads behind the backup output flow through a relay inside the inverter, and
    nothing but the device ahead limits them.

How
    In > feed_through_current_max of the backup output.

Remedy
    A smaller device ahead, or a change-over switch around the inverter.

Clause
    IEC 60364-4-43:2008 433.1.

Not covered
    Types that do not state the current: it is not known then.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import InverterUnit
from sld.model.island import islands
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import above, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.steps.protection import overcurrent_device
from sld.words import phrase


@rule("BU08", "feed-through current of an inverter exceeded", Severity.NON_COMPLIANCE, "IEC 60364-4-43 433.1")
def feed_through_current_exceeded(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for unit in {each.switch.key: each.switch for each in islands(system)}.values():
        device, most = overcurrent_device(system, unit.key), ratings.get(unit.key, Symbol.I_THROUGH)
        rated = ratings.get(device.key, Symbol.IN) if device else None
        if not isinstance(unit, InverterUnit) or device is None or rated is None or most is None:
            continue
        if above(rated.value, most.value):
            has, allowed = two(rated.value, most.value, "A")
            yield Breach(
                phrase(
                    "{device} lets {has} through {unit}, which feeds through {allowed} at most",
                    device=named(device),
                    has=has,
                    unit=named(unit),
                    allowed=allowed,
                ),
                phrase("use a device for at most {allowed} ahead of the inverter", allowed=allowed),
                (*device.at, "rated_current"),
                device.key,
                (),
                (rated, most),
            )
