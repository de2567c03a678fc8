"""Bus address missing.

What it checks
    Whether every device that is polled on a Modbus chain has an address.

Why
    Whoever commissions the bus needs the addresses; without them two devices are left on the factory's.

How
    No address at a node that is not the master; one finding a chain.

Remedy
    An address from 1 to 247 for each device.

Clause
    Modbus over serial line; addressing.

Not covered
    Other protocols.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import DataNode
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import Value, phrase


@rule("DB01", "bus address missing", Severity.ADVICE, "Modbus over serial line", once=True)
def address_missing(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for chain in system.chains:
        if "modbus" not in chain.given.protocol.lower():
            continue
        missing = [node for node in chain.nodes if node.address is None and node.device != chain.master]
        if chain.master == "":
            missing = [node for node in missing if not isinstance(system.devices[node.device], DataNode)]
        if missing:
            first = named(system.devices[missing[0].device])
            where: dict[str, Value] = {"first": first, "chain": chain.designation, "more": len(missing) - 1}
            yield Breach(
                phrase("{first} and {more} more on data chain {chain}: no bus address is given", **where)
                if len(missing) > 1
                else phrase("{first} on data chain {chain}: no bus address is given", **where),
                phrase("give each device an `address` from 1 to 247"),
                (*missing[0].at, "address"),
                missing[0].device,
            )
