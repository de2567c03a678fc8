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

from sld.finding import Finding, Severity, rule
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.ledger import Ratings

_FIRST, _LAST = 1, 247


@rule("DB03", "bus address out of range", Severity.NON_COMPLIANCE, "Modbus over serial line")
def address_out_of_range(system: System, ratings: Ratings) -> Iterator[Finding]:
    """Yield a finding for each case; see the text at the head of this file."""
    for chain in system.chains:
        if "modbus" not in chain.given.protocol.lower():
            continue
        for node in chain.nodes:
            if node.address is not None and not _FIRST <= node.address <= _LAST:
                yield Finding(
                    "DB03",
                    Severity.NON_COMPLIANCE,
                    f"{named(system.devices[node.device])} has address {node.address}, outside {_FIRST} to {_LAST}",
                    f"use an address from {_FIRST} to {_LAST}",
                    (*node.at, "address"),
                    node.device,
                )
