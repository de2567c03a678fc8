"""Data chains: unit loads and lengths."""

from __future__ import annotations

from sld.model.device import InverterUnit
from sld.model.system import DataChain, System
from sld.ratings import data_bus as bus
from sld.ratings.symbol import Symbol
from sld.steps.ledger import Ledger
from sld.words import phrase

__all__ = ["data_bus"]


def data_bus(system: System, ledger: Ledger) -> None:
    """Rate every chain."""
    for chain in system.chains:
        ledger.add(chain.key, bus.unit_loads(_loads(system, chain)), symbol=Symbol.UNIT_LOADS)
        lengths = [node.length_m for node in chain.nodes[1:] if node.length_m is not None and node.length_m > 0]
        longest = bus.longest_segment(chain.given.baud_rate_bd)
        ledger.add(chain.key, longest, symbol=Symbol.LMAX_BUS)
        if lengths:
            total = bus.bus_length(lengths)
            missing = len(chain.nodes) - 1 - len(lengths)
            if missing:
                total = total.assuming(
                    phrase(
                        "{missing} stretches of {chain} have no length and count nothing",
                        missing=missing,
                        chain=chain.designation,
                    )
                )
            ledger.add(chain.key, total, symbol=Symbol.L_BUS)
        polled = sum(node.device != chain.master for node in chain.nodes)
        if polled:
            ledger.add(chain.key, bus.poll_time(polled, chain.given.baud_rate_bd))


def _loads(system: System, chain: DataChain) -> list[float]:
    """Return the unit load of each node, 1 where its data sheet does not say."""
    found = []
    for node in chain.nodes:
        device = system.devices[node.device]
        limits = device.type.bus if isinstance(device, InverterUnit) else None
        found.append(limits.unit_load if limits else 1.0)
    return found
