"""RCD missing without the network.

What it checks
    Whether each load that is fed while the network is away has an RCD between it and the source.

Why
    An inverter or a small generator feeds so little into a fault that a circuit-breaker or fuse does not open in the
    time allowed.

How
    No RCD from the load up to the switch, and the least short-circuit current of the source is not given, or is below
    Ia of the overcurrent device of the load. Loads whose circuit is assumed are not told of.

Remedy
    An RCD of at most 30 mA for final circuits, on the island's side of the switch.

Clause
    IEC 60364-4-41:2005 411.3.2; IEC 60364-8-2:2018 (from memory).

Not covered
    Disconnection by the source itself when its voltage breaks down (IEC 60364-4-41 411.3.2.5).
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import Consumer, Device
from sld.model.island import Island, islands
from sld.model.kinds.role import RESIDUAL_PROTECTION
from sld.model.system import System
from sld.quantity import Rating
from sld.ratings.symbol import Symbol
from sld.rules.compare import below
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.steps.protection import overcurrent_device
from sld.words import phrase


@rule("BU03", "RCD missing without the network", Severity.DANGER, "IEC 60364-4-41 411.3.2; IEC 60364-8-2")
def residual_device_missing_without_network(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for island in islands(system):
        for load in island.loads(system):
            if load.given.circuit is None or any(each.has(RESIDUAL_PROTECTION) for each in _way(system, island, load)):
                continue
            trips, current = _trips(system, ratings, load), _least_current(ratings, island)
            if trips is not None and current is not None and not below(current.value, trips.value):
                continue
            yield Breach(
                phrase(
                    "{load} has no RCD while the network is away, and {source} does not trip its overcurrent device",
                    load=named(load),
                    source=named(island.sources[0] if island.sources else island.switch),
                ),
                phrase("add an `rcd` to the `circuit` of the load, or of its board behind the source"),
                (*load.at, "circuit"),
                load.key,
                ((island.at, phrase("what feeds it then")),),
                tuple(each for each in (current, trips) if each),
                on_key=True,
            )


def _way(system: System, island: Island, load: Consumer) -> Iterator[Device]:
    """Yield the devices from a load up to where the island begins, that included where it is a device."""
    for device in system.upstream(load.key):
        yield device
        if device.key == island.root:
            return


def _trips(system: System, ratings: Ratings, load: Consumer) -> Rating | None:
    device = overcurrent_device(system, load.key)
    return ratings.get(device.key, Symbol.IA) if device else None


def _least_current(ratings: Ratings, island: Island) -> Rating | None:
    found = [ratings.get(source.key, Symbol.IK_ISLAND) for source in island.sources]
    known = [each for each in found if each is not None]
    return min(known, key=lambda rating: rating.value) if known and len(known) == len(found) else None
