"""Bus address out of range.

What it checks
    The addresses of the devices of a Modbus chain.

Why
    Address 0 is for messages to all and 248 to 255 are reserved; a device there does not answer.

How
    An address outside 1 to 247.

Remedy
    An address from 1 to 247.

Clause
    Modbus over serial line; addressing.

Not covered
    Other protocols.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase

_FIRST, _LAST = 1, 247


@rule("DB03", "bus address out of range", Severity.NON_COMPLIANCE, "Modbus over serial line", once=True)
def address_out_of_range(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for chain in system.chains:
        if "modbus" not in chain.given.protocol.lower():
            continue
        for node in chain.nodes:
            if node.address is not None and not _FIRST <= node.address <= _LAST:
                yield Breach(
                    phrase(
                        "{device} has address {address}, outside {first} to {last}",
                        device=named(system.devices[node.device]),
                        address=node.address,
                        first=_FIRST,
                        last=_LAST,
                    ),
                    phrase("use an address from {first} to {last}", first=_FIRST, last=_LAST),
                    (*node.at, "address"),
                    node.device,
                )
