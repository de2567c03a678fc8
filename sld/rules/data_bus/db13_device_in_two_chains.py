"""Device in two chains.

What it checks
    Whether an inverter or meter is in one chain only, and once.

Why
    A device with one bus terminal joins the two chains to a star, which reflects the signal.

How
    The device is named twice, in one chain or in two, and is the master of neither.

Remedy
    One chain through all of them.

Clause
    TIA-485-A: one line from device to device.

Not covered
    Devices with two bus terminals; accept the finding with that reason.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import DataNode
from sld.model.system import DataChain, System
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("DB13", "device in two chains", Severity.NON_COMPLIANCE, "TIA-485-A", once=True)
def device_in_two_chains(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    seen: dict[str, DataChain] = {}
    for chain in system.chains:
        for node in chain.nodes:
            before = seen.setdefault(node.device, chain)
            first = next(each for each in before.nodes if each.device == node.device)
            device = system.devices[node.device]
            if node is first or isinstance(device, DataNode) or node.device in (chain.master, before.master):
                continue
            yield Breach(
                phrase(
                    "{device} is on data chain {chain} and already on {before}",
                    device=named(device),
                    chain=chain.designation,
                    before=before.designation,
                ),
                phrase("wire each device into one chain, once"),
                (*node.at, "device"),
                node.device,
                ((first.at, phrase("the other place")),),
            )
