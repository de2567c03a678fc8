"""Bus address given twice.

What it checks
    The addresses of the devices of one chain.

Why
    Two devices with one address answer at once; both are lost to the master.

How
    Two nodes other than the master have the same address. A counted inverter takes consecutive addresses.

Remedy
    The next free address.

Clause
    Modbus over serial line; addressing.

Not covered
    The same address on two chains, which is no fault.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("DB02", "bus address given twice", Severity.NON_COMPLIANCE, "Modbus over serial line", once=True)
def address_given_twice(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for chain in system.chains:
        seen = {node.address: node for node in reversed(chain.nodes) if node.device != chain.master}
        free = next((number for number in range(1, 248) if number not in seen), None)
        for node in chain.nodes:
            if node.address is None or node.device == chain.master or seen[node.address] is node:
                continue
            first = system.devices[seen[node.address].device]
            yield Breach(
                phrase(
                    "{device} has address {address} on data chain {chain}, which {first} has already",
                    device=named(system.devices[node.device]),
                    address=node.address,
                    chain=chain.designation,
                    first=named(first),
                ),
                phrase("use a free address, for example {free}", free=free) if free else phrase("split the chain"),
                (*node.at, "address"),
                node.device,
                ((seen[node.address].at, phrase("the device that has it")),),
            )
