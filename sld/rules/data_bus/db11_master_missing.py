"""No master on a chain.

What it checks
    Whether a chain has a device that polls the others.

Why
    Without a master nobody asks, and nobody answers.

How
    No master is named, and no logger, router or other data device is on the chain.

Remedy
    The device that polls, under `master`.

Clause
    Modbus over serial line.

Not covered
    Protocols without a master.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import DataNode
from sld.model.system import System
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("DB11", "no master on a chain", Severity.ADVICE, "Modbus over serial line", once=True)
def master_missing(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for chain in system.chains:
        nodes = [node for node in chain.nodes if isinstance(system.devices[node.device], DataNode)]
        if chain.given.master is None and not nodes:
            yield Breach(
                phrase("data chain {chain} has no device that polls the others", chain=chain.designation),
                phrase("name the device that polls under `master`"),
                (*chain.at, "master"),
                chain.key,
            )
